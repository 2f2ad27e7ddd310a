package layout

import (
	"strings"
	"testing"

	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// swatch is rows with what their plan is expected to be.
type swatch struct {
	name    string
	rows    string
	manner  Manner
	corners int
	crossed int     // legs that cross by intent
	missed  float64 // greatest mean height error, u
	repeat  string  // label of the bracket across, "" for none
	upward  string
}

var swatches = []swatch{
	{name: "sc", repeat: "", rows: `
Ch n + 1.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc in each st across, turn.
Rows 3-10: Rep Row 2.`},
	{name: "dc", rows: `
Ch n + 2.
Row 1: Dc in 4th ch from hook and in each ch across, turn.
Row 2: Ch 3 (counts as dc), dc in next st and in each st across, turn.
Rows 3-6: Rep Row 2.`},
	{name: "V-stitch", missed: .03, repeat: "3 sts", rows: `
Ch 3n + 5.
Row 1: Dc in 4th ch from hook, *skip 1 ch, (dc, ch 1, dc) in next ch, skip 1 ch; rep from * to last ch, dc in last ch, turn.
Row 2: Ch 3 (counts as dc), *(dc, ch 1, dc) in next ch-1 sp; rep from * across, dc in top of tch, turn.
Rows 3-6: Rep Row 2.`},
	{name: "shells", missed: .05, repeat: "6 sts", upward: "Rows 2–3", rows: `
Ch 6n + 2.
Row 1: Sc in 2nd ch from hook, *skip 2 ch, 5 dc in next ch, skip 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first sc, *skip 2 dc, sc in next dc, skip 2 dc, 5 dc in next sc; rep from * across, ending last rep with 3 dc in last sc, turn.
Row 3: Ch 1, sc in first dc, *skip 2 dc, 5 dc in next sc, skip 2 dc, sc in next dc; rep from * across, turn.
Rows 4-7: Rep Rows 2-3.`},
	{name: "ripple", manner: Ripple, missed: .06, repeat: "14 sts", rows: `
Ch 14n + 3.
Row 1: Dc in 3rd ch from hook (skipped 2 ch count as dc), dc in each of next 5 ch, *dc3tog over next 3 ch, dc in each of next 5 ch, 3 dc in next ch, dc in each of next 5 ch; rep from * to last 9 ch, dc3tog over next 3 ch, dc in each of next 5 ch, 2 dc in last ch, turn.
Row 2: Ch 3 (counts as dc), dc in same st, dc in next 5 sts, *dc3tog, dc in next 5 sts, 3 dc in next st, dc in next 5 sts; rep from * to last 9 sts, dc3tog, dc in next 5 sts, 2 dc in top of tch, turn.
Rows 3-5: Rep Row 2.`},
	{name: "long stitches", repeat: "4 sts", missed: .02, rows: `
With A, ch 4n + 4.
Row 1 (RS): With A, sc in 2nd ch from hook and in each ch across. Do not turn. Drop A.
Row 2 (RS): With B, ch 1, sc in first 3 sts, *ch 1, skip next st, sc in next 3 sts; rep from * across, turn.
Row 3 (WS): With A, ch 1, sc in first 3 sts, *dc in next sc 2 rows below, sc in next 3 sts; rep from * across. Do not turn. Drop A.
Row 4 (WS): With B, ch 1, sc in each st across, turn.
Row 5 (RS): With A, ch 1, sc in each st across. Do not turn.
Row 6 (RS): With B, ch 1, sc in first 3 sts, *ch 1, skip next st, sc in next 3 sts; rep from * across, turn.
Row 7 (WS): With A, ch 1, sc in first 3 sts, *dc in next sc 2 rows below, sc in next 3 sts; rep from * across. Do not turn.`},
	{name: "post rib", repeat: "2 sts", rows: `
Ch 2n + 4.
Row 1: Dc in 4th ch from hook and in each ch across, turn.
Row 2: Ch 2 (counts as dc), *fpdc around next st, bpdc around next st; rep from * to last st, dc in top of tch, turn.
Rows 3-6: Rep Row 2.`},
	{name: "net", missed: .3, repeat: "4 sts", upward: "Rows 2–3", rows: `
Ch 4n + 2.
Row 1: Sc in 2nd ch from hook, *ch 5, skip 3 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 5 (counts as dc, ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn.
Row 3: Ch 1, sc in first dc, *ch 5, sc in next ch-5 sp; rep from * to last ch-2 sp, ch 5, sc in top of tch, turn.
Rows 4-7: Rep Rows 2-3.`},
	{name: "pineapples", missed: .25, repeat: "20 sts", rows: `
Ch 20n + 5.
Row 1: (2 dc, ch 2, 2 dc) in 5th ch from hook, *ch 3, skip 9 ch, 6 dc in next ch, ch 3, skip 9 ch, (2 dc, ch 2, 2 dc) in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 3, skip 2 dc, (dc in next dc, ch 1) 5 times, dc in next dc, ch 3, skip next ch-3 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.
Row 3: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 3, skip next ch-3 sp, sc in next ch-1 sp, (ch 3, sc in next ch-1 sp) 4 times, ch 3, skip next ch-3 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.
Row 4: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 3, skip next ch-3 sp, sc in next ch-3 sp, (ch 3, sc in next ch-3 sp) 3 times, ch 3, skip next ch-3 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.
Row 5: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 3, skip next ch-3 sp, sc in next ch-3 sp, (ch 3, sc in next ch-3 sp) 2 times, ch 3, skip next ch-3 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.
Row 6: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 4, skip next ch-3 sp, sc in next ch-3 sp, ch 3, sc in next ch-3 sp, ch 4, skip next ch-3 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.
Row 7: Ch 3 (counts as dc), (2 dc, ch 2, 2 dc) in next ch-2 sp, *ch 5, skip next ch-4 sp, sc in next ch-3 sp, ch 5, skip next ch-4 sp, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * across, dc in top of tch, turn.`},
	{name: "crossed dc", crossed: 3, missed: .06, repeat: "2 sts", rows: `
Ch 2n + 4.
Row 1: Dc in 4th ch from hook and in each ch across, turn.
Row 2: Ch 3 (counts as dc), *skip next st, dc in next st, dc in skipped st; rep from * to last st, dc in last st, turn.
Row 3: Ch 3 (counts as dc), dc in next st and in each st across, turn.`},
	{name: "popcorns", repeat: "4 sts", rows: `
Ch 4n + 5.
Row 1: Dc in 4th ch from hook and in each ch across, turn.
Row 2: Ch 3 (counts as dc), dc in next 2 sts, *popcorn in next st, dc in next 3 sts; rep from * across, turn.
Row 3: Ch 3 (counts as dc), dc in next st and in each st across, turn.`},
	{name: "granny square", manner: Polygon, corners: 4, missed: .25, rows: `
Ch 4, join with sl st to form ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of beg ch-3.
Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * around, join.
Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around, join.`},
	{name: "solid square", manner: Polygon, corners: 4, missed: .25, rows: `
Ch 4, join with sl st to form ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3.
Rnd 2: Ch 3 (counts as dc), dc in next 2 sts, (2 dc, ch 2, 2 dc) in corner sp, *dc in next 3 sts, (2 dc, ch 2, 2 dc) in corner sp; rep from * 2 more times, join.
Rnd 3: Ch 3 (counts as dc), dc in next 4 sts, (2 dc, ch 2, 2 dc) in corner sp, *dc in next 7 sts, (2 dc, ch 2, 2 dc) in corner sp; rep from * 2 more times, dc in next 2 sts, join.`},
	{name: "circle", manner: Circle, missed: .1, rows: `
Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (24 dc)
Rnd 3: Ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, join. (36 dc)`},
	{name: "spiral", manner: Circle, missed: .1, rows: `
Rnd 1: 6 sc in magic ring.
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
Rnd 4: *Sc in next 2 sts, 2 sc in next st; rep from * around. (24)`},
	{name: "hat", manner: Circle, missed: .1, rows: `
Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, join with sl st in top of beg ch-3. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (24 dc)
Rnd 3: Ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, join. (36 dc)
Rnds 4-9: Ch 3 (counts as dc), dc in each st around, join. (36 dc)`},
	{name: "shawl", manner: Point, corners: 1, missed: .3, rows: `
Ch 4, join with sl st to form ring.
Row 1 (RS): Ch 4 (counts as dc, ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn.
Row 2: Ch 4 (counts as dc, ch 1), 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in last dc, turn.
Row 3: Ch 4 (counts as dc, ch 1), 3 dc in next ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in last dc, turn.`},
	{name: "corner to corner", manner: Blocks, missed: 1.2, rows: `
Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch, turn.
Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in next ch-3 sp, ch 3, 3 dc in same sp, turn.
Row 3: Ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * across, turn.`},
	{name: "crescent", manner: Point, missed: .3, rows: `
Ch 4.
Row 1: 6 dc in 4th ch from hook (skipped 3 ch count as dc), turn. (7 dc)
Row 2: Ch 3 (counts as dc), 2 dc in first st, 2 dc in next 5 sts, 3 dc in top of tch, turn. (16 dc)
Row 3: Ch 3 (counts as dc), 2 dc in first st, *dc in next st, 2 dc in next st; rep from * to last st, 3 dc in top of tch, turn. (27 dc)`},
	{name: "tube", manner: Tube, rows: `
Ch 24, join with sl st to form a ring.
Rnd 1: Ch 1, sc in each ch around, join. (24 sc)
Rnds 2-6: Ch 1, sc in each st around, join. (24 sc)`},
	{name: "edged swatch", missed: .03, repeat: "3 sts", rows: `
Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Rows 2-8: Ch 1, sc in each st across, turn.
Rnd 9: Ch 1, sc evenly around, working 3 sc in each corner, join with sl st to first sc.
Rnd 10: Ch 1, sc in each st around, join.`},
}

// swatchOf reads and works rows; it fails the test on findings that stop the work.
func swatchOf(t testing.TB, rows string, n int) *fabric.Fabric {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	tree, finds := syntax.Read(strings.TrimSpace(rows)+"\n", syntax.ReadOptions{Library: lib})
	for _, f := range finds {
		t.Log(f)
	}
	fab, finds := work.Work(lib, tree, work.Options{N: n})
	for _, f := range finds {
		t.Log(f)
	}
	return fab
}
