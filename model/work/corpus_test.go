package work_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// example is one pattern of testdata with what is to come of it:
//
//	=== name uk n0=3 size=0 reps=2
//	rows
//	> 1: 2n + 1 | n; 2: 3n      stitches and further chains by row, proved for every n; "m" is the foundation
//	>= 12 24 36                 stitches by row
//	/ RWWR                      sides
//	! fit row 2                 a fault or doubt that is to be found; without such lines there may be none
//	? takes in the chains       words of a note
//	@ 3: t1.5 s2.0              bases of a row: how, row, and index in that row, one a stitch
type example struct {
	name, src, sides string
	uk               bool
	n, size, reps    int
	formulas, faults []string
	notes            []string
	counts           []int
	bases            []string
}

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func examples(t testing.TB) []example {
	t.Helper()
	files, _ := filepath.Glob("testdata/*.txt")
	var out []example
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range strings.Split("\n"+string(data), "\n=== ")[1:] {
			out = append(out, parseExample(part))
		}
	}
	return out
}

func parseExample(part string) example {
	head, rest, _ := strings.Cut(part, "\n")
	c := example{n: 3, reps: 2}
	for i, word := range strings.Fields(head) {
		key, value, _ := strings.Cut(word, "=")
		k, _ := strconv.Atoi(value)
		switch {
		case i == 0:
			c.name = word
		case key == "uk":
			c.uk = true
		case key == "n0":
			c.n = k
		case key == "size":
			c.size = k
		case key == "reps":
			c.reps = k
		}
	}
	var src []string
	for _, line := range strings.Split(rest, "\n") {
		mark, text, _ := strings.Cut(line, " ")
		switch mark {
		case ">":
			c.formulas = append(c.formulas, strings.Split(text, ";")...)
		case ">=":
			for _, s := range strings.Fields(text) {
				k, _ := strconv.Atoi(s)
				c.counts = append(c.counts, k)
			}
		case "!":
			c.faults = append(c.faults, text)
		case "?":
			c.notes = append(c.notes, text)
		case "/":
			c.sides = strings.TrimSpace(text)
		case "@":
			c.bases = append(c.bases, text)
		default:
			src = append(src, line)
		}
	}
	c.src = strings.TrimRight(strings.Join(src, "\n"), "\n") + "\n"
	return c
}

func (c *example) options() work.Options {
	return work.Options{N: c.n, Size: c.size, RowsUntil: c.reps}
}

func TestExamples(t *testing.T) {
	lib := library(t)
	for _, c := range examples(t) {
		t.Run(c.name, func(t *testing.T) {
			tree, findings := syntax.Read(c.src, syntax.ReadOptions{Library: lib, UK: c.uk})
			f, worked := work.Work(lib, tree, c.options())
			findings = append(findings, worked...)
			checkFindings(t, c, findings)
			checkRows(t, c, f)
			checkFormulas(t, c, lib, tree)
			checkFabric(t, f)
		})
	}
}

func checkFindings(t *testing.T, c example, findings diag.List) {
	t.Helper()
	for _, want := range c.faults {
		id, row, _ := strings.Cut(want, " ")
		hit := false
		for _, f := range findings {
			hit = hit || f.ID == id && strings.HasPrefix(strings.ToLower(f.Row), row)
		}
		if !hit {
			t.Errorf("%s is not found", want)
		}
	}
	for _, want := range c.notes {
		hit := false
		for _, f := range findings {
			hit = hit || strings.Contains(f.Message, want)
		}
		if !hit {
			t.Errorf("no finding says %q", want)
		}
	}
	for _, f := range findings {
		if len(c.faults) == 0 && f.Severity != diag.Note || t.Failed() {
			t.Errorf("%s [%s]", f, f.ID)
		}
		if f.Span.Start < 0 || f.Span.End < f.Span.Start || f.Span.End > len(c.src) {
			t.Errorf("%s: span %v lies outside the text", f, f.Span)
		}
	}
}

func checkRows(t *testing.T, c example, f *fabric.Fabric) {
	t.Helper()
	var counts []int
	sides := ""
	for i := 1; i < len(f.Rows); i++ {
		counts = append(counts, f.Rows[i].Count)
		if f.Rows[i].WS {
			sides += "W"
		} else {
			sides += "R"
		}
	}
	if c.counts != nil && fmt.Sprint(counts) != fmt.Sprint(c.counts) {
		t.Errorf("counts %v, want %v", counts, c.counts)
	}
	if c.sides != "" && sides != c.sides {
		t.Errorf("sides %s, want %s", sides, c.sides)
	}
	for _, b := range c.bases {
		label, want, _ := strings.Cut(b, ":")
		row, err := strconv.Atoi(label)
		if err != nil || row >= len(f.Rows) {
			t.Errorf("there is no row %s", label)
			continue
		}
		if got := basesOf(f, row); got != strings.Join(strings.Fields(want), " ") {
			t.Errorf("row %d stands in\n%s, want\n%s", row, got, strings.TrimSpace(want))
		}
	}
}

