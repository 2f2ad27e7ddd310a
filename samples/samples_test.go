package samples_test

import (
	"testing"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/samples"
)

func TestSamplesOpenWithNothingToSay(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	if len(samples.Names()) < 4 {
		t.Fatalf("only %d samples", len(samples.Names()))
	}
	for _, name := range samples.Names() {
		src, err := samples.Read(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := pattern.Decode(src, name)
		if err != nil {
			t.Fatal(err)
		}
		if string(p.Encode()) != string(src) {
			t.Errorf("%s is not in the form in which it is saved", name)
		}
		if len(p.Colourways) < 3 || len(p.Sizes) == 0 {
			t.Errorf("%s has %d colourways and %d sizes", name, len(p.Colourways), len(p.Sizes))
		}
		for size := range p.Sizes {
			worked := model.Work(lib, p, size)
			for _, f := range worked.Findings {
				t.Errorf("%s, size %s, %s: %v", name, p.Sizes[size].Name, f.Piece, f)
			}
			for _, piece := range worked.Pieces {
				if len(piece.Fabric.Stitches) == 0 {
					t.Errorf("%s, size %s: %s has no stitches", name, p.Sizes[size].Name, piece.Piece.Name)
				}
			}
		}
	}
}

func TestStartersBeginWithNothingToSay(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range samples.Starters() {
		src, err := samples.Starter(name)
		if err != nil {
			t.Fatal(err)
		}
		p, err := pattern.Decode(src, name)
		if err != nil {
			t.Fatal(err)
		}
		if string(p.Encode()) != string(src) {
			t.Errorf("%s is not in the form in which it is saved:\n%s", name, p.Encode())
		}
		empty := p.Pieces[0].Rows == ""
		if empty != (name == "blank") {
			t.Errorf("%s has the rows %q", name, p.Pieces[0].Rows)
		}
		for _, f := range model.Work(lib, p, 0).Findings {
			if !empty { // of an empty page there is one thing to say: how to begin
				t.Errorf("%s: %v", name, f)
			}
		}
	}
}
