package raster

import (
	"image"

	"golang.org/x/image/draw"
)

// picture is a raster image, made small enough beforehand that taking the
// nearest four of its pixels for each pixel painted passes none over.
type picture struct{ image image.Image }

func newPicture(m image.Image, size image.Point) *picture {
	for m.Bounds().Dx() >= 2*size.X && m.Bounds().Dy() >= 2*size.Y && m.Bounds().Dx() > 1 && m.Bounds().Dy() > 1 {
		m = halved(m)
	}
	return &picture{m}
}

// paint paints the picture's part of dst; at is where the whole picture goes.
func (p *picture) paint(dst *image.RGBA, at image.Rectangle) {
	draw.ApproxBiLinear.Scale(dst, at, p.image, p.image.Bounds(), draw.Over, nil)
}

// halved is a picture of half the width and height, each pixel the mean of four.
func halved(m image.Image) *image.RGBA {
	src, ok := m.(*image.RGBA)
	if !ok {
		src = image.NewRGBA(image.Rectangle{Max: m.Bounds().Size()})
		draw.Draw(src, src.Rect, m, m.Bounds().Min, draw.Src)
	}
	half := image.NewRGBA(image.Rect(0, 0, src.Rect.Dx()/2, src.Rect.Dy()/2))
	for y := range half.Rect.Dy() {
		upper, lower := src.Pix[2*y*src.Stride:], src.Pix[(2*y+1)*src.Stride:]
		row := half.Pix[y*half.Stride:]
		for i := range 4 * half.Rect.Dx() {
			j := i/4*8 + i%4
			row[i] = uint8((int(upper[j]) + int(upper[j+4]) + int(lower[j]) + int(lower[j+4]) + 2) / 4)
		}
	}
	return half
}
