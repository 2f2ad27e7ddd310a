package command

import (
	"strings"

	"strandway/chart"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/render"
)

var chartForms = []string{".svg", ".png", ".pdf"}

// Resolutions that print or screen can have any use for, in dots an inch.
const (
	leastDPI = 10
	mostDPI  = 2400
)

var chartCommand = command{
	name:    "chart",
	use:     "FILE -o X.svg|X.png|X.pdf [--piece P] [--repeats N] [--dpi D] [--terms T] [--size NAME] [--colourway NAME]",
	summary: "draw the symbol chart of a piece, with its key",
	run:     runChart,
}

func runChart(c *call) error {
	flags := c.options()
	choice := choose(flags, chartForms...)
	repeats := flags.Int("repeats", 0, "work `N` stitch repeats across; as many as the size has without it")
	dpi := flags.Float64("dpi", 200, "resolution of a PNG, `D` dots an inch")
	asked := flags.String("terms", "", "the `TERMS` of the key: "+strings.Join(terms, ", ")+"; the pattern's own without it")
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := choice.check(chartForms...); err != nil {
		return err
	}
	if *dpi < leastDPI || *dpi > mostDPI {
		return misused("--dpi must be from %d to %d", leastDPI, mostDPI)
	}
	if *repeats < 1 && given(flags, "repeats") {
		return misused("--repeats must be 1 or more")
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	words, err := checkTerms(*asked, src.pattern.Terms)
	if err != nil {
		return err
	}
	lib, err := library()
	if err != nil {
		return err
	}
	worked, piece, err := choice.work(src, c.stderr)
	if err != nil {
		return err
	}
	if *repeats > 0 {
		p, err := model.WithRepeats(lib, src.pattern, worked.Size, piece, *repeats)
		if err != nil {
			return misused("--repeats: %v", err)
		}
		worked = model.Work(lib, p, worked.Size)
	}
	list := chart.Draw(layout.Arrange(worked.Pieces[piece].Fabric, layout.Drawn()), chart.Options{
		Library: lib,
		Terms:   words,
		Inks:    worked.YarnColours(piece, choice.colourway),
		Title:   title(worked, piece),
		Key:     true,
	})
	if err := render.Write(choice.out, list, render.Options{DPI: *dpi}); err != nil {
		return err
	}
	return src.findings(c.stderr, worked, faults(worked.Findings))
}
