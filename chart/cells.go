package chart

import (
	"fmt"
	"image/color"
	"math"
	"strconv"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/symbol"
	"strandway/model/colour"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// Grid lines, in u: fine ones between cells, strong ones where they are counted.
const (
	fineLine   = .03
	strongLine = .07
)

// Grid says how cells are filled and counted.
type Grid struct {
	Fill   Fill
	Aspect float64 // of a cell, height by width, from the gauge: see [Aspect]; 0 is square
	Every  int     // columns from one number to the next, 0 is 5; rows too where it is more than 5, else every row has its number
}

// Aspect is a stitch's height by its width, by the gauge; 0 where it is not said.
func Aspect(g pattern.Gauge) float64 {
	if g.Stitches <= 0 || g.Rows <= 0 {
		return 0
	}
	return g.Stitches / g.Rows
}

// Fill is what the cells of a grid show.
type Fill uint8

const (
	Symbols Fill = iota // the yarn's colour, and the symbol of all but the plainest stitches
	Colours             // the yarn's colour alone
	Letters             // the yarn's letter
)

// cellRow is a row of cells from left to right.
type cellRow struct {
	row   int
	from  int // column of the first cell
	cells []int32
}

// Cells draws the fabric as a grid, one cell a stitch and one line a row, as
// tapestry, filet and mosaic are charted: the yarn's true colour, and the symbol
// where a stitch is not the row's plain one. aspect is height by width of a
// cell; 0 is that of the options' grid.
func Cells(f *fabric.Fabric, o Options, aspect float64) *display.List {
	if aspect <= 0 {
		aspect = o.Grid.Aspect
	}
	if aspect <= 0 {
		aspect = 1
	}
	e := newEngraver(&layout.Plan{Fabric: f}, o)
	rows, width := cellRows(f)
	g := grid{engraver: e, aspect: aspect, plain: plainest(f), every: o.Grid.Every}
	if g.every <= 0 {
		g.every = 5
	}
	if m := filet(f, rows); m > 0 {
		return g.meshes(rows, m)
	}
	for i := range rows {
		r := &rows[i]
		e.begin(fmt.Sprintf("r%d", r.row), "row", e.rowTitle(r.row), -1)
		for k, id := range r.cells {
			g.cell(id, r.from+k, i)
		}
		e.end()
	}
	e.begin("grid", "grid", "", -1)
	g.lines(rows, width)
	e.end()
	e.begin("numbers", "numbers", "", -1)
	g.numbers(rows, width)
	e.end()
	if o.Key {
		e.key()
	}
	return e.finish()
}

// grid is what the cells of one chart share.
type grid struct {
	*engraver
	aspect float64
	plain  *stitch.Kind // the kind that needs no symbol
	every  int
}

// cellRows gives the cells of all rows from left to right, and the number of
// columns. Rows stand over the columns of the foundation that they were worked on.
func cellRows(f *fabric.Fabric) (rows []cellRow, width int) {
	least := math.Inf(1)
	for r := range f.Rows {
		if r == 0 {
			continue
		}
		row := cellRow{row: r}
		lowest := math.Inf(1)
		for id := f.Rows[r].First; id < f.Rows[r].Last; id++ {
			s := &f.Stitches[id]
			if s.Flags&(fabric.NoLanding|fabric.Join|fabric.Travel|fabric.Picot|fabric.Surface) != 0 {
				continue
			}
			row.cells = append(row.cells, id)
			lowest = min(lowest, float64(s.Col))
		}
		if len(row.cells) == 0 {
			continue
		}
		if !f.Rows[r].FromLeft {
			for i, j := 0, len(row.cells)-1; i < j; i, j = i+1, j-1 {
				row.cells[i], row.cells[j] = row.cells[j], row.cells[i]
			}
		}
		row.from = int(math.Round(lowest))
		least = min(least, lowest)
		rows = append(rows, row)
	}
	shift := 0
	if len(rows) > 0 {
		shift = int(math.Round(least))
	}
	for i := range rows {
		rows[i].from -= shift
		width = max(width, rows[i].from+len(rows[i].cells))
	}
	return rows, width
}

// plainest is the kind that most stitches of the rows are of.
func plainest(f *fabric.Fabric) *stitch.Kind {
	count := make([]int, len(f.Kinds))
	best := -1
	for i := range f.Stitches {
		s := &f.Stitches[i]
		if s.Row == 0 || s.Has(fabric.Chain) || s.Has(fabric.NoLanding) {
			continue
		}
		count[s.Kind]++
		if best < 0 || count[s.Kind] > count[best] {
			best = int(s.Kind)
		}
	}
	if best < 0 {
		return nil
	}
	return f.Kinds[best]
}

// box is a cell's corners on the page, in mm; rows count from 0 at the bottom.
func (g *grid) box(column, row int) geom.Box {
	a := g.page(geom.Point{X: float64(column), Y: float64(row) * g.aspect})
	b := g.page(geom.Point{X: float64(column + 1), Y: float64(row+1) * g.aspect})
	return geom.Empty().Add(a).Add(b)
}

// cell draws one stitch: its yarn's true colour, and its symbol unless it is plain.
func (g *grid) cell(id int32, column, row int) {
	s, k := &g.f.Stitches[id], g.f.Kind(id)
	b := g.box(column, row)
	fill := g.look.paper
	style := g.o.Grid.Fill
	if !g.o.Monochrome && style != Letters && int(s.Yarn) < len(g.o.Inks) {
		fill = g.o.Inks[s.Yarn]
	}
	g.begin(fmt.Sprintf("s%d", id), "stitch", g.title(id), id)
	defer g.end()
	g.list.Items = append(g.list.Items, display.Path{Path: rectangle(b), Fill: display.Solid(fill)})
	ink := contrasting(fill)
	long := s.Has(fabric.Long) || s.NBase > 0 && g.f.Of(id)[0].Down > 1
	switch {
	case style == Letters:
		g.letter(b, ink, g.f.Yarns[s.Yarn])
	case style == Colours:
	case s.Has(fabric.Chain) && !s.Has(fabric.TurningChain):
		g.drawn.chains = true
		g.sample("chain", b, ink, true)
	case long || k != g.plain && !s.Has(fabric.TurningChain):
		g.drawn.stitch(g.engraver, id, k, nil, "")
		g.sample(g.symbolOf(k), b, ink, false)
	case g.o.Monochrome && s.Yarn > 0:
		g.letter(b, ink, g.f.Yarns[s.Yarn])
	}
}

// letter writes a yarn's letter into a cell.
func (g *grid) letter(b geom.Box, ink color.NRGBA, letter string) {
	size := .55 * g.unit * min(g.aspect, 1)
	c := b.Centre()
	g.text(display.Text{X: c.X, Y: c.Y + .36*size, Size: size, Anchor: display.Middle, Fill: ink, Text: letter})
}

// sample draws a symbol made small enough for a cell; lying turns it on its side.
func (g *grid) sample(name string, b geom.Box, ink color.NRGBA, lying bool) {
	s, ok := g.set.Symbol(name)
	if !ok {
		return
	}
	box := s.Box
	m := geom.Translate(-box.Centre().X, -box.Centre().Y)
	w, h := box.Width(), box.Height()
	if lying {
		m = m.Then(geom.Rotate(math.Pi / 2))
		w, h = h, w
	}
	k := min(.62*b.Width()/max(w, .4), .62*b.Height()/max(h, .4))
	m = m.Then(geom.Scale(k, -k)).Then(geom.Translate(b.Centre().X, b.Centre().Y))
	if g.o.LeftHanded {
		m = geom.Scale(-1, 1).Then(m)
	}
	for _, part := range s.Parts {
		p := display.Path{Path: part.Path.Transform(m), Stroke: display.Solid(ink), Width: .06 * g.unit}
		if part.Fill == symbol.Ink {
			p.Fill = display.Solid(ink)
		}
		g.list.Items = append(g.list.Items, p)
	}
}

// lines draws the grid over the cells.
func (g *grid) lines(rows []cellRow, width int) {
	if len(rows) == 0 {
		return
	}
	for i := range rows {
		r := &rows[i]
		for c := r.from; c <= r.from+len(r.cells); c++ {
			g.rule(geom.Point{X: float64(c), Y: float64(i) * g.aspect}, geom.Point{X: float64(c), Y: float64(i+1) * g.aspect}, fineLine)
		}
	}
	for y := 0; y <= len(rows); y++ {
		from, to := span(rows, y)
		g.rule(geom.Point{X: float64(from), Y: float64(y) * g.aspect}, geom.Point{X: float64(to), Y: float64(y) * g.aspect}, fineLine)
	}
	strong := max(g.every, 10)
	for c := strong; c < width; c += strong { // counted from the right, where the first row begins
		x := float64(width - c)
		g.rule(geom.Point{X: x}, geom.Point{X: x, Y: float64(len(rows)) * g.aspect}, strongLine)
	}
	for y := strong; y < len(rows); y += strong {
		from, to := span(rows, y)
		g.rule(geom.Point{X: float64(from), Y: float64(y) * g.aspect}, geom.Point{X: float64(to), Y: float64(y) * g.aspect}, strongLine)
	}
}

// span is the columns that the line below row y must reach over.
func span(rows []cellRow, y int) (from, to int) {
	from = math.MaxInt
	for _, i := range [2]int{y - 1, y} {
		if i >= 0 && i < len(rows) {
			from = min(from, rows[i].from)
			to = max(to, rows[i].from+len(rows[i].cells))
		}
	}
	return from, to
}

func (g *grid) rule(a, b geom.Point, width float64) {
	g.line(g.look.faint, width, a, b)
}

// numbers puts row numbers where the rows begin and counts the columns from the right.
func (g *grid) numbers(rows []cellRow, width int) {
	size := labelSize * g.unit * min(1, g.aspect/.8)
	for i := range rows {
		r := &rows[i]
		row := &g.f.Rows[r.row]
		if every := g.o.Grid.Every; every > 5 && i > 0 && (i+1)%every != 0 {
			continue
		}
		x, left := float64(r.from+len(r.cells)), row.FromLeft != g.o.LeftHanded
		if row.FromLeft {
			x = float64(r.from)
		}
		p := g.page(geom.Point{X: x, Y: (float64(i) + .5) * g.aspect})
		n := number{left: left, y: p.Y, edge: p.X, label: g.numberOf(r.row), ink: g.look.yarn(row.Yarn).line}
		side, anchor := 1.0, display.Start
		if n.left {
			side, anchor = -1, display.Finish
		}
		g.text(display.Text{X: n.edge + side*.35*g.unit, Y: n.y + .28*size, Size: size, Anchor: anchor, Fill: n.ink, Text: n.label})
	}
	for c := g.every; c <= width; c += g.every {
		p := g.page(geom.Point{X: float64(width-c) + .5, Y: -.35})
		g.text(display.Text{X: p.X, Y: p.Y + .56*size, Size: size, Anchor: display.Middle, Fill: g.look.faint, Text: strconv.Itoa(c)})
	}
}

func rectangle(b geom.Box) geom.Path {
	var p geom.Path
	p.MoveTo(b.Min)
	p.LineTo(geom.Point{X: b.Max.X, Y: b.Min.Y})
	p.LineTo(b.Max)
	p.LineTo(geom.Point{X: b.Min.X, Y: b.Max.Y})
	p.Close()
	return p
}

// contrasting is the ink that reads on a colour.
func contrasting(c color.NRGBA) color.NRGBA {
	if _, light := colour.Ink(c); light {
		return color.NRGBA{0x22, 0x26, 0x2a, 0xff}
	}
	return white
}
