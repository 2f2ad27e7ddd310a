package chart

import (
	"cmp"
	"image/color"
	"slices"
	"strings"

	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/chart/layout"
	"strandway/chart/text"
	"strandway/model/stitch"
)

// keyBook gathers what was drawn, for the key.
type keyBook struct {
	signs  map[sign]*meaning
	chains bool
	ring   bool
	meshes bool            // of filet, open and filled
	own    map[string]bool // stitches of the designer\'s own, by abbreviation
	yarns  map[string]bool // signs of what happens to a yarn, by symbol
}

// sign is one look of a stitch on the chart.
type sign struct {
	symbol string
	legs   int // feet that meet in one head
	lump   stitch.Lump
	bowed  int // legs that share one foot
	post   int8
	mark   string
}

// meaning is the kinds that a sign stands for, on either face: a stitch round
// the front post on a wrong side row shows as one round the back.
type meaning struct{ rs, ws *stitch.Kind }

func newKeyBook() keyBook {
	return keyBook{signs: make(map[sign]*meaning), yarns: make(map[string]bool), own: make(map[string]bool)}
}

// stitch notes a stitch as it was drawn.
func (b *keyBook) stitch(e *engraver, id int32, k *stitch.Kind, legs []layout.Leg, mark string) {
	s := sign{symbol: e.symbolOf(k), legs: 1, mark: mark}
	if e.isSpike(id) {
		s.symbol = "spike"
	}
	if shape, ok := e.set.Symbol(s.symbol); !ok || !shape.Whole {
		s.legs = max(1, len(legs))
		if k.SamePlace && k.Legs > 1 {
			s.bowed, s.lump = k.Legs, k.Lump
		}
	}
	if len(legs) > 0 {
		s.post = legs[0].Post
	}
	m := b.signs[s]
	if m == nil {
		m = &meaning{}
		b.signs[s] = m
	}
	ws := e.f.Rows[e.f.Stitches[id].Row].WS
	if ws && m.ws == nil {
		m.ws = e.asWorked(k, s, ws)
	} else if !ws && m.rs == nil {
		m.rs = e.asWorked(k, s, ws)
	}
}

// asWorked is the kind with the post or loop that its place gave it, as the hands work it.
func (e *engraver) asWorked(k *stitch.Kind, s sign, ws bool) *stitch.Kind {
	prefix := ""
	switch {
	case k.Post == stitch.NoPost && s.post != 0:
		prefix = "bp"
		if (s.post > 0) != ws {
			prefix = "fp"
		}
	case k.Loop == stitch.BothLoops && s.mark == "third-loop":
		prefix = "tl"
	case k.Loop == stitch.BothLoops && s.mark != "":
		prefix = "bl"
		if (s.mark == "front-loop") != ws {
			prefix = "fl"
		}
	}
	if c, ok := e.o.Library.Kind(prefix + k.Name); ok {
		return c
	}
	return k
}

// entry is one line of the key.
type entry struct {
	tall       float64 // of its sample
	draw       func(at geom.Point)
	abbr, name string
}

// Places within an entry of the key, in u.
const (
	keySample = 1.9 // room for the sample
	keyGap    = .45 // between lines, and round the texts
	keySize   = .66
	keyShrunk = .8 // samples stand lower than in the chart
	keyLong   = 9  // entries, from which on it goes beyond a narrow chart's width
)

