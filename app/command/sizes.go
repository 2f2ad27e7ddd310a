package command

import (
	"fmt"
	"regexp"
	"strings"
	"text/tabwriter"

	"strandway/model"
	"strandway/model/edit"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/size"
	"strandway/model/trade"
)

var sizesCommand = command{
	name:    "sizes",
	use:     "FILE [--size NAME] [--for GROUP --by MEASURE [--ease CM] | --as THING | --width CM --length CM [--rows]] [--edging MULTIPLE] [--json]",
	summary: "print a table over all sizes: repeats, foundation chain, rows, edging, finished size, and what of the wish cannot be met",
	detail: "With --for the sizes are the trade's for a body (baby, child, woman, man, head, foot, hand) by one of its\n" +
		"measures (chest, head circumference ...): once round, and half of that for a piece worked round, as it lies, and\n" +
		"for a front or a back. With --as they are those usual for a thing (blanket, cushion, scarf ...). With --width and\n" +
		"--length the first piece is fitted to them, and with --rows its rows are printed as they are then. Edgings come out\n" +
		"at the --edging's MULTIPLE (\"4 + 1\"), else at that of the pattern's own edging.",
	run: runSizes,
}

// sizeOf is one piece in one size as --json writes it.
type sizeOf struct {
	Size       string    `json:"size"`
	Piece      string    `json:"piece"`
	Repeats    int       `json:"repeats"`
	Foundation int       `json:"foundation_chains"`
	Stitches   int       `json:"stitches"`
	Rows       int       `json:"rows"`
	Width      float64   `json:"width_cm"`
	Length     float64   `json:"length_cm"`
	Unmet      string    `json:"unmet,omitempty"`
	Side       int       `json:"side_edging,omitempty"`
	SideRule   string    `json:"side_edging_rule,omitempty"`
	Across     int       `json:"edging_across,omitempty"`
	Lies       string    `json:"lies,omitempty"`
	Rounds     []roundOf `json:"rounds,omitempty"`
}

type roundOf struct {
	Round    string  `json:"round"`
	Stitches int     `json:"stitches"`
	Grows    float64 `json:"increases_to_lie_flat"`
}

func runSizes(c *call) error {
	flags := c.options()
	only := flags.String("size", "", "only the size `NAME`")
	group := flags.String("for", "", "for bodies of the `GROUP`")
	by := flags.String("by", "", "by the body's `MEASURE`")
	ease := flags.Float64("ease", 0, "finished so many `CM` wider than the body")
	thing := flags.String("as", "", "in the sizes usual for a `THING`")
	width := flags.Float64("width", 0, "fit the first piece to `CM` of width")
	length := flags.Float64("length", 0, "fit the first piece to `CM` of length")
	rows := flags.Bool("rows", false, "print the rows as they are fitted")
	multiple := flags.String("edging", "", "the edging comes out at the `MULTIPLE`, as in 4 + 1")
	asJSON := flags.Bool("json", false, "print JSON")
	path, err := c.file()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	lib, err := library()
	if err != nil {
		return err
	}
	p := *src.pattern
	switch {
	case *group != "":
		if p.Sizes = size.Body(*group, *by, *ease); len(p.Sizes) == 0 {
			return misused("there are no sizes for %s by %q: %s", *group, *by, measuresOf(*group))
		}
		if halfRound(model.Work(lib, src.pattern, 0)) {
			for i := range p.Sizes {
				p.Sizes[i].WidthCM /= 2
			}
		}
	case *thing != "":
		if p.Sizes = size.Household(*thing); len(p.Sizes) == 0 {
			return misused("there are no usual sizes of a %s", *thing)
		}
	case *width != 0 || *length != 0:
		if !(*width >= 0) || !(*length >= 0) {
			return misused("--width and --length are in cm, as in 120")
		}
		worked, err := src.work(*only)
		if err != nil {
			return err
		}
		if len(worked.Pieces) == 0 {
			return fmt.Errorf("%s has no piece to fit", path)
		}
		fitted, err := edit.Fit(lib, worked, 0, *width, *length)
		if err != nil {
			return err
		}
		if *rows {
			fmt.Fprintln(c.stdout, strings.TrimRight(fitted.Pieces[0].Rows, "\n"))
			return nil
		}
		p = *fitted
	}
	edging := size.EdgingOf(&p)
	if *multiple != "" {
		if edging.Multiple, edging.Plus, err = pattern.ParseMultiple(*multiple); err != nil {
			return wrongUse{err}
		}
	}
	out := []sizeOf{}
	for _, e := range size.Table(lib, &p, edging) {
		if *only == "" || e.Size == *only {
			out = append(out, describeSize(e))
		}
	}
	if *only != "" && len(out) == 0 {
		return misused("there is no size %q%s", *only, sizeNames(p.Sizes))
	}
	if *asJSON {
		return printJSON(c.stdout, out)
	}
	return printSizes(c, out, p.Units == "in")
}

