package command

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"

	"strandway/model"
	"strandway/model/palette"
	"strandway/model/pattern"
)

// wish is what other colours are asked for with.
type wish struct {
	way  string       // the option that says how to come by them, "" when none are asked for
	rule palette.Rule // of suggestions

	suggest, swap, order, keep, lock, stash, add string
	teaching, rotate                             bool
}

// suggested is the way of the wish for colours by a rule.
const suggested = "suggest"

// wishFor adds the options of a wish to a flag set.
func wishFor(flags *flag.FlagSet) *wish {
	var w wish
	flags.StringVar(&w.suggest, suggested, "", "suggest colours by `RULE`: "+strings.Join(palette.Rules(), ", "))
	flags.BoolVar(&w.teaching, "teaching", false, "suggest the nearest shades in which stitches read well on camera")
	flags.StringVar(&w.swap, "swap", "", "let the yarns `A,B` change colours")
	flags.BoolVar(&w.rotate, "rotate", false, "give each yarn the colour of the next one, and the last that of the first")
	flags.StringVar(&w.order, "order", "", "give the yarns in turn the colours of `C,A,B`")
	flags.StringVar(&w.keep, "keep", "", "keep the colour of yarn `A`; the others follow its hue")
	flags.StringVar(&w.lock, "lock", "", "leave the yarns `B,C` as they are")
	flags.StringVar(&w.stash, "stash", "", "choose among the yarns of the list `STASH.toml`")
	flags.StringVar(&w.add, "add", "", "write the new colours into the file as the colourway `NAME`")
	return &w
}

// check refuses options that do not go together, and settles the rule.
func (w *wish) check(flags *flag.FlagSet) error {
	for _, name := range []string{suggested, "teaching", "swap", "rotate", "order"} {
		if !given(flags, name) {
			continue
		}
		if w.way != "" {
			return misused("--%s and --%s are two ways to other colours: choose one", w.way, name)
		}
		w.way = name
	}
	for _, name := range []string{"keep", "stash"} {
		if given(flags, name) && w.way != suggested && w.way != "teaching" {
			return misused("--%s goes with --suggest or --teaching", name)
		}
	}
	if given(flags, "lock") && (w.way == "" || w.way == "swap" || w.way == "order") {
		return misused("--lock goes with --suggest, --teaching or --rotate")
	}
	if w.way == "" && given(flags, "add") {
		return misused("--add goes with a way to other colours, such as --suggest or --swap")
	}
	switch w.way {
	case suggested:
		rule, err := palette.RuleNamed(w.suggest)
		if err != nil {
			return wrongUse{err}
		}
		w.rule = rule
	case "teaching":
		w.rule, w.way = palette.Teaching, suggested
	}
	return nil
}

// shades are the colours wished for, in the order of the pattern's yarns.
func (w *wish) shades(worked *model.Worked, piece int, from string) ([]pattern.Shade, error) {
	yarns := worked.Pattern.Yarns
	locked, err := lockedYarns(yarns, w.lock)
	if err != nil {
		return nil, err
	}
	if w.way == suggested {
		asked := palette.Wish{Rule: w.rule, Keep: -1, Locked: locked}
		if w.keep != "" {
			if asked.Keep, err = yarnAt(yarns, w.keep); err != nil {
				return nil, err
			}
		}
		if w.stash != "" {
			src, err := os.ReadFile(w.stash)
			if err != nil {
				return nil, fmt.Errorf("cannot read the stash: %w", err)
			}
			if asked.Stash, err = palette.ReadStash(src, w.stash); err != nil {
				return nil, err
			}
		}
		return worked.Suggest(piece, from, asked)
	}
	order, err := w.reordered(yarns, locked)
	if err != nil {
		return nil, err
	}
	return palette.InOrder(model.Shades(worked.Pattern, from), order), nil
}

// reordered is the order wished for.
func (w *wish) reordered(yarns []pattern.Yarn, locked []bool) (palette.Order, error) {
	if w.way == "rotate" {
		return palette.Rotated(locked), nil
	}
	named := w.order
	if w.way == "swap" {
		named = w.swap
	}
	at, err := yarnsAt(yarns, named)
	if err != nil {
		return nil, err
	}
	switch each := slices.Compact(slices.Sorted(slices.Values(at))); {
	case w.way == "swap" && (len(at) != 2 || len(each) != 2):
		return nil, misused("--swap takes two yarns, as in A,B")
	case w.way == "swap":
		return palette.Swapped(len(yarns), at[0], at[1]), nil
	case len(at) != len(yarns) || len(each) != len(yarns):
		return nil, misused("--order names each of the %d yarns once", len(yarns))
	}
	return at, nil
}

// lockedYarns reads the letters of yarns that stay as they are.
func lockedYarns(yarns []pattern.Yarn, letters string) ([]bool, error) {
	locked := make([]bool, len(yarns))
	at, err := yarnsAt(yarns, letters)
	for _, i := range at {
		locked[i] = true
	}
	return locked, err
}

// yarnsAt reads letters, "B,C", as indices of the pattern's yarns.
func yarnsAt(yarns []pattern.Yarn, letters string) ([]int, error) {
	var out []int
	for _, letter := range strings.FieldsFunc(letters, func(r rune) bool { return r == ',' || r == ' ' }) {
		i, err := yarnAt(yarns, letter)
		if err != nil {
			return nil, err
		}
		out = append(out, i)
	}
	return out, nil
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
