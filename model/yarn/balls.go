package yarn

import "math"

// Ball is one ball as it is sold; what is not known is 0.
type Ball struct {
	Grams, Metres, Price float64
}

// Amount is what one yarn of a whole pattern comes to, in metres if not said otherwise.
type Amount struct {
	Need               // over all pieces
	ByPiece  []float64 // expected, in the order of the pieces
	Wanted   float64   // expected with the margin
	Balls    int       // to hold what is wanted; 0 where the ball's length is not known
	Grams    float64   // the weight of what is expected; 0 where not known
	Price    float64   // of the balls
	LeftOver float64   // of the balls, after what is expected
}

// Sum adds up the needs of the pieces by yarn, in the order in which the yarns
// are first met, and reckons the balls. margin is a share: .1 for a tenth more
// than expected.
func Sum(pieces [][]Need, balls map[string]Ball, margin float64) []Amount {
	var out []Amount
	at := map[string]int{}
	for i, needs := range pieces {
		for _, n := range needs {
			k, met := at[n.Letter]
			if !met {
				k = len(out)
				at[n.Letter] = k
				out = append(out, Amount{Need: Need{Letter: n.Letter}, ByPiece: make([]float64, len(pieces))})
			}
			out[k].Need = out[k].plus(n)
			out[k].ByPiece[i] += n.Metres
		}
	}
	for k := range out {
		a, ball := &out[k], balls[out[k].Letter]
		a.Wanted = a.Metres * (1 + margin)
		if ball.Metres > 0 {
			a.Balls = Balls(a.Metres, margin, ball.Metres)
			a.Grams = a.Metres * ball.Grams / ball.Metres
			a.Price = float64(a.Balls) * ball.Price
			a.LeftOver = float64(a.Balls)*ball.Metres - a.Metres
		}
	}
	return out
}

// plus is the need for two pieces. They are worked by one maker, so that what
// they may be off adds up.
func (n Need) plus(m Need) Need {
	return Need{n.Letter, n.Metres + m.Metres, n.Low + m.Low, n.High + m.High, n.StitchM + m.StitchM, n.FloatM + m.FloatM, n.TailM + m.TailM}
}

// Balls is how many balls of a length in metres hold the need with a margin,
// both rounded up. margin is a share: .1 for a tenth more than expected.
func Balls(metres, margin, ballM float64) int {
	if ballM <= 0 {
		return 0
	}
	return int(math.Ceil(metres*(1+margin)/ballM - 1e-9))
}

// Substitute gives the metres of another yarn for a piece of the same finished
// size. The gauges are stitches to 10 cm. A finer yarn takes more: metres to the
// area go as one over the width of a stitch.
func Substitute(metres, gauge, other float64) float64 {
	if gauge <= 0 || other <= 0 {
		return metres
	}
	return metres * other / gauge
}
