package app

import (
	"errors"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"strandway/model/pattern"
	"strandway/model/tapestry"
)

var pictureEnds = []string{".png", ".jpg", ".jpeg"}

const pictureYarns = 4 // that are found in a picture; colours can be joined afterwards

// askPicture asks for a picture and how wide it is to be, and begins a piece with its rows.
func (w *window) askPicture() {
	w.ifSettled(func() {
		w.askFile("Rows from a picture", "Open", "", false, pictureEnds, func(path string) {
			w.ask("How many stitches wide?", "80", "Make rows", func(text string) {
				stitches, err := strconv.Atoi(strings.TrimSpace(text))
				if err != nil {
					w.say("A number of stitches, as in 80.")
					return
				}
				p, err := w.pictured(path, stitches)
				if err != nil {
					w.say("Cannot make rows of " + filepath.Base(path) + ": " + err.Error() + ".")
					return
				}
				w.beginWith(p)
				w.pair.ShowCells(true)
			})
		})
	})
}

// pictured is a pattern that works a picture, so many stitches wide.
func (w *window) pictured(path string, stitches int) (*pattern.Pattern, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, errors.Unwrap(err)
	}
	defer f.Close()
	img, err := tapestry.Read(f)
	if err != nil {
		return nil, err
	}
	grid, colours, err := tapestry.Import(img, tapestry.Options{Stitches: stitches, Aspect: tapestry.Aspect(tapestry.UsualGauge), New: pictureYarns})
	if err != nil {
		return nil, err
	}
	title := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	return grid.Pattern(w.lib, title, "US", tapestry.UsualGauge, colours), nil
}
