package edit

import (
	"fmt"
	"math"
	"regexp"
	"slices"

	"strandway/model"
	"strandway/model/diag"
	"strandway/model/measure"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
)

// Fit is the pattern with a piece fitted to a wished width and length in cm, 0
// for one that stays: the repeats across or the foundation chain, how often its
// rows are worked again, the numbers of the rows after them, and the counts
// that the rows state. The wish is written with the size in hand. An error says
// what cannot be met.
func Fit(lib *stitch.Library, w *model.Worked, piece int, widthCM, lengthCM float64) (*pattern.Pattern, error) {
	f := fitting{lib: lib, size: w.Size, piece: piece, p: w.Pattern, w: w}
	switch {
	case w.Pieces[piece].Findings.Faults() > 0:
		return nil, fmt.Errorf("the rows of %q have faults, so they cannot be fitted: mend them first", w.Pieces[piece].Piece.Name)
	case !w.Figures().Known():
		return nil, fmt.Errorf("without a gauge it is not known how wide or long %q comes out: give the gauge first", w.Pieces[piece].Piece.Name)
	}
	if widthCM > 0 {
		if err := f.width(widthCM); err != nil {
			return nil, err
		}
	}
	if lengthCM > 0 {
		if err := f.length(lengthCM); err != nil {
			return nil, err
		}
	}
	f.counts()
	return f.p, nil
}

// fitting fits one piece step by step; w is always p worked.
type fitting struct {
	lib         *stitch.Library
	size, piece int
	p           *pattern.Pattern
	w           *model.Worked
}

// take goes on with another pattern.
func (f *fitting) take(p *pattern.Pattern) { f.p, f.w = p, model.Work(f.lib, p, f.size) }

// wish notes what is wanted of the size in hand.
func (f *fitting) wish(write func(*pattern.Size)) {
	if len(f.p.Sizes) == 0 {
		return
	}
	q := *f.p
	q.Sizes = slices.Clone(f.p.Sizes)
	write(&q.Sizes[f.size])
	f.take(&q)
}

// width finds the repeats: two workings tell how many stitches a repeat and the edges take.
func (f *fitting) width(wishCM float64) error {
	at := func(n int) (*pattern.Pattern, measure.Size, error) {
		p, err := model.WithRepeats(f.lib, f.p, f.size, f.piece, n)
		if err != nil {
			return nil, measure.Size{}, err
		}
		w := model.Work(f.lib, p, f.size)
		return p, w.Figures().Pieces[f.piece].Size, nil
	}
	const few = 3
	_, a, err := at(few)
	if err != nil {
		return err
	}
	_, b, err := at(few + 1)
	if err != nil {
		return err
	}
	each := b.WidthCM - a.WidthCM
	if each <= 0 {
		return fmt.Errorf("piece %q does not grow with its repeats, so its width cannot be fitted", f.w.Pieces[f.piece].Piece.Name)
	}
	n := max(1, few+int(math.Round((wishCM-a.WidthCM)/each)))
	p, _, err := at(n)
	if err != nil {
		return err
	}
	if len(f.p.Sizes) == 0 && !slices.EqualFunc(p.Pieces, f.p.Pieces, func(a, b pattern.Piece) bool { return a.Rows == b.Rows }) {
		p.Sizes = nil // the foundation says it all
	} else if len(f.p.Sizes) == 0 {
		p.Sizes[0].Name = "The one size"
	}
	f.take(p)
	f.wish(func(s *pattern.Size) { s.WidthCM = wishCM })
	return nil
}

// length finds how often the rows are worked again, and writes it.
func (f *fitting) length(wishCM float64) error {
	f.wish(func(s *pattern.Size) { s.LengthCM = wishCM })
	of := &f.w.Pieces[f.piece]
	size := f.w.Figures().Pieces[f.piece].Size
	rep, ok := measure.RepeatedRows(of.Fabric)
	if !ok {
		return fmt.Errorf("every row of %q is written by itself, so none can be worked again to %g cm: write which rows repeat", of.Piece.Name, wishCM)
	}
	fit := measure.FitRows(of.Fabric, rep, size.RowCM, wishCM)
	rows := fit.Times * rep.Each
	more := rows - (rep.Last - rep.First + 1)
	row := of.Tree.Rows[rep.Under]
	c := &changes{text: of.Tree.Text}
	ref := refIn(row)
	if ref != nil && ref.Until != "" {
		if m := aLength.FindStringIndex(c.text[ref.Start:ref.End]); m != nil {
			c.replace(diag.Span{Start: ref.Start + m[0], End: ref.Start + m[1]}, fmt.Sprintf("%g cm", wishCM))
		}
	} else {
		if more == 0 {
			return nil
		}
		end := last(row)
		if end == 0 && ref == nil || row.List != nil || row.Open || row.BySize != nil {
			return fmt.Errorf("%s of %q cannot be lengthened as it is written: write a range of rows", row.Label(), of.Piece.Name)
		}
		if end > 0 {
			c.renumber(of.Tree, func(n int) int {
				if n >= end {
					return n + more
				}
				return n
			})
		}
		if ref != nil {
			c.often(ref, fit.Times, (rep.Last-rep.First+1)/rep.Each, end == 0)
		}
	}
	f.take(Rows(f.p, f.piece, c.apply()))
	return nil
}

var (
	aLength  = regexp.MustCompile(`\d+(?:\.\d+)?\s*(?:cm|mm|inches|inch|ins?\b|")`)
	howOften = regexp.MustCompile(`(?i)\b(?:once|twice|thrice|(?:\d+|[a-z]+)(?: more)? times)(?: more)?`)
)

// often writes how often a reference is worked; was is how often it is now.
func (c *changes) often(ref *syntax.RowRef, times, was int, must bool) {
	if ref.More && ref.Times.B == was-1 {
		times--
	}
	words := fmt.Sprintf("%d times", times)
	switch {
	case times == 1 || times == 2:
		words = [...]string{1: "once", 2: "twice"}[times]
		if ref.More {
			words += " more"
		}
	case ref.More:
		words = fmt.Sprintf("%d more times", times)
	}
	line := Line(c.text, ref.Start)
	if m := howOften.FindStringIndex(c.text[ref.Start:line.End]); m != nil {
		c.replace(diag.Span{Start: ref.Start + m[0], End: ref.Start + m[1]}, words)
	} else if must {
		c.replace(diag.Span{Start: ref.End, End: ref.End}, " "+words)
	}
}

func refIn(row *syntax.Row) *syntax.RowRef {
	for _, n := range row.Body {
		if ref, ok := n.(*syntax.RowRef); ok {
			return ref
		}
	}
	return nil
}

// counts mends the counts that no longer hold.
func (f *fitting) counts() {
	of := &f.w.Pieces[f.piece]
	c := &changes{text: of.Tree.Text}
	for _, x := range of.Findings {
		if x.ID == "count" && x.Mend != nil {
			c.replace(x.Mend.Span, x.Mend.Text)
		}
	}
	if len(c.all) > 0 {
		f.take(Rows(f.p, f.piece, c.apply()))
	}
}
