package session

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"strandway/model/diag"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// desk is a session whose background results are taken one by one, as a window's loop does.
type desk struct {
	*Session
	posted chan func()
}

func newDesk(t *testing.T) *desk {
	t.Helper()
	lib, err := stitch.Standard()
	if err != nil {
		t.Fatal(err)
	}
	d := &desk{posted: make(chan func(), 64)}
	d.Session = New(lib, func(f func()) { d.posted <- f })
	t.Cleanup(d.Close)
	return d
}

// settleDown waits until everything is worked and drawn.
func (d *desk) settleDown(t *testing.T) {
	t.Helper()
	patience := time.After(20 * time.Second)
	for !d.Current() {
		select {
		case f := <-d.posted:
			f()
		case <-patience:
			t.Fatal("the background never came to an end")
		}
	}
}

// TestScripts runs the scripts in testdata: a day's work in words, a step a line.
//
//	open FILE        a sample
//	rows TEXT        a blank page with these rows, \n between them
//	caret TEXT       the caret behind the first place where TEXT stands
//	choose TEXT      TEXT is chosen
//	type TEXT        key after key
//	delete N         N letters before the caret
//	undo, redo, mend, cut
//	stitch R.S       the S-th stitch of fabric row R is chosen
//	also R.S         is chosen too
//	repeat N, mirror, pastewords TEXT, place NAME   the chosen stitches; copied TEXT is what they say
//	put WORD, insert WORD, append WORD, across WORD, takeout   as typed in a picture: 5dc, ch3, sk2
//	rest             nothing is typed for a while
//	loose            nothing is chosen any more
//	pencil LETTER, fill LETTER   the chosen stitches, or the patch about them, in a yarn
//	has TEXT, hasnot TEXT, says ID, saysnot ID, count R N, unsure R R, undoes LABEL, saved, unsaved, text TEXT, word TEXT
func TestScripts(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("there are no scripts", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			d := newDesk(t)
			for n, line := range strings.Split(string(src), "\n") {
				if line = strings.TrimSpace(line); line == "" || strings.HasPrefix(line, "#") {
					continue
				}
				verb, rest, _ := strings.Cut(line, " ")
				rest = strings.ReplaceAll(rest, `\n`, "\n")
				if why := d.do(t, verb, rest); why != "" {
					t.Fatalf("line %d: %s: %s\nrows now:\n%s", n+1, line, why, d.Rows())
				}
			}
		})
	}
}

