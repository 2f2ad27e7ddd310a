package cloth

import (
	"testing"

	"strandway/chart/layout"
	"strandway/model/diag"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/work"
)

// worked works rows and lays them out as cloth; rows that cannot be worked fail the test.
func worked(t testing.TB, rows string, n int) *layout.Plan {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	tree, found := syntax.Read(rows, syntax.ReadOptions{Library: lib})
	f, more := work.Work(lib, tree, work.Options{N: n})
	for _, d := range append(found, more...) {
		if d.Severity == diag.Fault {
			t.Error(d)
		}
	}
	return layout.Arrange(f, layout.Measured())
}
