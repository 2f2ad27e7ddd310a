package display

import (
	"math"

	"strandway/chart/geom"
)

// Reach is how far from its ink a stitch still counts as pointed at by [List.Hit], in mm:
// symbols are thin lines, and the hollow of a chain's oval belongs to the chain.
const Reach = 1.5

// hitTolerance is how far the straight lines used for distances may stray from curves, in mm.
const hitTolerance = .02

// Hit is the stitch at a point of the page, in mm: see [List.Nearest].
func (l *List) Hit(x, y float64) (stitch int32, ok bool) { return l.Nearest(x, y, Reach) }

// Nearest is the stitch whose ink lies nearest to a point, no farther than reach;
// of several under the point the one drawn last. Items outside any stitch's group are passed over.
func (l *List) Nearest(x, y, reach float64) (stitch int32, ok bool) {
	p := geom.Point{X: x, Y: y}
	around := geom.Box{Min: p, Max: p}.Grow(reach)
	boxes := make([]geom.Box, len(l.Symbols))
	for i := range boxes {
		boxes[i] = geom.Empty()
		for _, path := range l.Symbols[i].Paths {
			boxes[i] = boxes[i].Union(path.box(geom.Identity))
		}
	}
	nearest := reach
	groups := []int32{-1} // the stitch of every open group, outermost first
	for _, item := range l.Items {
		inside := groups[len(groups)-1]
		switch item := item.(type) {
		case Begin:
			if item.Stitch >= 0 {
				inside = item.Stitch
			}
			groups = append(groups, inside)
			continue
		case End:
			if len(groups) > 1 {
				groups = groups[:len(groups)-1]
			}
			continue
		case Use:
			if item.Symbol < 0 || item.Symbol >= len(boxes) || !item.At.ApplyBox(boxes[item.Symbol]).Overlaps(around) {
				continue
			}
		case Path:
			if !item.Path.Box().Grow(item.Width / 2).Overlaps(around) {
				continue
			}
		}
		if inside < 0 {
			continue
		}
		if d := l.distance(item, p); d <= nearest {
			nearest, stitch, ok = d, inside, true
		}
	}
	return stitch, ok
}

// distance is how far p lies from an item's ink, 0 on it or inside a filled shape.
func (l *List) distance(item Item, p geom.Point) float64 {
	switch item := item.(type) {
	case Path:
		return item.distance(geom.Identity, p)
	case Use:
		d := math.Inf(1)
		for _, path := range l.symbol(item).Paths {
			d = min(d, path.distance(item.At, p))
		}
		return d
	case Text:
		place := item.Place()
		// the line's own frame: a turn and a shift, so that distances stay
		q := p.Sub(geom.Point{X: place.E, Y: place.F}).Rotate(-item.Angle)
		return distanceToBox(item.box(), q)
	case Picture:
		return distanceToBox(l.inkBox(item), p)
	}
	return math.Inf(1)
}

func (path Path) distance(m geom.Matrix, p geom.Point) float64 {
	nearest, winding := math.Inf(1), 0
	runs := path.Path.Transform(m).Flatten(hitTolerance)
	for _, run := range runs {
		for i, a := range run.Points {
			last := i == len(run.Points)-1
			b := run.Points[(i+1)%len(run.Points)]
			if !last || run.Closed || len(run.Points) == 1 {
				nearest = min(nearest, distanceToLine(a, b, p))
			}
			winding += crossing(a, b, p)
		}
	}
	if path.Fill.On && winding != 0 {
		return 0
	}
	if path.Stroke.On {
		pen := math.Sqrt(math.Abs(m.A*m.D-m.B*m.C)) * path.Width / 2
		nearest = max(0, nearest-pen)
	}
	return nearest
}

// crossing counts the line from a to b as it passes the ray from p to the right: 1 down, -1 up.
func crossing(a, b, p geom.Point) int {
	if (a.Y <= p.Y) == (b.Y <= p.Y) {
		return 0
	}
	if a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) <= p.X {
		return 0
	}
	if b.Y > a.Y {
		return 1
	}
	return -1
}

func distanceToLine(a, b, p geom.Point) float64 {
	ab := b.Sub(a)
	t := 0.0
	if l := ab.Dot(ab); l > 0 {
		t = min(max(p.Sub(a).Dot(ab)/l, 0), 1)
	}
	return p.Sub(a.Lerp(b, t)).Len()
}

func distanceToBox(b geom.Box, p geom.Point) float64 {
	if b.IsEmpty() {
		return math.Inf(1)
	}
	return math.Hypot(max(b.Min.X-p.X, 0, p.X-b.Max.X), max(b.Min.Y-p.Y, 0, p.Y-b.Max.Y))
}
