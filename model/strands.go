package model

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"strandway/model/diag"
	"strandway/model/fabric"
	"strandway/model/measure"
	"strandway/model/strand"
	"strandway/model/syntax"
	"strandway/model/trade"
)

// Limits are the longest floats that a pattern allows.
type Limits struct {
	FloatCM  float64 // up an edge
	Stitches int     // behind stitches of another yarn
}

// Limits are the pattern's own, else the trade's custom. For a baby the custom is
// stricter, and no pattern's own may be looser.
func (w *Worked) Limits() Limits {
	carry := trade.Standard().Carry
	l := Limits{carry.FloatCM, carry.FloatStitches}
	if w.Pattern.Baby {
		l = Limits{carry.BabyFloatCM, carry.BabyFloatStitches}
	}
	if own := w.Pattern.FloatLimitCM; own > 0 && (!w.Pattern.Baby || own < l.FloatCM) {
		l.FloatCM = own
	}
	return l
}

// checkFigures looks at what follows from the worked fabrics: floats, loops on
// markers, edges, and what a small child could come to harm by.
func checkFigures(w *Worked) diag.List {
	list := checkGauge(w.Pattern)
	scale := w.scale()
	edged := slices.ContainsFunc(w.Pieces, func(p PieceWork) bool { return p.Piece.Worked == "along an edge of another piece" })
	for i := range w.Pieces {
		piece := &w.Pieces[i]
		c := strandCheck{piece: piece, limits: w.Limits(), baby: w.Pattern.Baby, edged: edged, notes: w.Pattern.Note + piece.Piece.Note}
		c.strands = strand.Follow(piece.Fabric, rowCM(piece.Fabric, scale))
		c.floats()
		c.carried()
		c.held()
		c.open()
		c.sides()
		list = append(list, c.list...)
	}
	if w.Pattern.Baby {
		list = append(list, cautions(w)...)
	}
	return list
}

// strandCheck checks the strands of one piece.
type strandCheck struct {
	piece   *PieceWork
	strands strand.Strands
	limits  Limits
	baby    bool
	edged   bool   // another piece is worked along the edges
	notes   string // of the pattern and the piece
	list    diag.List
}

func (c *strandCheck) say(severity diag.Severity, id string, row int, message, hint string) {
	f := diag.Finding{Severity: severity, ID: id, Piece: c.piece.Piece.Name, Message: message, Hint: hint}
	if row > 0 {
		r := &c.piece.Fabric.Rows[row]
		f.Row = r.Label
		f.Span = yarnRow{source: r.Source}.span(c.piece.Tree)
	}
	c.list = append(c.list, f)
}

// floats tells of floats up the edges that are too long: for each yarn the first and how many there are.
func (c *strandCheck) floats() {
	for i := range c.strands.ByYarn {
		s := &c.strands.ByYarn[i]
		long, longest := 0, strand.Float{}
		for _, f := range s.Floats {
			if f.CM > c.limits.FloatCM+.05 {
				long++
				if longest.CM == 0 {
					longest = f
				}
			}
		}
		if long == 0 {
			continue
		}
		message := fmt.Sprintf("yarn %s is carried %.1f cm up %s, over the limit of %g cm", s.Letter, longest.CM, upEdge(longest.Side), c.limits.FloatCM)
		if long > 1 {
			message += fmt.Sprintf(", here and %s more", times(long-1))
		}
		hint := "cut it and join it again, or catch it in at every row end between"
		if c.baby {
			hint = "cut it and join it again: small fingers catch in floats"
		}
		c.say(diag.Doubt, "long-float", longest.To, message, hint)
	}
}

// carried tells of yarns that run too far behind stitches of another, unless
// the rows say that they are worked over.
func (c *strandCheck) carried() {
	if carries(c.piece.Tree) {
		return
	}
	for i := range c.strands.ByYarn {
		s := &c.strands.ByYarn[i]
		for _, k := range s.Carry {
			if k.Longest > c.limits.Stitches {
				c.say(diag.Doubt, "long-float", k.Row, fmt.Sprintf("yarn %s runs behind %d stitches, over the limit of %d", s.Letter, k.Longest, c.limits.Stitches),
					c.carryHint())
				break
			}
		}
	}
}

