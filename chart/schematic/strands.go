package schematic

import (
	"fmt"
	"image/color"
	"math"
	"slices"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/text"
	"strandway/model/fabric"
	"strandway/model/strand"
)

// Sizes of the strand picture in mm.
const (
	bodyWidth = 70.
	slim      = 34. // of a narrow picture
	lane      = 3.2 // from one carried strand to the next
	leastRow  = 4.5 // height of the lowest row
	mostRow   = 14.
	cordWidth = .9
	bend      = 1.4
	joint     = 1.5 // half the side of the triangles
)

// StrandOptions say how strands are drawn.
type StrandOptions struct {
	Title  string
	Inks   []color.NRGBA // by fabric yarn
	Narrow bool          // narrow and without the words below, to stand beside another
}

// Strands draws the edges of a piece with the way of each yarn: along its rows,
// up the edges, and where it is joined (hollow triangle) and cut (filled).
// Heights are in proportion to rowCM; without it all rows are of one height.
func Strands(f *fabric.Fabric, s *strand.Strands, rowCM []float64, o StrandOptions) *display.List {
	d := &cords{list: &display.List{Background: white, Title: o.Title}, fabric: f, inks: o.Inks, narrow: o.Narrow}
	d.place(rowCM)
	for y := range s.ByYarn {
		d.links(&s.ByYarn[y])
	}
	left, right := d.lanes()
	const lengths = 11. // room for the floats' lengths beside the lanes
	d.left = margin + 24 + float64(left)*lane + lengths
	d.right = d.left + bodyWidth
	legend := text.Width(display.Sans, words(s), letterSize)
	if o.Narrow {
		d.right, legend = d.left+slim, 0
	}
	d.list.Width = max(d.right+float64(right)*lane+lengths+4, margin+legend, margin+text.Width(display.SansBold, o.Title, titleSize)) + margin
	d.list.Desc = fmt.Sprintf("%s; %d ends to weave in", o.Title, s.Ends)
	d.draw(s, o.Title)
	return d.list
}

// cords is a strand picture being drawn.
type cords struct {
	list        *display.List
	fabric      *fabric.Fabric
	inks        []color.NRGBA
	narrow      bool
	y           []float64 // mm: the middle of each row
	left, right float64   // mm: the edges
	all         []link    // up the edges
	within      []link    // in mid-row
}

// link is a strand from the end of one row up an edge to the beginning of another.
type link struct {
	from, to int
	yarn     uint8
	side     fabric.Side
	lane     int // 0 next to the edge
	float    float64
}

// place gives each row its height on the page, the first at the bottom.
func (d *cords) place(rowCM []float64) {
	lowest := math.Inf(1)
	for r := 1; r < len(rowCM); r++ {
		if rowCM[r] > 0 {
			lowest = min(lowest, rowCM[r])
		}
	}
	heights := make([]float64, len(d.fabric.Rows))
	total := 0.0
	for r := range heights {
		heights[r] = leastRow
		if r < len(rowCM) && rowCM[r] > 0 {
			heights[r] = min(leastRow*rowCM[r]/lowest, mostRow)
		}
		total += heights[r]
	}
	top := margin + titleSize + 8
	d.y = make([]float64, len(heights))
	at := top + total
	for r, h := range heights {
		d.y[r] = at - h/2
		at -= h
	}
	d.list.Height = top + total + 14 + margin
}

// links finds the strand's ways from row to row.
func (d *cords) links(s *strand.Strand) {
	for i := 1; i < len(s.Rows); i++ {
		from, to := s.Rows[i-1], s.Rows[i]
		if slices.ContainsFunc(s.Joins, func(j strand.Joint) bool { return j.Row == to }) {
			continue
		}
		side := fabric.Right // rounds go up at their beginning
		if row := &d.fabric.Rows[to]; row.Shape == fabric.Flat && row.FromLeft {
			side = fabric.Left
		}
		l := link{from: from, to: to, yarn: s.Yarn, side: side}
		if !d.edged(s.Yarn, from, to) {
			d.within = append(d.within, l)
			continue
		}
		for _, f := range s.Floats {
			if f.To == to {
				l.float = f.CM
			}
		}
		d.all = append(d.all, l)
	}
}

// edged reports whether a yarn leaves one row at its end and comes into another at its beginning.
func (d *cords) edged(yarn uint8, from, to int) bool {
	a, b := &d.fabric.Rows[from], &d.fabric.Rows[to]
	return a.Last == a.First || b.Last == b.First || d.fabric.Stitches[a.Last-1].Yarn == yarn && d.fabric.Stitches[b.First].Yarn == yarn
}

