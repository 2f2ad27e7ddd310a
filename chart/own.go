package chart

import (
	"errors"
	"fmt"

	"strandway/chart/geom"
	"strandway/chart/symbol"
	"strandway/model/pattern"
)

// Own is a stitch of the designer's own that is drawn as one symbol in place of its parts.
type Own struct {
	Abbreviation, Name string // Abbreviation is the name of its units in the fabric
	Symbol             string // the name of a symbol, or a path as [symbol.Drawn] takes it
}

// OwnOf gives the stitches of a pattern that its designer has drawn. What is
// wrong with a symbol is told, and leaves the stitch to be drawn from its parts.
func OwnOf(p *pattern.Pattern) ([]Own, error) {
	var own []Own
	var wrong []error
	for _, s := range p.Stitches {
		if s.Symbol == "" {
			continue
		}
		if _, err := OwnSymbol(s.Abbreviation, s.Symbol); err != nil {
			wrong = append(wrong, fmt.Errorf("the symbol of %q cannot be drawn: %w", s.Abbreviation, err))
			continue
		}
		own = append(own, Own{s.Abbreviation, s.Name, s.Symbol})
	}
	return own, errors.Join(wrong...)
}

// OwnSymbol checks the symbol of a stitch of one's own.
func OwnSymbol(abbreviation, text string) (*symbol.Symbol, error) {
	if s, ok := symbol.Standard().Symbol(text); ok {
		same := *s
		same.Name, same.Whole = "own-"+abbreviation, true
		return &same, nil
	}
	return symbol.Drawn("own-"+abbreviation, text)
}

// own is the designer's own symbols; what is wrong with one leaves the parts to be drawn.
func (e *engraver) ownSymbols() {
	e.own = make(map[string]Own)
	var symbols []*symbol.Symbol
	for _, o := range e.o.Own {
		if s, err := OwnSymbol(o.Abbreviation, o.Symbol); err == nil {
			symbols = append(symbols, s)
			e.own[o.Abbreviation] = o
		}
	}
	if len(symbols) > 0 {
		e.set = e.set.With(symbols...)
	}
}

// ownOf is the designer's own stitch that a stitch is part of.
func (e *engraver) ownOf(id int32) (own Own, first bool, ok bool) {
	k := e.f.Stitches[id].Unit
	if k < 0 || len(e.own) == 0 {
		return Own{}, false, false
	}
	u := &e.f.Units[k]
	own, ok = e.own[u.Name]
	return own, id == u.First, ok
}

// ownStitch draws a whole unit as one symbol, from its place to the middle of its heads.
func (e *engraver) ownStitch(id int32, own Own) {
	u := &e.f.Units[e.f.Stitches[id].Unit]
	var feet, heads []geom.Point
	for n := u.First; n < u.Last; n++ {
		if p := &e.p.Poses[n]; p.Placed && !p.Dropped {
			heads = append(heads, p.Top)
			for _, l := range e.legs(n) {
				feet = append(feet, e.foot(n, &l, false))
			}
		}
	}
	shape, ok := e.set.Symbol("own-" + own.Abbreviation)
	if len(feet) == 0 || !ok {
		return
	}
	foot := middle(feet)
	at, _ := between(foot, middle(heads))
	height := 0.0
	for _, h := range heads {
		height = max(height, h.Sub(foot).Dot(at.up))
	}
	ink := e.look.yarn(e.f.Stitches[id].Yarn)
	e.drawn.own[own.Abbreviation] = true
	e.put(glyph{symbol: shape.Name, height: steps(height), fill: ink.fill}, at, ink.line)
}

// ownEntries are the lines of the key for them.
func (e *engraver) ownEntries(ink yarnInk) []entry {
	var out []entry
	for _, o := range e.o.Own {
		shape, ok := e.set.Symbol("own-" + o.Abbreviation)
		if !ok || !e.drawn.own[o.Abbreviation] {
			continue
		}
		out = append(out, entry{tall: shape.Height(), abbr: o.Abbreviation, name: o.Name, draw: func(at geom.Point) {
			e.put(glyph{symbol: shape.Name, height: steps(shape.Height()), fill: ink.fill}, frame{at, geom.Point{Y: 1}}, ink.line)
		}})
	}
	return out
}
