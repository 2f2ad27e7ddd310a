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
			_, finds := Read(text, ReadOptions{Library: lib, UK: strings.Contains(head, " uk")})
			for _, f := range finds {
				fmt.Println(head, "|", f.String(), "|", text[f.Span.Start:f.Span.End])
			}
		}
	}
}
