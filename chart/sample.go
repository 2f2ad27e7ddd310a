package chart

import (
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

// Sample draws one stitch by itself, as the key shows it: for a tray or a list of stitches.
func Sample(k *stitch.Kind, o Options) *display.List {
	if o.Library == nil {
		o.Library, _ = stitch.Standard()
	}
	e := newEngraver(&layout.Plan{Fabric: &fabric.Fabric{}}, o)
	ink := yarnInk{line: e.look.text, fill: e.look.paper}
	e.begin("sample", "stitch", k.Name, -1)
	if k.Family == "chain" {
		e.oval(geom.Point{}, geom.Point{X: 1}, ovalLength, ink)
	} else {
		s := e.signOf(k)
		e.drawn.signs[s] = &meaning{rs: k}
		e.signEntry(s, ink).draw(geom.Point{})
	}
	e.end()
	return e.finish()
}

// signOf is how a kind looks where its place adds nothing to it.
func (e *engraver) signOf(k *stitch.Kind) sign {
	s := sign{symbol: e.symbolOf(k), legs: 1, post: int8(k.Post)}
	if shape, ok := e.set.Symbol(s.symbol); !ok || !shape.Whole {
		switch {
		case k.SamePlace && k.Legs > 1:
			s.bowed, s.lump = k.Legs, k.Lump
		default:
			s.legs = max(1, k.Legs)
		}
	}
	switch k.Loop {
	case stitch.FrontLoop:
		s.mark = "front-loop"
	case stitch.BackLoop:
		s.mark = "back-loop"
	case stitch.ThirdLoop:
		s.mark = "third-loop"
	}
	return s
}
