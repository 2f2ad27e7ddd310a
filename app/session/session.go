// Package session is the window's document: the pattern with its history, the
// caret and the chosen stitches, the size and colourway shown, and what the
// model makes of it all, kept up to date in the background.
//
// It knows no toolkit. All of its methods are called from one goroutine, the
// window's; the background hands its results over through the post function
// given to [New].
package session

import (
	"path/filepath"
	"strings"

	"strandway/model/edit"
	"strandway/model/pattern"
	"strandway/model/stitch"
	"strandway/model/yarn"
)

// Change tells observers what is new.
type Change uint16

const (
	Text     Change = 1 << iota // the pattern, so its rows too
	Caret                       // the caret or the chosen text
	Worked                      // the background has worked the rows
	Pictures                    // the background has laid out chart and cloth
	Choice                      // other stitches are chosen
	Shown                       // another piece, size, colourway or look is shown
	File                        // path, saved or not, another document
)

// Session is one document in work.
type Session struct {
	lib     *stitch.Library
	path    string // "" until it has been saved
	history *edit.History

	document  int // counts the documents opened
	piece     int
	size      int
	colourway string // "" for the yarns' own shades
	caret     edit.Caret
	typing    bool // the caret stands behind what was typed last
	chosen    Chosen
	wish      wish
	read      reading
	look      Look
	unsure    standing
	hands     *yarn.Memory // nil: nothing is remembered

	made     *Made
	maker    *maker
	watchers []func(Change)
}

// New starts a session with an empty pattern. post runs a function on the window's
// goroutine; it is called from the background.
func New(lib *stitch.Library, post func(func())) *Session {
	s := &Session{lib: lib}
	s.maker = newMaker(lib, func(m *Made) { post(func() { s.receive(m) }) })
	s.begin(Blank(), "", true)
	return s
}

// Blank is a pattern with one piece in which nothing is written yet.
func Blank() *pattern.Pattern {
	return &pattern.Pattern{
		Title: pattern.Untitled, Terms: "US", Units: "cm",
		Hook:   pattern.Hook{MM: 4},
		Yarns:  []pattern.Yarn{{Letter: "A", Name: "Harbour Worsted", Shade: "Deep Water", Colour: "#27405c", Weight: 4, Grams: 100, Metres: 200}},
		Pieces: []pattern.Piece{{Name: "Body"}},
	}
}

// Close ends the background work.
func (s *Session) Close() { s.maker.close() }

// Watch has f called after every change.
func (s *Session) Watch(f func(Change)) { s.watchers = append(s.watchers, f) }

func (s *Session) tell(c Change) {
	for _, f := range s.watchers {
		f(c)
	}
}

// Open reads a file in place of the present document.
func (s *Session) Open(path string) error {
	p, err := pattern.Load(path)
	if err != nil {
		return err
	}
	s.begin(p, path, true)
	return nil
}

// Begin takes a pattern that is not in a file yet in place of the present document.
func (s *Session) Begin(p *pattern.Pattern) { s.begin(p, "", true) }

// Restore takes work that was never saved in place of the present document; path is the
// file it belongs to, "" for none.
func (s *Session) Restore(p *pattern.Pattern, path string) { s.begin(p, path, false) }

// withPiece is p with a piece to write in, where it has none.
func withPiece(p *pattern.Pattern) *pattern.Pattern {
	if len(p.Pieces) > 0 {
		return p
	}
	q := *p
	q.Pieces = Blank().Pieces
	return &q
}

func (s *Session) begin(p *pattern.Pattern, path string, saved bool) {
	p = withPiece(p)
	s.document++
	s.path, s.piece, s.size, s.caret, s.chosen, s.made = path, 0, 0, edit.At(endOf(p.Pieces[0].Rows)), Chosen{}, nil
	s.colourway = ""
	if len(p.Colourways) > 0 {
		s.colourway = p.Colourways[0].Name
	}
	s.history = edit.NewHistory(edit.State{Pattern: p, Caret: s.caret}, saved)
	s.remake()
	s.tell(Text | Caret | Worked | Pictures | Choice | Shown | File)
}

// endOf is the end of the last row.
func endOf(rows string) int { return len(strings.TrimRight(rows, " \n")) }

// Save writes the document to a file, which is its file from then on.
func (s *Session) Save(path string) error {
	if err := pattern.Save(path, s.Pattern()); err != nil {
		return err
	}
	s.path = path
	s.history.Saved()
	s.tell(File)
	return nil
}

// SaveCopy writes the document to another file and leaves its own alone.
func (s *Session) SaveCopy(path string) error { return pattern.Save(path, s.Pattern()) }

