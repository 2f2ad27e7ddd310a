package chart

import (
	"fmt"
	"image/color"
	"math"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/symbol"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// engraver puts symbols on a page. Points given to it are in u, y upward; the
// page is in mm, y downward, with the plan's origin at 0, 0.
type engraver struct {
	o       Options
	p       *layout.Plan
	f       *fabric.Fabric
	set     *symbol.Set
	look    palette
	unit    float64
	list    *display.List
	extents display.Extents // of the list, as far as it was measured
	cut     map[glyph]int   // glyphs already made, by index in list.Symbols
	fans    []geom.Point    // by fan: the mean direction of its members
	members []int           // by fan
	drawn   keyBook
	loaded  []bool         // by stitch, whether one stands in it; see carries
	crossed []bool         // by row, whether stitches of it cross
	picots  []bool         // by row, whether it has picots
	under   passed         // what long stitches may pass
	own     map[string]Own // by abbreviation

	settled  map[int32]frame // where what hangs in rounds has found room
	settling bool            // drawing only to find it
}

func newEngraver(p *layout.Plan, o Options) *engraver {
	if o.Unit <= 0 {
		o.Unit = 5
	}
	if o.Terms == "" {
		o.Terms = "us"
	}
	e := &engraver{o: o, p: p, f: p.Fabric, set: symbol.Standard(), unit: o.Unit, list: &display.List{},
		look: newPalette(o, len(p.Fabric.Yarns)), cut: make(map[glyph]int), drawn: newKeyBook()}
	e.ownSymbols()
	e.crossed, e.picots = crossedRows(e.f), picotRows(e.f)
	e.fans, e.members = meanDirections(p)
	return e
}

// which parts of a symbol a glyph shows.
type which uint8

const (
	allParts which = iota
	legParts       // what each of several legs shows: all but the head
	headParts
)

// glyph is a symbol made ready for the page, for all places at which it looks the same.
type glyph struct {
	symbol string
	height int // in steps of 1/50 u
	parts  which
	legs   int8 // bowed legs from one foot to one head; 0 for a plain symbol
	lump   stitch.Lump
	cased  bool // with white round it
	narrow bool // its bar is shorter, as in fans of many
	short  bool // its marks are shorter, where stems cross
	raise  int8 // how much higher its marks sit than they would, in steps of 1/50 u
	fill   color.NRGBA
}

// steps is a height in the steps of a glyph: finer than a quarter of a stroke.
func steps(height float64) int { return max(1, int(math.Round(height*50))) }

// frame is where a symbol stands: its foot and the unit vector towards its head.
type frame struct{ foot, up geom.Point }

// between is the frame from foot to head, and the height between them.
func between(foot, head geom.Point) (frame, float64) {
	d := head.Sub(foot)
	return frame{foot, d.Unit()}, d.Len()
}

// page brings a point to the page.
func (e *engraver) page(p geom.Point) geom.Point {
	if e.o.LeftHanded {
		p.X = -p.X
	}
	return geom.Point{X: p.X * e.unit, Y: -p.Y * e.unit}
}

// put places a glyph. Symbol coordinates run to the right of the way up.
func (e *engraver) put(g glyph, at frame, ink color.NRGBA) {
	n, ok := e.cut[g]
	if !ok {
		n = len(e.list.Symbols)
		e.cut[g] = n
		e.list.Symbols = append(e.list.Symbols, display.Symbol{Name: fmt.Sprintf("%s-%d", g.symbol, n), Paths: e.shape(g)})
	}
	foot := e.page(at.foot)
	m := geom.Matrix{A: at.up.Y, B: at.up.X, C: -at.up.X, D: at.up.Y, E: foot.X, F: foot.Y}
	if e.o.LeftHanded {
		m.A, m.C = -m.A, -m.C
	}
	e.list.Items = append(e.list.Items, display.Use{Symbol: n, At: m, Ink: ink})
}

// shape is the paths of a glyph in mm, y downward.
func (e *engraver) shape(g glyph) []display.Path {
	s, ok := e.set.Symbol(g.symbol)
	if !ok { // the kind has a symbol that the data lack: a plain cross of the right size still shows the stitch
		s, _ = e.set.Symbol("sc")
	}
	height := float64(g.height) / 50
	var paths []display.Path
	add := func(p geom.Path, fill symbol.Fill) {
		paths = append(paths, e.outline(p, fill, g.fill))
	}
	if g.legs > 0 {
		e.lump(s, g, height, add)
	} else {
		for i, part := range s.Parts {
			if g.parts == legParts && part.Role == symbol.Head || g.parts == headParts && part.Role != symbol.Head {
				continue
			}
			path := s.Stretched(i, height)
			switch {
			case g.narrow && part.Role == symbol.Head:
				path = path.Transform(geom.Scale(narrowBar, 1))
			case part.Role == symbol.Mark:
				if g.short { // and nearer to the other marks
					_, middle, _ := s.Marks(height)
					y := path.Box().Centre().Y
					path = path.Transform(geom.Scale(shortMark, shortMark)).Transform(geom.Translate(0, middle+(y-middle)*shortGap-y*shortMark))
				}
				path = path.Transform(geom.Translate(0, float64(g.raise)/50))
			}
			add(path, part.Fill)
		}
	}
	if g.cased {
		paths = append(e.casings(paths), paths...)
	}
	return paths
}

// outline is a path of a symbol in u made ready for the page.
func (e *engraver) outline(p geom.Path, fill symbol.Fill, hides color.NRGBA) display.Path {
	out := display.Path{Path: p.Transform(geom.Scale(e.unit, -e.unit)), Stroke: display.Ink, Width: stroke * e.unit}
	switch fill {
	case symbol.Paper:
		out.Fill = display.Solid(hides)
	case symbol.Ink:
		out.Fill = display.Ink
		out.Width = stroke / 2 * e.unit
	}
	return out
}

// casings are the same paths in paper and wider, to go under them.
func (e *engraver) casings(paths []display.Path) []display.Path {
	under := make([]display.Path, len(paths))
	for i, p := range paths {
		p.Stroke, p.Width, p.Fill = display.Solid(e.look.paper), (stroke+casing)*e.unit, display.Paint{}
		under[i] = p
	}
	return under
}

// measured is how far everything drawn so far goes.
func (e *engraver) measured() *display.Extents {
	e.extents.Extend(e.list)
	return &e.extents
}

// line strokes straight lines through points in u.
func (e *engraver) line(ink color.NRGBA, width float64, points ...geom.Point) {
	var p geom.Path
	for i, q := range points {
		if i == 0 {
			p.MoveTo(e.page(q))
		} else {
			p.LineTo(e.page(q))
		}
	}
	e.list.Items = append(e.list.Items, display.Path{Path: p, Stroke: display.Solid(ink), Width: width * e.unit})
}

func (e *engraver) text(t display.Text) { e.list.Items = append(e.list.Items, t) }

func (e *engraver) begin(id, class, title string, st int32) {
	e.list.Items = append(e.list.Items, display.Begin{ID: id, Class: class, Title: title, Stitch: st})
}

func (e *engraver) end() { e.list.Items = append(e.list.Items, display.End{}) }
