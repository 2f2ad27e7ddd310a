package size_test

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/edit"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/size"
	"strandway/model/stitch"
	"strandway/model/strand"
)

// TestByHand compares strands, edges, sizes and edgings with pieces that were worked out with pencil and paper.
func TestByHand(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	src, err := os.ReadFile("testdata/byhand.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range strings.Split(string(src), "\n=== ")[1:] {
		name, rest, _ := strings.Cut(part, "\n")
		sections := strings.Split(rest, "---\n")
		t.Run(name, func(t *testing.T) {
			p := byHand(t, sections[0])
			p.Pieces = []pattern.Piece{{Name: "Piece", Rows: sections[1]}}
			w := model.Work(lib, p, 0)
			if w.Findings.Faults() > 0 {
				t.Fatal(w.Findings)
			}
			got, want := facts(lib, w), strings.TrimSpace(sections[2])
			if got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// byHand reads "gauge 14 8 hook 5 sizes Small 30 x 45, Large 150".
func byHand(t *testing.T, head string) *pattern.Pattern {
	t.Helper()
	p := &pattern.Pattern{Terms: "US", Gauge: pattern.Gauge{OverCM: 10}}
	for _, letter := range []string{"A", "B", "C"} {
		p.Yarns = append(p.Yarns, pattern.Yarn{Letter: letter, Weight: -1, Grams: 100, Metres: 200})
	}
	head, sizes, _ := strings.Cut(strings.TrimSpace(head), " sizes ")
	if _, err := fmt.Sscanf(head, "gauge %f %f hook %f", &p.Gauge.Stitches, &p.Gauge.Rows, &p.Hook.MM); err != nil {
		t.Fatalf("%q: %v", head, err)
	}
	for _, s := range strings.Split(sizes, ", ") {
		if words := strings.Fields(s); len(words) > 1 {
			size := pattern.Size{Name: words[0]}
			size.WidthCM, _ = strconv.ParseFloat(words[1], 64)
			if len(words) > 3 {
				size.LengthCM, _ = strconv.ParseFloat(words[3], 64)
			}
			p.Sizes = append(p.Sizes, size)
		}
	}
	return p
}

// facts are what the program finds, written as the pieces are worked out.
func facts(lib *stitch.Library, w *model.Worked) string {
	var out []string
	rows := w.Pieces[0].Fabric.Rows
	label := func(r int) string {
		return strings.TrimPrefix(strings.TrimPrefix(rows[r].Label, "Row "), "Rnd ")
	}
	side := map[fabric.Side]string{fabric.Left: " left", fabric.Right: " right"}
	joints := func(word string, list []strand.Joint) string {
		var at []string
		for _, j := range list {
			at = append(at, label(j.Row)+side[j.Side])
		}
		return word + " " + strings.Join(at, ", ")
	}
	s := &w.Figures().Pieces[0].Strands
	for i := range s.ByYarn {
		y := &s.ByYarn[i]
		parts := []string{joints("join", y.Joins)}
		var floats, behind []string
		for _, f := range y.Floats {
			edge := side[f.Side]
			if edge == "" {
				edge = " inside"
			}
			floats = append(floats, fmt.Sprintf("%s-%s%s %.1f", label(f.From), label(f.To), edge, f.CM))
		}
		for _, c := range y.Carry {
			behind = append(behind, fmt.Sprintf("%s:%d", label(c.Row), c.Longest))
		}
		if floats != nil {
			parts = append(parts, "float "+strings.Join(floats, ", "))
		}
		if behind != nil {
			parts = append(parts, "behind "+strings.Join(behind, ", "))
		}
		out = append(out, y.Letter+": "+strings.Join(append(parts, joints("cut", y.Cuts)), "; "))
	}
	held := " none"
	if len(s.Held) > 0 {
		held = ""
	}
	for _, r := range s.Held {
		held += " " + label(r)
	}
	best := "-"
	if plan, err := edit.Strands(lib, w, 0); err == nil {
		best = strconv.Itoa(plan.Best.Cuts)
	}
	out = append(out, fmt.Sprintf("held%s; ends %d, cuts %d, best %s", held, s.Ends, s.Cut(), best))
	for _, e := range size.Table(lib, w.Pattern, size.EdgingOf(w.Pattern)) {
		line := strings.TrimSpace("size "+e.Size) + ": "
		if e.N > 0 {
			line += fmt.Sprintf("n %d, ", e.N)
		}
		if e.Foundation > 0 {
			line += fmt.Sprintf("ch %d, ", e.Foundation)
		}
		line += fmt.Sprintf("%d sts, %d rows, %.1f x %.1f", e.Stitches, e.Rows, e.Finished.WidthCM, e.Finished.LengthCM)
		if e.Side.Stitches > 0 {
			line += fmt.Sprintf(", side %d", e.Side.Stitches)
		}
		out = append(out, line)
	}
	return strings.Join(out, "\n")
}
