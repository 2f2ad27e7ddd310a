package model

import (
	"fmt"
	"math"

	"strandway/model/diag"
	"strandway/model/pattern"
	"strandway/model/trade"
)

// Blocking is by what factors a piece grew when it was blocked.
type Blocking struct {
	Width, Length float64 // finished over worked; 1 where the swatch was not measured before
}

// BlockingOf is how a swatch grew.
func BlockingOf(s *pattern.Swatch) Blocking {
	b := Blocking{1, 1}
	if s != nil && s.UnblockedWidthCM > 0 && s.WidthCM > 0 {
		b.Width = s.WidthCM / s.UnblockedWidthCM
	}
	if s != nil && s.UnblockedHeightCM > 0 && s.HeightCM > 0 {
		b.Length = s.HeightCM / s.UnblockedHeightCM
	}
	return b
}

// checkGauge compares gauge, swatch, hook and yarns with one another and with
// what the trade has as usual.
func checkGauge(p *pattern.Pattern) diag.List {
	var list diag.List
	say := func(severity diag.Severity, id, message, hint string) {
		list = append(list, diag.Finding{Severity: severity, ID: id, Message: message, Hint: hint})
	}
	if s := p.Gauge.Swatch; s != nil && p.Gauge.Stitches > 0 && s.Stitches > 0 && s.WidthCM > 0 {
		const same = .05
		stated, measured := p.Gauge.Stitches/p.Gauge.OverCM, s.Stitches/s.WidthCM
		if math.Abs(measured/stated-1) > same {
			say(diag.Doubt, "swatch-gauge", fmt.Sprintf("the swatch has %.1f stitches to 10 cm, and the gauge says %.1f", 10*measured, 10*stated),
				"measure again over the inner 10 cm, or take the swatch's figure")
		}
	}
	for _, y := range p.Yarns {
		perBall := 0.0
		if y.Grams > 0 {
			perBall = 100 * y.Metres / y.Grams
		}
		w, ok := trade.Standard().WeightOf(y.Weight, perBall)
		if !ok {
			continue
		}
		const customs = .4 // makers go so far from the table for drape or for a dense fabric
		if perBall > 0 && !w.MPer100g.Holds(perBall, customs) {
			say(diag.Note, "yarn-weight", fmt.Sprintf("yarn %s has %.0f m to 100 g, and %.0f to %.0f m are usual for weight %d", y.Letter, perBall, w.MPer100g[0], w.MPer100g[1], y.Weight),
				"look at the label again: fibre can explain it, a wrong figure would spoil the yarn requirement")
		}
		if p.Hook.MM > 0 && w.HookMM.Known() && !w.HookMM.Holds(p.Hook.MM, customs) {
			say(diag.Note, "hook-yarn", fmt.Sprintf("a hook of %g mm is unusual for yarn %s of weight %d: %g to %g mm are usual", p.Hook.MM, y.Letter, y.Weight, w.HookMM[0], w.HookMM[1]),
				"check the hook and the weight; leave it if the fabric is meant to be open or dense")
		}
	}
	return list
}
