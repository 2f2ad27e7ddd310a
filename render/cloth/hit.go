package cloth

import (
	"context"
	"math"

	"strandway/chart/geom"
)

// hitScale is how finely stitches are told apart, samples per w.
const hitScale = 16

// Hit finds the stitch whose yarn is seen at p, w; ok is false in a hole and
// beside the cloth.
func (c *Cloth) Hit(p geom.Point) (stitch int32, ok bool) {
	var near []int
	var keys []key
	for i := range c.instances {
		if in := &c.instances[i]; c.reach(in).Contains(p) {
			near = append(near, i)
			keys = append(keys, c.keys[in.key])
		}
	}
	sprites, err := c.sprites.get(context.Background(), keys, hitScale)
	if err != nil {
		return -1, false
	}
	top := math.MinInt
	for n, i := range near {
		in, s := &c.instances[i], sprites[n]
		x := int(math.Floor((p.X-float64(in.x))*hitScale)) + s.ox
		y := int(math.Floor((float64(in.y)-p.Y)*hitScale)) + s.oy
		if x < 0 || y < 0 || x >= s.w || y >= s.h {
			continue
		}
		t := s.texels[y*s.w+x]
		if z := int(t.z) + int(in.z); t.z != hole && z > top {
			top, stitch, ok = z, in.stitch, true
		}
	}
	if !ok {
		return -1, false
	}
	return stitch, true
}

// Bounds is the box of a stitch's yarn, w; empty when it shows none.
func (c *Cloth) Bounds(stitch int32) geom.Box {
	if boxes := c.bounds(); stitch >= 0 && int(stitch) < len(boxes) {
		return boxes[stitch]
	}
	return geom.Empty()
}

// boxes are the bounds of all stitches.
func (c *Cloth) boxes() []geom.Box {
	boxes := make([]geom.Box, len(c.fabric.Stitches))
	for i := range boxes {
		boxes[i] = geom.Empty()
	}
	for i := range c.instances {
		in := &c.instances[i]
		boxes[in.stitch] = boxes[in.stitch].Union(c.reach(in).Grow(-.6))
	}
	return boxes
}
