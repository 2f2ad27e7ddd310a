package syntax

import (
	"strings"
	"testing"
)

// FuzzRead reads any text: no panic, spans within the text, and output in proportion to the input.
func FuzzRead(f *testing.F) {
	_, texts := cases(f, "testdata/constructs.txt")
	for _, text := range texts {
		f.Add(text, false)
		f.Add(text, true)
	}
	lib := library(f)
	f.Fuzz(func(t *testing.T, text string, uk bool) {
		tree, finds := Read(text, ReadOptions{Library: lib, UK: uk})
		for _, x := range finds {
			if x.Span.Start < 0 || x.Span.End > len(text) || x.Span.Start > x.Span.End {
				t.Fatalf("finding %v points outside the text of %d bytes", x, len(text))
			}
		}
		if len(finds) > 2*len(text)+4 || len(tree.Rows) > len(text)+1 {
			t.Fatalf("%d findings and %d rows from %d bytes", len(finds), len(tree.Rows), len(text))
		}
		nodes := 0
		for _, row := range tree.Rows {
			if row.Span.End > len(text) || row.Span.Start > row.Span.End {
				t.Fatalf("%s lies outside the text", row.Label())
			}
			Walk(row.Body, func(n Node) bool {
				nodes++
				if at := n.At(); at.Start > at.End || at.End > len(text) {
					t.Fatalf("%T lies outside the text: %v", n, at)
				}
				return true
			})
		}
		if nodes > 4*len(text)+4 {
			t.Fatalf("%d instructions from %d bytes", nodes, len(text))
		}
		o := PrintOptions{Library: lib, Terms: "us", Size: -1}
		if out := Print(tree, o); len(out) > 100*len(text)+1000 {
			t.Fatalf("%d bytes printed from %d", len(out), len(text))
		}
	})
}

func BenchmarkRead(b *testing.B) {
	_, texts := cases(b, "testdata/constructs.txt")
	lib := library(b)
	piece := strings.Join(texts, "\n\n")
	for _, size := range []struct {
		name  string
		times int
	}{{"piece", 1}, {"1MB", 1 << 20 / len(piece)}} {
		text := strings.Repeat(piece+"\n\n", size.times)
		b.Run(size.name, func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				Read(text, ReadOptions{Library: lib})
			}
		})
	}
}

func BenchmarkReadPlainRows(b *testing.B) {
	lib := library(b)
	text := "Ch 20.\n" + strings.Repeat("Row 3 (RS): Ch 3 (counts as dc), dc in next 2 sts, *ch 1, skip next st, dc in next 3 sts; rep from * to last 2 sts, dc in last 2 sts, turn. (21 dc, 9 ch-1 sps)\n", 2000)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		Read(text, ReadOptions{Library: lib})
	}
}
