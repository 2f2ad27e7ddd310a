package rows

import (
	"image/color"
	"slices"

	"strandway/app/theme"
	"strandway/chart/display"
	"strandway/chart/geom"
	"strandway/model/fabric"
	"strandway/model/strand"
)

// Widths of cords, px.
const (
	cordWidth  = 3.1
	casing     = .75 // on each side of a cord
	thinWidth  = 1.6 // a second yarn that runs along a row
	cordRadius = 6
	loopRadius = 10
	chevron    = 4
)

// cords draws the yarn that rules the page: under each row a cord in the direction in which it is
// worked, turned up at the edge where the work turns, waiting in the margin until its yarn is taken up again,
// and about each round a closed loop. The list is in px from the top left of the page.
func cords(boxes []box, f *fabric.Fabric, yarns []color.NRGBA, k theme.Tokens, width, height float32) *display.List {
	d := &ruling{fabric: f, tokens: k, width: float64(width), bottom: float64(height)}
	d.list = &display.List{Width: float64(width), Height: float64(height)}
	d.place(boxes)
	strands := strand.Follow(f, nil)
	for y := range strands.ByYarn {
		if y < len(yarns) {
			d.yarn(&strands.ByYarn[y], yarns[y])
		}
	}
	return d.list
}

// blankRules rules an empty page with one pale cord that turns at every edge.
func blankRules(k theme.Tokens, width, height float32) *display.List {
	const step = 44
	left, right := float64(laneLeft), float64(width-laneMargin)
	corners := []geom.Point{{X: right, Y: topMargin + lineHeight + cordBelow}}
	for y := corners[0].Y; y < float64(height)+step; y += step {
		to := left
		if corners[len(corners)-1].X == left {
			to = right
		}
		corners = append(corners, geom.Point{X: to, Y: y}, geom.Point{X: to, Y: y + step})
	}
	d := &ruling{list: &display.List{Width: float64(width), Height: float64(height)}}
	d.stroke(rounded(corners, cordRadius), k.Line, 2.2)
	return d.list
}

// run is where a fabric row is drawn on the page.
type run struct {
	row  int
	y    float64  // of the cord; of a round, where the yarn comes in and goes out
	loop geom.Box // of a round
	done float64  // how much of the row is worked, 1 for all
}

type ruling struct {
	fabric *fabric.Fabric
	tokens theme.Tokens
	width  float64
	bottom float64
	runs   []run // in working order
	list   *display.List
}

func (d *ruling) place(boxes []box) {
	for i := range boxes {
		b := &boxes[i]
		if b.loop {
			top := float64(b.y + loopGap)
			loop := geom.Box{
				Min: geom.Point{X: loopLeft, Y: top},
				Max: geom.Point{X: d.width - loopMargin, Y: float64(b.y + b.height - loopGap)},
			}
			for _, row := range b.works {
				d.runs = append(d.runs, run{row: row, y: top + 24, loop: loop, done: 1})
			}
			continue
		}
		for c, y := range b.cords {
			d.runs = append(d.runs, run{row: b.drawn(c), y: float64(y), done: done(d.fabric, b.drawn(c))})
		}
	}
	slices.SortStableFunc(d.runs, func(a, b run) int { return a.row - b.row })
}

// done is how much of a row is worked: all of it, save of the last row of a piece while it is being written.
func done(f *fabric.Fabric, row int) float64 {
	r := &f.Rows[row]
	if row == 0 || row+1 < len(f.Rows) || r.Unworked == 0 {
		return 1
	}
	below := len(f.LandingsOf(row - 1))
	if below == 0 {
		return 1
	}
	return max(.02, 1-float64(r.Unworked)/float64(below))
}

// yarn draws one yarn's way through the runs.
func (d *ruling) yarn(s *strand.Strand, c color.NRGBA) {
	lane := float64(min(int(s.Yarn), lanes-1)) * laneWidth
	if int(s.Yarn) >= lanes {
		lane += 4 * float64(int(s.Yarn)-lanes+1)
	}
	p := pen{d: d, yarn: s.Yarn, colour: c, edge: d.tokens.Casing(c), lane: lane}
	var last *run
	for i := range d.runs {
		r := &d.runs[i]
		row := &d.fabric.Rows[r.row]
		if row.Yarn != s.Yarn {
			if slices.Contains(s.Rows, r.row) {
				d.along(r, s.Yarn, c)
			}
			continue
		}
		joined := last == nil || slices.ContainsFunc(s.Joins, func(j strand.Joint) bool { return j.Row > last.row && j.Row <= r.row })
		p.reach(last, r, joined)
		p.work(r)
		last = r
	}
	if last == nil {
		return
	}
	cut := slices.ContainsFunc(s.Cuts, func(j strand.Joint) bool { return j.Row >= last.row }) && d.isCut(s.Yarn)
	p.leave(last, cut, last == &d.runs[len(d.runs)-1])
}

