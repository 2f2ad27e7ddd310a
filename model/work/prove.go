package work

import (
	"fmt"
	"slices"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Proof says over which foundations a piece comes out, and what each row then counts.
type Proof struct {
	Multiple, Plus int       // the foundation is Multiple*n + Plus chains; 0, 0 where it is no question of repeats
	Rows           []Formula // one for each row of the fabric but the foundation
}

// Formula is a row's count for every n: A*n + B stitches, and ChainsA*n + ChainsB further chains.
type Formula struct {
	Label            string
	A, B             int
	ChainsA, ChainsB int
	Known            bool // false where the row does not grow evenly with n
}

// String writes the stitches' formula: "4n + 1", "n", "24".
func (f Formula) String() string { return linear(f.A, f.B) }

// Chains writes the formula of the further chains.
func (f Formula) Chains() string { return linear(f.ChainsA, f.ChainsB) }

func linear(a, b int) string {
	n := fmt.Sprintf("%dn", a)
	switch {
	case a == 0:
		return fmt.Sprint(b)
	case a == 1:
		n = "n"
	}
	switch {
	case b == 0:
		return n
	case b < 0:
		return fmt.Sprintf("%s - %d", n, -b)
	}
	return fmt.Sprintf("%s + %d", n, b)
}

// workings is how many n are worked for a proof: two give a formula, the others test it.
const workings = 4

// The search for the multiple of a fixed foundation goes so many chains to
// either side, unless that makes more stitches than can be worked in a moment.
const (
	searched   = 45
	mostProved = 1_000_000
)

// Prove works the piece for several n from o.N on, and gives what each row
// counts as formulas in n. Where the foundation is a fixed number of chains, it
// looks for those near it that come out, and takes their spacing for the multiple.
func Prove(lib *stitch.Library, t *syntax.Tree, o Options) (Proof, diag.List) {
	p := prover{lib: lib, tree: t, opt: o}
	p.opt.N = max(1, o.N)
	chain := foundationChain(t)
	switch {
	case usesN(t):
		if chain != nil && chain.N.Sizes == nil {
			p.multiple, p.plus = chain.N.A, chain.N.B
		}
		p.first = p.opt.N
		for k := range workings {
			p.work(Options{N: p.first + k}, 0)
		}
	case chain == nil || !p.search(chain):
		p.first = 0
		p.runs = nil
		p.work(Options{N: p.opt.N}, 0)
	}
	return p.proof()
}

// prover gathers the workings of a piece for several n.
type prover struct {
	lib            *stitch.Library
	tree           *syntax.Tree
	opt            Options
	multiple, plus int
	first          int // the n of the first working
	runs           []*worker
	room           fabric.Fabric
}

// work works the piece once more.
func (p *prover) work(o Options, base int) *worker {
	opt := p.opt
	opt.N = o.N
	w := newWorker(p.lib, p.tree, opt, probe{base: base, quiet: true, stop: base > 0})
	w.workIn(&p.room)
	p.runs = append(p.runs, w)
	return w
}

// search finds the foundations near the written one that come out. It reports
// whether there are enough of them, evenly spaced, to speak of a multiple.
func (p *prover) search(chain *syntax.ChainN) bool {
	base := chain.N.At(p.opt.N, p.opt.Size)
	if base < 2 || base > p.limit() {
		return false
	}
	whole := p.work(p.opt, 0)
	if whole.fab.Rows[0].Shape != fabric.Flat || len(whole.fab.Stitches)*2*workings > mostProved ||
		slices.ContainsFunc(whole.findings, func(f diag.Finding) bool { return f.ID == "limit" }) {
		return false
	}
	var fits []int
	runs := map[int]*worker{}
	try := func(c int) {
		if w := p.work(p.opt, c); !faulty(w.findings) {
			fits, runs[c] = append(fits, c), w
		}
	}
	for c := base; c <= base+searched && len(fits) < workings; c++ {
		try(c)
	}
	for c := base - 1; c >= max(2, base-searched) && len(fits) < workings; c-- {
		try(c)
	}
	if len(fits) < workings {
		return false
	}
	slices.Sort(fits)
	multiple := fits[1] - fits[0]
	p.runs = p.runs[:0]
	for k, c := range fits {
		if c-fits[0] != k*multiple {
			return false
		}
		p.runs = append(p.runs, runs[c])
	}
	p.multiple, p.plus = multiple, fits[0]%multiple
	p.first = fits[0] / multiple
	return true
}

func (p *prover) limit() int {
	if p.opt.Limit > 0 {
		return p.opt.Limit
	}
	return defaultLimit
}

// proof reads the formulas off the workings.
func (p *prover) proof() (Proof, diag.List) {
	var findings diag.List
	for k, w := range p.runs {
		if len(p.runs) == 1 {
			break // the piece's own faults are told by its own working
		}
		for _, f := range w.findings {
			if f.Severity == diag.Fault && f.ID != "range" {
				f.Message = fmt.Sprintf("with n = %d: %s", p.first+k, f.Message)
				f.ID = "proof"
				findings = append(findings, f)
				return Proof{Multiple: p.multiple, Plus: p.plus, Rows: p.formulas()}, findings
			}
		}
	}
	proof := Proof{Multiple: p.multiple, Plus: p.plus, Rows: p.formulas()}
	for _, f := range proof.Rows {
		if !f.Known {
			findings = append(findings, diag.Finding{Severity: diag.Doubt, ID: "proof", Row: f.Label,
				Message: "the count does not grow evenly with n", Hint: "write the row's repeats across, or for one size"})
			break
		}
	}
	return proof, findings
}

func (p *prover) formulas() []Formula {
	var out []Formula
	for i := 1; i < len(p.runs[0].fab.Rows); i++ {
		f := Formula{Label: p.runs[0].fab.Rows[i].Label}
		var a, b bool
		f.A, f.B, a = p.line(i, func(r *fabric.Row) int { return r.Count })
		f.ChainsA, f.ChainsB, b = p.line(i, func(r *fabric.Row) int { return r.Chains })
		f.Known = a && b
		out = append(out, f)
	}
	return out
}

// line gives a number of row i as A*n + B, if it grows evenly.
func (p *prover) line(i int, of func(*fabric.Row) int) (a, b int, even bool) {
	var v []int
	for _, w := range p.runs {
		if i >= len(w.fab.Rows) {
			return 0, 0, false
		}
		v = append(v, of(&w.fab.Rows[i]))
	}
	if len(v) == 1 {
		return 0, v[0], true
	}
	a = v[1] - v[0]
	for k := 2; k < len(v); k++ {
		if v[k]-v[k-1] != a {
			return 0, 0, false
		}
	}
	return a, v[0] - a*p.first, true
}
