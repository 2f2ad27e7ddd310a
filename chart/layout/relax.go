package layout

import (
	"math"

	"strandway/chart/geom"
)

// weights says how strongly each term pulls.
type weights struct {
	height     float64 // a leg at its height
	legShort   float64 // a leg of several that is too short, too long
	legLong    float64
	shortTall  float64 // a stem shorter than its height; tall stitches bunch in cloth
	edge       float64 // share of the height's weight that edges keep
	apart      float64 // neighbours closer than their gap
	together   float64 // stitches further apart than their gap
	chains     float64 // chains further apart than their gap
	taut       float64 // the same in a run pulled straight
	upright    float64
	edgeUp     float64 // the same at the ends of a row
	fan        float64
	smooth     float64 // rows without kinks
	arc        float64 // bends of a run of chains
	lone       float64 // one chain level between its neighbours
	bow        float64 // chains of a slack run outward
	chord      float64 // loops sharing the slack
	level      float64 // tops of a row toward its mean height
	clear      float64 // ink from ink
	home       float64 // toward the direct place
	freeGround bool    // the foundation bends with the rows
}

// weightsFor is the table of terms: what holds in flat lace, and what each manner
// changes about it.
func (p *piece) weightsFor() weights {
	w := weights{
		height: 1, legShort: .4, legLong: .16, shortTall: 1, edge: 1,
		apart: 1, together: .08, chains: .8, taut: .12,
		upright: .12, edgeUp: .18, fan: .35, smooth: .06, arc: .35, lone: 1.2,
		bow: .04, chord: .4, clear: 1,
	}
	loops := false
	for _, r := range p.rows[1:] {
		loops = loops || p.loops(r)
	}
	if loops { // rows of loops stand higher than the edges that hold them
		w.level, w.edge = .30, .08
		if len(p.fans) > 0 {
			w.bow = .08
		}
	}
	switch {
	case p.hasRing:
		w.home, w.apart, w.upright, w.edgeUp, w.level = .25, .5, .35, .35, 0
	case p.h.measured:
		w.level, w.edge, w.shortTall = 1, .25, .5
	}
	if p.manner == Ripple {
		w.home, w.level, w.edgeUp, w.freeGround = .10, 0, w.upright, true
	}
	return w
}

const (
	momentum   = .85
	fastest    = .3   // no node moves further in one step, u
	still      = 3e-4 // u
	mostSteps  = 400
	leastSteps = 20
	alikeFrom  = 40    // steps after which repeats are kept alike: before, nodes find their way past each other
	coolFrom   = .6    // share of the steps after which the momentum dies away
	stepBudget = 3e6   // steps times nodes: a fabric that never repeats still ends
	pairBudget = 1.5e7 // steps times what must keep clear of each other: a fabric that crowds more and more still ends
)

// relaxer moves the nodes of a piece toward where all terms agree. Every term
// asks its nodes for a move with a weight; each node takes the weighted mean, all
// at once, so that neither order nor side matters.
type relaxer struct {
	p     *piece
	w     weights
	at    []geom.Point
	was   []geom.Point // before the step
	move  []geom.Point
	sum   []float64
	speed []geom.Point
	home  []geom.Point
	fixed []bool

	stems  []stem
	joined []joined
	pairs  []pair
	bends  []bend
	runs   []chainRun
	chords []chords // by row
	clear  clearance
	mirror *mirror
	alike  *alike
}

// relax moves the nodes from their direct places to where heights, gaps, fans and
// arcs agree.
//
// After it, fans open, loops bow, rows lie level and no ink crosses other ink.
func (p *piece) relax() int {
	if len(p.rows) < 2 {
		return 0
	}
	n := len(p.nodes)
	x := &relaxer{
		p: p, w: p.weightsFor(), at: p.at,
		was: make([]geom.Point, n), move: make([]geom.Point, n), sum: make([]float64, n), speed: make([]geom.Point, n),
		home: append([]geom.Point(nil), p.at...), fixed: make([]bool, n), chords: make([]chords, len(p.rows)),
	}
	if !p.hasRing && !x.w.freeGround {
		for i := p.rows[0].first; i < p.rows[0].last; i++ {
			x.fixed[i] = true
		}
	}
	x.gather()
	x.mirror = p.findMirror()
	x.alike = p.findAlike()
	return x.run()
}

func (x *relaxer) run() int {
	steps := min(mostSteps, max(leastSteps, int(stepBudget/float64(len(x.at)))))
	cool := int(coolFrom * float64(steps))
	pairs := 0
	for step := range steps {
		clear(x.move)
		clear(x.sum)
		x.pullStems()
		x.pullJoined()
		x.pullPairs()
		x.pullBends()
		x.pullRuns()
		if x.w.level > 0 {
			x.pullLevel()
		}
		if step > 5 {
			if step%10 == 6 {
				x.clear.gather(x.p)
			}
			x.pullClear()
			if pairs += len(x.clear.discs) + len(x.clear.stems); pairs > pairBudget {
				return step + 1
			}
		}
		if x.w.home > 0 {
			for i := range x.at {
				x.pull(int32(i), x.home[i].Sub(x.at[i]), x.w.home)
			}
		}
		m, scale := momentum, 1.0
		if step > cool {
			t := float64(step-cool) / float64(steps-cool)
			m, scale = momentum*(1-t), 1-.8*t
		}
		copy(x.was, x.at)
		x.step(m, scale*(1-m/2))
		x.mirror.even(x.at)
		if step > alikeFrom {
			x.alike.even(x)
		}
		if x.w.freeGround {
			x.settleGround()
		}
		if x.moved() < still && step > leastSteps && (x.alike == nil || step > alikeFrom) {
			return step + 1
		}
	}
	return steps
}

// pull asks node i for a move.
func (x *relaxer) pull(i int32, d geom.Point, w float64) {
	x.move[i].X += d.X * w
	x.move[i].Y += d.Y * w
	x.sum[i] += w
}

// pullPlace asks a place for a move: its nodes share it.
func (x *relaxer) pullPlace(a, b int32, d geom.Point, w float64) {
	if a < 0 {
		return
	}
	if a == b {
		x.pull(a, d, w)
		return
	}
	x.pull(a, d, w/2)
	x.pull(b, d, w/2)
}

// moved is the furthest that a node went in a step, all said and done.
func (x *relaxer) moved() float64 {
	most := 0.0
	for i, q := range x.was {
		d := x.at[i].Sub(q)
		most = max(most, d.Dot(d))
	}
	return math.Sqrt(most)
}

// step moves every node.
func (x *relaxer) step(m, scale float64) {
	for i := range x.at {
		if x.sum[i] == 0 || x.fixed[i] {
			continue
		}
		v := &x.speed[i]
		k := scale / x.sum[i]
		v.X = v.X*m + x.move[i].X*k
		v.Y = v.Y*m + x.move[i].Y*k
		l := math.Sqrt(v.X*v.X + v.Y*v.Y)
		if l > fastest {
			*v = v.Mul(fastest / l)
		}
		x.at[i].X += v.X
		x.at[i].Y += v.Y
	}
}

// settleGround keeps a free foundation from drifting.
func (x *relaxer) settleGround() {
	r := x.p.rows[0]
	y := 0.0
	for i := r.first; i < r.last; i++ {
		y += x.at[i].Y - x.home[i].Y
	}
	y /= float64(r.len())
	for i := range x.at {
		x.at[i].Y -= y
	}
}
