package work_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/work"
)

var (
	deeds = [...]string{"join", "pick up", "drop", "cut", "change to", "hold"}
	sides = [...]string{"", " left", " right", " bottom", " top"}
)

// events writes what happens to the yarns: "row 2: join B right".
func events(f *fabric.Fabric) string {
	var out []string
	for _, e := range f.Events {
		out = append(out, fmt.Sprintf("%d: %s %s%s", e.Row, deeds[e.Do], f.Yarns[e.Yarn], sides[e.Side]))
	}
	return strings.Join(out, "; ")
}

func TestYarnEvents(t *testing.T) {
	for _, c := range []struct{ name, src, want string }{
		{"one yarn", `Ch 8.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across. Fasten off.
`, "1: join A; 2: cut A right"},
		{"two yarns, rows in pairs not turned", `With A, ch 8.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn.
Row 2 (RS, B): Ch 1, sc in each st across, turn.
Row 3 (WS, A): Ch 1, sc in each st across, do not turn.
Row 4 (WS, B): Ch 1, sc in each st across, turn.
`, "1: join A; 2: drop A left; 2: join B right; 3: drop B left; 3: pick up A left; 4: drop A right; 4: pick up B left"},
		{"stripes of two rows", `With A, ch 8.
Row 1 (RS): With A, sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, changing to B in last st, turn.
Row 3: With B, ch 1, sc in each st across, turn.
Row 4: Ch 1, sc in each st across, turn. Drop B.
Row 5: With A, ch 1, sc in each st across, turn.
`, "1: join A; 2: drop A right; 2: join B right; 2: change to B right; 4: drop B right; 5: pick up A right"},
		{"carried within the row", `With A, ch 8.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in next 3 sts, change to B, sc in next 2 sts, change to A, sc in next 2 sts, turn.
`, "1: join A; 2: drop A; 2: join B; 2: change to B; 2: drop B; 2: pick up A; 2: change to A"},
		{"cut after the last of the rows repeated", `With A, ch 8.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Rows 3-5: Rep Row 2. Fasten off A.
Row 6 (B): Rep Row 2.
`, "1: join A; 5: cut A left; 6: join B left"},
		{"cut after the last row of a range", `With A, ch 8.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-4: Ch 1, sc in each st across, turn. Fasten off A.
Row 5 (B): Ch 1, sc in each st across.
`, "1: join A; 4: cut A right; 5: join B right"},
		{"a held loop", `With A, ch 8.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, place loop on marker, do not turn.
Row 2 (RS): Join B in first st, ch 1, sc in each st across. Fasten off B. Turn.
`, "1: join A; 1: hold A left; 2: join B right; 2: cut B left"},
	} {
		f, _ := workRows(t, c.src, work.Options{N: 1})
		if got := events(f); got != c.want {
			t.Errorf("%s:\n%s, want\n%s", c.name, got, c.want)
		}
	}
}

func TestYarnOfStitches(t *testing.T) {
	f := worked(t, `With A, ch 8.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in next 3 sts, change to B, sc in next 2 sts, change to A, sc in next 2 sts, turn.
Row 3: With C, ch 1, sc in each st across, turn.
`, work.Options{N: 1})
	got := ""
	for id := f.Rows[2].First; int(id) < len(f.Stitches); id++ {
		got += f.Yarns[f.Stitches[id].Yarn]
	}
	if want := "AAAABBAA" + "CCCCCCCC"; got != want {
		t.Errorf("yarns %s, want %s", got, want)
	}
	if f.Yarns[f.Rows[3].Yarn] != "C" || f.Yarns[f.Rows[2].Yarn] != "A" {
		t.Errorf("row 2 begins with %s, row 3 with %s", f.Yarns[f.Rows[2].Yarn], f.Yarns[f.Rows[3].Yarn])
	}
}

