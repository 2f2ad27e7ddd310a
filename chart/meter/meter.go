// Package meter measures a drawn chart as an editor of pattern books would
// look at it: does ink of two stitches touch, are ovals squeezed, do labels
// stand on stitches, are like stitches spaced alike.
//
// What is meant to touch is not counted: a long stitch over what it passes,
// crossed stitches, the hook of a post stitch round its post, stitches that
// share a place at their common foot. Everything is judged in u, one stitch width.
package meter

import (
	"fmt"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
)

// Limits of what reads as clean in print, in u.
const (
	leastGap    = .03  // of white between the ink of two stitches
	leastLength = .45  // of an oval, its line included
	leastShape  = 1.25 // of an oval, length by width
	mostUneven  = 1.5  // the wider by the narrower of two neighbouring distances
)

// Kind is a kind of fault.
type Kind uint8

const (
	Touching Kind = iota // two stitches stand closer than the eye parts them
	Crossing             // their lines cross
	Squeezed             // a chain is too short or too round to read as an oval
	OnInk                // a label or mark stands on ink
	Uneven               // of like neighbours in a row, two stand closer than the next two
)

var words = [...]string{"touching", "crossing", "squeezed", "label on ink", "uneven"}

func (k Kind) String() string { return words[k] }

// Fault is one thing that an editor would send back.
type Fault struct {
	Kind Kind
	A, B int32      // the stitches; -1 for what is no stitch
	At   geom.Point // on the page, mm
	Size float64    // Touching: the gap in u; Squeezed: length in u; Uneven: the ratio
	Text string     // OnInk: the label
}

func (f Fault) String() string {
	at := fmt.Sprintf("at %.1f, %.1f mm", f.At.X, f.At.Y)
	switch f.Kind {
	case Squeezed:
		return fmt.Sprintf("squeezed oval of stitch %d, %.2f u long, %s", f.A, f.Size, at)
	case OnInk:
		return fmt.Sprintf("label %q on ink %s", f.Text, at)
	case Uneven:
		return fmt.Sprintf("stitches %d and %d spaced %.2f : 1 beside the next, %s", f.A, f.B, f.Size, at)
	}
	return fmt.Sprintf("stitches %d and %d %v, gap %.3f u, %s", f.A, f.B, f.Kind, f.Size, at)
}

// Report is all faults of a chart.
type Report []Fault

// Count is the number of faults of a kind.
func (r Report) Count(k Kind) (n int) {
	for _, f := range r {
		if f.Kind == k {
			n++
		}
	}
	return n
}

// String is one line: "0 touching, 0 crossing, ...".
func (r Report) String() string {
	parts := make([]string, len(words))
	for k := range words {
		parts[k] = fmt.Sprintf("%d %v", r.Count(Kind(k)), Kind(k))
	}
	return strings.Join(parts, ", ")
}

// Measure measures the chart of a plan. unit is the mm of one stitch width;
// leftHanded says that the chart is mirrored.
func Measure(p *layout.Plan, l *display.List, unit float64, leftHanded bool) Report {
	m := &measure{plan: p, unit: unit, origin: l.Origin, mirror: leftHanded}
	m.gather(l)
	m.contacts()
	m.labels()
	m.spacing()
	return m.report
}

// measure is one measuring under way.
type measure struct {
	plan   *layout.Plan
	unit   float64
	origin geom.Point // of the plan on the page, mm
	mirror bool
	strips []strip
	texts  []label
	report Report
}

func (m *measure) fault(f Fault) { m.report = append(m.report, f) }