// isCut reports whether the rows themselves say that a yarn is cut after it was last worked.
func (d *ruling) isCut(yarn uint8) bool {
	cut := false
	for _, e := range d.fabric.Events {
		if e.Yarn == yarn {
			cut = e.Do == fabric.Cut
		}
	}
	return cut
}

// pen draws one yarn.
type pen struct {
	d            *ruling
	yarn         uint8
	colour, edge color.NRGBA
	lane         float64
	at           []geom.Point // the corners of the cord since it was last joined
}

// ends are the x of a row's cord where the row begins and where it ends.
func (p *pen) ends(r *run) (from, to float64) {
	left, right := float64(washLeft), p.d.width-washMargin
	if p.d.fabric.Rows[r.row].FromLeft {
		return left, right
	}
	return right, left
}

// margin is the x of the yarn's lane beside a row's end.
func (p *pen) margin(end float64) float64 {
	if end > p.d.width/2 {
		return p.d.width - laneMargin + p.lane
	}
	return laneLeft - p.lane
}

// reach brings the yarn from the run where it was to the one where it is worked next.
func (p *pen) reach(last, r *run, joined bool) {
	flat := p.d.fabric.Rows[r.row].Shape == fabric.Flat
	from, _ := p.ends(r)
	if !flat {
		from = r.loop.Max.X
	}
	if last == nil {
		p.join(p.outside(from, flat), r.y)
		return
	}
	_, to := p.ends(last)
	round := p.d.fabric.Rows[last.row].Shape != fabric.Flat
	if round {
		to = last.loop.Max.X
	}
	switch {
	case !joined && to != from && p.gathered(last.row, r.row):
		// Rows of the yarn that are not drawn lie between: the cord goes on where they end.
		p.flush()
		p.at = append(p.at, geom.Point{X: from, Y: r.y})
	case joined:
		p.cut(p.outside(to, !round), last)
		p.flush()
		if flat && !round && last.row+1 == r.row && to != from {
			p.dashed(last, r, to, from)
		}
		p.join(p.outside(from, flat), r.y)
	case !flat && round && last.row+1 == r.row:
		x := r.loop.Max.X - 18
		p.at = append(p.at, geom.Point{X: x, Y: last.loop.Max.Y}, geom.Point{X: x, Y: r.loop.Min.Y})
		p.flush()
	case to == from || !flat || round:
		m := p.margin(from)
		if len(p.at) == 0 {
			p.at = append(p.at, geom.Point{X: to, Y: last.y})
		}
		p.at = append(p.at, geom.Point{X: m, Y: last.y}, geom.Point{X: m, Y: r.y}, geom.Point{X: from, Y: r.y})
	default:
		p.flush()
		p.dashed(last, r, to, from)
		p.at = append(p.at, geom.Point{X: from, Y: r.y})
	}
}

// gathered reports whether the yarn is worked between two rows that are drawn, in rows that are not.
func (p *pen) gathered(last, next int) bool {
	for row := last + 1; row < next; row++ {
		if p.d.fabric.Rows[row].Yarn == p.yarn {
			return true
		}
	}
	return false
}

// outside is where a cord begins or ends at an edge, clear of the lanes further in.
func (p *pen) outside(end float64, flat bool) float64 {
	switch m := p.margin(end); {
	case !flat:
		return end
	case m > end:
		return m - laneWidth - 1
	default:
		return m + laneWidth + 1
	}
}

// work draws the row itself.
func (p *pen) work(r *run) {
	row := &p.d.fabric.Rows[r.row]
	if row.Shape != fabric.Flat {
		p.flush()
		p.loop(r)
		return
	}
	from, to := p.ends(r)
	end := from + (to-from)*r.done
	p.at = append(p.at, geom.Point{X: end, Y: r.y})
	ahead := 1.0
	if to < from {
		ahead = -1
	}
	for _, t := range []float64{.27, .7} {
		if t < r.done {
			p.arrow(from+(to-from)*t, r.y, ahead)
		}
	}
	if r.done < 1 {
		p.flush()
		p.hook(end, r.y)
	}
}

// leave ends the cord: cut, waiting in the margin down to the page's end, or in the row in hand.
func (p *pen) leave(last *run, cut, inHand bool) {
	_, to := p.ends(last)
	if p.d.fabric.Rows[last.row].Shape != fabric.Flat {
		to = last.loop.Max.X
	}
	switch {
	case cut:
		p.cut(p.outside(to, last.loop == (geom.Box{})), last)
	case !inHand && len(p.at) > 0:
		m := p.margin(to)
		p.at = append(p.at, geom.Point{X: m, Y: last.y}, geom.Point{X: m, Y: p.d.bottom})
	}
	p.flush()
}

// flush draws what has been gathered of the cord.
func (p *pen) flush() {
	if len(p.at) > 1 {
		path := rounded(p.at, cordRadius)
		p.d.stroke(path, p.edge, cordWidth+2*casing)
		p.d.stroke(path, p.colour, cordWidth)
	}
	p.at = nil
}

