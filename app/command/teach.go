package command

import (
	"context"
	"fmt"
	"image"
	"path/filepath"
	"strconv"
	"strings"

	"strandway/model"
	"strandway/model/steps"
	"strandway/render/cloth"
	"strandway/render/stage"
)

var teachCommand = command{
	name:    "teach",
	use:     "FILE -o DIR|X.gif [--piece P] [--rows 4-6] [--by stitch|row] [--size 1280x720] [--colourway NAME] [--seconds 2]",
	summary: "show how a piece is worked, step by step, as pictures or as a film",
	detail: "Each step shows its row with the word that is carried out, the stitch and its place on\n" +
		"chart and cloth, and what to do in plain words, in the colourway named Teaching or else\n" +
		"the one whose yarns are told apart best. A folder gets one PNG for each step.",
	run: runTeach,
}

func runTeach(c *call) error {
	flags := c.options()
	var choice choice
	flags.StringVar(&choice.out, "o", "", "write to `PATH`: a new folder for PNGs, or a file ending in .gif")
	flags.StringVar(&choice.piece, "piece", "", "the piece `P`, by its name; the first without it")
	flags.StringVar(&choice.colourway, "colourway", "", "in the colourway `NAME`; in the best for teaching without it")
	rows := flags.String("rows", "", "only these `ROWS`, by their numbers: 4, or 4-6; 0 is the foundation")
	by := steps.Stitch
	oneOf(flags, &by, "by", "what one `STEP` is: stitch or row", map[string]steps.By{"stitch": steps.Stitch, "row": steps.Row})
	size := flags.String("size", "1280x720", "the `PIXELS` of a picture, width by height")
	left := flags.Bool("left-handed", false, "mirrored, as a left-hander works it")
	seconds := flags.Float64("seconds", 2, "how long a film shows each step, in `SECONDS`")
	path, err := c.file()
	if err != nil {
		return err
	}
	film := stage.Film{Seconds: *seconds}
	ending := strings.ToLower(filepath.Ext(choice.out))
	switch {
	case choice.out == "":
		return misused("say where to write it, with -o")
	case ending != "" && ending != ".gif" && !strings.HasSuffix(choice.out, "/"):
		return misused("cannot tell the form of %s from its ending: a folder without an ending, or .gif", choice.out)
	}
	if film.Size, err = pixels(*size); err != nil {
		return err
	}
	src, worked, piece, err := c.worked(path, &choice)
	if err != nil {
		return err
	}
	s, err := staged(worked, piece, choice.colourway, by, *left)
	if err != nil {
		return err
	}
	if film.From, film.To, err = chosenRows(s.Steps, *rows); err != nil {
		return err
	}
	if ending == ".gif" {
		err = s.WriteGIF(context.Background(), choice.out, film)
	} else {
		err = s.WriteFrames(context.Background(), choice.out, film)
	}
	if err != nil {
		return err
	}
	return src.faults(c.stderr, worked)
}

// staged makes the stage of a piece.
func staged(worked *model.Worked, piece int, colourway string, by steps.By, leftHanded bool) (*stage.Stage, error) {
	lib, err := library()
	if err != nil {
		return nil, err
	}
	if colourway == "" {
		colourway = stage.Teaching(worked, piece)
	}
	o := stage.Options{
		Library: lib,
		Title:   title(worked, piece),
		Terms:   strings.ToLower(worked.Pattern.Terms),
		Yarns:   cloth.YarnsOf(worked, piece, colourway),
		By:      by,

		LeftHanded: leftHanded,
	}
	if g := worked.Pattern.Gauge; g.Stitches > 0 {
		o.StitchMM = g.OverCM * 10 / g.Stitches
	}
	return stage.New(&worked.Pieces[piece], o), nil
}

// pixels reads a size as 1280x720.
func pixels(s string) (image.Point, error) {
	width, height, _ := strings.Cut(strings.ToLower(s), "x")
	x, err := strconv.Atoi(width)
	y, err2 := strconv.Atoi(height)
	if err != nil || err2 != nil {
		return image.Point{}, misused("--size must be width by height in pixels, as 1280x720, not %s", s)
	}
	return image.Pt(x, y), nil
}

// chosenRows gives the steps of the rows asked for, all without any.
func chosenRows(s *steps.Steps, rows string) (from, to int, err error) {
	if rows == "" {
		return 0, s.Len(), nil
	}
	low, high, ranged := strings.Cut(rows, "-")
	first, err := strconv.Atoi(low)
	last := first
	if err == nil && ranged {
		last, err = strconv.Atoi(high)
	}
	if err != nil || last < first {
		return 0, 0, misused("--rows must be a row's number or two, as 4 or 4-6, not %s", rows)
	}
	from, to, found := s.Rows(first, last)
	if !found {
		return 0, 0, fmt.Errorf("there is no row %s in the piece", rows)
	}
	return from, to, nil
}
