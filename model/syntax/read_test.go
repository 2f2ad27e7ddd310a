package syntax

import (
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/stitch"
)

func library(t testing.TB) *stitch.Library {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

// TestRowsBecomeTrees pins the meaning of rows, down to the last field.
func TestRowsBecomeTrees(t *testing.T) {
	lib := library(t)
	for _, c := range []struct{ row, want string }{
		{"Row 2: Ch 1, sc in each st across, turn.",
			"[ChainN{N:1 Start:true} Make{N:1 Kind:sc Place:Place{Each N:1 St Ext:Extent{Across St}}} Turn{}]"},
		{"Row 2: dc 7, 7 dc in next st, dc in next 7 sts",
			"[Make{N:1 Kind:dc Place:Place{Next N:7 St}} Make{N:7 Kind:dc Place:Place{Next N:1 St}} Make{N:1 Kind:dc Place:Place{Next N:7 St}}]"},
		{"Row 2: 2 dc in next 3 sts, 3 dc in next 3 sts, 3 dc in each of next 3 sts",
			"[Make{N:2 Kind:dc Place:Place{Next N:3 St}} Make{N:1 Kind:dc Place:Place{Next N:3 St} Alike:true} Make{N:3 Kind:dc Place:Place{Next N:3 St}}]"},
		{"Row 2: (dc, ch 1, dc) in next ch-2 sp",
			"[Group{Body:[Make{N:1 Kind:dc} ChainN{N:1} Make{N:1 Kind:dc}] Place:Place{Next N:1 Sp Chains:2}}]"},
		{"Row 2: *sc in next st, ch 1; rep from * 3 times",
			"[Repeat{Body:[Make{N:1 Kind:sc Place:Place{Next N:1 St}} ChainN{N:1}] Ext:Extent{N:4 St Soft:true} Star:true}]"},
		{"Row 2: *sc in next st, ch 1; rep from * 3 more times",
			"[Repeat{Body:[Make{N:1 Kind:sc Place:Place{Next N:1 St}} ChainN{N:1}] Ext:Extent{N:4 St} Star:true}]"},
		{"Row 2: (sc, inc) x 3",
			"[Repeat{Body:[Make{N:1 Kind:sc Place:Place{Next N:1 St}} Make{N:2 Kind:sc Place:Place{Next N:1 St}}] Ext:Extent{N:3 St}}]"},
		{"Row 2: *dc in next st **, ch 1; rep from * across, ending last rep at **",
			"[Repeat{Body:[Make{N:1 Kind:dc Place:Place{Next N:1 St}} ChainN{N:1}] Break:1 Ext:Extent{Across St} Star:true AtBreak:true}]"},
		{"Row 2: dc in next sc 2 rows below, skip st behind",
			"[Make{N:1 Kind:dc Place:Place{Next N:1 Kind Name:sc Below:2}} Skip{N:1 St Behind:true}]"},
		{"Row 2: skip next st, dc in next st, working behind it, dc in skipped st",
			"[Skip{N:1 St} Make{N:1 Kind:dc Place:Place{Next N:1 St}} Make{N:1 Kind:dc Place:Place{Next N:1 Skipped Behind}}]"},
		{"Row 2: sc in centre dc of next shell, sc in 2nd dc of each shell across",
			"[Make{N:1 Kind:sc Place:Place{Same N:1 Kind Name:dc Of:Place{Next N:1 Unit Name:shell} Centre:true}} Make{N:1 Kind:sc Place:Place{Each N:2 Kind Name:dc Of:Place{Next N:1 Unit Name:shell} Ext:Extent{Across St}}}]"},
		{"Row 2: Ch 5 (counts as dc, ch 2), dc in next dc",
			"[ChainN{N:5 Counts As:[Make{N:1 Kind:dc} ChainN{N:2}] AsKind:dc Start:true} Make{N:1 Kind:dc Place:Place{Next N:1 Kind Name:dc}}]"},
		{"Row 2: sc across. Do not turn. Drop A.",
			"[Make{N:1 Kind:sc Place:Place{Each N:1 St Ext:Extent{Across St}}} Turn{Not:true} Yarn{Drop Letter:A}]"},
		{"Row 2: Pick up A at the right edge, carry B up the side, place loop on marker",
			"[Yarn{PickUp Letter:A} Yarn{Carry Letter:B} Yarn{Hold}]"},
		{"Rnd 2: ch 3, tr in first sc to join",
			"[ChainN{N:3 Start:true} Join{Place:Place{First N:1 Kind Name:sc} With:tr}]"},
		{"Row 2: rotate to work along left edge, 37 sc evenly along side edge, sc in each row end across",
			"[Along{Left} Make{N:1 Kind:sc Place:Place{Each N:1 End Ext:Extent{Evenly N:37 St}}} Make{N:1 Kind:sc Place:Place{Each N:1 End Ext:Extent{Across St}}}]"},
		{"Row 2: working in back loops only, sc in next 3 sts",
			"[Make{N:1 Kind:sc Place:Place{Next N:3 St Back}}]"},
		{"Row 2: sc in next 10 (13, 16) sts, ch 4n + 2",
			"[Make{N:1 Kind:sc Place:Place{Next N:[10 13 16] St}} ChainN{N:4n+2}]"},
		{"Row 2: inc in every 4th st",
			"[Repeat{Body:[Make{N:1 Kind:sc Place:Place{Next N:3 St}} Make{N:2 Kind:sc Place:Place{Next N:1 St}}] Ext:Extent{Across St}}]"},
		{"Row 2: 3 sc with A, 2 sc with B",
			"[Yarn{Letter:A} Make{N:1 Kind:sc Place:Place{Next N:3 St}} Yarn{Letter:B} Make{N:1 Kind:sc Place:Place{Next N:2 St}}]"},
		{"Row 2: Rep Rows 2 and 3 until work measures 38 in. from start.",
			"[RowRef{Rows:[2 3] Until:until work measures 38 in. from start}]"},
	} {
		tree, finds := Read(c.row, ReadOptions{Library: lib})
		if len(tree.Rows) != 1 || finds.Faults() > 0 {
			t.Errorf("%s\n %d rows, %v", c.row, len(tree.Rows), finds)
			continue
		}
		if have := dump(tree.Rows[0].Body); have != c.want {
			t.Errorf("%s\n%s", c.row, difference(c.want, have))
		}
	}
}

// A row that has its heading and no words yet leaves the next row alone; a heading written twice is one.
func TestHeadingsAlone(t *testing.T) {
	lib := library(t)
	tree, finds := Read("Row 1: Sc in each ch across.\nRow 2:\nRow 3: Row 3 (WS, B): Ch 1, sc in each st across.", ReadOptions{Library: lib})
	if len(tree.Rows) != 3 || finds.Faults() > 0 {
		t.Fatalf("%d rows, %v", len(tree.Rows), finds)
	}
	if r := tree.Rows[2]; len(tree.Rows[1].Body) != 0 || r.From != 3 || r.Side != 'W' || r.Yarn != "B" || len(r.Body) != 2 {
		t.Errorf("Row 2 has %d items; the last row is Row %d, side %c, yarn %q, %d items", len(tree.Rows[1].Body), r.From, r.Side, r.Yarn, len(r.Body))
	}
}

// TestConstructsReadBack prints every construct in US and in UK terms and reads it again.
func TestConstructsReadBack(t *testing.T) {
	lib := library(t)
	names, texts := cases(t, "testdata/constructs.txt")
	for i, text := range texts {
		tree, finds := Read(text, ReadOptions{Library: lib})
		if finds.Faults() > 0 {
			continue
		}
		us := PrintOptions{Library: lib, Terms: "us", Size: -1}
		uk := PrintOptions{Library: lib, Terms: "uk", Size: -1}
		british, _ := Read(Print(tree, uk), ReadOptions{Library: lib, UK: true})
		again, _ := Read(Print(british, us), ReadOptions{Library: lib})
		for j, row := range tree.Rows {
			if j >= len(british.Rows) || j >= len(again.Rows) {
				t.Errorf("%s: %d rows, %d in UK terms, %d again", names[i], len(tree.Rows), len(british.Rows), len(again.Rows))
				break
			}
			if want := dump(row); want != dump(british.Rows[j]) || want != dump(again.Rows[j]) {
				t.Errorf("%s\n%s\n%s", names[i], PrintRow(tree, j, uk), difference(want, dump(british.Rows[j])))
			}
		}
		if once, twice := Print(tree, us), Print(again, us); once != twice {
			t.Errorf("%s: printed again is not the same\n%s", names[i], difference(once, twice))
		}
	}
}

// TestFaultsAreNamed: every fault of a row is reported at its word, with the mend where one is likely, and the
// other rows stand.
func TestFaultsAreNamed(t *testing.T) {
	lib := library(t)
	for _, c := range []struct {
		row      string
		uk       bool
		severity diag.Severity
		id       string
		at       string
		mend     string
	}{
		{row: "Ch 1, dcc in each st across, turn.", severity: diag.Fault, id: "unread", at: "dcc in each st across", mend: "dc"},
		{row: "Ch 1, hcd in next st", severity: diag.Fault, id: "unread", at: "hcd in next st", mend: "hdc"},
		{row: "Ch 1, sc acrosss, turn.", severity: diag.Doubt, id: "misprint", at: "acrosss", mend: "across"},
		{row: "s1 st in next st", severity: diag.Doubt, id: "misprint", at: "s1", mend: "sl"},
		{row: "*ch 1, skip 1 st, sc in next st, turn.", severity: diag.Fault, id: "star", at: "*"},
		{row: "sc in next st; rep from * across", severity: diag.Fault, id: "star", at: "rep from * across"},
		{row: "sc in next st, 2 sc) in next st", severity: diag.Fault, id: "bracket", at: ")"},
		{row: "(sc, ch 1, sc in next st", severity: diag.Fault, id: "bracket", at: "("},
		{row: "(sc, ch 1, sc] in next st", severity: diag.Doubt, id: "bracket", at: "]", mend: ")"},
		{row: "Sc in next st, htr in last st", severity: diag.Fault, id: "unread", at: "htr in last st", mend: "hdc"},
		{row: "Sc in each st across", uk: true, severity: diag.Fault, id: "unread", at: "Sc in each st across", mend: "dc"},
		{row: "Rep Rows 3 and 2", severity: diag.Fault, id: "rows", at: "Rep Rows 3 and 2"},
		{row: "sc across. It lies flat here.", severity: diag.Note, id: "remark", at: "It lies flat here"},
	} {
		text := "Row 1: " + c.row + "\nRow 2: Ch 1, turn."
		tree, finds := Read(text, ReadOptions{Library: lib, UK: c.uk})
		if len(tree.Rows) != 2 || tree.Rows[1].Bad || tree.Rows[0].Bad != (c.severity == diag.Fault) {
			t.Errorf("%s: rows are not kept apart: %v", c.row, finds)
		}
		found := false
		for _, f := range finds {
			if f.ID != c.id || f.Severity != c.severity || text[f.Span.Start:f.Span.End] != c.at || f.Row != "Row 1" {
				continue
			}
			found = true
			switch {
			case c.mend == "" && f.Mend != nil, c.mend != "" && f.Mend == nil:
				t.Errorf("%s: mend is %v, want %q", c.row, f.Mend, c.mend)
			case c.mend != "" && f.Mend.Text != c.mend:
				t.Errorf("%s: mend is %q, want %q", c.row, f.Mend.Text, c.mend)
			}
		}
		if !found {
			t.Errorf("%s: no %s at %q, but %v", c.row, c.id, c.at, finds)
		}
	}
}

// TestSeveralFaultsInOneRow: the first does not hide the second.
func TestSeveralFaultsInOneRow(t *testing.T) {
	tree, finds := Read("Row 2: Ch 1, scc in next st, dc in next st, hcd in last st, turn.", ReadOptions{Library: library(t)})
	if finds.Faults() != 2 {
		t.Errorf("%d faults, want 2: %v", finds.Faults(), finds)
	}
	if row := tree.Rows[0]; !row.Bad || row.Lost != "scc" || len(row.Body) != 3 {
		t.Errorf("bad %v, lost at %q, %d instructions kept", row.Bad, row.Lost, len(row.Body))
	}
}

// TestDefinitions: a pattern's own stitches are known in all rows, before the trade's of the same name.
func TestDefinitions(t *testing.T) {
	lib := library(t)
	for _, c := range []struct{ text, name, want string }{
		{"Shell: 7 dc in same st.\nRow 1: shell in next st", "shell", "[Make{N:7 Kind:dc}]"},
		{"V-stitch (V-st): (dc, ch 2, dc) in st.\nRow 1: V-st in next st", "v-st", "[Make{N:1 Kind:dc} ChainN{N:2} Make{N:1 Kind:dc}]"},
		{"Row 1: gull in next st\nGull = (hdc, ch 1, hdc) in one st", "gull", "[Make{N:1 Kind:hdc} ChainN{N:1} Make{N:1 Kind:hdc}]"},
		{"Crossed pair: skip next st, dc in next st, dc in skipped st\nRow 1: crossed pair", "crossed pair",
			"[Skip{N:1 St} Make{N:1 Kind:dc Place:Place{Next N:1 St}} Make{N:1 Kind:dc Place:Place{Next N:1 Skipped}}]"},
	} {
		tree, finds := Read(c.text, ReadOptions{Library: lib})
		u := tree.Units[c.name]
		if u == nil || finds.Faults() > 0 {
			t.Errorf("%s: %v, %v", c.text, tree.Order, finds)
			continue
		}
		if have := dump(u.Body); have != c.want {
			t.Errorf("%s\n%s", c.text, difference(c.want, have))
		}
		if m, ok := tree.Rows[0].Body[0].(*Make); !ok || m.Unit != u || m.Kind != c.name {
			t.Errorf("%s: the row works %s", c.text, dump(tree.Rows[0].Body))
		}
	}
}

func TestDesignersUnitsAreReadInTheirTerms(t *testing.T) {
	tree, finds := Read("Row 1: gull in next st, 1 dc in last st", ReadOptions{Library: library(t), UK: true, Units: map[string]string{"Gull": "(htr, ch 1, htr) in one st"}})
	if finds.Faults() > 0 || dump(tree.Units["gull"].Body) != "[Make{N:1 Kind:hdc} ChainN{N:1} Make{N:1 Kind:hdc}]" {
		t.Errorf("%v, %v", tree.Units, finds)
	}
	if at := tree.Units["gull"].Body[0].At(); at != (diag.Span{}) {
		t.Errorf("a node from outside the rows has the place %v", at)
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		q       Num
		n, size int
		want    int
	}{
		{Plain(7), 3, 2, 7}, {Num{A: 4, B: 2}, 3, 0, 14}, {Num{B: 51, Sizes: []int{51, 57, 63}}, 0, 1, 57},
		{Num{B: 51, Sizes: []int{51, 57}}, 0, 5, 57},
	} {
		if have := c.q.At(c.n, c.size); have != c.want {
			t.Errorf("%+v for n %d, size %d: %d, want %d", c.q, c.n, c.size, have, c.want)
		}
	}
}

func TestPrintOneSizeAndLongNames(t *testing.T) {
	lib := library(t)
	tree, _ := Read("Row 2: Ch 1, sc in next 10 (13, 16) sts, skip next st, 2 dc in last st, turn. (11 (14, 17) sc)", ReadOptions{Library: lib})
	for _, c := range []struct {
		o    PrintOptions
		want string
	}{
		{PrintOptions{Terms: "us", Size: 1}, "Row 2: Ch 1, sc in next 13 sts, skip next st, 2 dc in last st, turn. (14 sc)"},
		{PrintOptions{Terms: "uk", Size: -1}, "Row 2: Ch 1, dc in next 10 (13, 16) sts, miss next st, 2 tr in last st, turn. (11 (14, 17) dc)"},
		{PrintOptions{Terms: "us", Long: true, Size: 0}, "Row 2: Chain 1, single crochet in next 10 stitches, skip next stitch, 2 double crochet in last stitch, turn. (11 single crochet)"},
	} {
		c.o.Library = lib
		if have := PrintRow(tree, 0, c.o); have != c.want {
			t.Errorf("have %s\nwant %s", have, c.want)
		}
	}
}

// TestLabels as the findings show them.
func TestLabels(t *testing.T) {
	lib := library(t)
	for heading, want := range map[string]string{
		"Row 4: ": "Row 4", "2nd rnd: ": "Rnd 2", "Rows 4-9: ": "Rows 4-9", "Rows 3 & 5: ": "Rows 3 and 5", "Rnds 4+: ": "Rnds 4 and up",
		"Foundation row: ": "Foundation row", "Next row: ": "Next row", "Edging: ": "Edging",
	} {
		tree, _ := Read(heading+"ch 1, turn", ReadOptions{Library: lib})
		if len(tree.Rows) != 1 || tree.Rows[0].Label() != want {
			t.Errorf("%q: %q, want %q", heading, strings.TrimSpace(tree.Rows[0].Label()), want)
		}
	}
}