// TakeFile takes what stands in the document's file now, as a step that can be undone.
func (s *Session) TakeFile() error {
	p, err := pattern.Load(s.path)
	if err != nil {
		return err
	}
	p = withPiece(p)
	s.Do("Take the other file", func(now edit.State) edit.State {
		now.Pattern, now.Piece = p, min(now.Piece, len(p.Pieces)-1)
		now.Caret = edit.At(endOf(p.Pieces[now.Piece].Rows))
		return now
	})
	s.history.Saved()
	s.tell(File)
	return nil
}

// NoLongerSaved says that the file was changed by others, so that it holds none of the document's states.
func (s *Session) NoLongerSaved() {
	s.history.Lost()
	s.tell(File)
}

// Path is the document's file, "" when it has none yet.
func (s *Session) Path() string { return s.path }

// Name is what the window calls the document.
func (s *Session) Name() string {
	if t := s.Pattern().Title; t != "" && s.path == "" {
		return t
	}
	return strings.TrimSuffix(filepath.Base(s.path), ".strand")
}

// Changed reports whether there is something that is not saved.
func (s *Session) Changed() bool { return s.history.Changed() }

// Pattern is the present pattern. It is never changed; edits make a new one.
func (s *Session) Pattern() *pattern.Pattern { return s.history.Now().Pattern }

// Piece is the index of the piece in hand.
func (s *Session) Piece() int { return s.piece }

// Rows is the text of the piece in hand.
func (s *Session) Rows() string { return s.Pattern().Pieces[s.piece].Rows }

// Size is the index of the size shown.
func (s *Session) Size() int { return s.size }

// Colourway is the name of the colourway shown, "" for the yarns' own shades.
func (s *Session) Colourway() string { return s.colourway }

// ShowPiece takes another piece in hand.
func (s *Session) ShowPiece(i int) {
	if i == s.piece || i < 0 || i >= len(s.Pattern().Pieces) {
		return
	}
	s.history.Seal()
	s.piece, s.chosen = i, Chosen{}
	s.caret = edit.At(endOf(s.Rows()))
	s.remake()
	s.tell(Text | Caret | Choice | Shown)
}

// ShowSize works the pattern for another size.
func (s *Session) ShowSize(i int) {
	if i == s.size || i < 0 || i >= len(s.Pattern().Sizes) {
		return
	}
	s.size, s.chosen = i, Chosen{}
	s.remake()
	s.tell(Choice | Shown)
}

// ShowColourway shows the pattern in another colourway.
func (s *Session) ShowColourway(name string) {
	if name == s.colourway {
		return
	}
	s.colourway = name
	s.remake()
	s.tell(Shown)
}

// NextColourway shows the next colourway, or with step -1 the last one.
func (s *Session) NextColourway(step int) {
	ways := s.Pattern().Colourways
	if len(ways) == 0 {
		return
	}
	at := 0
	for i := range ways {
		if ways[i].Name == s.colourway {
			at = i
		}
	}
	s.ShowColourway(ways[(at+step+len(ways))%len(ways)].Name)
}

// SetLook has pictures drawn for another window: light, dark.
func (s *Session) SetLook(l Look) {
	s.look = l
	s.remake()
	s.tell(Shown)
}

// Do makes a step of the history: change gives the new pattern and caret.
func (s *Session) Do(label string, change func(edit.State) edit.State) {
	s.history.Seal()
	s.typing = false
	s.step(label, change, s.history.Do)
	s.history.Seal()
}

func (s *Session) step(label string, change func(edit.State) edit.State, add func(string, edit.State)) {
	now := edit.State{Pattern: s.Pattern(), Piece: s.piece, Caret: s.caret}
	next := change(now)
	add(label, next)
	s.settle(next)
}

// settle shows a state of the history.
func (s *Session) settle(to edit.State) {
	s.piece = min(to.Piece, len(to.Pattern.Pieces)-1)
	s.caret = to.Caret
	s.chosen = Chosen{}
	if _, there := to.Pattern.Colourway(s.colourway); !there && s.colourway != "" {
		s.colourway = ""
	}
	s.remake()
	s.tell(Text | Caret | Choice | File)
}

// Undo takes the last step back.
func (s *Session) Undo() {
	rows := s.Rows()
	s.typing = false
	if to, ok := s.history.Undo(); ok {
		// The caret goes to where the step was made, not to where the one before it was.
		if before := to.Pattern.Pieces[to.Piece].Rows; to.Piece == s.piece && before != rows {
			h := ShiftOf(rows, before)
			to.Caret = edit.At(h.to + h.by)
		}
		s.settle(to)
	}
}

// Redo takes the step again that was undone last.
func (s *Session) Redo() {
	s.typing = false
	if to, ok := s.history.Redo(); ok {
		s.settle(to)
	}
}

// UndoLabel names what [Session.Undo] takes back, "" for nothing.
func (s *Session) UndoLabel() string { return s.history.UndoLabel() }

// RedoLabel names what [Session.Redo] takes again, "" for nothing.
func (s *Session) RedoLabel() string { return s.history.RedoLabel() }
