package layout

import (
	"flag"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/fogleman/gg"

	"strandway/model/fabric"
)

var pictures = flag.String("pictures", "", "draw the plan of every swatch into this directory")

// TestPictures draws plans with bare lines, to be looked at.
func TestPictures(t *testing.T) {
	if *pictures == "" {
		t.Skip("no -pictures directory")
	}
	for _, s := range swatches {
		f := swatchOf(t, s.rows, 3)
		name := strings.ReplaceAll(s.name, " ", "-")
		sketch(t, Arrange(f, Drawn()), filepath.Join(*pictures, name+".png"))
		sketch(t, Arrange(f, Measured()), filepath.Join(*pictures, name+"-cloth.png"))
	}
}

const pixels = 30 // per u

func sketch(t *testing.T, p *Plan, path string) {
	t.Helper()
	box := p.Box.Grow(1)
	c := gg.NewContext(int(box.Width()*pixels), int(box.Height()*pixels))
	c.SetRGB(1, 1, 1)
	c.Clear()
	c.Scale(pixels, -pixels)
	c.Translate(-box.Min.X, -box.Max.Y)
	c.SetLineWidth(2.4)
	for id := range p.Poses {
		q := &p.Poses[id]
		s := &p.Fabric.Stitches[id]
		c.SetRGB(0, 0, 0)
		if s.Row%2 == 0 {
			c.SetRGB(.7, .1, .1)
		}
		if !q.Placed {
			if q.Host >= 0 {
				c.SetRGB(.1, .3, .9)
				c.DrawCircle(q.Top.X, q.Top.Y, .12)
				c.Fill()
			}
			continue
		}
		if s.Has(fabric.Chain) && !s.Has(fabric.TurningChain) {
			c.Push()
			c.RotateAbout(math.Atan2(q.Up.Y, q.Up.X)-math.Pi/2, q.Top.X, q.Top.Y)
			c.DrawEllipse(q.Top.X, q.Top.Y, .35, .18)
			c.Stroke()
			c.Pop()
			continue
		}
		for _, l := range p.LegsOf(int32(id)) {
			up := q.Top.Sub(l.Foot).Unit()
			gap := .2
			if l.At < 0 && p.RingR > 0 {
				gap = p.RingR
			}
			foot := l.Foot.Add(up.Mul(gap))
			c.DrawLine(foot.X, foot.Y, q.Top.X, q.Top.Y)
			if l.Post != 0 {
				c.DrawCircle(foot.X+.15*float64(l.Post), foot.Y, .15)
			}
		}
		if s.Has(fabric.TurningChain) {
			c.SetDash(4, 5)
		}
		c.Stroke()
		c.SetDash()
		a := q.Up.Perp().Mul(.31)
		c.DrawLine(q.Top.X-a.X, q.Top.Y-a.Y, q.Top.X+a.X, q.Top.Y+a.Y)
		c.Stroke()
	}
	if b := p.Repeat; b.On {
		c.SetRGB(.2, .6, .2)
		c.DrawLine(b.From, box.Min.Y+.6, b.To, box.Min.Y+.6)
		c.Stroke()
	}
	if err := c.SavePNG(path); err != nil {
		t.Fatal(err)
	}
}
