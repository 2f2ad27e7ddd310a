package yarn

// Factors scale the reckoned lengths to one maker's hands; the zero value
// leaves them as they are.
type Factors struct {
	Loops, Legs float64
	Calibrated  bool   // from a weighed swatch: what is left is a few per cent
	From        string // of a swatch that is remembered: the pattern it was weighed for; "" for the pattern's own
}

func (k Factors) apply(l Length) float64 {
	if k.Loops == 0 || k.Legs == 0 {
		return l.mm()
	}
	return l.Loops*k.Loops + l.Legs*k.Legs
}

// Margin is how far a reckoned length may be off, as a share: about an eighth
// by yarn and hook alone, a twentieth with a weighed swatch.
func (k Factors) Margin() float64 {
	if k.Calibrated {
		return .05
	}
	return .125
}

// Calibrate finds the one factor by which a weighed swatch differs from what
// is reckoned for it. weighedM is the metres that its grams come to, tails
// subtracted.
func Calibrate(reckoned Length, weighedM float64) Factors {
	if reckoned.mm() <= 0 || weighedM <= 0 {
		return Factors{}
	}
	k := weighedM * 1000 / reckoned.mm()
	return Factors{Loops: k, Legs: k, Calibrated: true}
}

// Weighed is one weighed swatch: what was reckoned for it and what it took.
type Weighed struct {
	Reckoned Length
	Metres   float64
}

// CalibrateTwo finds the factors for loops and for legs that fit several
// weighed swatches best, by least squares. Each is held to .7 to 1.4: beyond
// that the swatches are too alike, or one was weighed wrongly.
func CalibrateTwo(swatches []Weighed) Factors {
	var aa, ab, bb, al, bl float64
	for _, s := range swatches {
		a, b, l := s.Reckoned.Loops, s.Reckoned.Legs, s.Metres*1000
		aa, ab, bb, al, bl = aa+a*a, ab+a*b, bb+b*b, al+a*l, bl+b*l
	}
	det := aa*bb - ab*ab
	if det < 1e-9*aa*bb {
		return Calibrate(swatches[0].Reckoned, swatches[0].Metres)
	}
	hold := func(k float64) float64 { return min(max(k, .7), 1.4) }
	return Factors{Loops: hold((al*bb - bl*ab) / det), Legs: hold((bl*aa - al*ab) / det), Calibrated: true}
}
