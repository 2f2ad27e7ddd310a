package stage

import (
	"image"
	"strings"
	"testing"

	"strandway/model/steps"
)

func TestOtherHand(t *testing.T) {
	for said, want := range map[string]string{
		"Row 3, worked from right to left, the right side facing": "Row 3, worked from left to right, the right side facing",
		"join B at the left edge":                                 "join B at the right edge",
		"the wrong side facing":                                   "the wrong side facing",
	} {
		if got := otherHand(said); got != want {
			t.Errorf("%q became %q, want %q", said, got, want)
		}
	}
}

// For a left-hander chart and cloth are the mirror image, and the rest of the stage stays.
func TestTheStageOfALeftHander(t *testing.T) {
	frames := [2]*image.RGBA{}
	var words [2]string
	var s *Stage
	for i, left := range []bool{false, true} {
		s = set(t, "groyne-runner", steps.Stitch)
		s.o.LeftHanded = left
		frames[i] = frameOf(t, s, 25, image.Pt(Width, Height))
		words[i] = s.Step(25).Where + s.Step(25).Says
	}
	at := s.panes().chart
	differ := 0
	for y := int(at.Min.Y) + 30; y < int(at.Max.Y)-30; y++ {
		for x := int(at.Min.X) + 2; x < int(at.Max.X)-2; x++ {
			other := int(at.Min.X) + int(at.Max.X) - 1 - x
			if frames[0].RGBAAt(x, y) != frames[1].RGBAAt(other, y) {
				differ++
			}
		}
	}
	if differ > 0 {
		t.Errorf("%d pixels of the chart are not the mirror image", differ)
	}
	if frames[0].RGBAAt(40, 60) != frames[1].RGBAAt(40, 60) {
		t.Error("the rows beside the pictures changed")
	}
	if strings.Contains(words[0], "left") && words[0] == words[1] {
		t.Errorf("the words stay %q", words[0])
	}
}
