package chart

import (
	"testing"

	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model/fabric"
	"strandway/model/stitch"
)

func library(t testing.TB) *stitch.Library {
	t.Helper()
	l, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// swatch lays stitches out by hand: rows of columns 1 u wide.
type swatch struct {
	t    testing.TB
	lib  *stitch.Library
	f    *fabric.Fabric
	p    *layout.Plan
	kind map[string]uint16
	y    float64
}

// newSwatch begins with a foundation of n chains.
func newSwatch(t testing.TB, n int) *swatch {
	s := &swatch{t: t, lib: library(t), f: &fabric.Fabric{Yarns: []string{"A", "B"}}, kind: map[string]uint16{}}
	s.p = &layout.Plan{Fabric: s.f}
	s.row("foundation", 0)
	for x := range n {
		s.put("ch", float64(x), fabric.Chain)
	}
	return s
}

// row begins a row that stands on the last one; height is how far its tops stand above.
func (s *swatch) row(label string, height float64) *fabric.Row {
	n := int32(len(s.f.Stitches))
	s.y += height
	no := len(s.f.Rows)
	s.f.Rows = append(s.f.Rows, fabric.Row{Label: label, No: no, First: n, Last: n, WS: no%2 == 0, FromLeft: no%2 == 0, Turned: no > 1})
	return &s.f.Rows[no]
}

// put adds a stitch to the last row, standing on the given stitches.
func (s *swatch) put(name string, x float64, flags fabric.Flags, on ...int32) int32 {
	k, ok := s.lib.Kind(name)
	if !ok {
		s.t.Fatalf("no kind %q", name)
	}
	n, ok := s.kind[name]
	if !ok {
		n = uint16(len(s.f.Kinds))
		s.kind[name] = n
		s.f.Kinds = append(s.f.Kinds, k)
	}
	r := len(s.f.Rows) - 1
	id := int32(len(s.f.Stitches))
	st := fabric.Stitch{Base: uint32(len(s.f.Bases)), Unit: -1, Row: int32(r), Col: float32(x), Word: -1, Kind: n, Flags: flags, NBase: uint8(len(on)), Yarn: s.f.Rows[r].Yarn}
	p := layout.Pose{Top: geom.Point{X: x, Y: s.y}, Up: geom.Point{Y: 1}, FirstLeg: int32(len(s.p.Legs)), NLegs: int16(len(on)), Fan: -1, Placed: true, Host: -1}
	post := int8(k.Post)
	if s.f.Rows[r].WS {
		post = -post
	}
	for _, b := range on {
		s.f.Bases = append(s.f.Bases, fabric.Base{At: b, Down: 1})
		s.p.Legs = append(s.p.Legs, layout.Leg{Foot: s.p.Poses[b].Top, At: b, Post: post})
	}
	s.f.Stitches = append(s.f.Stitches, st)
	s.p.Poses = append(s.p.Poses, p)
	s.f.Rows[r].Last = id + 1
	return id
}

// hang makes a stitch one that takes no place of its own.
func (s *swatch) hang(id, host int32) {
	s.p.Poses[id].Placed, s.p.Poses[id].Host = false, host
}

// sampler is a small piece with one of everything that is engraved in its own way.
func sampler(t testing.TB) *swatch {
	s := newSwatch(t, 9)
	s.row("Row 1", 2.1)
	edge := s.put("ch", 8, fabric.TurningChain, 8)
	s.f.Stitches[edge].Chains = 3
	for x := 7; x >= 1; x-- {
		s.put("dc", float64(x), 0, int32(x))
	}
	last := s.put("dc", 0, 0, 0)
	s.row("Row 2", 1).Yarn = 1
	side := s.put("ch", 0, fabric.Chain|fabric.NoLanding)
	first := s.put("sc", 0, 0, last)
	s.hang(side, first)
	s.put("fpdc", 1, 0, 16)
	s.put("blsc", 2, 0, 15)
	s.put("sc2tog", 3.5, 0, 14, 13)
	s.put("5-dc bobble", 5, 0, 12)
	s.put("5-dc popcorn", 6, 0, 11)
	p := s.put("sc", 7, 0, 10)
	picot := s.put("picot", 7, fabric.Picot, p)
	s.f.Stitches[picot].Chains = 3
	s.hang(picot, p)
	s.put("sc", 8, 0, edge)
	s.f.Events = []fabric.Event{{Do: fabric.JoinYarn, Yarn: 1, Row: 2, Before: side}, {Do: fabric.Cut, Yarn: 1, Row: 2, Before: int32(len(s.f.Stitches))}}
	s.p.Repeat = layout.Bracket{On: true, From: 1.5, To: 5.5, Label: "4 sts"}
	return s
}
