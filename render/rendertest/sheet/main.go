// Sheet draws the cloth of every sample and classic on contact sheets, to be
// looked at: each picture on the shade card's paper with its name below.
//
//	go run ./render/rendertest/sheet -o out/cloth [FILE.strand ...]
//
// writes out/cloth-1.png, out/cloth-2.png ... from the repository's root.
package main

import (
	"context"
	"flag"
	"fmt"
	"image"
	"image/color"
	"log"
	"os"
	"path/filepath"
	"strings"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/truetype"
	"golang.org/x/image/draw"

	"strandway/assets"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/render/cloth"
)

// Where the samples and the classics are.
var everything = []string{"samples/*.strand", "chart/meter/testdata/classics/*.strand"}

const (
	side   = 460 // pixels of one picture
	label  = 24
	gap    = 10
	across = 4
	down   = 3
)

func main() {
	log.SetFlags(0)
	out := flag.String("o", "out/cloth", "write to `PATH`-1.png, PATH-2.png ...")
	face := flag.String("face", "rs", "the `SIDE` to show: rs or ws")
	finest := flag.Float64("scale", 34, "at most so many `PIXELS` a stitch")
	flag.Parse()
	files := flag.Args()
	if len(files) == 0 {
		for _, pattern := range everything {
			found, err := filepath.Glob(pattern)
			if err != nil {
				log.Fatal(err)
			}
			files = append(files, found...)
		}
	}
	if err := run(*out, files, cloth.Options{Face: map[bool]cloth.Face{true: cloth.WS}[*face == "ws"]}, *finest); err != nil {
		log.Fatal(err)
	}
}

func run(out string, files []string, o cloth.Options, finest float64) error {
	lib, err := stitch.Standard()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(out), 0o755); err != nil {
		return err
	}
	o.Sprites = cloth.NewSprites(0)
	for page := 0; page*across*down < len(files); page++ {
		s, err := newSheet()
		if err != nil {
			return err
		}
		for i, file := range files[page*across*down : min(len(files), (page+1)*across*down)] {
			picture, err := drawFile(lib, file, o, finest)
			if err != nil {
				return fmt.Errorf("%s: %w", file, err)
			}
			s.put(i, picture, strings.TrimSuffix(filepath.Base(file), ".strand"))
		}
		if err := s.SavePNG(fmt.Sprintf("%s-%d.png", out, page+1)); err != nil {
			return err
		}
	}
	return nil
}

// drawFile draws the first piece of a pattern; nil when it has no stitches.
func drawFile(lib *stitch.Library, file string, o cloth.Options, finest float64) (image.Image, error) {
	p, err := pattern.Load(file)
	if err != nil {
		return nil, err
	}
	worked := model.Work(lib, p, 0)
	if len(worked.Pieces) == 0 || len(worked.Pieces[0].Fabric.Stitches) == 0 {
		return nil, nil
	}
	yarns := cloth.YarnsOf(worked, 0, "")
	plan := layout.Arrange(worked.Pieces[0].Fabric, layout.Measured())
	fit := cloth.OptionsOf(worked, 0, plan)
	fit.Face, fit.Sprites = o.Face, o.Sprites
	made := cloth.Make(plan, yarns, fit)
	box := made.Box().Grow(.9)
	scale := min(finest, side/box.Width(), side/box.Height())
	if larger := side / finest; box.Width() > 1.6*larger || box.Height() > 1.6*larger {
		// Of a large piece its lower corner is shown, where its stitches can be told apart.
		scale = finest * .62
		box.Max.X = min(box.Max.X, box.Min.X+side/scale)
		box.Min.Y = max(box.Min.Y, box.Max.Y-side/scale)
	}
	return made.Paint(context.Background(), cloth.View{Box: geom.Box{Min: box.Min, Max: box.Max}, PixelsPerW: scale}, yarns, cloth.Background{})
}

// sheet is one page of pictures.
type sheet struct{ *gg.Context }

func newSheet() (*sheet, error) {
	s := &sheet{gg.NewContext(across*(side+gap)+gap, down*(side+label+gap)+gap)}
	s.SetColor(color.White)
	s.Clear()
	data, err := assets.Font("NotoSans-Regular")
	if err != nil {
		return nil, err
	}
	face, err := truetype.Parse(data)
	if err != nil {
		return nil, err
	}
	s.SetFontFace(truetype.NewFace(face, &truetype.Options{Size: 16}))
	return s, nil
}

// put puts a picture on place i of the sheet; a missing one leaves its name alone.
func (s *sheet) put(i int, picture image.Image, name string) {
	x, y := gap+i%across*(side+gap), gap+i/across*(side+label+gap)
	if picture != nil {
		b := picture.Bounds()
		at := image.Pt(x+(side-b.Dx())/2, y+(side-b.Dy())/2)
		draw.Draw(s.Image().(draw.Image), b.Add(at.Sub(b.Min)), picture, b.Min, draw.Src)
	}
	s.SetColor(color.Black)
	s.DrawString(name, float64(x), float64(y+side+17))
}