// key lists exactly what is drawn, below the chart.
func (e *engraver) key() {
	entries := e.entries()
	if len(entries) == 0 {
		return
	}
	ink := e.measured().Ink
	size := keySize * e.unit
	abbrWidth, nameWidth := 0.0, 0.0
	for _, n := range entries {
		abbrWidth = max(abbrWidth, text.Width(text.SansBold, n.abbr, size))
		nameWidth = max(nameWidth, text.Width(text.Sans, n.name, size))
	}
	column := (keySample+2*keyGap)*e.unit + abbrWidth + nameWidth + e.unit
	columns := min(max(1, int(ink.Width()/column)), len(entries))
	if len(entries) > keyLong {
		columns = max(columns, 2)
	}
	total := 0.0
	for _, n := range entries {
		total += max(n.tall, .8) + keyGap
	}
	e.begin("key", "key", e.say("Key"), -1)
	top := ink.Max.Y + 1.1*e.unit
	x, y := ink.Min.X, top
	for i, n := range entries {
		tall := (max(n.tall, .8) + keyGap) * e.unit
		if y > top && y-top+tall/2 > total*e.unit/float64(columns) && i > 0 {
			x, y = x+column, top
		}
		y += tall
		n.draw(e.unpage(geom.Point{X: x + keySample/2*e.unit, Y: y}))
		base := y - n.tall/2*e.unit + .27*size
		left := x + (keySample+keyGap)*e.unit
		e.text(display.Text{X: left, Y: base, Size: size, Face: display.SansBold, Fill: e.look.text, Text: n.abbr})
		if n.abbr != "" {
			left += abbrWidth + keyGap*e.unit
		}
		e.text(display.Text{X: left, Y: base, Size: size, Face: display.Sans, Fill: e.look.text, Text: n.name})
	}
	e.end()
}

// unpage brings a point of the page back to u.
func (e *engraver) unpage(p geom.Point) geom.Point {
	q := geom.Point{X: p.X / e.unit, Y: -p.Y / e.unit}
	if e.o.LeftHanded {
		q.X = -q.X
	}
	return q
}

// entries are the lines of the key, lowest stitches first, signs that are no stitches last.
func (e *engraver) entries() []entry {
	var out []entry
	plain := yarnInk{line: e.look.text, fill: e.look.paper}
	if e.drawn.meshes {
		out = append(out, e.meshEntry(e.say("open mesh"), plain, e.look.paper), e.meshEntry(e.say("filled mesh"), plain, e.look.yarn(0).line))
	}
	if e.drawn.chains {
		if ch, ok := e.o.Library.Kind("ch"); ok {
			out = append(out, e.entry(ch, "", .4, func(at geom.Point) {
				e.oval(at.Add(geom.Point{Y: .2}), geom.Point{X: 1}, ovalLength, plain)
			}))
		}
	}
	signs := make([]sign, 0, len(e.drawn.signs))
	for s := range e.drawn.signs {
		signs = append(signs, s)
	}
	kindOf := func(s sign) *stitch.Kind {
		m := e.drawn.signs[s]
		if m.rs != nil {
			return m.rs
		}
		return m.ws
	}
	slices.SortFunc(signs, func(a, b sign) int {
		ka, kb := kindOf(a), kindOf(b)
		return cmp.Or(cmp.Compare(ka.Chains, kb.Chains), cmp.Compare(ka.Plain.Legs*a.legs+a.bowed, kb.Plain.Legs*b.legs+b.bowed),
			cmp.Compare(a.post*a.post, b.post*b.post), cmp.Compare(b.post, a.post), strings.Compare(a.mark, b.mark), strings.Compare(ka.Name, kb.Name),
			strings.Compare(a.symbol, b.symbol), cmp.Compare(a.legs, b.legs), cmp.Compare(a.bowed, b.bowed), cmp.Compare(a.lump, b.lump))
	})
	for _, s := range signs {
		out = append(out, e.signEntry(s, plain))
	}
	out = append(out, e.ownEntries(plain)...)
	if len(e.f.Yarns) > 1 && !e.o.Monochrome {
		for i, letter := range e.f.Yarns {
			out = append(out, e.yarnEntry(letter, e.look.yarn(uint8(i)), i))
		}
	}
	for _, extra := range []struct {
		drawn        bool
		symbol, name string
	}{
		{e.drawn.ring, "ring", "ring"}, {e.drawn.yarns["join"], "join", "join yarn"}, {e.drawn.yarns["cut"], "cut", "fasten off"},
		{e.drawn.yarns["wait"], "wait", "leave yarn to wait"}, {e.drawn.yarns["pick-up"], "pick-up", "take up waiting yarn"},
		{e.drawn.yarns["hold"], "hold", "loop held on a marker"},
	} {
		if shape, ok := e.set.Symbol(extra.symbol); ok && extra.drawn {
			out = append(out, entry{tall: shape.Height(), name: e.say(extra.name), draw: func(at geom.Point) {
				e.put(glyph{symbol: extra.symbol, height: steps(shape.Height()), fill: e.look.paper}, frame{at, geom.Point{Y: 1}}, e.look.text)
			}})
		}
	}
	return out
}

