package work_test

import (
	"testing"

	"strandway/model/syntax"
	"strandway/model/work"
)

// FuzzWork: whatever was read can be worked or is refused with a finding; nothing
// runs away, and every span lies in the text.
func FuzzWork(f *testing.F) {
	lib := library(f)
	for _, c := range examples(f) {
		f.Add(c.src, c.uk, uint8(c.n))
	}
	f.Fuzz(func(t *testing.T, src string, uk bool, n uint8) {
		if len(src) > 4000 {
			return
		}
		tree, _ := syntax.Read(src, syntax.ReadOptions{Library: lib, UK: uk})
		o := work.Options{N: int(n), Limit: 5_000}
		fab, findings := work.Work(lib, tree, o)
		checkFabric(t, fab)
		if len(fab.Stitches) > 12_000 {
			t.Errorf("%d stitches under a limit of 5000", len(fab.Stitches))
		}
		for _, x := range findings {
			if x.Message == "" || x.Span.Start < 0 || x.Span.End < x.Span.Start || x.Span.End > len(src) {
				t.Errorf("finding %+v", x)
			}
		}
		work.Steps(lib, tree, o)
		o.N = min(o.N, 5)
		work.Prove(lib, tree, o)
	})
}
