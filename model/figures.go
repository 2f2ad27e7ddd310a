package model

import (
	"cmp"

	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/strand"
	"strandway/model/trade"
	"strandway/model/yarn"
)

// Figures are what is reckoned from a worked pattern: sizes, strands and yarn.
// They are made by [Worked.Figures].
type Figures struct {
	Scale  measure.Scale // zero where neither a gauge nor hook and yarn are known
	Pieces []PieceFigures
	Yarns  []yarn.Amount // by yarn, over all pieces; nil where no hook or yarn is known
	Margin float64       // share of yarn to have in hand over what is expected
}

// PieceFigures are the figures of one piece.
type PieceFigures struct {
	Size    measure.Size
	Strands strand.Strands
	Ask     yarn.Ask // from which its needs were reckoned
	Needs   []yarn.Need
}

// Known reports whether sizes in cm are known.
func (f *Figures) Known() bool { return f.Scale.ColumnCM > 0 }

// Figures reckons everything that follows from the worked fabrics.
func (w *Worked) Figures() *Figures { return w.FiguresBy(nil) }

// FiguresBy reckons everything, yarns that the pattern has no weighed swatch of
// by what is remembered of the maker's hands.
func (w *Worked) FiguresBy(hands yarn.Memory) *Figures {
	out := &Figures{Scale: w.scale(), Pieces: make([]PieceFigures, len(w.Pieces)), Margin: w.margin()}
	tools := w.tools(out.Scale)
	for i := range w.Pieces {
		p := &out.Pieces[i]
		p.Size = measure.Of(w.Pieces[i].Fabric, out.Scale)
		p.Strands = strand.Follow(w.Pieces[i].Fabric, p.Size.RowCM)
		p.Ask = ask(tools, p, out.Scale)
	}
	if len(tools) == 0 {
		return out
	}
	factors := w.factors(out, hands)
	needs := make([][]yarn.Need, len(w.Pieces))
	for i := range w.Pieces {
		p := &out.Pieces[i]
		p.Ask.Factors = factors
		p.Needs = yarn.Of(w.Pieces[i].Fabric, p.Ask)
		needs[i] = p.Needs
	}
	balls := map[string]yarn.Ball{}
	for _, y := range w.Pattern.Yarns {
		balls[y.Letter] = yarn.Ball{Grams: y.Grams, Metres: y.Metres, Price: y.Price}
	}
	out.Yarns = yarn.Sum(needs, balls, out.Margin)
	return out
}

// RowCM is the height of each row of a piece in cm; nil where neither a gauge
// nor hook and yarn are known.
func (w *Worked) RowCM(piece int) []float64 { return rowCM(w.Pieces[piece].Fabric, w.scale()) }

// Form is how the first piece lies.
func (w *Worked) Form() measure.Form {
	if len(w.Pieces) == 0 {
		return measure.Sheet
	}
	return measure.Of(w.Pieces[0].Fabric, w.scale()).Form
}

// scale is the size of the stitches: by the gauge, else by the measured
// swatch, else guessed from hook and yarn. The gauge is that of the first piece
// with rows.
func (w *Worked) scale() measure.Scale {
	stitches, rows := gauge(w.Pattern.Gauge)
	for i := range w.Pieces {
		if f := w.Pieces[i].Fabric; stitches > 0 && rows > 0 && len(f.Rows) > 1 {
			return measure.FromGauge(f, stitches, rows, 1)
		}
	}
	for _, y := range w.Pattern.Yarns {
		if t, ok := toolsOf(w.Pattern, y); ok {
			return measure.FromHook(t.HookMM, t.YarnMM)
		}
	}
	return measure.Scale{}
}

// gauge is stitches and rows to the cm, 0 where not known.
func gauge(g pattern.Gauge) (stitches, rows float64) {
	if g.Stitches > 0 && g.Rows > 0 {
		return g.Stitches / g.OverCM, g.Rows / g.OverCM
	}
	if s := g.Swatch; s != nil && s.WidthCM > 0 && s.HeightCM > 0 {
		return s.Stitches / s.WidthCM, s.Rows / s.HeightCM
	}
	return 0, 0
}

// toolsOf are the diameters of hook and yarn. A hook that is not said is the
// usual one for the yarn; ok is false where the yarn's thickness is not known.
func toolsOf(p *pattern.Pattern, y pattern.Yarn) (t yarn.Tools, ok bool) {
	perBall := 0.0
	if y.Grams > 0 {
		perBall = 100 * y.Metres / y.Grams
	}
	weight, known := trade.Standard().WeightOf(y.Weight, perBall)
	switch {
	case perBall > 0:
		t.YarnMM = yarn.Thickness(100, perBall)
	case known:
		t.YarnMM = yarn.Thickness(100, weight.MPer100g.Middle())
	default:
		return t, false
	}
	t.HookMM = cmp.Or(p.Hook.MM, weight.HookMM.Middle(), 2*t.YarnMM)
	return t, true
}

// tools are those of each yarn letter that the pieces use; a letter of unknown
// thickness is taken to be like the first known one. With no yarn known, the
// hook alone says what yarn is usual; with no hook either there are none.
func (w *Worked) tools(scale measure.Scale) map[string]yarn.Tools {
	scMM := scale.SCCM * 10
	if scale.Guess {
		scMM = 0
	}
	var first yarn.Tools
	out := map[string]yarn.Tools{}
	for _, y := range w.Pattern.Yarns {
		if t, ok := toolsOf(w.Pattern, y); ok {
			out[y.Letter] = t
			first = cmp.Or(first, t)
		}
	}
	if first == (yarn.Tools{}) {
		if w.Pattern.Hook.MM == 0 {
			return nil
		}
		first = yarn.Tools{HookMM: w.Pattern.Hook.MM, YarnMM: w.Pattern.Hook.MM / 2} // the usual proportion
	}
	for i := range w.Pieces {
		for _, letter := range w.Pieces[i].Fabric.Yarns {
			t := cmp.Or(out[letter], first)
			t.SCRowMM = scMM
			out[letter] = t
		}
	}
	return out
}

func ask(tools map[string]yarn.Tools, p *PieceFigures, scale measure.Scale) yarn.Ask {
	ends := trade.Standard().Ends
	a := yarn.Ask{Tools: tools, RowCM: p.Size.RowCM, FloatCM: map[string]float64{}, Ends: map[string]int{}, TailCM: ends.TailCM, Slack: ends.Slack}
	for i := range p.Strands.ByYarn {
		s := &p.Strands.ByYarn[i]
		a.FloatCM[s.Letter] = s.FloatCM() + float64(s.Behind())*scale.ColumnCM
		a.Ends[s.Letter] = s.Ends()
	}
	return a
}

// margin is the share of yarn to have in hand.
func (w *Worked) margin() float64 {
	if w.Pattern.MarginPercent > 0 {
		return w.Pattern.MarginPercent / 100
	}
	const many = 4 // yarns, each with a ball begun and not used up
	ends := trade.Standard().Ends
	if len(w.Pattern.Yarns) >= many {
		return ends.MarginManyYarn
	}
	return ends.Margin
}
