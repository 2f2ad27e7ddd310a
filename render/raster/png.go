package raster

import (
	"image"
	"io"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/png"
)

// WritePNG writes a list as a PNG of its size in millimetres, painted as it is
// written: a large page takes no more memory than a few of its bands.
func WritePNG(w io.Writer, l *display.List, o Options) error {
	size := Size(l, o)
	form := png.RGB
	clear := o.Transparent || l.Background.A < 255
	switch {
	case o.Grey && clear:
		form = png.GreyAlpha
	case o.Grey:
		form = png.Grey
	case clear:
		form = png.RGBA
	}
	k := o.dpi() / mmPerInch
	s := newScene(l, geom.Scale(k, k), image.Rectangle{Max: size}, !o.Transparent, nil)
	words := map[string]string{"Title": l.Title, "Description": l.Desc, "Software": "Strandway"}
	return png.Stream(w, size, form, png.Options{DPI: o.dpi(), Text: words}, s.paint)
}
