// Package pattern is the .strand file: the written pattern with its yarns,
// gauge, sizes and pieces.
//
// A file is TOML whose pieces hold rows in the trade's own notation, as one
// would print them. [Decode] reads it strictly and names every fault with line
// and column; [Pattern.Encode] writes it in one fixed order, so that saved files
// compare cleanly. The rows stay text here; package syntax reads them.
package pattern

// Version is the file format this program reads and writes.
const Version = 1

// Untitled is the title of a pattern that has not been given one.
const Untitled = "Untitled"

// Pattern is a whole pattern.
type Pattern struct {
	Head     string // comment lines at the head of the file, with their number signs
	Title    string
	Designer string
	Terms    string // "US" or "UK": the terms in which the rows are written
	Units    string // "cm" or "in": the units in which measures are shown; the file itself is in cm
	Note     string

	Baby          bool    // for a baby or small child: stricter floats, and cautions
	FloatLimitCM  float64 // the longest float up an edge; 0: the trade's custom
	MarginPercent float64 // of yarn to have in hand over what is reckoned; 0: the trade's custom

	Hook       Hook
	Gauge      Gauge
	Yarns      []Yarn
	Colourways []Colourway
	Sizes      []Size
	Stitches   []Special
	Pieces     []Piece
	Callouts   []Callout
}

// Hook is the crochet hook.
type Hook struct {
	MM float64 // 0: not said
}

// Gauge is stitches and rows over a length of blocked fabric in the pattern stitch.
type Gauge struct {
	Stitches, Rows float64 // 0: not said
	OverCM         float64
	Swatch         *Swatch // nil: none was measured or weighed
	Second         *Swatch // one in another stitch, for a closer calibration; nil: none
}

// Swatch is a swatch: measured it gives the gauge, weighed it calibrates the
// yarn requirement.
type Swatch struct {
	Stitch            string             // the one stitch it is worked in, in the pattern's terms; "" for the pattern stitch
	Stitches, Rows    float64            // counted over the measured width and height; 0: not said
	WidthCM, HeightCM float64            // after blocking
	UnblockedWidthCM  float64            // before blocking, over the same stitches; 0: not measured
	UnblockedHeightCM float64            // before blocking, over the same rows; 0: not measured
	Grams             map[string]float64 // by yarn letter
}

// Yarn is one yarn of the pattern.
type Yarn struct {
	Letter string // one capital letter, or MC, CC, CC1 to CC9, as the rows name it
	Name   string
	Shade  string
	Colour string  // "#rrggbb", "" when not said
	Weight int     // the trade's weight category, 0 (lace) to 7 (jumbo); -1 when not said
	Grams  float64 // of one ball
	Metres float64 // of one ball
	Price  float64 // of one ball, in the designer's currency; 0: not said
	Look   string  // one of Looks, "" for solid

	Colours []string // of a heather, tweed or variegated yarn, "#rrggbb" each
	RepeatM float64  // metres after which a variegated yarn's colours come again

	Plies     int     // 0 when not said
	Twist     string  // of the plies, one of Twists, "" when not said
	Thickness float64 // beside the yarn that the gauge is worked in, which is 1; 0 when not said
	Fuzz      float64 // stray fibres beside a smooth wool's, which is 1; 0 when not said
	HeldWith  string  // letter of the yarn held together with this one, "" for none
}

// Twists are the ways in which plies are twisted together: the letter whose
// middle stroke they follow.
var Twists = []string{"S", "Z"}

// Looks are the looks a yarn can have.
var Looks = []string{"solid", "heather", "tweed", "variegated"}

// Colourway is a named choice of shade for each yarn letter.
type Colourway struct {
	Name   string
	Shades map[string]Shade // by yarn letter; a letter left out keeps the yarn's own shade
}

// Shade is a yarn's shade in a colourway.
type Shade struct {
	Shade  string
	Colour string // "#rrggbb"
}

// Size is one size of the pattern.
type Size struct {
	Name              string
	Repeats           int     // n, the number of stitch repeats across; 0: found from WidthCM
	WidthCM, LengthCM float64 // wanted, 0: not said
}

// Special is a special stitch of the designer's own, defined by known ones.
type Special struct {
	Abbreviation string
	Name         string
	US, UK       string // its definition in US or UK terms; one of the two is enough
	Symbol       string // what draws it in charts, the name of a symbol or a path; "" for its parts
}

// Callout is a note beside the chart of a piece, with a line to one stitch.
type Callout struct {
	Piece       string  // its name; "" for the first
	Row, Stitch int     // by the row's number, and counted from 1 in the order of working
	Text        string  // one line
	X, Y        float64 // from the stitch's head to the note's middle, in stitch widths, y upward; both 0: where there is room
}

// On reports whether the callout stands beside the chart of a piece.
func (c *Callout) On(p *Pattern, piece int) bool {
	return c.Piece == p.Pieces[piece].Name || c.Piece == "" && piece == 0
}

// Piece is one worked part: a body, an edging, a motif.
type Piece struct {
	Name     string
	Worked   string // one of Workings, "" when left to the rows
	Multiple string // stated multiple of the stitch pattern: "4 + 1", as [ParseMultiple] reads it
	Note     string
	Rows     string // the written rows
}

// Workings are the ways in which a piece can be worked.
var Workings = []string{"flat", "joined rounds", "spiral", "along an edge of another piece"}

// Yarn gives the yarn of a letter.
func (p *Pattern) Yarn(letter string) (*Yarn, bool) {
	for i := range p.Yarns {
		if p.Yarns[i].Letter == letter {
			return &p.Yarns[i], true
		}
	}
	return nil, false
}

// Colourway gives the colourway of a name.
func (p *Pattern) Colourway(name string) (*Colourway, bool) {
	for i := range p.Colourways {
		if p.Colourways[i].Name == name {
			return &p.Colourways[i], true
		}
	}
	return nil, false
}