// lanes puts links that pass one another side by side, the shorter next to the
// edge, and gives how many lanes each edge takes.
func (d *cords) lanes() (left, right int) {
	slices.SortStableFunc(d.all, func(a, b link) int { return (a.to - a.from) - (b.to - b.from) })
	for i := range d.all {
		l := &d.all[i]
		for clash := true; clash; {
			clash = slices.ContainsFunc(d.all[:i], func(m link) bool {
				return m.side == l.side && m.lane == l.lane && m.from < l.to && l.from < m.to
			})
			if clash {
				l.lane++
			}
		}
		if l.side == fabric.Left {
			left = max(left, l.lane+1)
		} else {
			right = max(right, l.lane+1)
		}
	}
	return left, right
}

func (d *cords) draw(s *strand.Strands, title string) {
	d.text(margin, margin+titleSize-1, titleSize, display.Start, display.SansBold, ink, title)
	var edge geom.Path
	half := leastRow / 2
	edge.MoveTo(geom.Point{X: d.left, Y: d.y[0] + half})
	edge.LineTo(geom.Point{X: d.right, Y: d.y[0] + half})
	edge.LineTo(geom.Point{X: d.right, Y: d.y[len(d.y)-1] - half})
	edge.LineTo(geom.Point{X: d.left, Y: d.y[len(d.y)-1] - half})
	edge.Close()
	d.list.Items = append(d.list.Items, display.Path{Path: edge, Fill: display.Solid(fill)})
	for _, l := range d.all {
		d.link(l)
	}
	for _, l := range d.within { // from where it is last worked to where it is taken up
		d.cord([]geom.Point{{X: d.inRow(l.yarn, l.from, false), Y: d.y[l.from]}, {X: d.inRow(l.yarn, l.to, true), Y: d.y[l.to]}}, d.ink(l.yarn))
	}
	d.lengths()
	for r := range d.fabric.Rows {
		d.row(r)
	}
	for y := range s.ByYarn {
		of := &s.ByYarn[y]
		for _, j := range of.Joins {
			d.joint(of, j, true)
		}
		for _, j := range of.Cuts {
			d.joint(of, j, false)
		}
	}
	d.legend(s)
}

func (d *cords) ink(yarn uint8) color.NRGBA {
	if int(yarn) < len(d.inks) {
		return d.inks[yarn]
	}
	return ink
}

// ends are where row r begins and ends, in mm.
func (d *cords) ends(r int) (begin, end float64) {
	switch row := &d.fabric.Rows[r]; {
	case row.Shape != fabric.Flat:
		return d.right, d.left // cut open at its beginning
	case row.FromLeft:
		return d.left, d.right
	}
	return d.right, d.left
}

// row draws a row in the yarns of its stitches, with an arrowhead where it goes to, and names it.
func (d *cords) row(r int) {
	row := &d.fabric.Rows[r]
	n := row.Last - row.First
	if n == 0 {
		return
	}
	begin, end := d.ends(r)
	at := func(k int32) float64 { return begin + (end-begin)*float64(k)/float64(n) }
	d.list.Items = append(d.list.Items, display.Begin{ID: fmt.Sprintf("row%d", r), Class: "row", Title: row.Label, Stitch: -1})
	for from := int32(0); from < n; {
		to := from + 1
		yarn := d.fabric.Stitches[row.First+from].Yarn
		for to < n && d.fabric.Stitches[row.First+to].Yarn == yarn {
			to++
		}
		d.cord([]geom.Point{{X: at(from), Y: d.y[r]}, {X: at(to), Y: d.y[r]}}, d.ink(yarn))
		from = to
	}
	way := math.Copysign(1.6, end-begin)
	tip := geom.Point{X: (begin + end) / 2, Y: d.y[r]}
	var head geom.Path
	head.MoveTo(tip.Add(geom.Point{X: way}))
	head.LineTo(tip.Add(geom.Point{X: -way / 2, Y: -1.1}))
	head.LineTo(tip.Add(geom.Point{X: -way / 2, Y: 1.1}))
	head.Close()
	d.list.Items = append(d.list.Items, display.Path{Path: head, Fill: display.Solid(d.ink(d.fabric.Stitches[row.First+n/2].Yarn)),
		Stroke: display.Solid(ink), Width: .2})
	label := row.Label
	if row.WS {
		label += " WS"
	}
	d.text(margin, d.y[r]+1, letterSize, display.Start, display.Sans, ink, label)
	d.list.Items = append(d.list.Items, display.End{})
}

// link draws a strand out from the edge, up its lane and back in.
func (d *cords) link(l link) {
	edge, out := d.right, 1.
	if l.side == fabric.Left {
		edge, out = d.left, -1
	}
	x := edge + out*(1.8+float64(l.lane)*lane)
	a, b := d.y[l.from], d.y[l.to]
	c := min(bend, (a-b)/2)
	var p geom.Path
	p.MoveTo(geom.Point{X: edge, Y: a})
	p.LineTo(geom.Point{X: x - out*c, Y: a})
	p.CubicTo(geom.Point{X: x, Y: a}, geom.Point{X: x, Y: a}, geom.Point{X: x, Y: a - c})
	p.LineTo(geom.Point{X: x, Y: b + c})
	p.CubicTo(geom.Point{X: x, Y: b}, geom.Point{X: x, Y: b}, geom.Point{X: x - out*c, Y: b})
	p.LineTo(geom.Point{X: edge, Y: b})
	d.path(p, d.ink(l.yarn))
}

