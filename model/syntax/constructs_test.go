package syntax

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden files anew")

// cases reads a file of named texts: "=== name", then the text.
func cases(t testing.TB, file string) (names, texts []string) {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range strings.Split("\n"+string(b), "\n=== ")[1:] {
		name, text, _ := strings.Cut(part, "\n")
		names = append(names, name)
		texts = append(texts, strings.TrimSpace(text))
	}
	return names, texts
}

// TestConstructs reads every construct of the trade's notation and writes it in the canonical form.
func TestConstructs(t *testing.T) {
	const file, golden = "testdata/constructs.txt", "testdata/constructs.golden"
	lib := library(t)
	var b strings.Builder
	names, texts := cases(t, file)
	for i, text := range texts {
		tree, finds := Read(text, ReadOptions{Library: lib, Sizes: []string{"S", "M", "L"}})
		fmt.Fprintf(&b, "=== %s\n%s", names[i], Print(tree, PrintOptions{Library: lib, Terms: "us", Size: -1}))
		for _, f := range finds {
			fmt.Fprintf(&b, "! %s | %s\n", f, text[f.Span.Start:f.Span.End])
		}
	}
	if *update {
		if err := os.WriteFile(golden, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	have, wanted := strings.Split(b.String(), "\n"), strings.Split(string(want), "\n")
	for i := range min(len(have), len(wanted)) {
		if have[i] != wanted[i] {
			t.Fatalf("%s:%d:\n have %s\n want %s", golden, i+1, have[i], wanted[i])
		}
	}
	if len(have) != len(wanted) {
		t.Fatalf("%d lines, want %d", len(have), len(wanted))
	}
}
