package rows

import "strandway/chart/geom"

// arcReach is how far along its tangent the control point of a quarter circle stands, radius 1.
const arcReach = .5523

// rounded is a line through corners that are rounded off.
func rounded(corners []geom.Point, radius float64) geom.Path {
	var path geom.Path
	path.MoveTo(corners[0])
	for i := 1; i+1 < len(corners); i++ {
		a, b, c := corners[i-1], corners[i], corners[i+1]
		in, out := b.Sub(a), c.Sub(b)
		r := min(radius, in.Len()/2, out.Len()/2)
		if r < .1 || in.Unit().Cross(out.Unit()) == 0 {
			path.LineTo(b)
			continue
		}
		in, out = in.Unit(), out.Unit()
		start, end := b.Sub(in.Mul(r)), b.Add(out.Mul(r))
		path.LineTo(start)
		path.CubicTo(start.Add(in.Mul(r*arcReach)), end.Sub(out.Mul(r*arcReach)), end)
	}
	path.LineTo(corners[len(corners)-1])
	return path
}

// roundedBox is a closed box with rounded corners.
func roundedBox(b geom.Box, radius float64) geom.Path {
	mid := geom.Point{X: (b.Min.X + b.Max.X) / 2, Y: b.Min.Y}
	path := rounded([]geom.Point{mid, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}, b.Min, mid}, radius)
	path.Close()
	return path
}
