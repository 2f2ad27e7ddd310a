package command

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/edit"
	"strandway/model/fabric"
	"strandway/model/strand"
	"strandway/render"
)

var strandsCommand = command{
	name:    "strands",
	use:     "FILE [-o X.svg|X.png|X.pdf] [--piece P] [--size NAME] [--rows] [--json]",
	summary: "say where each yarn waits, its floats, cuts and ends, and which rows to turn so that fewest are cut",
	detail:  "Heights and floats are in cm, and known only with a gauge, or hook and yarn. With --rows the rows of the\npiece are printed as the plan has them.",
	run:     runStrands,
}

// strandsOf is the strands of one piece as --json writes them.
type strandsOf struct {
	Piece string     `json:"piece"`
	Yarns []strandOf `json:"yarns"`
	Waits []waitsIn  `json:"waiting"`
	Held  []string   `json:"loops_on_markers_after"`
	Ends  int        `json:"ends"`
	Cuts  int        `json:"cuts"`
	Limit float64    `json:"float_limit_cm"`
	Baby  bool       `json:"for_a_baby,omitempty"`
	Over  int        `json:"floats_over_the_limit"`
	Now   *planOf    `json:"present,omitempty"`
	Best  *planOf    `json:"plan,omitempty"`
	Rows  string     `json:"planned_rows,omitempty"`
	Why   string     `json:"not_planned,omitempty"`
}

type strandOf struct {
	Yarn   string    `json:"yarn"`
	Rows   int       `json:"rows"`
	Joins  []jointOf `json:"joins"`
	Cuts   []jointOf `json:"cuts"`
	Floats []floatOf `json:"floats"`
	Behind []carryOf `json:"behind"`
	Ends   int       `json:"ends"`
}

type jointOf struct {
	Row  string `json:"row"`
	Edge string `json:"edge"`
}

type floatOf struct {
	From string  `json:"from"`
	To   string  `json:"to"`
	Edge string  `json:"edge"`
	CM   float64 `json:"cm"`
}

type carryOf struct {
	Row      string `json:"row"`
	Stitches int    `json:"longest_stitches"`
	Front    bool   `json:"held_to_the_front"`
}

type waitsIn struct {
	Row   string   `json:"row"`
	Yarns []waitOf `json:"yarns"`
}

type waitOf struct {
	Yarn string  `json:"yarn"`
	Edge string  `json:"edge"`
	CM   float64 `json:"height_cm"`
}

type planOf struct {
	Cuts     int      `json:"cuts"`
	Longest  float64  `json:"longest_float_cm"`
	Unturned int      `json:"rows_not_turned"`
	Faces    []string `json:"faces"`
}

func runStrands(c *call) error {
	flags := c.options()
	name := flags.String("piece", "", "the piece `P`, by its name; all without it")
	size := flags.String("size", "", "work the size `NAME`; the first without it")
	out := flags.String("o", "", "draw the strands of the piece to `PATH`: .svg, .png or .pdf")
	rows := flags.Bool("rows", false, "print the rows rewritten for the plan")
	asJSON := flags.Bool("json", false, "print JSON")
	path, err := c.file()
	if err != nil {
		return err
	}
	src, err := c.open(path)
	if err != nil {
		return err
	}
	worked, err := src.work(*size)
	if err != nil {
		return err
	}
	only := -1
	if *out != "" && *name == "" {
		only = 0
	}
	if *name != "" {
		if only, err = worked.PieceNamed(*name); err != nil {
			return wrongUse{err}
		}
	}
	figures := worked.Figures()
	if *out != "" && only < len(worked.Pieces) {
		of := &figures.Pieces[only]
		list := schematic.Strands(worked.Pieces[only].Fabric, &of.Strands, of.Size.RowCM,
			schematic.StrandOptions{Title: title(worked, only), Inks: worked.YarnColours(only, "")})
		if err := render.Write(*out, list, render.Options{}); err != nil {
			return err
		}
		return src.faults(c.stderr, worked)
	}
	all := []strandsOf{}
	for i := range worked.Pieces {
		if only < 0 || i == only {
			all = append(all, describeStrands(worked, figures, i))
		}
	}
	switch {
	case *asJSON:
		err = printJSON(c.stdout, all)
	case *rows:
		for _, s := range all {
			fmt.Fprint(c.stdout, s.Rows)
			if s.Why != "" {
				fmt.Fprintf(c.stderr, "%s: not planned: %s\n", s.Piece, s.Why)
			}
		}
	default:
		for i, s := range all {
			if i > 0 {
				fmt.Fprintln(c.stdout)
			}
			s.print(c.stdout, figures.Known())
		}
	}
	if err != nil {
		return err
	}
	return src.faults(c.stderr, worked)
}

