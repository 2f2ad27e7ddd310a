package stage

import (
	"image"
	"regexp"

	"strandway/model/steps"
)

// Step is step i as it is said on the stage: a left-hander meets left and right the other way round.
func (s *Stage) Step(i int) steps.Step {
	step := s.Steps.At(i)
	if s.o.LeftHanded {
		step.Says, step.Where, step.Count = otherHand(step.Says), otherHand(step.Where), otherHand(step.Count)
	}
	return step
}

// sideWord finds left and right; "right side" is the face of the fabric, not a place on it.
var sideWord = regexp.MustCompile(`\b(left|right)\b(?: sides?\b)?`)

func otherHand(s string) string {
	return sideWord.ReplaceAllStringFunc(s, func(word string) string {
		switch word {
		case "left":
			return "right"
		case "right":
			return "left"
		}
		return word
	})
}

// mirror turns a part of a picture over, left to right: a left-hander's work is the mirror image.
func mirror(dst *image.RGBA, part image.Rectangle) {
	part = part.Intersect(dst.Rect)
	for y := part.Min.Y; y < part.Max.Y; y++ {
		for a, b := part.Min.X, part.Max.X-1; a < b; a, b = a+1, b-1 {
			i, j := dst.PixOffset(a, y), dst.PixOffset(b, y)
			for k := range 4 {
				dst.Pix[i+k], dst.Pix[j+k] = dst.Pix[j+k], dst.Pix[i+k]
			}
		}
	}
}