var frontOrBack = regexp.MustCompile(`(?i)\b(front|back)\b`)

// halfRound reports whether the first piece goes half round a body as it lies.
func halfRound(w *model.Worked) bool {
	switch w.Form() {
	case measure.Tube, measure.Hollow:
		return true
	}
	return len(w.Pieces) > 0 && frontOrBack.MatchString(w.Pieces[0].Piece.Name)
}

func measuresOf(group string) string {
	var names []string
	seen := map[string]bool{}
	for _, b := range trade.Standard().Body {
		if name := b.Measure; b.Group == group && !seen[name] {
			names, seen[name] = append(names, name), true
		}
	}
	if len(names) == 0 {
		return "no such group of bodies"
	}
	return "write --by " + strings.Join(names, ", ")
}

func sizeNames(sizes []pattern.Size) string {
	var names []string
	for _, s := range sizes {
		names = append(names, s.Name)
	}
	return "; there is " + strings.Join(names, ", ")
}

func describeSize(e size.Entry) sizeOf {
	out := sizeOf{Size: e.Size, Piece: e.Piece, Repeats: e.N, Foundation: e.Foundation, Stitches: e.Stitches, Rows: e.Rows,
		Width: round(e.Finished.WidthCM, 1), Length: round(e.Finished.LengthCM, 1), Unmet: e.Unmet(), Lies: e.Finished.Lies()}
	if e.Finished.Form == measure.Sheet {
		out.Side, out.SideRule, out.Across = e.Side.Stitches, e.Side.Rule, e.Across
	}
	for _, r := range e.Rounds {
		out.Rounds = append(out.Rounds, roundOf{r.Label, r.Stitches, round(r.Grows, 1)})
	}
	return out
}

func printSizes(c *call, sizes []sizeOf, inches bool) error {
	unit, per := "cm", 1.0
	if inches {
		unit, per = "in", 2.54
	}
	t := tabwriter.NewWriter(c.stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintf(t, "size\tpiece\trepeats\tfoundation\tstitches\trows\twidth %s\tlength %s\tremarks\n", unit, unit)
	for _, s := range sizes {
		var remarks []string
		if s.Side > 0 {
			remarks = append(remarks, fmt.Sprintf("edging %d along each side (%s), %d across", s.Side, s.SideRule, s.Across))
		}
		if s.Lies != "" {
			remarks = append(remarks, "lies "+s.Lies)
			if s.Lies != "flat" {
				remarks[len(remarks)-1] = s.Lies
			}
		}
		if n := len(s.Rounds); n > 0 && s.Lies != "" {
			remarks = append(remarks, fmt.Sprintf("to lie flat the last round grows by %.0f", s.Rounds[n-1].Grows))
		}
		if s.Unmet != "" {
			remarks = append(remarks, s.Unmet)
		}
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\t%d\t%d\t%s\t%s\t%s\n", s.Size, s.Piece, known(float64(s.Repeats), "%.0f"), known(float64(s.Foundation), "ch %.0f"), s.Stitches, s.Rows,
			known(s.Width/per, "%.1f"), known(s.Length/per, "%.1f"), strings.Join(remarks, "; "))
	}
	return t.Flush()
}
