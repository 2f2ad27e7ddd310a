package schematic

import (
	_ "embed"
	"sync"

	"strandway/chart/geom"
	"strandway/chart/symbol"

	"github.com/pelletier/go-toml/v2"
)

//go:embed figures.toml
var figuresFile []byte

// Figure is a line drawing of something of known size, in cm, y upward.
type Figure struct {
	Name          string
	Words         string // "a head of 56 cm round"
	Width, Height float64
	Under         bool // the piece lies on it, rather than beside it
	Middle        bool // and in its middle, rather than at its lower edge
	Paths         []geom.Path
}

// Figures are all there are. A fault in the data is a fault of the program.
var Figures = sync.OnceValue(func() []Figure {
	var file struct {
		Figure []struct {
			Name, Words   string
			Width, Height float64
			Under, Middle bool
			Paths         []string
		}
	}
	if err := toml.Unmarshal(figuresFile, &file); err != nil {
		panic(err)
	}
	var out []Figure
	for _, f := range file.Figure {
		figure := Figure{Name: f.Name, Words: f.Words, Width: f.Width, Height: f.Height, Under: f.Under, Middle: f.Middle}
		for _, text := range f.Paths {
			p, err := symbol.ParsePath(text)
			if err != nil {
				panic(err)
			}
			figure.Paths = append(figure.Paths, p)
		}
		out = append(out, figure)
	}
	return out
})

// FigureNamed is the figure of a name.
func FigureNamed(name string) (Figure, bool) {
	for _, f := range Figures() {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}
