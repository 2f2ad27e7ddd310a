package colour

import (
	"strings"
	"testing"
)

func TestReadColoursAsPeopleWriteThem(t *testing.T) {
	for s, want := range map[string]string{
		"#2f5d7c":               "#2f5d7c",
		" 2F5D7C ":              "#2f5d7c",
		"#abc":                  "#aabbcc",
		"rgb(47, 93, 124)":      "#2f5d7c",
		"47 93 124":             "#2f5d7c",
		"(47;93;124)":           "#2f5d7c",
		"lab(53.59, 0, 0)":      "#808080",
		"L 100 a 0 b 0":         "#ffffff",
		"L* 53.24 a* 80 b* 67":  "#ff0000",
		"CIELAB: 53.24, 80, 67": "#ff0000",
		"lab 53.59 −0 0":        "#808080",
	} {
		c, err := Read(s)
		if err != nil {
			t.Errorf("%q: %v", s, err)
		} else if d := Difference(c, hex(t, want)); d > 1 {
			t.Errorf("%q gives %s, want %s", s, Hex(c), want)
		}
	}
}

func TestReadSaysWhatIsNoColour(t *testing.T) {
	for s, want := range map[string]string{
		"":              "write it as #2f5d7c",
		"slate":         "write it as #2f5d7c",
		"47 93":         "write it as #2f5d7c",
		"47 93 300":     "from 0 to 255",
		"lab 120 0 0":   "from 0 to 100",
		"hsv(20, 3, 4)": "write it as #2f5d7c",
		"#2f5d7":        "write it as #2f5d7c",
	} {
		if c, err := Read(s); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q gives %s, %v", s, Hex(c), err)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("lab(37, -8, -22)")
	f.Add("rgb(47, 93, 124)")
	f.Fuzz(func(t *testing.T, s string) {
		if c, err := Read(s); err == nil && c.A != 255 {
			t.Errorf("%q gives a colour that is not opaque", s)
		}
	})
}
