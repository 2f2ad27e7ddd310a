package command

import (
	"fmt"
	"slices"
	"strings"

	"strandway/model"
	"strandway/model/syntax"
)

var rows = command{
	name:    "rows",
	use:     "FILE [--terms us|uk|es|de|fr|nl] [--size NAME] [--long] [--left-handed]",
	summary: "print the written rows in one form, in the terms you choose",
	run:     runRows,
}

// terms are the sets of terms in which rows can be printed.
var terms = []string{"us", "uk", "es", "de", "fr", "nl"}

// checkTerms gives the terms asked for, or the pattern's own.
func checkTerms(asked, own string) (string, error) {
	if asked == "" {
		asked = own
	}
	asked = strings.ToLower(asked)
	if !slices.Contains(terms, asked) {
		return "", misused("--terms %s is not known: one of %s", asked, strings.Join(terms, ", "))
	}
	return asked, nil
}

func runRows(c *call) error {
	flags := c.options()
	asked := flags.String("terms", "", "the `TERMS` to print in: "+strings.Join(terms, ", ")+"; the pattern's own without it")
	size := flags.String("size", "", "the numbers of the size `NAME` alone; all sizes without it")
	long := flags.Bool("long", false, "spell stitches and places out")
	left := flags.Bool("left-handed", false, "name left and right as a left-hander meets them")
	path, err := c.file()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	words, err := checkTerms(*asked, src.pattern.Terms)
	if err != nil {
		return err
	}
	worked, err := src.work(*size)
	if err != nil {
		return err
	}
	lib, err := library()
	if err != nil {
		return err
	}
	o := syntax.PrintOptions{Library: lib, Terms: words, Size: -1, Long: *long, LeftHanded: *left}
	if *size != "" {
		o.Size = worked.Size
	}
	for _, special := range src.pattern.Stitches {
		fmt.Fprintf(c.stdout, "%s: %s\n", special.Abbreviation, model.Definition(lib, special, words))
	}
	for i := range worked.Pieces {
		if i > 0 || len(src.pattern.Stitches) > 0 {
			fmt.Fprintln(c.stdout)
		}
		fmt.Fprintf(c.stdout, "%s\n%s\n", worked.Pieces[i].Piece.Name, strings.TrimRight(syntax.Print(worked.Pieces[i].Tree, o), "\n"))
	}
	return src.faults(c.stderr, worked)
}