// do does one step and says what is wrong, "" for nothing.
func (d *desk) do(t *testing.T, verb, rest string) string {
	at := strings.Index(d.Rows(), rest)
	switch verb {
	case "open":
		if err := d.Open("../../samples/" + rest); err != nil {
			return err.Error()
		}
	case "rows":
		p := Blank()
		p.Pieces[0].Rows = rest
		p.Yarns = append(p.Yarns, pattern.Yarn{Letter: "B", Colour: "#e6dcc6"})
		d.Begin(p)
	case "caret":
		if at < 0 {
			return "is not there"
		}
		d.PutCaret(at+len(rest), false)
	case "choose":
		if at < 0 {
			return "is not there"
		}
		d.PutCaret(at, false)
		d.PutCaret(at+len(rest), true)
	case "type":
		for _, r := range rest {
			d.Type(string(r))
		}
	case "delete":
		n, _ := strconv.Atoi(rest)
		for range n {
			d.Delete(false, false)
		}
	case "undo":
		d.Undo()
	case "redo":
		d.Redo()
	case "cut":
		d.Cut()
	case "mend":
		d.settleDown(t)
		f, ok := d.MendAtHand()
		if !ok {
			return "there is no mend"
		}
		d.Mend(f)
	case "stitch":
		d.settleDown(t)
		row, nth, _ := strings.Cut(rest, ".")
		r, _ := strconv.Atoi(row)
		k, _ := strconv.Atoi(nth)
		id := d.Made().Fabric().Rows[r].First + int32(k) - 1
		d.Choose([]int32{id}, id)
	case "also":
		row, nth, _ := strings.Cut(rest, ".")
		r, _ := strconv.Atoi(row)
		k, _ := strconv.Atoi(nth)
		d.Choose(append(slices.Clone(d.Chosen().Stitches), d.Made().Fabric().Rows[r].First+int32(k)-1), d.Chosen().Lead)
	case "repeat", "mirror", "pastewords", "place":
		d.settleDown(t)
		err := errors.New("there is no such place")
		switch n, _ := strconv.Atoi(rest); verb {
		case "repeat":
			err = d.Repeat(n)
		case "mirror":
			err = d.Mirror()
		case "pastewords":
			err = d.PasteWords(rest)
		default:
			for _, p := range Placings {
				if p.Name == rest {
					err = d.Place(p)
				}
			}
		}
		if err != nil {
			return err.Error()
		}
	case "put", "insert", "append", "across":
		d.settleDown(t)
		typed, err := d.ReadTyped(rest)
		if err != nil {
			return err.Error()
		}
		edit := map[string]func(Typed) error{"put": d.Put, "insert": d.Insert, "append": d.Append, "across": d.Across}[verb]
		if err := edit(typed); err != nil {
			return err.Error()
		}
	case "pencil", "fill":
		d.settleDown(t)
		paint := d.Pencil
		if verb == "fill" {
			paint = d.FillPatch
		}
		if err := paint(rest); err != nil {
			return err.Error()
		}
	case "rest":
		d.Rest()
	case "loose":
		d.ChooseNone()
	case "takeout":
		d.settleDown(t)
		if err := d.TakeOut(); err != nil {
			return err.Error()
		}
	default:
		return d.check(t, verb, rest)
	}
	return ""
}

// check looks whether something is so.
func (d *desk) check(t *testing.T, verb, rest string) string {
	d.settleDown(t)
	switch verb {
	case "has":
		if !strings.Contains(d.Rows(), rest) {
			return "it does not"
		}
	case "hasnot":
		if strings.Contains(d.Rows(), rest) {
			return "it has"
		}
	case "says":
		for _, f := range d.Findings() {
			if f.ID == rest {
				return ""
			}
		}
		return "it says: " + strings.Join(strings.Fields(strings.ReplaceAll(joinFindings(d), "\n", " / ")), " ")
	case "saysnot":
		if slices.ContainsFunc(d.Findings(), func(f diag.Finding) bool { return f.ID == rest }) {
			return "it does"
		}
	case "unsure":
		var rows []string
		for i, unsure := range d.Unsure().Rows {
			if unsure {
				rows = append(rows, strconv.Itoa(i))
			}
		}
		if got := strings.Join(rows, " "); got != rest {
			return "they are " + got
		}
	case "count":
		row, count, _ := strings.Cut(rest, " ")
		r, _ := strconv.Atoi(row)
		if got := d.Made().Fabric().Rows[r].Count; strconv.Itoa(got) != count {
			return "it is " + strconv.Itoa(got)
		}
	case "undoes":
		if got := d.UndoLabel(); got != rest {
			return "it undoes " + got
		}
	case "saved", "unsaved":
		if d.Changed() != (verb == "unsaved") {
			return "it is not"
		}
	case "copied":
		if got, err := d.ChosenWords(); got != rest {
			return fmt.Sprint("it is ", got, err)
		}
	case "text":
		if got := d.ChosenText(); got != rest {
			return "it is " + got
		}
	case "word":
		word, _ := d.WordOf(d.Chosen().Lead)
		if got := d.Rows()[word.Start:word.End]; got != rest {
			return "it is " + got
		}
	default:
		return "no such step"
	}
	return ""
}

func joinFindings(d *desk) string {
	s := ""
	for _, f := range d.Findings() {
		s += f.ID + ": " + f.Message + "\n"
	}
	return s
}