// basesOf writes where every stitch of a row but plain chains stands: t(op), f(ront), b(ack loop), F and B posts,
// s(pace), g(ap), r(ing), e(nd), u(nderside), then row.index; the legs of a decrease are joined by +.
func basesOf(f *fabric.Fabric, row int) string {
	var out []string
	for id := f.Rows[row].First; id < f.Rows[row].Last; id++ {
		var legs []string
		for _, b := range f.Of(id) {
			if b.At < 0 {
				legs = append(legs, "r")
				continue
			}
			at := f.Stitches[b.At].Row
			legs = append(legs, fmt.Sprintf("%c%d.%d", "tfbFBsgreu3ol"[b.How], at, b.At-f.Rows[at].First))
		}
		if legs != nil {
			out = append(out, strings.Join(legs, "+"))
		}
	}
	return strings.Join(out, " ")
}

func squash(s string) string { return strings.ReplaceAll(s, " ", "") }

func checkFormulas(t *testing.T, c example, lib *stitch.Library, tree *syntax.Tree) {
	t.Helper()
	if c.formulas == nil {
		return
	}
	proof, findings := work.Prove(lib, tree, c.options())
	if len(c.faults) == 0 {
		for _, f := range findings {
			t.Errorf("not proved: %s", f)
		}
	}
	have := map[string]string{"m": squash(work.Formula{A: proof.Multiple, B: proof.Plus}.String()) + "|"}
	for _, f := range proof.Rows {
		_, no, _ := strings.Cut(f.Label, " ")
		have[no] = squash(f.String()) + "|" + squash(f.Chains())
	}
	for _, want := range c.formulas {
		row, formula, _ := strings.Cut(want, ":")
		row, formula = strings.TrimSpace(row), squash(formula)
		got := have[row]
		if !strings.Contains(formula, "|") {
			got, _, _ = strings.Cut(got, "|")
		}
		if got != formula {
			t.Errorf("row %s: %s, want %s", row, got, formula)
		}
	}
}

// checkFabric tests what holds for every fabric.
func checkFabric(t *testing.T, f *fabric.Fabric) {
	t.Helper()
	ledge := false // a short row leaves stitches to which a later one comes back
	for id := range f.Stitches {
		s := &f.Stitches[id]
		ledge = ledge || f.Rows[s.Row].Unworked > 0
		if int(s.Kind) >= len(f.Kinds) || int(s.Yarn) >= len(f.Yarns) || int(s.Row) >= len(f.Rows) {
			t.Fatalf("stitch %d: kind %d, yarn %d or row %d does not exist", id, s.Kind, s.Yarn, s.Row)
		}
		for _, b := range f.Of(int32(id)) {
			if int(b.At) >= id && !s.Has(fabric.Picot) || b.At < 0 && b.How != fabric.InRing {
				t.Errorf("stitch %d stands in %d", id, b.At)
			}
			if b.At >= 0 {
				edge := b.How == fabric.RowEnd || b.How == fabric.Underside
				down := s.Row - f.Stitches[b.At].Row
				for r := s.Row - 1; b.Down == 1 && r > f.Stitches[b.At].Row && f.Rows[r].Land0 == f.Rows[r].Land1; r-- {
					down-- // a row that makes nothing to work into is passed over
				}
				if !edge && !ledge && int32(b.Down) != down {
					t.Errorf("stitch %d of row %d stands %d rows below, in row %d", id, s.Row, b.Down, f.Stitches[b.At].Row)
				}
			}
		}
	}
	for i := range f.Rows {
		r := &f.Rows[i]
		if int(r.Last) > len(f.Stitches) || r.Last < r.First || int(r.Land1) > len(f.Landings) {
			t.Fatalf("row %d ends at stitch %d", i, r.Last)
		}
		if i > 0 && r.First != f.Rows[i-1].Last {
			t.Errorf("row %d begins at stitch %d, row %d ended at %d", i, r.First, i-1, f.Rows[i-1].Last)
		}
	}
	for _, e := range f.Events {
		if int(e.Yarn) >= len(f.Yarns) || int(e.Before) > len(f.Stitches) {
			t.Errorf("event %+v", e)
		}
	}
}