// carryHint says what to do about a yarn that runs too far behind.
func (c *strandCheck) carryHint() string {
	if c.baby {
		return "work the stitches over it: small fingers catch in floats"
	}
	return "work the stitches over it, or catch it in between"
}

// carries reports whether the rows say of a yarn that it is carried inside the stitches.
func carries(tree *syntax.Tree) (found bool) {
	for _, row := range tree.Rows {
		syntax.Walk(row.Body, func(n syntax.Node) bool {
			y, ok := n.(*syntax.Yarn)
			found = found || ok && y.Do == syntax.CarryIt
			return true
		})
	}
	return found
}

var (
	saysMarker = regexp.MustCompile(`(?i)\b(marker|live loop|holder)`)
	saysCarry  = regexp.MustCompile(`(?i)\b(carry|carried|carrying)\b`)
)

// held tells of loops that must be held by a marker where neither rows nor notes say so.
func (c *strandCheck) held() {
	if saysMarker.MatchString(c.notes) || saysMarker.MatchString(c.piece.Piece.Rows) {
		return
	}
	said := map[int32]bool{}
	for _, e := range c.piece.Fabric.Events {
		if e.Do == fabric.Hold {
			said[e.Row] = true
		}
	}
	for _, r := range c.strands.Held {
		if !said[int32(r)] {
			row := &c.piece.Fabric.Rows[r]
			letter := c.piece.Fabric.Yarns[c.piece.Fabric.Stitches[row.Last-1].Yarn]
			c.say(diag.Note, "held-loop", r, fmt.Sprintf("the loop of yarn %s is live after this row, and the next row is worked in another yarn without turning", letter),
				"put the loop on a marker, and say so in the row")
			return
		}
	}
}

// open tells of edges at which yarns are carried and that no edging covers,
// where the pattern has no word on how they are carried.
func (c *strandCheck) open() {
	if saysCarry.MatchString(c.notes) || carries(c.piece.Tree) {
		return
	}
	left, right := strand.Covered(c.piece.Fabric)
	covered := map[fabric.Side]bool{fabric.Left: left || c.edged, fabric.Right: right || c.edged}
	var letters, edges []string
	for i := range c.strands.ByYarn {
		s := &c.strands.ByYarn[i]
		for _, f := range s.Floats {
			if f.Side == fabric.NoSide || covered[f.Side] { // in rounds and inside it lies on the wrong side
				continue
			}
			if !slices.Contains(letters, s.Letter) {
				letters = append(letters, s.Letter)
			}
			if edge := sideName(f.Side) + " edge"; !slices.Contains(edges, edge) {
				edges = append(edges, edge)
			}
		}
	}
	if len(edges) > 0 {
		slices.Sort(edges)
		c.say(diag.Note, "open-float", 0, fmt.Sprintf("the floats of %s at the %s are not covered by any edging", strings.Join(letters, ", "), strings.Join(edges, " and the ")),
			"work an edging over them, or say in the notes how to carry the yarn")
	}
}

// sides tells of an edging with more stitches along one side than along the other.
func (c *strandCheck) sides() {
	f := c.piece.Fabric
	for r := range f.Rows {
		left, right := measure.AlongSides(f, r)
		if left > 0 && right > 0 && left != right {
			c.say(diag.Doubt, "edging-sides", r, fmt.Sprintf("the edging has %d stitches along the left side and %d along the right", left, right),
				fmt.Sprintf("work the same number on both; %d single crochet would lie flat", measure.AlongRows(f, 1, 0).Stitches))
		}
	}
}

func sideName(s fabric.Side) string {
	if s == fabric.Left {
		return "left"
	}
	return "right"
}

// upEdge says where a yarn is carried up.
func upEdge(s fabric.Side) string {
	if s == fabric.NoSide {
		return "inside"
	}
	return "the " + sideName(s) + " edge"
}

func times(n int) string {
	if n == 1 {
		return "once"
	}
	return fmt.Sprintf("%d times", n)
}
