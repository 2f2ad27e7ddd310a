package command

import (
	"fmt"

	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/layout"
	"strandway/chart/meter"
	"strandway/model"
	"strandway/render"
)

var chartForms = []string{".svg", ".png", ".pdf"}

var chartCommand = command{
	name:    "chart",
	use:     "FILE -o X.svg|X.png|X.pdf [--piece P] [--repeats N] [options]",
	summary: "draw the symbol chart or the grid chart of a piece, with its key",
	run:     runChart,
}

func runChart(c *call) error {
	flags := c.options()
	choice := choose(flags, chartForms...)
	look := chartLook(flags)
	repeats := flags.Int("repeats", 0, "work `N` stitch repeats across; as many as the size has without it")
	measured := flags.Bool("meter", false, "measure the symbol chart as an editor would and tell what touches, crosses or is squeezed; needs no -o")
	colours := flags.Bool("colour-counts", false, "tell the colours of each row, stitch by stitch; needs no -o")
	path, err := c.file()
	if err != nil {
		return err
	}
	if choice.out != "" || !*measured && !*colours {
		if err := choice.check(chartForms...); err != nil {
			return err
		}
	}
	if err := look.check(flags); err != nil {
		return err
	}
	if *repeats < 1 && given(flags, "repeats") {
		return misused("--repeats must be 1 or more")
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	words, err := checkTerms(look.terms, src.pattern.Terms)
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
	options := look.options()
	options.Library, options.Terms = lib, words
	options.Inks, options.YarnNames = worked.YarnColours(piece, choice.colourway), worked.YarnNames(piece, choice.colourway)
	options.Title, options.Callouts = title(worked, piece), chart.CalloutsOf(worked.Pattern, piece)
	if options.Own, err = chart.OwnOf(worked.Pattern); err != nil {
		fmt.Fprintf(c.stderr, "%s: %v\n", src.path, err)
	}
	if err := c.drawChart(worked, piece, look, options, choice.out, *measured, *colours); err != nil {
		return err
	}
	return src.drawn(c.stderr, worked, choice.out)
}

// drawChart writes the chart of a piece, and tells what was asked about it.
func (c *call) drawChart(worked *model.Worked, piece int, look *look, o chart.Options, out string, measured, colours bool) error {
	fabric := worked.Pieces[piece].Fabric
	if colours {
		for _, row := range chart.ColourCounts(fabric) {
			fmt.Fprintf(c.stdout, "%s: %v\n", row.Label, row)
		}
	}
	if out == "" && !measured {
		return nil
	}
	var list *display.List
	if !look.grid || measured {
		plan := layout.Arrange(fabric, layout.Drawn())
		list = chart.Draw(plan, o)
		if measured {
			report := meter.Measure(plan, list, o.Unit, o.LeftHanded)
			for _, fault := range report {
				fmt.Fprintln(c.stdout, fault)
			}
			fmt.Fprintln(c.stdout, report)
		}
	}
	if out == "" {
		return nil
	}
	if look.grid {
		list = chart.Cells(fabric, o, chart.Aspect(worked.Pattern.Gauge))
	}
	return render.Write(out, list, look.output())
}
