package command

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"text/tabwriter"
	"time"

	"strandway/app/settings"
	"strandway/model"
	"strandway/model/yarn"
)

var yarnCommand = command{
	name:    "yarn",
	use:     "FILE [--size NAME] [--margin PERCENT] [--left LETTER=METRES] [--instead METRES/GAUGE] [--remember | --forget] [--json]",
	summary: "reckon the yarn: metres expected, low and high, balls with a margin, weight, price and what is left over",
	detail: "Metres are reckoned stitch by stitch from hook and yarn, floats and ends added: within about an eighth\n" +
		"without a weighed swatch, a twentieth with one under [gauge.swatch]. With --remember what that swatch tells of\n" +
		"your hands is kept, by yarn and hook, in swatches.toml in the settings folder, and used for every pattern in the\n" +
		"same yarn that has no swatch of its own; --forget takes this pattern's yarns out again.",
	run: runYarn,
}

// yarnOf is the requirement of one yarn as --json writes it.
type yarnOf struct {
	Yarn     string    `json:"yarn"`
	Metres   float64   `json:"metres"`
	Low      float64   `json:"low_m"`
	High     float64   `json:"high_m"`
	Stitches float64   `json:"in_stitches_m"`
	Floats   float64   `json:"in_floats_m"`
	Tails    float64   `json:"in_ends_m"`
	Wanted   float64   `json:"with_margin_m"`
	Balls    int       `json:"balls"`
	Grams    float64   `json:"grams"`
	Price    float64   `json:"price"`
	LeftOver float64   `json:"left_over_m"`
	By       string    `json:"by"` // hook and yarn, swatch, or remembered
	Swatch   string    `json:"remembered_from,omitempty"`
	Factor   float64   `json:"factor"` // of the whole against hook and yarn alone; 1 where nothing was weighed
	Pieces   []pieceOf `json:"pieces"`
}

type pieceOf struct {
	Piece  string  `json:"piece"`
	Metres float64 `json:"metres"`
}

// yarnsOf is the whole requirement.
type yarnsOf struct {
	Size       string    `json:"size"`
	Margin     float64   `json:"margin_percent"`
	Calibrated bool      `json:"calibrated"`
	Guess      bool      `json:"gauge_guessed"`
	Yarns      []yarnOf  `json:"yarns"`
	Total      float64   `json:"total_m"`
	Price      float64   `json:"price"`
	Rest       *restOf   `json:"rest,omitempty"`
	Instead    []otherOf `json:"instead,omitempty"`
}

// restOf says for how many rows what remains of a ball is enough.
type restOf struct {
	Yarn   string  `json:"yarn"`
	Metres float64 `json:"metres"`
	Piece  string  `json:"piece"`
	Rows   int     `json:"rows_from_the_first"`
	Of     int     `json:"of_rows"`
}

// otherOf is what another yarn would take in place of one of the pattern's.
type otherOf struct {
	Yarn   string  `json:"yarn"`
	Metres float64 `json:"metres"`
	Balls  int     `json:"balls"`
}

