package corpus_test

import (
	"flag"
	"fmt"
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/corpus"
	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/page"
	"strandway/model/stitch"
)

var measure = flag.Bool("measure", false, "print the share of rows read and counts equal instead of failing")

// open is how the files begin whose pages are known not to come out yet.
const open = "open"

// outcome is what came of one example.
type outcome struct {
	rows, whole, equal int // rows to come, rows read whole, counts equal
	wrong              []string
}

func TestExamples(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range corpus.Files() {
		examples, err := corpus.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		var sum outcome
		right := 0
		for _, e := range examples {
			t.Run(e.Name, func(t *testing.T) {
				got := try(lib, e)
				sum.rows, sum.whole, sum.equal = sum.rows+got.rows, sum.whole+got.whole, sum.equal+got.equal
				if len(got.wrong) == 0 {
					right++
				}
				for _, w := range got.wrong {
					if *measure || strings.HasPrefix(file, open) {
						t.Log(e.Name + ": " + w)
					} else {
						t.Error(w)
					}
				}
			})
		}
		if *measure {
			t.Logf("%s: rows read whole %d of %d (%.1f %%), counts equal %d (%.1f %%), patterns right %d of %d", file,
				sum.whole, sum.rows, share(sum.whole, sum.rows), sum.equal, share(sum.equal, sum.rows), right, len(examples))
		}
	}
}

func share(n, of int) float64 { return 100 * float64(n) / float64(max(1, of)) }

// try reads and works one example and compares.
func try(lib *stitch.Library, e corpus.Example) (out outcome) {
	wrong := func(format string, args ...any) { out.wrong = append(out.wrong, fmt.Sprintf(format, args...)) }
	p, report := page.Read(lib, e.Page, page.Options{})
	if e.Terms != "" && report.Terms != e.Terms {
		wrong("read in %s terms", report.Terms)
	}
	if e.Title != "" && p.Title != e.Title {
		wrong("titled %q", p.Title)
	}
	if e.Sizes != nil {
		var names []string
		for _, s := range p.Sizes {
			names = append(names, s.Name)
		}
		if !slices.Equal(names, e.Sizes) {
			wrong("sizes %q", names)
		}
	}
	worked := model.Work(lib, p, 0)
	e.Pieces = joined(e.Pieces, worked)
	for i, want := range e.Pieces {
		out.rows += len(want.Counts)
		if i >= len(worked.Pieces) {
			wrong("piece %s is not found", want.Name)
			continue
		}
		counts, sides := rows(worked.Pieces[i].Fabric)
		if want.Name != "*" && !strings.EqualFold(want.Name, bare(want.Name, worked.Pieces[i].Piece.Name)) {
			wrong("piece %s is named %q", want.Name, worked.Pieces[i].Piece.Name)
		}
		if want.More {
			counts, sides = counts[:min(len(counts), len(want.Counts))], sides[:min(len(sides), len(want.Sides))]
		}
		for n := len(want.Counts); n > len(counts) && want.Counts[n-1] == corpus.Unsaid; n-- { // a row that cannot be read makes nothing
			want.Counts = want.Counts[:n-1]
		}
		for k, n := range want.Counts {
			if n == corpus.Unsaid && k < len(counts) {
				want.Counts[k], n = counts[k], counts[k]
			}
			if k < len(counts) && counts[k] == n {
				out.equal++
			}
		}
		if !slices.Equal(counts, want.Counts) {
			wrong("%s: counts %v, want %v", want.Name, counts, want.Counts)
		}
		if want.Sides != "" && sides != want.Sides {
			wrong("%s: sides %s, want %s", want.Name, sides, want.Sides)
		}
	}
	if len(worked.Pieces) > len(e.Pieces) {
		for _, extra := range worked.Pieces[len(e.Pieces):] {
			wrong("a piece too many: %q", extra.Piece.Name)
		}
	}
	out.whole = max(0, out.rows-len(report.Unread))
	lost := map[string]bool{}
	for _, u := range report.Unread {
		if !slices.Contains(e.Unread, u.Word) {
			wrong("%d:%d: %s, %s: lost at %q", u.Line, u.Column, u.Piece, u.Row, u.Word)
		}
		lost[u.Word] = true
	}
	for _, w := range e.Unread {
		if !lost[w] {
			wrong("nothing is lost at %q", w)
		}
	}
	return findings(e, worked, out)
}

// findings compares faults and doubts with those that are to come.
func findings(e corpus.Example, worked *model.Worked, out outcome) outcome {
	for _, want := range e.Faults {
		if !slices.ContainsFunc(worked.Findings, func(f diag.Finding) bool { return strings.Contains(f.String(), want) }) {
			out.wrong = append(out.wrong, fmt.Sprintf("no finding says %q", want))
		}
	}
	for _, f := range worked.Findings {
		lost := slices.ContainsFunc(e.Unread, func(word string) bool { return strings.Contains(f.Message, word) })
		if f.Severity == diag.Fault && !lost && !slices.ContainsFunc(e.Faults, func(want string) bool { return strings.Contains(f.String(), want) }) {
			out.wrong = append(out.wrong, fmt.Sprintf("%s: %s", f.Piece, f))
		}
	}
	return out
}

// rows gives the counts and the sides of the rows above the foundation.
func rows(f *fabric.Fabric) (counts []int, sides string) {
	for i := range f.Rows {
		r := &f.Rows[i]
		if i == 0 {
			continue
		}
		counts = append(counts, int(r.Count))
		if r.WS {
			sides += "W"
		} else {
			sides += "R"
		}
	}
	return counts, sides
}

// joined makes one piece of those that go on where another ends: the worker keeps them in one fabric.
func joined(pieces []corpus.Piece, worked *model.Worked) (out []corpus.Piece) {
	for i, p := range pieces {
		own := i == 0 || p.Name == "*" || slices.ContainsFunc(worked.Pieces, func(w model.PieceWork) bool {
			return strings.EqualFold(p.Name, bare(p.Name, w.Piece.Name))
		})
		if own {
			out = append(out, p)
			continue
		}
		last := &out[len(out)-1]
		last.Counts, last.More = slices.Concat(last.Counts, p.Counts), p.More
		if last.Sides != "" && p.Sides != "" {
			last.Sides += p.Sides
		} else {
			last.Sides = ""
		}
	}
	return out
}

// bare is a piece's name without how often it is made, unless that is asked for.
func bare(want, name string) string {
	if strings.ContainsAny(want, "(,") {
		return name
	}
	name, _, _ = strings.Cut(name, " (")
	name, _, _ = strings.Cut(name, ", ")
	return name
}
