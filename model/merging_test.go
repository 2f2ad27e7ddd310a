package model_test

import (
	"strings"
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

func TestYarnsThatTouchAndMerge(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	head := "strandway = 1\n[[yarn]]\nletter = \"A\"\ncolour = %a\n[[yarn]]\nletter = \"B\"\ncolour = %b\n[[yarn]]\nletter = \"C\"\ncolour = \"#22334f\"\n" +
		"[[colourway]]\nname = \"Fog\"\nA = { colour = \"#8f9ba3\" }\nB = { colour = \"#97a0a5\" }\n" +
		"[[piece]]\nname = \"Swatch\"\nrows = \"\"\"\nFoundation (A): Ch 6.\nRow 1 (A): Sc in 2nd ch from hook and in each ch across, turn.\n" +
		"Row 2 (B): Ch 1, sc in each st across, turn.\n\"\"\"\n"
	for _, tt := range []struct {
		name, a, b string
		want       []string
	}{
		{"light and dark", "#2f5d7c", "#efe6d2", []string{`merge to every eye in colourway "Fog"`}},
		{"two navies", "#22334f", "#25304a", []string{"merge to every eye: lightness", `in colourway "Fog"`}},
		{"red and green of one lightness", "#c0504d", "#4f7f3f", []string{"merge in deuteranopia and greyscale", `in colourway "Fog"`}},
	} {
		p, err := pattern.Decode([]byte(strings.NewReplacer("%a", `"`+tt.a+`"`, "%b", `"`+tt.b+`"`).Replace(head)), "x.strand")
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range model.Work(lib, p, 0).Findings {
			if f.ID == "merging-yarns" {
				got = append(got, f.Message)
			}
		}
		if len(got) != len(tt.want) {
			t.Errorf("%s: %q, want %d findings: C touches nothing", tt.name, got, len(tt.want))
			continue
		}
		for i, words := range tt.want {
			if !strings.Contains(got[i], words) {
				t.Errorf("%s: %q, want %q in it", tt.name, got[i], words)
			}
		}
	}
}
