// Package symbol holds the shapes of the chart symbols: paths with named
// anchors, read from assets/symbols, in units of one stitch width with y from
// the foot towards the head. It knows how a shape gives when it is drawn taller
// or shorter than its natural height, and nothing of where it goes.
package symbol

import (
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"sync"

	"github.com/pelletier/go-toml/v2"

	"strandway/assets"
	"strandway/chart/geom"
)

// Symbol is one shape.
type Symbol struct {
	Name  string
	Whole bool // drawn once, from the middle of its feet, however many legs the stitch has
	Parts []Part
	Box   geom.Box // of all parts, strokes not counted

	Foot, Head  geom.Point // where it stands; where the next row stands in it
	Left, Right geom.Point // its sides at half height
	share       float64    // of the height, at which marks sit
	crown       float64    // of the height, above the stem
}

// Part is one path of a symbol.
type Part struct {
	Role Role
	Path geom.Path
	Fill Fill
}

// Role says how a part follows when the symbol is drawn taller or shorter.
type Role uint8

const (
	Stem Role = iota // stretches between foot and head
	Mark             // keeps its size, and its place as a share of the height
	Head             // goes with the head
	Foot             // stays with the foot
)

// Fill says what a part hides.
type Fill uint8

const (
	Open  Fill = iota // stroked only
	Paper             // stroked, and hides what lies under it
	Ink               // filled
)

// Height is the natural height from foot to head, in stitch widths.
func (s *Symbol) Height() float64 { return s.Head.Y - s.Foot.Y }

// Stretched is part i as it is when the symbol is drawn with the given height.
func (s *Symbol) Stretched(i int, height float64) geom.Path {
	p, natural := s.Parts[i], s.Height()
	m := geom.Identity
	switch p.Role {
	case Stem:
		m.D = max(height-s.crown, 0) / (natural - s.crown)
	case Mark:
		m.F = (height - natural) * s.share
	case Head:
		m.F = height - natural
	}
	return p.Path.Transform(m)
}

// Marks is where the marks of the symbol lie when it is drawn with the given
// height: their middle above the foot, and how far they reach from it.
func (s *Symbol) Marks(height float64) (reach, middle float64, ok bool) {
	box := geom.Empty()
	for i, p := range s.Parts {
		if p.Role == Mark {
			box = box.Union(s.Stretched(i, height).Box())
		}
	}
	if box.IsEmpty() {
		return 0, 0, false
	}
	return box.Height() / 2, box.Centre().Y, true
}

// Set is all symbols by name.
type Set struct{ byName map[string]*Symbol }

// Symbol is the symbol of a name.
func (s *Set) Symbol(name string) (*Symbol, bool) {
	y, ok := s.byName[name]
	return y, ok
}

// Names are the names of all symbols, in the order of the alphabet.
func (s *Set) Names() []string { return slices.Sorted(maps.Keys(s.byName)) }

// With is the set and some symbols more; those of a name in the set take its place.
func (s *Set) With(more ...*Symbol) *Set {
	both := &Set{byName: maps.Clone(s.byName)}
	for _, y := range more {
		both.byName[y.Name] = y
	}
	return both
}

// Drawn makes a symbol of a path as [ParsePath] reads it, in stitch widths, with
// its foot at 0 0 and y upward. It is drawn whole, as high as its stitch.
func Drawn(name, path string) (*Symbol, error) {
	p, err := ParsePath(path)
	if err != nil {
		return nil, err
	}
	box := p.Bounds()
	if box.Max.Y < .2 {
		return nil, fmt.Errorf("path %q does not rise above its foot at 0 0", path)
	}
	return &Symbol{
		Name: name, Whole: true, Parts: []Part{{Role: Stem, Path: p}}, Box: box, Head: geom.Point{Y: box.Max.Y},
		Left: geom.Point{X: box.Min.X, Y: box.Max.Y / 2}, Right: geom.Point{X: box.Max.X, Y: box.Max.Y / 2},
	}, nil
}

// Standard is the set that the program carries.
func Standard() *Set { return standard() }

var standard = sync.OnceValue(func() *Set {
	set, err := New(assets.Symbols())
	if err != nil {
		panic(fmt.Sprintf("the embedded symbols are broken: %v", err))
	}
	return set
})

// record is one [[symbol]] of the data files.
type record struct {
	Name   string  `toml:"name"`
	Height float64 `toml:"height"`
	Crown  float64 `toml:"crown"`
	Whole  bool    `toml:"whole"`
	Parts  []struct {
		Role    string    `toml:"role"`
		Path    string    `toml:"path"`
		Ellipse []float64 `toml:"ellipse"`
		Fill    string    `toml:"fill"`
	} `toml:"parts"`
}

var (
	roles = map[string]Role{"stem": Stem, "mark": Mark, "head": Head, "foot": Foot}
	fills = map[string]Fill{"": Open, "paper": Paper, "ink": Ink}
)

// New reads a set from the TOML files of dir.
func New(dir fs.FS) (*Set, error) {
	files, err := fs.Glob(dir, "*.toml")
	if err != nil {
		return nil, err
	}
	set := &Set{byName: make(map[string]*Symbol)}
	for _, name := range files {
		src, err := fs.ReadFile(dir, name)
		if err != nil {
			return nil, err
		}
		var d struct {
			Symbols []record `toml:"symbol"`
		}
		if err := toml.Unmarshal(src, &d); err != nil {
			return nil, fmt.Errorf("symbols, %s: %w", name, err)
		}
		for i := range d.Symbols {
			s, err := d.Symbols[i].symbol()
			if err != nil {
				return nil, fmt.Errorf("symbols, %s: %w", name, err)
			}
			if set.byName[s.Name] != nil {
				return nil, fmt.Errorf("symbols, %s: %q stands there twice", name, s.Name)
			}
			set.byName[s.Name] = s
		}
	}
	return set, nil
}

func (r *record) symbol() (*Symbol, error) {
	s := &Symbol{Name: r.Name, Whole: r.Whole, crown: r.Crown, Head: geom.Point{Y: r.Height}, Box: geom.Empty()}
	if r.Name == "" || r.Height <= 0 || r.Crown < 0 || r.Crown >= r.Height || len(r.Parts) == 0 {
		return nil, fmt.Errorf("symbol %q wants a name, a height above its crown, and parts", r.Name)
	}
	marks := geom.Empty()
	for _, p := range r.Parts {
		role, okRole := roles[p.Role]
		fill, okFill := fills[p.Fill]
		if !okRole || !okFill {
			return nil, fmt.Errorf("symbol %q: unknown role %q or fill %q", r.Name, p.Role, p.Fill)
		}
		path, err := ellipse(p.Ellipse)
		if p.Path != "" {
			path, err = ParsePath(p.Path)
		}
		if err != nil {
			return nil, fmt.Errorf("symbol %q: %w", r.Name, err)
		}
		s.Parts = append(s.Parts, Part{role, path, fill})
		s.Box = s.Box.Union(path.Box())
		if role == Mark {
			marks = marks.Union(path.Box())
		}
	}
	if !marks.IsEmpty() {
		s.share = marks.Centre().Y / r.Height
	}
	s.Left = geom.Point{X: s.Box.Min.X, Y: r.Height / 2}
	s.Right = geom.Point{X: s.Box.Max.X, Y: r.Height / 2}
	return s, nil
}
