package symbol

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"strandway/chart/geom"
)

// ParsePath reads a path written as M, L, C and Z with absolute points.
func ParsePath(text string) (geom.Path, error) {
	var p geom.Path
	words := strings.Fields(text)
	for i := 0; i < len(words); {
		verb := words[i]
		want, ok := map[string]int{"M": 1, "L": 1, "C": 3, "Z": 0}[verb]
		if !ok {
			return p, fmt.Errorf("path %q: %q is not M, L, C or Z", text, verb)
		}
		if len(words) < i+1+2*want {
			return p, fmt.Errorf("path %q ends within %s", text, verb)
		}
		var at [3]geom.Point
		for k := range want {
			x, errX := strconv.ParseFloat(words[i+1+2*k], 64)
			y, errY := strconv.ParseFloat(words[i+2+2*k], 64)
			if errX != nil || errY != nil {
				return p, fmt.Errorf("path %q: a point of %s is not two numbers", text, verb)
			}
			at[k] = geom.Point{X: x, Y: y}
		}
		switch verb {
		case "M":
			p.MoveTo(at[0])
		case "L":
			p.LineTo(at[0])
		case "C":
			p.CubicTo(at[0], at[1], at[2])
		case "Z":
			p.Close()
		}
		i += 1 + 2*want
	}
	if len(p.Verbs) == 0 || p.Verbs[0] != geom.Move {
		return p, fmt.Errorf("path %q does not begin with M", text)
	}
	return p, nil
}

// kappa is how far a cubic's handles reach to draw a quarter of a circle of radius 1.
const kappa = 0.5522847498

// ellipse is a closed ellipse from centre x and y, the two radii and, if there is a fifth number, a turn in degrees.
func ellipse(v []float64) (geom.Path, error) {
	var p geom.Path
	if len(v) != 4 && len(v) != 5 {
		return p, fmt.Errorf("an ellipse is 4 or 5 numbers: centre x, y, radii x, y, turn in degrees")
	}
	turn := 0.0
	if len(v) == 5 {
		turn = v[4] * math.Pi / 180
	}
	m := geom.Scale(v[2], v[3]).Then(geom.Rotate(turn)).Then(geom.Translate(v[0], v[1]))
	return circle().Transform(m), nil
}

// circle is a circle of radius 1 about the origin.
func circle() geom.Path {
	var p geom.Path
	p.MoveTo(geom.Point{X: 1})
	for _, q := range [][3]geom.Point{
		{{X: 1, Y: kappa}, {X: kappa, Y: 1}, {Y: 1}},
		{{X: -kappa, Y: 1}, {X: -1, Y: kappa}, {X: -1}},
		{{X: -1, Y: -kappa}, {X: -kappa, Y: -1}, {Y: -1}},
		{{X: kappa, Y: -1}, {X: 1, Y: -kappa}, {X: 1}},
	} {
		p.CubicTo(q[0], q[1], q[2])
	}
	p.Close()
	return p
}
