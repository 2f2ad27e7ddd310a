package syntax

import (
	"strings"
	"testing"
	"time"
)

// TestReadingIsLinear reads texts that a careless reader would read over and over.
func TestReadingIsLinear(t *testing.T) {
	lib := library(t)
	for _, unit := range []string{
		"in next st work (dc, [", "(", "[1 sc (", "*", "* sc, (", "in st work in st ", "( in ( ", "and in ", "1 (1, ", "sc ", "xyzzy ", "Row 1: (", "a: b: ",
		"rep from * ", "(yo ", "work ", "working work ", "to work the ", "in work ", "1. ", "skip ", ", and each ", "Row 1 ", "ending with ", "**", "3-dc ", "2 sc, ", "- 1 sc, ", "in each st and ", "between ",
	} {
		read := func(n int) time.Duration {
			text := "Row 1: " + strings.Repeat(unit, n)
			start := time.Now()
			Read(text, ReadOptions{Library: lib})
			return time.Since(start)
		}
		read(100)
		if took := read(20000); took > 2*time.Second {
			t.Errorf("20000 times %q took %v; 2000 times %v", unit, took, read(2000))
		}
	}
}
