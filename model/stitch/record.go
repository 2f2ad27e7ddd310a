package stitch

import (
	"fmt"
	"io/fs"
	"path"

	"github.com/pelletier/go-toml/v2"
)

// terms are the languages and sets of terms that the library knows.
var terms = [...]string{"us", "uk", "es", "de", "fr", "nl"}

// names are a record's names in all terms.
type names struct {
	US *Term `toml:"us"`
	UK *Term `toml:"uk"`
	ES *Term `toml:"es"`
	DE *Term `toml:"de"`
	FR *Term `toml:"fr"`
	NL *Term `toml:"nl"`
}

func (n *names) byTerms() map[string]Term {
	m := make(map[string]Term, len(terms))
	for i, t := range [...]*Term{n.US, n.UK, n.ES, n.DE, n.FR, n.NL} {
		if t != nil {
			m[terms[i]] = *t
		}
	}
	return m
}

// stitchRecord is one [[stitch]] of the data files. Numbers left out follow
// from the composition, or are the usual ones: one base, one landing.
type stitchRecord struct {
	ID   string `toml:"id"`
	Name string `toml:"name"`
	As   string `toml:"as"` // a compound whose facts it shares
	names
	Composition  string  `toml:"composition"`
	Plain        string  `toml:"plain"`
	Loop         string  `toml:"loop"`
	Lump         string  `toml:"lump"`
	Bases        *int    `toml:"bases"`
	Offers       *int    `toml:"offers"`
	Legs         *int    `toml:"legs"`
	Wraps        *int    `toml:"wraps"`
	Pulls        *int    `toml:"pulls"`
	Below        int     `toml:"below"`
	SamePlace    bool    `toml:"same_place"`
	Closed       bool    `toml:"closed"`
	Chains       float64 `toml:"chains"`
	Height       float64 `toml:"height"`
	TurningChain int     `toml:"turning_chain"`
	Counts       bool    `toml:"counts"`
	Symbol       string  `toml:"symbol"`
	Sure         bool    `toml:"sure"`
}

// modifier is a rule by which a compound is built and named.
type modifier struct {
	Pattern string  `toml:"pattern"` // of the canonical name
	Family  string  `toml:"family"`
	Post    string  `toml:"post"`
	Loop    string  `toml:"loop"`
	Gather  string  `toml:"gather"` // how several legs come together
	Below   int     `toml:"below"`
	Height  float64 `toml:"height"` // factor
	names
}

// group is a named group of stitches in row language.
type group struct {
	Name    string   `toml:"name"`
	Also    []string `toml:"also"`
	Written string   `toml:"written"`
}

// data is everything that the files of a library say.
type data struct {
	Stitches  []stitchRecord    `toml:"stitch"`
	Modifiers []modifier        `toml:"modifier"`
	Groups    []group           `toml:"group"`
	Compounds []string          `toml:"compounds"`
	Words     map[string]string `toml:"words"`
	families  []string          // of Stitches, by index
}

// readData reads all TOML files of dir; a file's name is its stitches' family.
func readData(dir fs.FS) (*data, error) {
	files, err := fs.Glob(dir, "*.toml")
	if err != nil {
		return nil, err
	}
	var all data
	for _, name := range files {
		f, err := dir.Open(name)
		if err != nil {
			return nil, err
		}
		var d data
		err = toml.NewDecoder(f).DisallowUnknownFields().Decode(&d)
		f.Close()
		if err != nil {
			return nil, fmt.Errorf("stitch library, %s: %w", name, err)
		}
		for range d.Stitches {
			all.families = append(all.families, name[:len(name)-len(path.Ext(name))])
		}
		all.Stitches = append(all.Stitches, d.Stitches...)
		all.Modifiers = append(all.Modifiers, d.Modifiers...)
		all.Groups = append(all.Groups, d.Groups...)
		all.Compounds = append(all.Compounds, d.Compounds...)
		if d.Words != nil {
			all.Words = d.Words
		}
	}
	return &all, nil
}

var (
	loops = map[string]Loop{"": BothLoops, "front": FrontLoop, "back": BackLoop, "third": ThirdLoop}
	posts = map[string]Post{"": NoPost, "front": FrontPost, "back": BackPost}
	lumps = map[string]Lump{"": NoLump, "cluster": Cluster, "bobble": Bobble, "puff": Puff, "popcorn": Popcorn,
		"star": Star, "bullion": Bullion, "spike cluster": SpikeCluster}
)

// kind turns a record into a Kind that is still its own Plain.
func (r *stitchRecord) kind(family string) (*Kind, error) {
	acts, err := parseComposition(r.Composition)
	if err != nil {
		return nil, fmt.Errorf("stitch %s: %w", r.ID, err)
	}
	loop, okLoop := loops[r.Loop]
	lump, okLump := lumps[r.Lump]
	if !okLoop || !okLump {
		return nil, fmt.Errorf("stitch %s: unknown loop %q or lump %q", r.ID, r.Loop, r.Lump)
	}
	m := analyse(acts)
	k := &Kind{
		ID: r.ID, Name: r.Name, Terms: r.byTerms(), Family: family,
		Composition: r.Composition,
		Wraps:       or(r.Wraps, m.wraps), Pulls: or(r.Pulls, m.pulls), Legs: or(r.Legs, m.legs),
		SamePlace: r.SamePlace, Closed: r.Closed, Below: r.Below,
		Bases: or(r.Bases, 1), Offers: or(r.Offers, 1), Chains: r.Chains, Height: r.Height,
		TurningChain: r.TurningChain, Counts: r.Counts,
		Loop: loop, Lump: lump, Symbol: r.Symbol, Sure: r.Sure,
	}
	k.Plain = k
	return k, nil
}

func or(given *int, usual int) int {
	if given != nil {
		return *given
	}
	return usual
}
