package command

import (
	"flag"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"strandway/model"
)

// choice says of what a picture is made: which piece, for which size, in which
// colourway, and into which file.
type choice struct {
	out, piece, size, colourway string
}

// choose adds the options of a picture to a flag set. The forms are the endings its file may have.
func choose(flags *flag.FlagSet, forms ...string) *choice {
	c := choosePiece(flags, forms...)
	flags.StringVar(&c.colourway, "colourway", "", "in the colourway `NAME`; in the yarns' own colours without it")
	return c
}

// choosePiece adds those of a picture of every colourway.
func choosePiece(flags *flag.FlagSet, forms ...string) *choice {
	var c choice
	flags.StringVar(&c.out, "o", "", "write to `PATH`; its ending says the form: "+strings.Join(forms, ", "))
	flags.StringVar(&c.piece, "piece", "", "the piece `P`, by its name; the first without it")
	flags.StringVar(&c.size, "size", "", "work the size `NAME`; the first without it")
	return &c
}

// check refuses what can be refused before anything is read.
func (c *choice) check(forms ...string) error {
	if c.out == "" {
		return misused("say where to write it, with -o")
	}
	if ending := strings.ToLower(filepath.Ext(c.out)); !slices.Contains(forms, ending) {
		return misused("cannot tell the form of %s from its ending: one of %s", c.out, strings.Join(forms, ", "))
	}
	return nil
}

// work works the pattern and gives the index of the piece chosen. Where faults
// left it without a stitch, they are told.
func (c *choice) work(src *source, stderr io.Writer) (*model.Worked, int, error) {
	if _, known := src.pattern.Colourway(c.colourway); !known && c.colourway != "" {
		names := []string{}
		for _, way := range src.pattern.Colourways {
			names = append(names, way.Name)
		}
		return nil, 0, misused("there is no colourway %q; there is %s", c.colourway, strings.Join(names, ", "))
	}
	worked, err := src.work(c.size)
	if err != nil {
		return nil, 0, err
	}
	piece := 0
	if c.piece != "" {
		if piece, err = worked.PieceNamed(c.piece); err != nil {
			return nil, 0, wrongUse{err}
		}
	}
	if piece >= len(worked.Pieces) || len(worked.Pieces[piece].Fabric.Stitches) == 0 {
		if err := src.faults(stderr, worked); err != nil {
			return nil, 0, err
		}
		return nil, 0, fmt.Errorf("%s has no stitches to draw", src.path)
	}
	return worked, piece, nil
}

// title is what stands over or in a picture: the pattern's title, and the piece's name where there are several.
func title(worked *model.Worked, piece int) string {
	p := worked.Pattern
	switch name := worked.Pieces[piece].Piece.Name; {
	case len(p.Pieces) == 1 && p.Title != "":
		return p.Title
	case p.Title != "":
		return p.Title + ": " + name
	default:
		return name
	}
}
