package model

import (
	"math"
	"strings"

	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/yarn"
)

// factors are those of each yarn: by the pattern's own weighed swatch, else by what is remembered.
func (w *Worked) factors(figures *Figures, hands yarn.Memory) map[string]yarn.Factors {
	out := map[string]yarn.Factors{}
	own := w.calibrate(figures)
	for i := range w.Pieces {
		for _, letter := range w.Pieces[i].Fabric.Yarns {
			y, known := w.Pattern.Yarn(letter)
			switch {
			case own.Calibrated:
				out[letter] = own
			case known:
				if r, ok := hands.Of(y.Name, figures.Hook(letter)); ok {
					out[letter] = r.Factors()
				}
			}
		}
	}
	return out
}

// Hook is the hook in mm with which a yarn is worked.
func (f *Figures) Hook(letter string) float64 {
	for i := range f.Pieces {
		if t, ok := f.Pieces[i].Ask.Tools[letter]; ok {
			return t.HookMM
		}
	}
	return 0
}

// Factors are those by which the lengths of a yarn were reckoned; zero where nothing was weighed.
func (f *Figures) Factors(letter string) yarn.Factors {
	for i := range f.Pieces {
		if k, ok := f.Pieces[i].Ask.Factors[letter]; ok {
			return k
		}
	}
	return yarn.Factors{}
}

// Swatches are what the pattern's own weighed swatch tells of its yarns that
// have a name, to be remembered on a day (2006-01-02).
func (w *Worked) Swatches(figures *Figures, day string) (out []yarn.Remembered) {
	for _, a := range figures.Yarns {
		y, known := w.Pattern.Yarn(a.Letter)
		k := figures.Factors(a.Letter)
		if !known || strings.TrimSpace(y.Name) == "" || !k.Calibrated || k.From != "" {
			continue
		}
		r := yarn.Remembered{Yarn: y.Name, HookMM: figures.Hook(a.Letter), Loops: round3(k.Loops), Legs: round3(k.Legs), From: w.Pattern.Title, Day: day}
		if _, twice := yarn.Memory(out).Of(r.Yarn, r.HookMM); !twice {
			out = append(out, r)
		}
	}
	return out
}

func round3(x float64) float64 { return math.Round(x*1000) / 1000 }

// calibrate finds the maker's factors from the weighed swatches: of the first
// in the stitches of the first piece, of the second in its own stitch.
func (w *Worked) calibrate(figures *Figures) yarn.Factors {
	g := w.Pattern.Gauge
	if g.Swatch == nil || len(w.Pieces) == 0 || !figures.Known() {
		return yarn.Factors{}
	}
	first := yarn.Weighed{Reckoned: w.reckonedSwatch(figures, g.Swatch), Metres: w.weighedMetres(g.Swatch)}
	if g.Second != nil {
		second := yarn.Weighed{Reckoned: w.reckonedSwatch(figures, g.Second), Metres: w.weighedMetres(g.Second)}
		if first.Metres > 0 && second.Metres > 0 && second.Reckoned != (yarn.Length{}) {
			return yarn.CalibrateTwo([]yarn.Weighed{first, second})
		}
	}
	return yarn.Calibrate(first.Reckoned, first.Metres)
}

// weighedMetres is the length of what a swatch weighs; 0 where a yarn of it has no known ball.
func (w *Worked) weighedMetres(s *pattern.Swatch) float64 {
	metres := 0.0
	for letter, grams := range s.Grams {
		y, ok := w.Pattern.Yarn(letter)
		if !ok || y.Grams == 0 || y.Metres == 0 {
			return 0
		}
		metres += grams * y.Metres / y.Grams
	}
	return metres
}

// reckonedSwatch is the yarn reckoned for a swatch: as much of the first piece
// as its area takes, or rows of the one stitch that it names.
func (w *Worked) reckonedSwatch(figures *Figures, s *pattern.Swatch) yarn.Length {
	fab, p := w.Pieces[0].Fabric, &figures.Pieces[0]
	if s.Stitch != "" {
		lib, err := stitch.Standard()
		if err != nil || len(fab.Yarns) == 0 {
			return yarn.Length{}
		}
		kind, ok := lib.Read(s.Stitch, strings.ToLower(w.Pattern.Terms))
		if !ok {
			return yarn.Length{}
		}
		tools := p.Ask.Tools[fab.Yarns[0]]
		return tools.OfKind(kind).Times(s.Stitches * s.Rows)
	}
	area := 0.0
	for r, cm := range p.Size.RowCM {
		area += cm * p.Size.WidthsCM[r]
	}
	if area == 0 {
		return yarn.Length{}
	}
	var sum yarn.Length
	for _, l := range yarn.Lengths(fab, p.Ask) {
		sum = sum.Add(l)
	}
	return sum.Times(s.WidthCM * s.HeightCM / area)
}