// lengths writes beside each edge how long its floats are, where there is room.
func (d *cords) lengths() {
	outer := map[fabric.Side]int{}
	for _, l := range d.all {
		outer[l.side] = max(outer[l.side], l.lane)
	}
	var written []geom.Point
	for _, l := range d.all {
		high := d.y[l.from] - d.y[l.to]
		if l.float < .05 || high < letterSize+1.5 {
			continue
		}
		at, anchor := geom.Point{X: d.right, Y: (d.y[l.from]+d.y[l.to])/2 + 1}, display.Start
		off := 1.8 + float64(outer[l.side])*lane + 1.6
		if at.X += off; l.side == fabric.Left {
			at.X, anchor = d.left-off, display.Finish
		}
		if slices.ContainsFunc(written, func(p geom.Point) bool { return p.X == at.X && math.Abs(p.Y-at.Y) < letterSize+.4 }) {
			continue
		}
		written = append(written, at)
		d.text(at.X, at.Y, letterSize*.85, anchor, display.Sans, faint, fmt.Sprintf("%s %.1f cm", d.fabric.Yarns[l.yarn], l.float))
	}
}

func (d *cords) cord(points []geom.Point, c color.NRGBA) {
	var p geom.Path
	p.MoveTo(points[0])
	for _, q := range points[1:] {
		p.LineTo(q)
	}
	d.path(p, c)
}

// path draws a cord with a dark casing, so that pale yarns show on paper.
func (d *cords) path(p geom.Path, c color.NRGBA) {
	d.list.Items = append(d.list.Items,
		display.Path{Path: p, Stroke: display.Solid(faint), Width: cordWidth + .3},
		display.Path{Path: p, Stroke: display.Solid(c), Width: cordWidth})
}

// joint marks where a yarn begins or ends: in the row's edge, or in mid-row above it.
func (d *cords) joint(s *strand.Strand, j strand.Joint, begins bool) {
	begin, end := d.ends(j.Row)
	at := end
	if begins {
		at = begin
	}
	if j.Side == fabric.NoSide && d.fabric.Rows[j.Row].Shape == fabric.Flat {
		at = d.inRow(s.Yarn, j.Row, begins)
	}
	p := geom.Point{X: at, Y: d.y[j.Row]}
	var t geom.Path
	t.MoveTo(p.Add(geom.Point{Y: -joint}))
	t.LineTo(p.Add(geom.Point{X: joint, Y: joint}))
	t.LineTo(p.Add(geom.Point{X: -joint, Y: joint}))
	t.Close()
	paint := white
	if !begins {
		paint = ink
	}
	d.list.Items = append(d.list.Items, display.Path{Path: t, Fill: display.Solid(paint), Stroke: display.Solid(ink), Width: .3})
}

// inRow is where in a row a yarn is first worked, or last.
func (d *cords) inRow(yarn uint8, r int, first bool) float64 {
	row := &d.fabric.Rows[r]
	begin, end := d.ends(r)
	at := begin
	for id := row.First; id < row.Last; id++ {
		if d.fabric.Stitches[id].Yarn == yarn {
			at = begin + (end-begin)*(float64(id-row.First)+.5)/float64(row.Last-row.First)
			if first {
				break
			}
		}
	}
	return at
}

// legend names the yarns with their ends, and the triangles.
func (d *cords) legend(s *strand.Strands) {
	x, y := margin, d.list.Height-margin-4
	for i := range s.ByYarn {
		of := &s.ByYarn[i]
		d.cord([]geom.Point{{X: x, Y: y - 1}, {X: x + 6, Y: y - 1}}, d.ink(of.Yarn))
		d.text(x+8, y, letterSize, display.Start, display.Sans, ink, of.Letter)
		x += 16
	}
	if !d.narrow {
		d.text(margin, d.list.Height-margin+1, letterSize, display.Start, display.Sans, faint, words(s))
	}
}

// words explain the marks and sum up.
func words(s *strand.Strands) string {
	words := fmt.Sprintf("hollow triangle: join; filled: cut; %d ends to weave in", s.Ends)
	if s.Longest.CM > 0 {
		words += fmt.Sprintf("; longest float %.1f cm", s.Longest.CM)
	}
	return words
}

func (d *cords) text(x, y, size float64, anchor display.Anchor, face display.Face, c color.NRGBA, words string) {
	d.list.Items = append(d.list.Items, display.Text{X: x, Y: y, Size: size, Anchor: anchor, Face: face, Fill: c, Text: words})
}
