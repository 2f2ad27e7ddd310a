package command

import (
	"bufio"
	"flag"
	"fmt"
	"image/color"
	"io"
	"os"
	"slices"
	"strings"
	"text/tabwriter"

	"strandway/model"
	"strandway/model/colour"
	"strandway/model/palette"
	"strandway/model/pattern"
)

var coloursCommand = command{
	name:    "colours",
	use:     "FILE [--colourway NAME] [--suggest RULE|--teaching] [--keep A] [--lock B,C] [--stash STASH.toml] [--add NAME]",
	summary: "say how well the yarns can be told apart, and suggest others",
	detail: "The table gives for yarns that touch their difference (CIEDE2000) and their difference in lightness (L*),\n" +
		"as each kind of eyes sees them. With --add the suggestion is written into the file as a colourway.",
	run: runColours,
}

// wish is what a suggestion is asked for with.
type wish struct {
	rule, keep, lock, stash, add string
	teaching                     bool
}

func runColours(c *call) error {
	flags := c.options()
	var choice choice
	var w wish
	flags.StringVar(&choice.piece, "piece", "", "the piece `P`, by its name; the first without it")
	flags.StringVar(&choice.size, "size", "", "work the size `NAME`; the first without it")
	flags.StringVar(&choice.colourway, "colourway", "", "begin with the colourway `NAME`; with the yarns' own colours without it")
	flags.StringVar(&w.rule, "suggest", "", "suggest colours by `RULE`: "+strings.Join(palette.Rules(), ", "))
	flags.BoolVar(&w.teaching, "teaching", false, "suggest the nearest shades in which stitches read well on camera")
	flags.StringVar(&w.keep, "keep", "", "keep the colour of yarn `A`; the others follow its hue")
	flags.StringVar(&w.lock, "lock", "", "leave the yarns `B,C` as they are")
	flags.StringVar(&w.stash, "stash", "", "choose among the yarns of the list `STASH.toml`")
	flags.StringVar(&w.add, "add", "", "write the suggestion into the file as the colourway `NAME`")
	path, err := c.file()
	if err != nil {
		return err
	}
	if err := w.check(flags); err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	worked, piece, err := choice.work(src, c.stderr)
	if err != nil {
		return err
	}
	out := bufio.NewWriter(c.stdout)
	defer out.Flush()
	if w.rule == "" {
		return writeApart(out, worked, piece, worked.YarnColours(piece, choice.colourway))
	}
	way, err := w.suggest(worked, piece, choice.colourway)
	if err != nil {
		return err
	}
	if w.add != "" {
		if err := addColourway(path, worked.Pattern, way); err != nil {
			return err
		}
	}
	for _, y := range worked.Pattern.Yarns {
		s := way.Shades[y.Letter]
		fmt.Fprintln(out, strings.TrimRight(y.Letter+"  "+s.Colour+"  "+s.Shade, " "))
	}
	fmt.Fprintln(out)
	colours := worked.YarnColours(piece, choice.colourway)
	for i := range colours {
		if y, ok := worked.YarnOf(piece, i); ok {
			if s, err := colour.Parse(way.Shades[y.Letter].Colour); err == nil {
				colours[i] = s
			}
		}
	}
	return writeApart(out, worked, piece, colours)
}

// check refuses options that do not go together, and settles the rule.
func (w *wish) check(flags *flag.FlagSet) error {
	if w.teaching {
		if w.rule != "" && w.rule != palette.Teaching.String() {
			return misused("--teaching is a rule of its own: leave --suggest away")
		}
		w.rule = palette.Teaching.String()
	}
	if w.rule == "" {
		for _, name := range []string{"keep", "lock", "stash", "add"} {
			if given(flags, name) {
				return misused("--%s goes with --suggest or --teaching", name)
			}
		}
		return nil
	}
	if _, err := palette.RuleNamed(w.rule); err != nil {
		return wrongUse{err}
	}
	return nil
}