// meshEntry shows a cell of filet.
func (e *engraver) meshEntry(name string, ink yarnInk, fill color.NRGBA) entry {
	return entry{tall: .8, name: name, draw: func(at geom.Point) {
		box := geom.Empty().Add(e.page(at.Add(geom.Point{X: -.4}))).Add(e.page(at.Add(geom.Point{X: .4, Y: .8})))
		e.list.Items = append(e.list.Items, display.Path{Path: rectangle(box), Fill: display.Solid(fill),
			Stroke: display.Solid(ink.line), Width: fineLine * e.unit})
	}}
}

// yarnEntry shows a yarn's true colour and its letter.
func (e *engraver) yarnEntry(letter string, ink yarnInk, i int) entry {
	shade := ink.line
	if i < len(e.o.Inks) {
		shade = e.o.Inks[i]
	}
	name := e.say("yarn")
	if i < len(e.o.YarnNames) && e.o.YarnNames[i] != "" {
		name = e.o.YarnNames[i]
	}
	return entry{tall: .5, abbr: letter, name: name, draw: func(at geom.Point) {
		box := geom.Empty().Add(e.page(at.Add(geom.Point{X: -.5}))).Add(e.page(at.Add(geom.Point{X: .5, Y: .5})))
		e.list.Items = append(e.list.Items, display.Path{Path: rectangle(box), Fill: display.Solid(shade),
			Stroke: display.Solid(ink.line), Width: thinStroke * e.unit})
	}}
}

func (e *engraver) signEntry(s sign, ink yarnInk) entry {
	shape, ok := e.set.Symbol(s.symbol)
	if !ok {
		shape, _ = e.set.Symbol("sc")
	}
	height := shape.Height()
	if height > 1.2 {
		height = 1.2 + (height-1.2)*keyShrunk
	}
	draw := func(at geom.Point) {
		feet, posts := make([]geom.Point, s.legs), make([]post, s.legs)
		spread := min(.8, 1.5/float64(max(1, s.legs-1)))
		for i := range feet {
			feet[i] = at.Add(geom.Point{X: (float64(i) - float64(s.legs-1)/2) * spread})
			posts[i] = post{s.post, geom.Point{Y: 1}}
		}
		name := s.symbol
		if s.post != 0 && s.legs == 1 {
			name = e.footed(name)
		}
		g := glyph{symbol: name, fill: ink.fill, legs: bowedLegs(s.bowed), lump: s.lump}
		e.engrave(g, stance{feet: feet, posts: posts, top: at.Add(geom.Point{Y: height})}, s.mark, ink)
	}
	m := e.drawn.signs[s]
	below := ""
	if k := cmp.Or(m.rs, m.ws); s.symbol == "spike" && k.Symbol != "spike" {
		below = "%s, worked below"
	}
	turned := s.post != 0 || s.mark != "" // shows otherwise on the right side than it is worked on the wrong one
	switch {
	case turned && m.rs != nil && m.ws != nil && m.rs != m.ws:
		en := e.entry(m.rs, "", height, draw)
		other, _ := e.o.Library.Word(m.ws, e.o.Terms)
		en.name = e.say("%s on RS; %s on WS", en.name, other)
		return en
	case turned && m.rs == nil:
		return e.entry(m.ws, "%s on WS", height, draw)
	}
	return e.entry(cmp.Or(m.rs, m.ws), below, height, draw)
}

// entry is the line of a kind; more is a sentence with a hole for its name, "" for the name alone.
func (e *engraver) entry(k *stitch.Kind, more string, tall float64, draw func(geom.Point)) entry {
	word, _ := e.o.Library.Word(k, e.o.Terms)
	name := e.o.Library.Name(k, e.o.Terms)
	if more != "" {
		name = e.say(more, name)
	}
	return entry{tall: tall, draw: draw, abbr: word, name: name}
}
