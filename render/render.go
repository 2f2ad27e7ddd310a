// Package render writes display lists to files: the extension says whether as
// PNG, SVG or PDF.
package render

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"strandway/chart/display"
	"strandway/render/raster"
	"strandway/render/svg"
)

// Options say how a list is written; each format takes what concerns it.
type Options struct {
	DPI         float64 // PNG: pixels per inch; 0 is 300
	Transparent bool    // PNG, SVG: leave the page's background out
	Grey        bool    // PNG: shades of grey
	TextAsText  bool    // SVG: text that can be searched and changed, in a font that the reader may lack
}

// Write writes a list to a file, whole or not at all.
func Write(path string, l *display.List, o Options) error {
	write, err := writer(path, l, o)
	if err != nil {
		return err
	}
	return WriteFile(path, write)
}

func writer(path string, l *display.List, o Options) (func(io.Writer) error, error) {
	switch ext := strings.ToLower(filepath.Ext(path)); ext {
	case ".png":
		return func(w io.Writer) error {
			return raster.WritePNG(w, l, raster.Options{DPI: o.DPI, Transparent: o.Transparent, Grey: o.Grey})
		}, nil
	case ".svg":
		return func(w io.Writer) error {
			return svg.Write(w, l, svg.Options{TextAsText: o.TextAsText, Transparent: o.Transparent})
		}, nil
	case "":
		return nil, fmt.Errorf("cannot tell what kind of picture %s is to be: end its name in .png, .svg or .pdf", path)
	default:
		return nil, fmt.Errorf("cannot write %s: pictures are written as .png, .svg or .pdf, not as %s", path, ext)
	}
}
