package session

import (
	"image/color"
	"reflect"
	"strings"
	"sync"

	"strandway/chart"
	"strandway/chart/display"
	"strandway/chart/layout"
	"strandway/model"
	"strandway/model/fabric"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/syntax"
	"strandway/model/yarn"
	"strandway/render/cloth"
)

// Look is how charts are to be drawn for the window.
type Look struct {
	Dark bool
}

// job is one state of the document to be worked and drawn.
type job struct {
	document    int // counts the documents opened in a session
	pattern     *pattern.Pattern
	piece, size int
	colourway   string
	look        Look
	hands       *yarn.Memory
}

// handsOf is what is remembered of the maker's hands.
func (j *job) handsOf() yarn.Memory {
	if j.hands == nil {
		return nil
	}
	return *j.hands
}

// Made is what the background has made of a state of the document. It is never changed.
type Made struct {
	job
	Work *model.Worked

	Figures *model.Figures // sizes, strands and yarn; nil in results that come before the pictures

	Plan  *layout.Plan  // of the chart; nil in results that come before the pictures
	Chart *display.List // symbols
	Cloth *cloth.Cloth
	Cells func() *display.List // the same rows as a grid, drawn when first asked for

	measured *layout.Plan  // of the cloth
	drawn    chart.Options // with which the chart was drawn
	made     cloth.Options // with which the cloth was made
	older    bool          // the pictures are still those of rows that have been edited since
}

// Rows is the text that was worked.
func (m *Made) Rows() string { return m.pattern.Pieces[m.piece].Rows }

// Piece is the piece in hand, worked.
func (m *Made) Piece() *model.PieceWork { return &m.Work.Pieces[m.piece] }

// Fabric is what the piece's rows made.
func (m *Made) Fabric() *fabric.Fabric { return m.Piece().Fabric }

// Tree is what was read of the piece's rows.
func (m *Made) Tree() *syntax.Tree { return m.Piece().Tree }

// WrittenRow is the row of the tree under whose heading a fabric row is worked
// ("Rows 8-23: rep Rows 4-7"), although its words may stand in another.
func (m *Made) WrittenRow(row int) int { return m.Fabric().Rows[row].Under }

// Works are the fabric rows that a written row stands for.
func (m *Made) Works(written int) []int {
	var out []int
	for i := range m.Fabric().Rows {
		if m.WrittenRow(i) == written {
			out = append(out, i)
		}
	}
	return out
}

// Colours are the colours of the piece's yarns in the colourway shown, by fabric index.
func (m *Made) Colours() []color.NRGBA { return m.Work.YarnColours(m.piece, m.colourway) }

// ChartOptions are what the pattern says of its chart: names and colours of its yarns, notes beside it, and the symbols of
// the designer's own stitches; one that cannot be drawn is left out, so that its parts are drawn.
func (m *Made) ChartOptions() chart.Options {
	o := chart.Options{Terms: strings.ToLower(m.pattern.Terms), Inks: m.Colours(), YarnNames: m.Work.YarnNames(m.piece, m.colourway),
		Callouts: chart.CalloutsOf(m.pattern, m.piece)}
	o.Own, _ = chart.OwnOf(m.pattern)
	o.Grid.Aspect = chart.Aspect(m.pattern.Gauge)
	return o
}

// Made is the newest working of the rows, nil before the first. It may be of rows that
// have been edited since: see [Session.Since].
func (s *Session) Made() *Made {
	if s.made == nil || s.made.piece != s.piece {
		return nil
	}
	return s.made
}

// SetHands has yarns reckoned by what is remembered of the maker's hands.
func (s *Session) SetHands(hands yarn.Memory) {
	s.hands = &hands
	s.remake()
}

// Hands is what is remembered of the maker's hands.
func (s *Session) Hands() yarn.Memory {
	if s.hands == nil {
		return nil
	}
	return *s.hands
}

// Since carries places in the rows that were worked over to the present rows.
func (s *Session) Since() Shift {
	if m := s.Made(); m != nil {
		return ShiftOf(m.Rows(), s.Rows())
	}
	return Shift{}
}

// Current reports whether all that is shown belongs to the present rows.
func (s *Session) Current() bool {
	return s.made != nil && s.made.pattern == s.Pattern() && s.made.Cloth != nil && !s.made.older
}

// Worked reports whether the present rows have been worked, though their pictures may still be on their way.
func (s *Session) Worked() bool { return s.made != nil && s.made.pattern == s.Pattern() }

func (s *Session) remake() {
	s.maker.ask(job{s.document, s.Pattern(), s.piece, s.size, s.colourway, s.look, s.hands})
}