func TestDirections(t *testing.T) {
	f := worked(t, `With A, ch 8.
Row 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn.
Row 2 (RS, B): Ch 1, sc in each st across, turn.
Row 3 (WS, A): Ch 1, sc in each st across, turn.
Row 4 (RS, A): Ch 1, sc in each st across, do not turn.
Row 5 (RS, A): Ch 1, rsc in each st across. Fasten off.
`, work.Options{N: 1})
	got := ""
	for _, r := range f.Rows[1:] {
		side, way := "RS", "<"
		if r.WS {
			side = "WS"
		}
		if r.FromLeft {
			way = ">"
		}
		got += side + way + " "
		// columns rise to the right as seen from the right side, whichever way the row is worked
		if first, last := f.Stitches[f.Landings[r.Land0]].Col, f.Stitches[f.Landings[r.Land1-1]].Col; (first < last) != r.FromLeft {
			t.Errorf("%s runs from column %g to %g", r.Label, first, last)
		}
	}
	if want := "RS< RS< WS> RS< RS> "; got != want {
		t.Errorf("rows go %s, want %s", got, want)
	}
	if !f.Rows[5].Backward || f.Rows[4].Backward {
		t.Error("only the crab stitch row is worked backward")
	}
}

// TestMarksAgainstTurns: where a side mark and the turns differ, the row is worked one way throughout: every stitch stands
// upon the one below it.
func TestMarksAgainstTurns(t *testing.T) {
	for _, c := range []struct{ name, third, fourth, fifth, want string }{
		{"the mark is borne out by the next", "Row 3 (WS, A): Ch 1, sc in each st across, do not turn.", "Row 4 (RS, B): Ch 1, sc in each st across, turn.",
			"Row 5 (WS, A): Ch 1, sc in each st across, turn.", "RS< RS< WS> RS< WS> "},
		{"the turns are borne out by the next", "Row 3 (RS, A): Ch 1, sc in each st across, do not turn.", "Row 4 (WS, B): Ch 1, sc in each st across, turn.",
			"Row 5 (RS, A): Ch 1, sc in each st across, turn.", "RS< RS< WS> WS> RS< "},
		{"words of turning weigh more than the last mark", "Row 3 (WS, A): Ch 1, sc in each st across, do not turn.", "Row 4 (B): Ch 1, sc in each st across, turn.",
			"Row 5 (WS, A): Ch 1, sc in each st across, turn.", "RS< RS< WS> WS> RS< "},
		{"a mark weighs more than no words", "Row 3 (A): Ch 1, sc in each st across.", "Row 4: Ch 1, sc in each st across.",
			"Row 5 (RS, A): Ch 1, sc in each st across.", "RS< RS< WS> RS< RS< "},
	} {
		f, findings := workRows(t, "With A, ch 8.\nRow 1 (RS, A): Sc in 2nd ch from hook and in each ch across, do not turn.\n"+
			"Row 2 (RS, B): Ch 1, sc in each st across, turn.\n"+c.third+"\n"+c.fourth+"\n"+c.fifth+"\n", work.Options{N: 1})
		if !slices.ContainsFunc(findings, func(x diag.Finding) bool { return x.ID == "side" }) {
			t.Errorf("%s: nothing is said of the mark", c.name)
		}
		got := ""
		for _, r := range f.Rows[1:] {
			side, way := "RS", "<"
			if r.WS {
				side = "WS"
			}
			if r.FromLeft {
				way = ">"
			}
			got += side + way + " "
		}
		if got != c.want {
			t.Errorf("%s: rows go %s, want %s", c.name, got, c.want)
		}
		for id := range f.Stitches {
			for _, b := range f.Of(int32(id)) {
				if s, below := &f.Stitches[id], &f.Stitches[b.At]; s.Row > 1 && !s.Has(fabric.Chain) && s.Col != below.Col {
					t.Errorf("%s: stitch %d of row %d is in column %g and stands in column %g", c.name, id, s.Row, s.Col, below.Col)
				}
			}
		}
	}
}