func runYarn(c *call) error {
	flags := c.options()
	size := flags.String("size", "", "work the size `NAME`; the first without it")
	margin := flags.Float64("margin", -1, "have `PERCENT` more in hand than is expected; the pattern's own or the trade's custom without it")
	left := flags.String("left", "", "say for how many rows of the first piece so much yarn is enough: `LETTER=METRES`")
	instead := flags.String("instead", "", "reckon with balls of another yarn, of so many metres, and its gauge in stitches to 10 cm: `METRES/GAUGE`")
	remember := flags.Bool("remember", false, "keep what the weighed swatch tells of your hands, by yarn and hook")
	forget := flags.Bool("forget", false, "forget what is kept of this pattern's yarns and hook")
	asJSON := flags.Bool("json", false, "print JSON")
	path, err := c.file()
	if err != nil {
		return err
	}
	if *remember && *forget {
		return misused("--remember and --forget are two wishes")
	}
	if given(flags, "margin") && !(*margin >= 0 && *margin <= 100) {
		return misused("--margin must be from 0 to 100")
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	if given(flags, "margin") {
		src.pattern.MarginPercent = max(*margin, 1e-9) // 0 would mean the custom
	}
	worked, err := src.work(*size)
	if err != nil {
		return err
	}
	hands, err := settings.LoadHands()
	if err != nil {
		return err
	}
	figures := worked.FiguresBy(hands)
	if *remember || *forget {
		if hands, err = keepHands(c, hands, worked, figures, *forget); err != nil {
			return err
		}
		figures = worked.FiguresBy(hands)
	}
	if figures.Yarns == nil && len(worked.Pieces) > 0 && worked.Findings.Faults() == 0 {
		return fmt.Errorf("%s names neither a hook nor a yarn's weight, so its yarn cannot be reckoned", path)
	}
	out := describeYarn(worked, figures)
	if *instead != "" {
		if out.Instead, err = substitute(figures, *instead); err != nil {
			return err
		}
	}
	if *left != "" {
		if out.Rest, err = rest(worked, figures, *left); err != nil {
			return err
		}
	}
	if *asJSON {
		err = printJSON(c.stdout, out.rounded())
	} else {
		err = out.print(c)
	}
	if err != nil {
		return err
	}
	return src.faults(c.stderr, worked)
}

func describeYarn(worked *model.Worked, figures *model.Figures) *yarnsOf {
	out := &yarnsOf{Margin: round(100*figures.Margin, 1), Guess: figures.Scale.Guess, Yarns: []yarnOf{}}
	if worked.Size < len(worked.Pattern.Sizes) {
		out.Size = worked.Pattern.Sizes[worked.Size].Name
	}
	for _, a := range figures.Yarns {
		y := yarnOf{Yarn: a.Letter, Metres: a.Metres, Low: a.Low, High: a.High, Stitches: a.StitchM, Floats: a.FloatM, Tails: a.TailM,
			Wanted: a.Wanted, Balls: a.Balls, Grams: a.Grams, Price: a.Price, LeftOver: a.LeftOver, By: "hook and yarn", Factor: 1, Pieces: []pieceOf{}}
		if k := figures.Factors(a.Letter); k.Calibrated {
			out.Calibrated = true
			y.By, y.Swatch, y.Factor = "swatch", k.From, (k.Loops+k.Legs)/2
			if k.From != "" {
				y.By = "remembered"
			}
		}
		for i, m := range a.ByPiece {
			y.Pieces = append(y.Pieces, pieceOf{worked.Pieces[i].Piece.Name, m})
		}
		out.Yarns = append(out.Yarns, y)
		out.Total += a.Metres
		out.Price += a.Price
	}
	return out
}

// rounded is the requirement as --json writes it. The table rounds the figures themselves, as the window does.
func (y *yarnsOf) rounded() *yarnsOf {
	out := *y
	out.Total, out.Price = round(y.Total, 1), round(y.Price, 2)
	out.Yarns = slices.Clone(y.Yarns)
	for i := range out.Yarns {
		a := &out.Yarns[i]
		for _, metres := range []*float64{&a.Metres, &a.Low, &a.High, &a.Stitches, &a.Floats, &a.Tails, &a.Wanted, &a.Grams, &a.LeftOver} {
			*metres = round(*metres, 1)
		}
		a.Price, a.Factor = round(a.Price, 2), round(a.Factor, 3)
		a.Pieces = slices.Clone(a.Pieces)
		for k := range a.Pieces {
			a.Pieces[k].Metres = round(a.Pieces[k].Metres, 1)
		}
	}
	return &out
}

// keepHands remembers or forgets what is known of the maker's hands with the pattern's yarns.
func keepHands(c *call, hands yarn.Memory, worked *model.Worked, figures *model.Figures, forget bool) (yarn.Memory, error) {
	before := len(hands)
	for _, r := range worked.Swatches(figures, time.Now().Format(time.DateOnly)) {
		if !forget {
			hands = hands.With(r)
			fmt.Fprintf(c.stderr, "remembered: %s with a %g mm hook, factor %.2f\n", r.Yarn, r.HookMM, (r.Loops+r.Legs)/2)
			before = -1
		}
	}
	if forget {
		for _, y := range worked.Pattern.Yarns {
			hands = hands.Without(y.Name, figures.Hook(y.Letter))
		}
	}
	switch {
	case forget && len(hands) == before:
		return hands, errors.New("nothing is remembered of this pattern's yarns and hook")
	case forget:
		fmt.Fprintf(c.stderr, "forgotten: %s\n", count(before-len(hands), "yarn"))
	case before >= 0:
		return hands, errors.New("the pattern has no weighed swatch of a yarn with a name: give width, height and grams under [gauge.swatch]")
	}
	return hands, settings.SaveHands(hands)
}

// substitute reads "180/16", a ball of 180 m at 16 stitches to 10 cm, and reckons each yarn in it.
func substitute(figures *model.Figures, asked string) ([]otherOf, error) {
	var metres, gauge float64
	if n, _ := fmt.Sscanf(asked, "%f/%f", &metres, &gauge); n != 2 || !(metres > 0) || !(gauge > 0) {
		return nil, misused("--instead is a ball's metres and stitches to 10 cm, as in 180/16, not %q", asked)
	}
	if !figures.Known() {
		return nil, misused("--instead needs the pattern's own gauge to compare with")
	}
	var out []otherOf
	for _, a := range figures.Yarns {
		m := yarn.Substitute(a.Metres, 10/figures.Scale.ColumnCM, gauge)
		out = append(out, otherOf{a.Letter, round(m, 1), yarn.Balls(m, figures.Margin, metres)})
	}
	return out, nil
}

// rest reads "B=34" and reckons how far so many metres of yarn B go.
func rest(worked *model.Worked, figures *model.Figures, asked string) (*restOf, error) {
	var letter rune
	var metres float64
	if n, _ := fmt.Sscanf(asked, "%c=%f", &letter, &metres); n != 2 || metres < 0 {
		return nil, misused("--left is a yarn's letter and metres, as in B=34, not %q", asked)
	}
	for i := range worked.Pieces {
		f := worked.Pieces[i].Fabric
		for y, l := range f.Yarns {
			if l != string(letter) {
				continue
			}
			rows := yarn.InRows(f, figures.Pieces[i].Ask, y)
			of := 0
			for _, m := range rows {
				if m > 0 {
					of++
				}
			}
			enough := 0
			for _, m := range rows[:yarn.Enough(rows, 0, metres)] {
				if m > 0 {
					enough++
				}
			}
			return &restOf{string(letter), metres, worked.Pieces[i].Piece.Name, enough, of}, nil
		}
	}
	return nil, misused("no row is worked in yarn %c", letter)
}

func (y *yarnsOf) print(c *call) error {
	if y.Size != "" {
		fmt.Fprintf(c.stdout, "Size %s\n", y.Size)
	}
	t := tabwriter.NewWriter(c.stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprint(t, "yarn\tmetres\tlow\thigh\tballs\tgrams\tprice\tleft over\t\n")
	for _, a := range y.Yarns {
		fmt.Fprintf(t, "%s\t%.0f m\t%.0f m\t%.0f m\t%s\t%s\t%s\t%s\t\n", a.Yarn, a.Metres, a.Low, a.High,
			known(float64(a.Balls), "%.0f"), known(a.Grams, "%.0f g"), known(a.Price, "%.2f"), known(a.LeftOver, "%.0f m"))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	fmt.Fprintf(c.stdout, "%.0f m in all; balls with %g %% in hand\n", y.Total, y.Margin)
	for _, line := range y.basis() {
		fmt.Fprintln(c.stdout, line)
	}
	if y.Price > 0 {
		fmt.Fprintf(c.stdout, "price of all balls %.2f\n", y.Price)
	}
	for _, o := range y.Instead {
		fmt.Fprintf(c.stdout, "in the other yarn %s takes %.0f m, %s\n", o.Yarn, o.Metres, count(o.Balls, "ball"))
	}
	if r := y.Rest; r != nil {
		fmt.Fprintf(c.stdout, "%g m of %s are enough for %d of the %d rows of %s in that yarn\n", r.Metres, r.Yarn, r.Rows, r.Of, r.Piece)
	}
	return nil
}

// basis says from what the yarns were reckoned, those alike in one line.
func (y *yarnsOf) basis() []string {
	var lines []string
	letters := map[string][]string{}
	for _, a := range y.Yarns {
		says := "from hook and yarn: take it as ±12 %"
		switch a.By {
		case "swatch":
			says = "by the weighed swatch: take it as ±5 %"
		case "remembered":
			says = fmt.Sprintf("by your swatch for %q, remembered for this yarn and hook: take it as ±5 %%", a.Swatch)
		}
		if letters[says] == nil {
			lines = append(lines, says)
		}
		letters[says] = append(letters[says], a.Yarn)
	}
	for i, says := range lines {
		lines[i] = strings.Join(letters[says], ", ") + " reckoned " + says
	}
	return lines
}

// known is a figure in a form, or a dash where it is not known.
func known(x float64, form string) string {
	if x == 0 {
		return "-"
	}
	return fmt.Sprintf(form, x)
}

// round rounds to so many decimals.
func round(x float64, decimals int) float64 {
	k := math.Pow10(decimals)
	return math.Round(x*k) / k
}
