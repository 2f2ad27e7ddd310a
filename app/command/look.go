package command

import (
	"flag"
	"strconv"
	"strings"

	"strandway/chart"
	"strandway/render"
	"strandway/render/sheet"
)

// Resolutions that print or screen can have any use for, in dots an inch.
const (
	leastDPI = 10
	mostDPI  = 2400
)

// Millimetres of one stitch width, as charts are mostly printed and in large print.
const (
	usualUnit = 5.
	largeUnit = 8.
)

// look is how a chart is asked to look.
type look struct {
	terms, highlight string
	paper            sheet.Paper
	dpi              float64
	grid             bool // in cells, which show fill
	fill             chart.Fill
	every            int

	dark, mono, leftHanded, plus, hooksLeft, large bool
	counts, sides, shade, waiting, noKey           bool
	transparent, textAsText                        bool
	rows                                           []int // to highlight
}

// chartLook adds the options of a chart's look to a flag set.
func chartLook(flags *flag.FlagSet) *look {
	l := look{paper: sheet.AsDrawn, fill: chart.Symbols}
	flags.StringVar(&l.terms, "terms", "", "the `TERMS` of the key: "+strings.Join(terms, ", ")+"; the pattern's own without it")
	oneOf(flags, &l.fill, "cells", "a grid of one cell a stitch, or a mesh of filet; `FILL` is symbols, colours or letters", fills)
	flags.IntVar(&l.every, "numbers", 5, "in a grid, number every `N` stitches, and with 10 every tenth row")
	flags.BoolVar(&l.dark, "dark", false, "for a dark screen")
	flags.BoolVar(&l.mono, "mono", false, "in one colour; rows tell their yarn by its letter")
	flags.BoolVar(&l.leftHanded, "left-handed", false, "mirrored, for left-handed work")
	flags.BoolVar(&l.plus, "plus", false, "single crochet as + instead of x")
	oneOf(flags, &l.hooksLeft, "post-hooks", "the `SIDE` to which hooks round the front post open: right or left; to the right without it", lefts)
	flags.BoolVar(&l.large, "large", false, "in large print")
	flags.BoolVar(&l.counts, "counts", false, "with the stitches of each row at its end")
	flags.BoolVar(&l.sides, "sides", false, "with RS or WS beside each number")
	flags.BoolVar(&l.shade, "shade", false, "with every second row on a tint")
	flags.StringVar(&l.highlight, "highlight", "", "with `ROWS` on a stronger tint: 3 or 2,4-6")
	flags.BoolVar(&l.waiting, "waiting", false, "with marks where a yarn is left to wait and taken up again")
	flags.BoolVar(&l.noKey, "no-key", false, "without the key")
	oneOf(flags, &l.paper, "paper", "on `PAPER`, a4 or letter, in sheets that join where the chart is larger; as large as the chart without it", papers)
	flags.Float64Var(&l.dpi, "dpi", 200, "resolution of a PNG, `D` dots an inch")
	flags.BoolVar(&l.transparent, "transparent", false, "without a background")
	flags.BoolVar(&l.textAsText, "svg-text", false, "keep the words of an SVG as text; they are drawn without it, and look the same everywhere")
	return &l
}

var (
	papers = map[string]sheet.Paper{"a4": sheet.A4, "letter": sheet.Letter}
	fills  = map[string]chart.Fill{"symbols": chart.Symbols, "colours": chart.Colours, "letters": chart.Letters}
	lefts  = map[string]bool{"right": false, "left": true}
)

// check refuses what no chart can look like.
func (l *look) check(flags *flag.FlagSet) error {
	l.grid = given(flags, "cells")
	if l.dpi < leastDPI || l.dpi > mostDPI {
		return misused("--dpi must be from %d to %d", leastDPI, mostDPI)
	}
	if l.every < 1 {
		return misused("--numbers must be 1 or more")
	}
	var err error
	l.rows, err = rowNumbers(l.highlight)
	return err
}

// options are the look in the chart's own words.
func (l *look) options() chart.Options {
	o := chart.Options{
		Dark: l.dark, Monochrome: l.mono, LeftHanded: l.leftHanded, PlusCross: l.plus, HooksLeft: l.hooksLeft,
		Unit: usualUnit, Key: !l.noKey, Counts: l.counts, Sides: l.sides, Shade: l.shade, Highlight: l.rows, Waiting: l.waiting,
		Grid: chart.Grid{Fill: l.fill, Every: l.every},
	}
	if l.large {
		o.Unit = largeUnit
	}
	return o
}

// output is what concerns the file.
func (l *look) output() render.Options {
	return render.Options{DPI: l.dpi, Transparent: l.transparent, Grey: l.mono, TextAsText: l.textAsText, Paper: l.paper}
}

// rowNumbers reads "2,4-6" as 2, 4, 5, 6.
func rowNumbers(s string) ([]int, error) {
	var rows []int
	for part := range strings.SplitSeq(s, ",") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		from, to, ranged := strings.Cut(part, "-")
		a, err := strconv.Atoi(from)
		b := a
		if ranged && err == nil {
			b, err = strconv.Atoi(to)
		}
		if err != nil || a < 1 || b < a || b-a > 10000 {
			return nil, misused("cannot read the rows %q; write them as 3 or 2,4-6", part)
		}
		for ; a <= b; a++ {
			rows = append(rows, a)
		}
	}
	return rows, nil
}