func (s *Session) receive(m *Made) {
	if m.document != s.document || m.piece >= len(s.Pattern().Pieces) {
		return // it comes too late
	}
	if old := s.made; old != nil && m.Plan == nil && old.piece == m.piece {
		// The old pictures stay until the new ones come.
		keep := *m
		keep.Plan, keep.Chart, keep.Cells, keep.Cloth, keep.older = old.Plan, old.Chart, old.Cells, old.Cloth, true
		keep.Figures = old.Figures
		s.made = &keep
		s.tell(Worked)
		s.grant(m)
		return
	}
	s.made = m
	if m.Cloth != nil {
		s.tell(Pictures)
		return
	}
	s.tell(Worked)
}

// maker works and draws in the background. Only the newest job counts: one that
// was asked for while another was being worked replaces all that wait.
type maker struct {
	lib  *stitch.Library
	done func(*Made)

	mu   sync.Mutex
	next *job
	wake chan struct{}

	last    *Made // of the background goroutine, as are the sprites
	sprites *cloth.Sprites
}

func newMaker(lib *stitch.Library, done func(*Made)) *maker {
	k := &maker{lib: lib, done: done, wake: make(chan struct{}, 1), sprites: cloth.NewSprites(0)}
	go k.run()
	return k
}

func (k *maker) close() { close(k.wake) }

func (k *maker) ask(j job) {
	k.mu.Lock()
	k.next = &j
	k.mu.Unlock()
	select {
	case k.wake <- struct{}{}:
	default:
	}
}

func (k *maker) take() *job {
	k.mu.Lock()
	defer k.mu.Unlock()
	j := k.next
	k.next = nil
	return j
}

func (k *maker) overtaken() bool {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.next != nil
}

func (k *maker) run() {
	for range k.wake {
		for j := k.take(); j != nil; j = k.take() {
			k.work(*j)
		}
	}
}

// work makes a job in steps and hands over what each step gives, so that the counts do not
// wait for the pictures. What the last job made is kept where it still holds: most keys write
// a letter of a word and make no other stitches.
func (k *maker) work(j job) {
	m := &Made{job: j}
	same := k.last != nil && k.last.pattern == j.pattern && k.last.size == j.size
	if same {
		m.Work = k.last.Work
	} else {
		m.Work = model.Work(k.lib, j.pattern, j.size)
		k.done(m)
		if k.overtaken() {
			return
		}
	}
	next, last := *m, &Made{}
	if k.last != nil && k.last.piece == j.piece && m.Fabric().Alike(k.last.Fabric()) {
		last = k.last
	}

	// Figures, chart and cloth are made each for itself, so they need not wait for one another.
	var all sync.WaitGroup
	all.Go(func() { k.chart(&next, last) })
	all.Go(func() { k.cloth(&next, last) })
	all.Go(func() {
		if same && k.last.hands == j.hands {
			next.Figures = k.last.Figures
			return
		}
		next.Figures = m.Work.FiguresBy(j.handsOf())
	})
	all.Wait()
	k.last = &next
	k.done(&next)
}

// chart draws the chart, or takes over that of the last job, of a fabric like this one, if it still holds.
func (k *maker) chart(m, last *Made) {
	m.drawn = m.ChartOptions()
	m.drawn.Library, m.drawn.Dark = k.lib, m.look.Dark
	m.Plan, m.Chart, m.Cells = last.Plan, last.Chart, last.Cells
	if m.Plan == nil {
		m.Plan = layout.Arrange(m.Fabric(), layout.Drawn())
	}
	if m.Chart == nil || !reflect.DeepEqual(m.drawn, last.drawn) {
		fabric, options := m.Plan.Fabric, m.drawn
		m.Chart = chart.Draw(m.Plan, options)
		m.Cells = sync.OnceValue(func() *display.List { return chart.Cells(fabric, options, 0) })
	}
}

// cloth makes the cloth at the gauge's proportions, or takes over that of the last job.
func (k *maker) cloth(m, last *Made) {
	m.measured, m.Cloth = last.measured, last.Cloth
	if m.measured == nil {
		m.measured = layout.Arrange(m.Fabric(), layout.Measured())
	}
	m.made = cloth.OptionsOf(m.Work, m.piece, m.measured)
	m.made.Sprites = k.sprites
	if yarns := m.ClothYarns(m.colourway); m.Cloth == nil || m.made != last.made || !m.Cloth.Matches(yarns) {
		m.Cloth = cloth.Make(m.measured, yarns, m.made)
	}
}

// Colourway is the colourway the pictures were drawn in.
func (m *Made) Colourway() string { return m.colourway }