func describeStrands(worked *model.Worked, figures *model.Figures, piece int) strandsOf {
	of := &worked.Pieces[piece]
	label := func(row int) string { return of.Fabric.Rows[row].Label }
	joints := func(list []strand.Joint) []jointOf {
		out := []jointOf{}
		for _, j := range list {
			out = append(out, jointOf{label(j.Row), edgeName(j.Side)})
		}
		return out
	}
	strands := &figures.Pieces[piece].Strands
	out := strandsOf{Piece: of.Piece.Name, Ends: strands.Ends, Cuts: strands.Cut(), Yarns: []strandOf{}, Waits: []waitsIn{}, Held: []string{}}
	out.Limit, out.Baby = worked.Limits().FloatCM, worked.Pattern.Baby
	for i := range strands.ByYarn {
		s := &strands.ByYarn[i]
		y := strandOf{Yarn: s.Letter, Rows: len(s.Rows), Joins: joints(s.Joins), Cuts: joints(s.Cuts), Ends: s.Ends(), Floats: []floatOf{}, Behind: []carryOf{}}
		for _, f := range s.Floats {
			y.Floats = append(y.Floats, floatOf{label(f.From), label(f.To), edgeName(f.Side), round(f.CM, 2)})
			if f.CM > out.Limit+.05 {
				out.Over++
			}
		}
		for _, k := range s.Carry {
			y.Behind = append(y.Behind, carryOf{label(k.Row), k.Longest, k.Front})
		}
		out.Yarns = append(out.Yarns, y)
	}
	for r, waits := range strands.Waiting {
		if len(waits) == 0 {
			continue
		}
		in := waitsIn{Row: label(r)}
		for _, w := range waits {
			in.Yarns = append(in.Yarns, waitOf{of.Fabric.Yarns[w.Yarn], edgeName(w.Side), round(w.CM, 2)})
		}
		out.Waits = append(out.Waits, in)
	}
	for _, r := range strands.Held {
		out.Held = append(out.Held, label(r))
	}
	lib, err := library()
	if err != nil {
		out.Why = err.Error()
		return out
	}
	plan, err := edit.Strands(lib, worked, piece)
	if err != nil {
		out.Why = err.Error()
		return out
	}
	out.Now, out.Best, out.Rows = describePlan(plan.Present), describePlan(plan.Best), plan.Rows
	return out
}

func describePlan(p strand.Plan) *planOf {
	out := &planOf{Cuts: p.Cuts, Longest: round(p.Longest, 2), Unturned: p.Unturned}
	for _, f := range p.Faces[1:] { // the foundation has none
		out.Faces = append(out.Faces, map[strand.Face]string{strand.RS: "RS", strand.WS: "WS"}[f])
	}
	return out
}

// print writes the strands in words; known says whether heights in cm are known.
func (s *strandsOf) print(w io.Writer, known bool) {
	fmt.Fprintf(w, "%s: %s to weave in, %s\n", s.Piece, count(s.Ends, "end"), count(s.Cuts, "cut"))
	for _, y := range s.Yarns {
		fmt.Fprintf(w, "  yarn %s: %s, %s\n", y.Yarn, count(y.Rows, "row"), count(y.Ends, "end"))
		for _, j := range y.Joins {
			fmt.Fprintf(w, "    joined at %s\n", j)
		}
		for _, f := range y.Floats {
			length := ""
			if known {
				length = fmt.Sprintf("%.1f cm ", f.CM)
			}
			where := "up the " + f.Edge + " edge"
			if f.Edge == "" {
				where = "up inside"
			}
			fmt.Fprintf(w, "    carried %s%s from %s to %s\n", length, where, f.From, f.To)
		}
		for _, k := range y.Behind {
			front := ""
			if k.Front {
				front = ", held to the front"
			}
			fmt.Fprintf(w, "    %s: runs behind up to %s%s\n", k.Row, count(k.Stitches, "stitch"), front)
		}
		for _, j := range y.Cuts {
			fmt.Fprintf(w, "    cut after %s\n", j)
		}
	}
	for _, in := range s.Waits {
		var words []string
		for _, y := range in.Yarns {
			at := y.Yarn + " in the fabric"
			if y.Edge != "" {
				at = y.Yarn + " at the " + y.Edge + " edge"
			}
			if known {
				at += fmt.Sprintf(", %.1f cm up", y.CM)
			}
			words = append(words, at)
		}
		fmt.Fprintf(w, "  in %s wait: %s\n", in.Row, strings.Join(words, "; "))
	}
	for _, r := range s.Held {
		fmt.Fprintf(w, "  the live loop is put on a marker after %s\n", r)
	}
	if known && (s.Over > 0 || s.Baby) {
		baby := ""
		if s.Baby {
			baby = " for a baby or small child; local product-safety rules decide"
		}
		fmt.Fprintf(w, "  %s over the limit of %g cm%s\n", count(s.Over, "float"), s.Limit, baby)
	}
	switch {
	case s.Why != "":
		fmt.Fprintf(w, "  not planned: %s\n", s.Why)
	case s.Best != nil && *s.Now.sum() == *s.Best.sum():
		fmt.Fprintf(w, "  nothing better: %s\n", s.Now.words(known))
	case s.Best != nil:
		fmt.Fprintf(w, "  as written: %s\n  planned:    %s\n  faces: %s\n", s.Now.words(known), s.Best.words(known), strings.Join(s.Best.Faces, " "))
	}
}

// sum is what a plan costs, for comparing.
func (p *planOf) sum() *[3]float64 {
	return &[3]float64{float64(p.Cuts), p.Longest, float64(p.Unturned)}
}

func (p *planOf) words(known bool) string {
	length := ""
	if known {
		length = fmt.Sprintf("longest float %.1f cm, ", p.Longest)
	}
	return fmt.Sprintf("%s, %s%s not turned", count(p.Cuts, "cut"), length, count(p.Unturned, "row"))
}

func (j jointOf) String() string {
	if j.Edge == "" {
		return j.Row
	}
	return j.Row + ", at the " + j.Edge + " edge"
}

func edgeName(s fabric.Side) string {
	return map[fabric.Side]string{fabric.Left: "left", fabric.Right: "right", fabric.Bottom: "lower", fabric.Upper: "upper"}[s]
}

// count is a number with its noun: "1 row", "3 rows".
func count(n int, noun string) string {
	if n != 1 {
		noun = strings.Replace(noun+"s", "chs", "ches", 1)
	}
	return fmt.Sprintf("%d %s", n, noun)
}

func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