// TestColumnsOfShells: the stitches of a group lie side by side in the order of the columns.
func TestColumnsOfShells(t *testing.T) {
	f := worked(t, shellBlanket, work.Options{N: 3})
	for i := range f.Rows[1:5] {
		r := &f.Rows[i+1]
		ids := f.LandingsOf(i + 1)
		for k := 1; k < len(ids); k++ {
			a, b := f.Stitches[ids[k-1]].Col, f.Stitches[ids[k]].Col
			if r.FromLeft && b <= a || !r.FromLeft && b >= a {
				t.Errorf("%s: stitch %d lies at %g, the one before it at %g", r.Label, k, b, a)
			}
		}
	}
}

func TestRepeatMarks(t *testing.T) {
	f := worked(t, `Ch 14.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in first st, *ch 2, skip 2 sts, sc in next st; rep from * across, turn.
Row 3: Ch 1, sc in first st, [2 sc in next ch-2 sp, sc in next sc] 4 times, turn.
`, work.Options{N: 1})
	var got []string
	for _, r := range f.Repeats {
		var names []string
		for id := r.First; id < r.Last; id++ {
			names = append(names, f.Kind(id).Name)
		}
		got = append(got, fmt.Sprint(r.Row, names))
	}
	four := func(s string) []string { return []string{s, s, s, s} }
	want := append(four("2 [ch ch sc]"), four("3 [sc sc sc]")...)
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("workings %v, want %v", got, want)
	}
}

func TestCorners(t *testing.T) {
	for _, c := range []struct {
		name, src string
		want      []int // corners by row
	}{
		{"granny square", `Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 times more, join with sl st in top of beg ch-3.
Rnd 2: Sl st in next 2 dc and in next ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice more, ch 1, join with sl st in top of beg ch-3.
`, []int{4, 4}},
		{"square of single crochet", `Ch 4; join to form a ring.
Rnd 1: Ch 1, 8 sc in ring, join with sl st in first sc. (8 sc)
Rnd 2: Ch 1, *sc in next st, 3 sc in next st; rep from * around, join with sl st in first sc. (16 sc)
Rnd 3: Ch 1, *sc in next 2 sts, 3 sc in next st, sc in next st; rep from * around, join with sl st in first sc. (24 sc)
`, []int{0, 4, 4}},
		{"circle", `Make a magic ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around, join. (24)
`, []int{0, 0}},
	} {
		f := worked(t, c.src, work.Options{N: 1})
		for i, want := range c.want {
			n := 0
			for id := f.Rows[i+1].First; id < f.Rows[i+1].Last; id++ {
				if f.Stitches[id].Has(fabric.Corner) {
					n++
				}
			}
			if n != want {
				t.Errorf("%s, round %d: %d corners, want %d", c.name, i+1, n, want)
			}
		}
	}
}

