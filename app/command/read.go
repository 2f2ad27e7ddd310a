package command

import (
	"bufio"
	"fmt"
	"os"

	"strandway/model"
	"strandway/model/page"
	"strandway/model/pattern"
)

var read = command{
	name:    "read",
	use:     "PAGE.txt -o NEW.strand [--counts] [--terms us|uk]",
	summary: "turn a whole published page into a pattern file",
	detail: "Rows that could not be read whole are kept as written and told, each with the line and column of the\n" +
		"page and the word where the thread was lost. With --counts the counts of all rows are printed as the\n" +
		"counts command prints them, then a line \"unread\" for each of those rows: piece, row, line:column, word,\n" +
		"separated by tabs. The terms are told from the page; where they are unclear, this says so.",
	run: runRead,
}

// readTerms are the terms in which rows can be read.
var readTerms = map[string]string{"us": "US", "uk": "UK"}

func runRead(c *call) error {
	flags := c.options()
	out := flags.String("o", "", "the pattern `FILE` to write")
	counted := flags.Bool("counts", false, "print the counts of all rows and the rows not read whole")
	terms := ""
	oneOf(flags, &terms, "terms", "the `TERMS` the page is written in, us or uk; told from the page without it", readTerms)
	path, err := c.file()
	if err != nil {
		return err
	}
	if *out == "" && !*counted {
		return misused("say where the pattern is to be written: -o NEW.strand")
	}
	src, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	lib, err := library()
	if err != nil {
		return err
	}
	p, report := page.Read(lib, page.Plain(src), page.Options{Terms: terms})
	if *out != "" {
		if err := pattern.Save(*out, p); err != nil {
			return err
		}
	}
	if report.Unclear {
		fmt.Fprintf(c.stderr, "%s: the page does not show whether it is in US or UK terms; it is read in %s terms (say --terms us or --terms uk)\n",
			path, report.Terms)
	}
	if !*counted {
		for _, u := range report.Unread {
			fmt.Fprintf(c.stderr, "%s:%d:%d: %s: %s is not read whole: the thread is lost at %q\n", path, u.Line, u.Column, u.Piece, u.Row, u.Word)
		}
		return nil
	}
	w := bufio.NewWriter(c.stdout)
	writeCounts(w, model.Work(lib, p, 0))
	for _, u := range report.Unread {
		fmt.Fprintf(w, "unread\t%s\t%s\t%d:%d\t%s\n", u.Piece, u.Row, u.Line, u.Column, u.Word)
	}
	return w.Flush()
}