func (p *pen) loop(r *run) {
	b := r.loop
	path := roundedBox(b, loopRadius)
	p.d.stroke(path, p.edge, cordWidth+2*casing)
	p.d.stroke(path, p.colour, cordWidth)
	// Seen from the right side a round runs against the clock.
	ahead := -1.0
	if p.d.fabric.Rows[r.row].WS {
		ahead = 1
	}
	x := (b.Min.X + b.Max.X) / 2
	p.arrow(x, b.Min.Y, ahead)
	p.arrow(x, b.Max.Y, -ahead)
}

// arrow marks the direction of working.
func (p *pen) arrow(x, y, ahead float64) {
	var path geom.Path
	path.MoveTo(geom.Point{X: x - ahead*chevron, Y: y - chevron})
	path.LineTo(geom.Point{X: x + ahead*chevron*.6, Y: y})
	path.LineTo(geom.Point{X: x - ahead*chevron, Y: y + chevron})
	p.d.stroke(path, p.edge, 1.3)
}

// dashed is the way back of a yarn whose row begins at the edge where the last one began.
func (p *pen) dashed(last, r *run, to, from float64) {
	const below = 5
	path := rounded([]geom.Point{{X: to, Y: last.y}, {X: to, Y: last.y + below}, {X: from, Y: last.y + below}, {X: p.margin(from), Y: last.y + below}, {X: p.margin(from), Y: r.y}, {X: from, Y: r.y}}, cordRadius/2)
	p.d.list.Items = append(p.d.list.Items, display.Path{Path: path, Stroke: display.Solid(p.edge), Width: 1.2, Dash: []float64{2.5, 4}})
}

// join begins the cord with an open triangle outside the edge; cut ends it with a filled one.
func (p *pen) join(x, y float64) {
	p.at = []geom.Point{{X: x, Y: y}}
	p.triangle(x, y, false)
}

func (p *pen) cut(x float64, last *run) {
	y := last.y
	if n := len(p.at); n > 0 {
		p.at = append(p.at, geom.Point{X: x, Y: y})
	}
	if last.loop != (geom.Box{}) {
		y += 18
	}
	p.triangle(x, y, true)
}

func (p *pen) triangle(x, y float64, filled bool) {
	out := 1.0
	if x < p.d.width/2 {
		out = -1
	}
	tip := x + out*5
	var path geom.Path
	path.MoveTo(geom.Point{X: tip, Y: y})
	path.LineTo(geom.Point{X: tip + out*8, Y: y - 4.5})
	path.LineTo(geom.Point{X: tip + out*8, Y: y + 4.5})
	path.Close()
	ink := p.d.tokens.YarnInk(p.colour)
	fill := display.Solid(p.d.tokens.Paper)
	if filled {
		fill = display.Solid(ink)
	}
	p.d.list.Items = append(p.d.list.Items, display.Path{Path: path, Stroke: display.Solid(ink), Width: 1.2, Fill: fill})
}

// hook stands at the end of a row that is being worked.
func (p *pen) hook(x, y float64) {
	var path geom.Path
	path.MoveTo(geom.Point{X: x + 1, Y: y - 15})
	path.LineTo(geom.Point{X: x + 1, Y: y - 1})
	path.CubicTo(geom.Point{X: x + 1, Y: y + 5}, geom.Point{X: x - 7, Y: y + 5}, geom.Point{X: x - 6, Y: y - 2})
	p.d.stroke(path, p.d.tokens.Accent, 2)
}

// along draws a second yarn that runs with a row's cord: solid where it is worked, dashed where it is carried behind.
func (d *ruling) along(r *run, yarn uint8, c color.NRGBA) {
	row := &d.fabric.Rows[r.row]
	if row.Shape != fabric.Flat || row.Last == row.First {
		return
	}
	p := pen{d: d, colour: c, edge: d.tokens.Casing(c)}
	from, to := p.ends(r)
	n := float64(row.Last - row.First)
	y := r.y - 4.2
	x := func(id int32) float64 { return from + (to-from)*r.done*float64(id-row.First)/n }
	var path geom.Path
	last := int32(-1)
	for id := row.First; id < row.Last; id++ {
		if d.fabric.Stitches[id].Yarn != yarn {
			continue
		}
		if last != id {
			if last >= 0 {
				var carried geom.Path
				carried.MoveTo(geom.Point{X: x(last), Y: y})
				carried.LineTo(geom.Point{X: x(id), Y: y})
				d.list.Items = append(d.list.Items, display.Path{Path: carried, Stroke: display.Solid(p.edge), Width: 1, Dash: []float64{2, 3}})
			}
			path.MoveTo(geom.Point{X: x(id), Y: y})
		}
		path.LineTo(geom.Point{X: x(id + 1), Y: y})
		last = id + 1
	}
	d.stroke(path, p.edge, thinWidth+1)
	d.stroke(path, c, thinWidth)
}

func (d *ruling) stroke(path geom.Path, c color.NRGBA, width float64) {
	d.list.Items = append(d.list.Items, display.Path{Path: path, Stroke: display.Solid(c), Width: width})
}