// TestStitchFacts: chains that stand for a stitch, picots, long stitches in front and behind, lumps.
func TestStitchFacts(t *testing.T) {
	f := worked(t, `Ch 11.
Row 1: Dc in 4th ch from hook and in each ch across, turn. (9 dc)
Row 2: Ch 5 (counts as dc, ch 2), skip next 2 sts, dc in next st, ch 2, skip next 2 sts, dc in next st, ch 2, skip 1 st, dc in top of tch, turn.
Row 3: Ch 2 (does not count as st), hdc in each st across, turn.
`, work.Options{N: 1})
	tch := f.Stitches[f.Rows[2].First]
	if !tch.Has(fabric.TurningChain) || tch.Chains != 3 || f.Kind(f.Rows[2].First).Name != "dc" || f.Rows[2].Count != 4 || f.Rows[2].Chains != 6 {
		t.Errorf("turning chain %+v in a row of %d stitches and %d chains", tch, f.Rows[2].Count, f.Rows[2].Chains)
	}
	loose := 0
	for id := f.Rows[3].First; id < f.Rows[3].Last; id++ {
		if f.Stitches[id].Has(fabric.Chain | fabric.NoLanding) {
			loose++
		}
	}
	if loose != 2 || f.Rows[3].Count != 4 {
		t.Errorf("%d uncounted chains beside %d stitches, want 2 beside 4", loose, f.Rows[3].Count)
	}
	hidden := 0
	for id := range f.Rows[0].Last {
		if f.Stitches[id].Has(fabric.NoLanding) {
			hidden++
		}
	}
	if hidden != 2 || f.Rows[0].Chains != 11 {
		t.Errorf("%d of %d foundation chains are turning chain only, want 2 of 11", hidden, f.Rows[0].Chains)
	}

	f = worked(t, `Ch 8.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Row 3: Ch 1, sc in next 2 sts, dc in next st 2 rows below, sc in next st, popcorn in next st, 3-dc cluster in next st, sc in next st, turn.
Row 4: Ch 1, sc in next 3 sts, skip 1 st, dc in next st, working behind it, dc in skipped st, sc in next 2 sts, turn.
`, work.Options{N: 1})
	first := f.Rows[3].First
	if s := f.Stitches[first+3]; !s.Has(fabric.Long) || s.Has(fabric.Behind) || f.Rows[3].Covered != 1 {
		t.Errorf("the long stitch is %+v, %d covered", s, f.Rows[3].Covered)
	}
	if k := f.Kind(first + 5); k.Lump != stitch.Popcorn || k.Legs < 2 {
		t.Errorf("the popcorn has %d legs, lump %d", k.Legs, k.Lump)
	}
	if k := f.Kind(first + 6); k.Lump != stitch.Cluster || k.Legs != 3 {
		t.Errorf("the cluster has %d legs, lump %d", k.Legs, k.Lump)
	}
	if s := f.Stitches[f.Rows[4].First+5]; !s.Has(fabric.Crossed | fabric.Behind) {
		t.Errorf("the crossed stitch is %+v", s)
	}
}

func TestPicots(t *testing.T) {
	f := worked(t, `Picot: ch 4, sl st in 4th ch from hook.
Ch 8.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in next 3 sts, picot, sc in next 2 sts, ch 3, sl st in 3rd ch from hook, sc in next 2 sts, turn.
`, work.Options{N: 1})
	var got []string
	for id := f.Rows[2].First; id < f.Rows[2].Last; id++ {
		if s := f.Stitches[id]; s.Has(fabric.Picot) {
			got = append(got, fmt.Sprintf("%d chains on stitch %d", s.Chains, f.Of(id)[0].At-f.Rows[2].First))
		}
	}
	if want := "[4 chains on stitch 3 3 chains on stitch 6]"; fmt.Sprint(got) != want {
		t.Errorf("picots %v, want %s", got, want)
	}
	if f.Rows[2].Count != 7 || f.Rows[2].Chains != 0 {
		t.Errorf("%d stitches and %d chains, want 7 and 0", f.Rows[2].Count, f.Rows[2].Chains)
	}
}

// TestUnits: groups keep the name they were made by.
func TestUnits(t *testing.T) {
	f := worked(t, `V-st: (dc, ch 1, dc) in st or sp indicated.
Ch 10.
Row 1: V-st in 5th ch from hook, *skip 2 ch, V-st in next ch; rep from * to last 2 ch, skip 1 ch, dc in last ch, turn.
`, work.Options{N: 1})
	var got []string
	for _, u := range f.Units {
		got = append(got, fmt.Sprintf("%s of %d", u.Name, u.Last-u.First))
	}
	if want := "[v-st of 3 v-st of 3]"; fmt.Sprint(got) != want {
		t.Errorf("groups %v, want %s", got, want)
	}
}

func TestRowsStandUnderTheHeadingThatRepeatsThem(t *testing.T) {
	f := worked(t, `Ch 8.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Rows 3-4: Rep Row 2.
`, work.Options{N: 1})
	for r, want := range []struct{ source, under int }{{0, 0}, {1, 1}, {2, 2}, {2, 3}, {2, 3}} {
		if row := f.Rows[r]; row.Source != want.source || row.Under != want.under {
			t.Errorf("%s: words of row %d, under %d, want %d and %d", row.Label, row.Source, row.Under, want.source, want.under)
		}
	}
}
