package syntax

import (
	"fmt"
	"os"
	"strings"
	"testing"

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

func TestTmp(t *testing.T) {
	lib := library(t)
	for _, f := range strings.Fields(os.Getenv("TMPFILES")) {
		b, _ := os.ReadFile(f)
		for _, part := range strings.Split(string(b), "=== ")[1:] {
			head, text, _ := strings.Cut(part, "\n")
			var rows []string
			for _, l := range strings.Split(text, "\n") {
				if l != "" && strings.ContainsAny(l[:1], ">/!?") {
					continue
				}
				rows = append(rows, l)
			}
			text = strings.Join(rows, "\n")
			uk := strings.Contains(head, " uk")
			tree, finds := Read(text, ReadOptions{Library: lib, UK: uk})
			for _, f := range finds {
				fmt.Println(head, "|", f.String(), "|", text[f.Span.Start:f.Span.End])
			}
			if finds.Faults() > 0 {
				continue
			}
			want := dumpTree(tree)
			for _, terms := range []string{"us", "uk"} {
				out := Print(tree, PrintOptions{Library: lib, Terms: terms, Size: -1})
				t2, finds := Read(out, ReadOptions{Library: lib, UK: terms == "uk"})
				for _, f := range finds {
					if f.Severity > 0 {
						fmt.Println("AGAIN", head, "|", f.String(), "|", out[f.Span.Start:f.Span.End])
					}
				}
				if got := dumpTree(t2); got != want {
					a, b := strings.Split(want, "\n"), strings.Split(got, "\n")
					for i := range min(len(a), len(b)) {
						if a[i] != b[i] {
							fmt.Println("DIFF", head, terms, "\n  ", a[i], "\n  ", b[i], "\n", out)
							break
						}
					}
				} else if out2 := Print(t2, PrintOptions{Library: lib, Terms: terms, Size: -1}); out2 != out {
					fmt.Println("NOTFIXED", head, "\n", out, "\n", out2)
				}
				if os.Getenv("SHOW") != "" {
					fmt.Println("--", head, terms)
					fmt.Println(out)
				}
			}
		}
	}
}
