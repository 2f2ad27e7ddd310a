package display

import "strandway/chart/geom"

// Move shifts everything drawn, in mm.
func (l *List) Move(dx, dy float64) {
	by := geom.Translate(dx, dy)
	for i, item := range l.Items {
		switch t := item.(type) {
		case Path:
			t.Path = t.Path.Transform(by)
			l.Items[i] = t
		case Use:
			t.At.E += dx
			t.At.F += dy
			l.Items[i] = t
		case Text:
			t.X += dx
			t.Y += dy
			l.Items[i] = t
		case Picture:
			t.X += dx
			t.Y += dy
			l.Items[i] = t
		}
	}
}
