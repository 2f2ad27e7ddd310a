package chart

import (
	"math"
	"testing"

	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/corpus"
	"strandway/model/page"
	"strandway/model/stitch"
)

// TestEveryPageOfTheCorpusIsDrawn: whatever the rows make, read well or ill, every piece has a finite picture.
func TestEveryPageOfTheCorpusIsDrawn(t *testing.T) {
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range corpus.Files() {
		examples, err := corpus.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range examples {
			t.Run(e.Name, func(t *testing.T) {
				p, _ := page.Read(lib, e.Page, page.Options{})
				for _, piece := range model.Work(lib, p, 0).Pieces {
					drawn := layout.Arrange(piece.Fabric, layout.Drawn())
					for _, plan := range []*layout.Plan{drawn, layout.Arrange(piece.Fabric, layout.Measured())} {
						for id, pose := range plan.Poses {
							if size := math.Hypot(pose.Top.X, pose.Top.Y); math.IsNaN(size) || math.IsInf(size, 0) {
								t.Fatalf("%s: stitch %d stands at %v", piece.Piece.Name, id, pose.Top)
							}
						}
					}
					Draw(drawn, Options{Library: lib, Key: true})
				}
			})
		}
	}
}
