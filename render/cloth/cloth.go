// Package cloth draws worked fabric as yarn.
//
// [Make] turns a plan into parts of stitches: posts, top loops, chains, floats,
// each at its place and depth. Every part has a shape in the round, given by
// the curves its yarn follows; which part a stitch shows follows from how the
// stitch is made, never from its name. [Cloth.Draw] draws every part once as a
// colourless sprite of depth and light, lays the sprites over one another by
// depth alone, and shades what lies sunk. [Buffer.Colour] puts in the yarns'
// colours, so that another colourway costs next to nothing.
//
// Lengths are in w, the width of one single crochet; y grows upward and z
// toward the viewer.
package cloth

import (
	"sync"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
)

// Face is the side of the work that is seen.
type Face uint8

const (
	RS Face = iota
	WS
)

// Options are the ways a cloth can be made.
type Options struct {
	Face     Face
	StitchMM float64  // width of one single crochet at the pattern's gauge; 0 means 7
	Stretch  float64  // height of the rows as a factor of the plan's; 0 means 1
	Tails    bool     // yarn ends hang where yarns begin and end, not yet woven in
	Sprites  *Sprites // shared with other cloths; nil for none
}

// stitchMM is the width of one single crochet, or that of a worsted's where it is not known.
func stitchMM(mm float64) float64 {
	if mm <= 0 {
		return 7
	}
	return mm
}

// Margin is the ground shown round a cloth, w.
const Margin = .9

// Cloth is a fabric made up of parts of stitches, ready to be drawn.
// It is never changed and safe for concurrent use.
type Cloth struct {
	fabric    *fabric.Fabric
	instances []instance
	keys      []key
	looks     []look // by yarn
	yarns     []Yarn // as it was made with
	sprites   *Sprites
	box       geom.Box
	table     int16             // depth of what the cloth lies on, 1/64 w
	bounds    func() []geom.Box // by stitch
}

// instance is one part of one stitch at its place.
type instance struct {
	x, y         float32 // its base, w
	from, length float32 // its place along its yarn, w
	stitch       int32
	key          int32 // index in Cloth.keys
	seed         uint32
	z            int16 // 1/64 w
	yarn         uint8
}

// Make makes the cloth of a plan laid out at measured heights. The yarns are
// those of the fabric, in its order.
func Make(p *layout.Plan, yarns []Yarn, o Options) *Cloth {
	m := newMaker(p, yarns, o)
	m.ring()
	for r := range p.Fabric.Rows {
		m.row(r)
	}
	m.floats()
	if o.Tails {
		m.tails()
	}
	return m.finish()
}

// Before is the cloth as it was before a stitch was made. Drawing it costs no more
// than drawing the whole.
func (c *Cloth) Before(stitch int32) *Cloth {
	part := *c
	part.instances = make([]instance, 0, len(c.instances))
	for _, in := range c.instances {
		if in.stitch < stitch {
			part.instances = append(part.instances, in)
		}
	}
	part.bounds = sync.OnceValue(part.boxes)
	return &part
}

// Box is the cloth's outline, w: the plan's box, stretched, mirrored for the wrong side, with the tails that hang out of it.
func (c *Cloth) Box() geom.Box { return c.box }

// Stitches is the number of stitches in the cloth.
func (c *Cloth) Stitches() int { return len(c.fabric.Stitches) }

// Matches reports whether yarns can be shown by colouring alone: they look and
// are built like those the cloth was made with, but for their colours.
func (c *Cloth) Matches(yarns []Yarn) bool {
	if len(yarns) != len(c.yarns) {
		return false
	}
	for i, y := range yarns {
		was := &c.yarns[i]
		if y.Look != was.Look || y.Shape != was.Shape || y.Look == Variegated && y.RepeatM != was.RepeatM {
			return false
		}
	}
	return true
}

// reach is where an instance may draw, w.
func (c *Cloth) reach(in *instance) geom.Box {
	k := &c.keys[in.key]
	a := geom.Point{X: float64(in.x), Y: float64(in.y)}
	b := a.Add(geom.Point{X: float64(k.dx) / leanSteps, Y: float64(k.dy) / leanSteps})
	return geom.Empty().Add(a).Add(b).Grow(1)
}
