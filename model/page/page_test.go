package page_test

import (
	"slices"
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/page"
	"strandway/model/stitch"
)

const jumper = `Skerry Jumper
by Nell Tidewater

Sizes: S (M, L)
Materials
Lantern DK (50 g / 120 m): Slate (MC), Sand (CC)
Hook: size H
Gauge: 16 sc and 18 rows = 4 in

BACK
With MC, ch 21 (23, 25).
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, chang-
ing to CC in last st. Turn. 20 (22, 24) sc.
This is the fold line, so keep it loose.
Rows 2-4 (6, 8): With CC, ch 1, sc in each sc
across. Turn.
L only:
Row 9: Ch 1, sc in each st across. Turn.

EDGING
Rnd 1: Ch 1, sc in each st across. Scc in next st.
`

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func TestFactsOfAPage(t *testing.T) {
	p, report := page.Read(library(t), jumper, page.Options{})
	if p.Title != "Skerry Jumper" || p.Designer != "Nell Tidewater" || report.Terms != "US" || report.Unclear {
		t.Errorf("%q by %q in %s terms, unclear %v", p.Title, p.Designer, report.Terms, report.Unclear)
	}
	if p.Hook.MM != 5 || p.Gauge.Stitches != 16 || p.Gauge.Rows != 18 || p.Gauge.OverCM != 10 || p.Units != "in" {
		t.Errorf("hook %g mm, gauge %+v, in %s", p.Hook.MM, p.Gauge, p.Units)
	}
	var yarns []string
	for _, y := range p.Yarns {
		yarns = append(yarns, y.Letter+" "+y.Shade)
		if y.Colour == "" || y.Grams != 50 || y.Metres != 120 {
			t.Errorf("yarn %+v", y)
		}
	}
	if want := []string{"MC Slate", "CC Sand"}; !slices.Equal(yarns, want) {
		t.Errorf("yarns %q, want %q", yarns, want)
	}
	if len(p.Sizes) != 3 || len(p.Pieces) != 1 || p.Pieces[0].Name != "BACK" {
		t.Fatalf("%d sizes, pieces %+v", len(p.Sizes), p.Pieces)
	}
	rows := p.Pieces[0].Rows
	for _, want := range []string{"changing to CC in last st", "Note: This is the fold line", "sc in each sc across. Turn.", "Row 9 (L only): Ch 1", "Note: EDGING"} {
		if !strings.Contains(rows, want) {
			t.Errorf("%q is not in\n%s", want, rows)
		}
	}
}

func TestEverySizeHasItsRows(t *testing.T) {
	lib := library(t)
	p, _ := page.Read(lib, jumper, page.Options{})
	for size, want := range []struct{ rows, stitches int }{{5, 20}, {7, 22}, {10, 24}} {
		fab := model.Work(lib, p, size).Pieces[0].Fabric
		if n := len(fab.Rows) - 1; n != want.rows || int(fab.Rows[1].Count) != want.stitches {
			t.Errorf("size %s: %d rows of %d stitches, want %d of %d", p.Sizes[size].Name, n, fab.Rows[1].Count, want.rows, want.stitches)
		}
	}
}

func TestUnreadWordsAreToldWithTheirPlace(t *testing.T) {
	_, report := page.Read(library(t), jumper, page.Options{})
	want := page.Unread{Piece: "BACK", Row: "Rnd 1", Line: 21, Column: 36, Word: "Scc"}
	if len(report.Unread) != 1 || report.Unread[0] != want {
		t.Errorf("unread %+v, want %+v", report.Unread, want)
	}
}

func TestTermsAreToldByTheStitches(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		page, terms string
		unclear     bool
	}{
		{"Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across.", "US", false},
		{"9ch.\nRow 1: 1dc in 2nd ch from hook, miss 1ch, 1htr in each ch to end.", "UK", false},
		{"UK terms.\nCh 9.\nRow 1: Dc in 4th ch from hook.", "UK", false},
		{"Ch 4, join.\nRnd 1: Ch 3 (counts as tr), 11 tr in ring, join.", "UK", false},
		{"Ch 4, join.\nRnd 1: Ch 4 (counts as tr, ch 0), dc in ring.", "US", true},
	} {
		if _, r := page.Read(lib, c.page, page.Options{}); r.Terms != c.terms || r.Unclear != c.unclear {
			t.Errorf("%q: %s terms, unclear %v", c.page, r.Terms, r.Unclear)
		}
	}
	if _, r := page.Read(lib, "Rnd 1: 6 dc in ring.", page.Options{Terms: "UK"}); r.Terms != "UK" || r.Unclear {
		t.Error("terms asked for are not taken")
	}
}

func TestStripeListsAreNoRows(t *testing.T) {
	p, _ := page.Read(library(t), "Mat\nA (red), B (white)\nStripes\nRows 1-2: A\nRow 3: B\nRow 4: white\n\nWith A, ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", page.Options{})
	if len(p.Pieces) != 1 || strings.Count(p.Pieces[0].Rows, "\n") != 2 || !strings.Contains(p.Note, "Rows 1-2: A") {
		t.Errorf("%+v\nnote %q", p.Pieces, p.Note)
	}
}