// suggest makes a colourway for all yarns of the pattern.
func (w *wish) suggest(worked *model.Worked, piece int, from string) (pattern.Colourway, error) {
	way := pattern.Colourway{Name: w.add, Shades: map[string]pattern.Shade{}}
	yarns := worked.Pattern.Yarns
	rule, err := palette.RuleNamed(w.rule)
	if err != nil {
		return way, wrongUse{err}
	}
	asked := palette.Wish{Rule: rule, Keep: -1, Locked: make([]bool, len(yarns)), Pairs: worked.Touching(piece)}
	if w.keep != "" {
		if asked.Keep, err = yarnAt(yarns, w.keep); err != nil {
			return way, err
		}
	}
	for _, letter := range strings.FieldsFunc(w.lock, func(r rune) bool { return r == ',' || r == ' ' }) {
		i, err := yarnAt(yarns, letter)
		if err != nil {
			return way, err
		}
		asked.Locked[i] = true
	}
	if w.stash != "" {
		src, err := os.ReadFile(w.stash)
		if err != nil {
			return way, fmt.Errorf("cannot read the stash: %w", err)
		}
		if asked.Stash, err = palette.ReadStash(src, w.stash); err != nil {
			return way, err
		}
	}
	was := make([]color.NRGBA, len(yarns))
	for i, y := range yarns {
		c, ok := worked.ColourOf(y.Letter, from)
		if !ok {
			return way, fmt.Errorf(`yarn %s has no colour to begin with: write colour = "#rrggbb" for it`, y.Letter)
		}
		was[i] = c
	}
	shades, err := palette.Suggest(was, asked)
	if err != nil {
		return way, err
	}
	old, _ := worked.Pattern.Colourway(from)
	for i, y := range yarns {
		s := pattern.Shade{Shade: shades[i].Name, Colour: colour.Hex(shades[i].Colour)}
		if shades[i].Colour == was[i] && s.Shade == "" { // the shade that it was
			s.Shade = y.Shade
			if old != nil && old.Shades[y.Letter].Shade != "" {
				s.Shade = old.Shades[y.Letter].Shade
			}
		}
		way.Shades[y.Letter] = s
	}
	return way, nil
}

func yarnAt(yarns []pattern.Yarn, letter string) (int, error) {
	i := slices.IndexFunc(yarns, func(y pattern.Yarn) bool { return strings.EqualFold(y.Letter, letter) })
	if i < 0 {
		var letters []string
		for _, y := range yarns {
			letters = append(letters, y.Letter)
		}
		return 0, misused("there is no yarn %s; there is %s", letter, strings.Join(letters, ", "))
	}
	return i, nil
}

// addColourway writes a new colourway into the file.
func addColourway(path string, p *pattern.Pattern, way pattern.Colourway) error {
	if _, met := p.Colourway(way.Name); met {
		return misused("there is a colourway %q already: choose another name", way.Name)
	}
	changed := *p
	changed.Colourways = append(slices.Clip(p.Colourways), way)
	return pattern.Save(path, &changed)
}

// writeApart writes the table of yarns that touch.
func writeApart(out io.Writer, worked *model.Worked, piece int, colours []color.NRGBA) error {
	letters := worked.Pieces[piece].Fabric.Yarns
	pairs := palette.Touching(worked.Pieces[piece].Fabric)
	if len(pairs) == 0 {
		_, err := fmt.Fprintln(out, "no two yarns touch in this piece")
		return err
	}
	t := tabwriter.NewWriter(out, 0, 0, 3, ' ', 0)
	fmt.Fprint(t, "yarns")
	for _, v := range colour.Visions() {
		fmt.Fprintf(t, "\t%s", v)
	}
	fmt.Fprintln(t)
	for _, pair := range pairs {
		a, b := colours[pair.A], colours[pair.B]
		merging := palette.Merging(a, b)
		fmt.Fprintf(t, "%s %s", letters[pair.A], letters[pair.B])
		for _, v := range colour.Visions() {
			apart := palette.Compare(a, b, v)
			fmt.Fprintf(t, "\t%.0f, L* %.0f", apart.Difference, apart.Lightness)
			if slices.Contains(merging, v) {
				fmt.Fprint(t, " merge")
			}
		}
		fmt.Fprintln(t)
	}
	return t.Flush()
}
