package render

import (
	"image/color"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/render/rendertest"
)

// largeSheet is an A3 page of 5,000 symbols and 200 numbers.
func largeSheet() *display.List {
	l := rendertest.Page()
	l.Width, l.Height, l.Items = 420, 297, nil
	random := rand.New(rand.NewPCG(1, 2))
	for i := range 5000 {
		at := geom.Rotate(random.Float64() * 2 * math.Pi).Then(geom.Translate(5+float64(i%84)*4.9, 5+float64(i/84)*4.8))
		l.Items = append(l.Items, display.Use{Symbol: i % 2, At: at, Ink: color.NRGBA{R: uint8(i / 84), A: 255}})
	}
	for i := range 200 {
		l.Items = append(l.Items, display.Text{X: float64(i%20) * 21, Y: 10 + float64(i/20)*28, Size: 3, Text: "12", Fill: color.NRGBA{A: 255}})
	}
	return l
}

// BenchmarkSheet writes a sheet in each format, PNG at 300 dpi, and for
// comparison has rsvg-convert make the same PNG from the SVG.
func BenchmarkSheet(b *testing.B) {
	l, dir := largeSheet(), b.TempDir()
	for _, name := range []string{"sheet.png", "sheet.svg", "sheet.pdf"} {
		path := filepath.Join(dir, name)
		b.Run(name[6:], func(b *testing.B) {
			for b.Loop() {
				if err := Write(path, l, Options{}); err != nil {
					b.Fatal(err)
				}
			}
			if info, err := os.Stat(path); err == nil {
				b.ReportMetric(float64(info.Size())/1e6, "MB")
			}
		})
	}
	b.Run("rsvg-convert", func(b *testing.B) {
		for b.Loop() {
			c := exec.Command("rsvg-convert", "-d", "300", "-p", "300", "-o", filepath.Join(dir, "other.png"), filepath.Join(dir, "sheet.svg"))
			if out, err := c.CombinedOutput(); err != nil {
				b.Skipf("%v: %s", err, out)
			}
		}
	})
}
