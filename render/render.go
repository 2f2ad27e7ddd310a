// Package render writes display lists to files: the extension says whether as
// PNG, SVG or PDF.
package render

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"strandway/chart/display"
	"strandway/render/pdf"
	"strandway/render/raster"
	"strandway/render/sheet"
	"strandway/render/svg"
)

// Options say how a list is written; each format takes what concerns it.
type Options struct {
	DPI         float64     // PNG: pixels per inch; 0 is 300
	Transparent bool        // leave the page's background out
	Grey        bool        // PNG: shades of grey
	TextAsText  bool        // SVG: text that can be searched and changed, in a font that the reader may lack
	Paper       sheet.Paper // the sheets to print on; as large as the chart if none is named
}

// Write writes a list to a file, whole or not at all. Where it takes several
// sheets of paper, a PDF holds them all; of a picture each is a file of its own,
// with its number before the ending: chart-1.svg, chart-2.svg.
func Write(path string, l *display.List, o Options) error {
	if ext := filepath.Ext(path); o.Paper != sheet.AsDrawn && !strings.EqualFold(ext, ".pdf") {
		sheets := sheet.Spread(l, o.Paper)
		for i, s := range sheets {
			name := path
			if len(sheets) > 1 {
				name = fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ext), i+1, ext)
			}
			if err := WritePages(name, []*display.List{s.Page(l)}, o); err != nil {
				return err
			}
		}
		return nil
	}
	return WritePages(path, []*display.List{l}, o)
}

// WritePages writes several lists to a file: a PDF has a page for each, a
// picture holds only one.
func WritePages(path string, pages []*display.List, o Options) error {
	write, err := writer(path, pages, o)
	if err != nil {
		return err
	}
	return WriteFile(path, write)
}

func writer(path string, pages []*display.List, o Options) (func(io.Writer) error, error) {
	ext := strings.ToLower(filepath.Ext(path))
	switch ext {
	case ".png", ".svg":
		if len(pages) != 1 {
			return nil, fmt.Errorf("cannot write %d pages to %s: a picture holds one page, a .pdf holds them all", len(pages), path)
		}
	case ".pdf":
		if len(pages) == 0 {
			return nil, fmt.Errorf("cannot write %s: there is no page to write", path)
		}
	case "":
		return nil, fmt.Errorf("cannot tell what kind of file %s is to be: end its name in .png, .svg or .pdf", path)
	default:
		return nil, fmt.Errorf("cannot write %s: charts are written as .png, .svg or .pdf, not as %s", path, ext)
	}
	return func(w io.Writer) error {
		switch ext {
		case ".png":
			return raster.WritePNG(w, pages[0], raster.Options{DPI: o.DPI, Transparent: o.Transparent, Grey: o.Grey})
		case ".svg":
			return svg.Write(w, pages[0], svg.Options{TextAsText: o.TextAsText, Transparent: o.Transparent})
		default:
			return pdf.Write(w, pages, pdf.Options{Paper: o.Paper, Transparent: o.Transparent})
		}
	}, nil
}
