package command

import (
	"context"
	"fmt"
	"strings"

	"strandway/chart/layout"
	"strandway/chart/schematic"
	"strandway/model"
	"strandway/model/measure"
	"strandway/render"
	"strandway/render/cloth"
)

var measureCommand = command{
	name:    "measure",
	use:     "FILE [-o X.svg|X.png|X.pdf] [--piece P] [--size NAME] [--against FIGURE] [--cloth] [--json]",
	summary: "draw a piece to scale with its measures in cm and inches, all sizes nested, against something of known size",
	detail:  "Without -o the measures are printed, for every piece and row.",
	run:     runMeasure,
}

// measuresOfPiece are the measures of one piece in one size as --json writes them.
type measuresOfPiece struct {
	Size     string       `json:"size"`
	Piece    string       `json:"piece"`
	Width    float64      `json:"width_cm"`
	Length   float64      `json:"length_cm"`
	Lies     string       `json:"lies,omitempty"`
	Fullness float64      `json:"fullness,omitempty"`
	Rows     []rowMeasure `json:"rows"`
}

type rowMeasure struct {
	Row    string  `json:"row"`
	Width  float64 `json:"width_cm"`
	Height float64 `json:"height_cm"`
}

func runMeasure(c *call) error {
	flags := c.options()
	choice := choose(flags, chartForms...)
	against := flags.String("against", "", "beside or on the `FIGURE`: "+strings.Join(figureNames(), ", "))
	laid := flags.Bool("cloth", false, "lay the cloth on the piece")
	asJSON := flags.Bool("json", false, "print JSON")
	path, err := c.file()
	if err != nil {
		return err
	}
	if choice.out != "" {
		if err := choice.check(chartForms...); err != nil {
			return err
		}
	}
	o := schematic.Options{}
	if *against != "" {
		figure, ok := schematic.FigureNamed(*against)
		if !ok {
			return misused("there is no figure %q: one of %s", *against, strings.Join(figureNames(), ", "))
		}
		o.Against = &figure
	}
	src, worked, piece, err := c.worked(path, choice)
	if err != nil {
		return err
	}
	figures := worked.Figures()
	if !figures.Known() {
		return fmt.Errorf("%s gives neither a gauge nor a hook and yarn, so its measures are not known", path)
	}
	if choice.out == "" || *asJSON {
		all := []measuresOfPiece{}
		for i := range worked.Pieces {
			if choice.piece == "" || i == piece {
				all = append(all, describeMeasures(worked, figures, i))
			}
		}
		if *asJSON {
			if err := printJSON(c.stdout, all); err != nil {
				return err
			}
		} else {
			printMeasures(c, all, src.pattern.Units == "in")
		}
	}
	if choice.out != "" {
		o.Title, o.Inches, o.Shown = title(worked, piece), src.pattern.Units == "in", worked.Size
		sizes, err := nested(src, piece)
		if err != nil {
			return err
		}
		if *laid {
			const pixels = 1800
			plan := layout.Arrange(worked.Pieces[piece].Fabric, layout.Measured())
			if o.Cloth, err = cloth.Laid(context.Background(), worked, piece, choice.colourway, plan, schematic.Outline(plan).Box(), pixels); err != nil {
				return err
			}
		}
		if err := render.Write(choice.out, schematic.Draw(sizes, o), render.Options{}); err != nil {
			return err
		}
	}
	return src.faults(c.stderr, worked)
}

func figureNames() []string {
	var names []string
	for _, f := range schematic.Figures() {
		names = append(names, f.Name)
	}
	return names
}

// nested is a piece in every size of the pattern.
func nested(src *source, piece int) ([]schematic.Piece, error) {
	lib, err := library()
	if err != nil {
		return nil, err
	}
	var out []schematic.Piece
	for i := range max(1, len(src.pattern.Sizes)) {
		w := model.Work(lib, src.pattern, i)
		size := w.Figures().Pieces[piece].Size
		p := schematic.Piece{Outline: schematic.Outline(layout.Arrange(w.Pieces[piece].Fabric, layout.Measured())),
			WidthCM: size.WidthCM, LengthCM: size.LengthCM, Round: size.Form == measure.Disc, Down: size.Form == measure.Hollow}
		if len(src.pattern.Sizes) > 1 {
			p.Name = src.pattern.Sizes[i].Name
		}
		out = append(out, p)
	}
	return out, nil
}

func describeMeasures(worked *model.Worked, figures *model.Figures, piece int) measuresOfPiece {
	size, fabric := &figures.Pieces[piece].Size, worked.Pieces[piece].Fabric
	out := measuresOfPiece{Piece: worked.Pieces[piece].Piece.Name, Width: round(size.WidthCM, 1), Length: round(size.LengthCM, 1),
		Lies: size.Lies(), Fullness: round(size.Fullness, 2)}
	if worked.Size < len(worked.Pattern.Sizes) {
		out.Size = worked.Pattern.Sizes[worked.Size].Name
	}
	for r := 1; r < len(fabric.Rows); r++ {
		out.Rows = append(out.Rows, rowMeasure{fabric.Rows[r].Label, round(size.WidthsCM[r], 1), round(size.RowCM[r], 2)})
	}
	return out
}

func printMeasures(c *call, all []measuresOfPiece, inches bool) {
	unit, per := "cm", 1.0
	if inches {
		unit, per = "in", 2.54
	}
	for _, m := range all {
		fmt.Fprintf(c.stdout, "%s: %.1f by %.1f %s", m.Piece, m.Width/per, m.Length/per, unit)
		if m.Lies != "" {
			fmt.Fprintf(c.stdout, "; fullness %.2f: %s", m.Fullness, map[string]string{"flat": "lies flat", "ruffles": "ruffles", "cups": "cups"}[m.Lies])
		}
		fmt.Fprintln(c.stdout)
		for _, r := range m.Rows {
			fmt.Fprintf(c.stdout, "  %s: %.1f wide, %.2f high\n", r.Row, r.Width/per, r.Height/per)
		}
	}
}
