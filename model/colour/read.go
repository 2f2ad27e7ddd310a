package colour

import (
	"fmt"
	"image/color"
	"regexp"
	"strconv"
	"strings"

	"github.com/lucasb-eyer/go-colorful"
)

var (
	hexDigits = regexp.MustCompile(`^#?([0-9a-f]{6}|[0-9a-f]{3})$`)
	number    = regexp.MustCompile(`[-+−]?\d+(?:\.\d+)?|[-+−]?\.\d+`)
	// What may stand round the three numbers of a colour.
	rgbForm = regexp.MustCompile(`^(?:rgb)?\s*\(?[\s\d.,;+−-]*\)?$`)
	labForm = regexp.MustCompile(`^(?:(?:cie)?\s*lab|l\*?)[\s:=]*\(?[\s\d.,;:=%a-b*+−-]*\)?$`)
)

// Read reads a colour as people write it: six or three hexadecimal digits,
// red, green and blue from 0 to 255 ("rgb(47, 93, 124)", "47 93 124"), or
// CIELAB in daylight ("lab 37 -8 -22", "L 37 a -8 b -22").
func Read(s string) (color.NRGBA, error) {
	words := strings.ToLower(strings.TrimSpace(s))
	if m := hexDigits.FindStringSubmatch(words); m != nil {
		digits := m[1]
		if len(digits) == 3 {
			digits = string([]byte{digits[0], digits[0], digits[1], digits[1], digits[2], digits[2]})
		}
		return Parse("#" + digits)
	}
	var v []float64
	for _, n := range number.FindAllString(words, -1) {
		x, err := strconv.ParseFloat(strings.Replace(n, "−", "-", 1), 64)
		if err != nil {
			return color.NRGBA{}, unread(s)
		}
		v = append(v, x)
	}
	switch {
	case len(v) != 3:
	case rgbForm.MatchString(words):
		for _, x := range v {
			if x < 0 || x > 255 {
				return color.NRGBA{}, fmt.Errorf("%q is not a colour: red, green and blue go from 0 to 255", s)
			}
		}
		return color.NRGBA{R: uint8(v[0] + .5), G: uint8(v[1] + .5), B: uint8(v[2] + .5), A: 255}, nil
	case labForm.MatchString(words):
		if v[0] < 0 || v[0] > 100 || max(v[1], -v[1], v[2], -v[2]) > 128 {
			return color.NRGBA{}, fmt.Errorf("%q is not a colour: L goes from 0 to 100, a and b from -128 to 128", s)
		}
		return opaque(colorful.Lab(v[0]/100, v[1]/100, v[2]/100)), nil
	}
	return color.NRGBA{}, unread(s)
}

func unread(s string) error {
	return fmt.Errorf("%q is not a colour: write it as #2f5d7c, as rgb(47, 93, 124), or as lab(37, -8, -22)", s)
}
