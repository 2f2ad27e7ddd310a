package journal

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"strandway/model/pattern"
)

// bench is a folder of journals with a clock that goes only when told.
type bench struct {
	t     *testing.T
	dir   string
	now   time.Time
	later []func()
}

func newBench(t *testing.T) *bench {
	return &bench{t: t, dir: t.TempDir(), now: time.Date(2026, 3, 1, 14, 0, 0, 0, time.UTC)}
}

func (b *bench) clock() Clock {
	return Clock{Now: func() time.Time { return b.now }, After: func(wait time.Duration, do func()) {
		if wait > time.Second {
			b.t.Errorf("an edit waits %v until it is journalled, more than a second", wait)
		}
		b.later = append(b.later, do)
	}}
}

func (b *bench) pass(d time.Duration) {
	b.now = b.now.Add(d)
	later := b.later
	b.later = nil
	for _, do := range later {
		do()
	}
}

func (b *bench) window() *Journal {
	b.t.Helper()
	j, err := Open(filepath.Join(b.dir, "journal"), b.clock())
	if err != nil {
		b.t.Fatal(err)
	}
	return j
}

func (b *bench) file(rows string) string {
	b.t.Helper()
	path := filepath.Join(b.dir, "mat.strand")
	b.must(pattern.Save(path, mat(rows)))
	return path
}

func (b *bench) must(err error) {
	b.t.Helper()
	if err != nil {
		b.t.Fatal(err)
	}
}

func (b *bench) open(j *Journal, path string) *Document {
	b.t.Helper()
	d, err := j.Document(path, "Quay Mat")
	b.must(err)
	return d
}

func (b *bench) left(j *Journal) []Left {
	b.t.Helper()
	l, err := j.Left()
	b.must(err)
	return l
}

func mat(rows string) *pattern.Pattern {
	return &pattern.Pattern{Title: "Quay Mat", Terms: "US", Units: "cm", Hook: pattern.Hook{MM: 4},
		Yarns:  []pattern.Yarn{{Letter: "A", Name: "Harbour Worsted", Colour: "#27405c", Weight: 4}},
		Pieces: []pattern.Piece{{Name: "Body", Rows: rows}}}
}

const (
	two  = "With A, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n"
	four = two + "Row 2: Ch 1, sc in each st across, turn.\nRow 3: Ch 1, sc in each st across, turn.\n"
)

func TestWorkOfAWindowThatFellOverIsOffered(t *testing.T) {
	b := newBench(t)
	path := b.file(two)
	j := b.window()
	d := b.open(j, path)
	d.Keep(mat(two + "Row 2: Ch 1"))
	d.Keep(mat(four))
	b.pass(Delay)
	if got := b.left(b.window()); len(got) != 0 {
		t.Fatalf("%q is offered while its window runs", got[0].Says())
	}
	b.must(j.Abandon())

	next := b.window()
	got := b.left(next)
	if len(got) != 1 {
		t.Fatalf("%d pieces of work are offered, want 1", len(got))
	}
	if want := "Quay Mat has 2 rows that were never saved."; got[0].Says() != want {
		t.Errorf("says %q, want %q", got[0].Says(), want)
	}
	if got[0].Pattern.Pieces[0].Rows != four || got[0].Path != path {
		t.Errorf("offers %s with rows %q", got[0].Path, got[0].Pattern.Pieces[0].Rows)
	}
	b.must(next.Taken(got[0]))
	if got := b.left(next); len(got) != 0 {
		t.Error("what was taken is offered again")
	}
}

func TestNothingIsOfferedOf(t *testing.T) {
	for name, end := range map[string]func(*Document, string) error{
		"saved work":       func(d *Document, path string) error { return d.Saved(path) },
		"undone work":      func(d *Document, _ string) error { return d.Settled() },
		"a closed pattern": func(d *Document, _ string) error { return d.Close() },
	} {
		t.Run(name, func(t *testing.T) {
			b := newBench(t)
			path := b.file(two)
			j := b.window()
			d := b.open(j, path)
			d.Keep(mat(four))
			b.pass(Delay)
			d.Keep(mat(four + "x"))
			b.must(end(d, path))
			b.pass(Delay)
			b.must(j.Abandon())
			if got := b.left(b.window()); len(got) != 0 {
				t.Errorf("offered: %s", got[0].Says())
			}
		})
	}
}

func TestWorkLetGoOfIsKeptThirtyDays(t *testing.T) {
	b := newBench(t)
	j := b.window()
	b.open(j, "").Keep(mat(four))
	b.pass(Delay)
	b.must(j.Abandon())
	j = b.window()
	b.must(j.LetGo(b.left(j)[0]))
	if len(b.left(j)) != 0 {
		t.Error("it is offered again")
	}
	kept := func() int {
		files, _ := filepath.Glob(filepath.Join(b.dir, "journal", "*"+recordEnd))
		return len(files)
	}
	b.pass(29 * 24 * time.Hour)
	b.window()
	if kept() != 1 {
		t.Error("it is gone after 29 days")
	}
	b.pass(2 * 24 * time.Hour)
	b.window()
	if kept() != 0 {
		t.Error("it is there after 31 days")
	}
}

func TestTwoWindowsOnOneFileNoticeEachOther(t *testing.T) {
	b := newBench(t)
	path := b.file(two)
	link := filepath.Join(b.dir, "link.strand")
	b.must(os.Symlink(path, link))
	first, second := b.window(), b.window()
	d1, d2 := b.open(first, path), b.open(second, link)
	others := func(d *Document) []Other {
		t.Helper()
		o, err := d.Others()
		b.must(err)
		return o
	}
	if len(others(d1)) != 1 || len(others(d2)) != 1 {
		t.Fatalf("the windows see %d and %d others", len(others(d1)), len(others(d2)))
	}
	d1.Keep(mat(four))
	b.pass(Delay)
	if o := others(d2); !o[0].Edits || o[0].PID != os.Getpid() {
		t.Errorf("the second window sees %+v", o[0])
	}
	b.must(d1.Close())
	if len(others(d2)) != 0 {
		t.Error("a window that closed the file is still there")
	}
	if d := b.open(first, ""); len(others(d)) != 0 {
		t.Error("patterns without a file are one another's")
	}
}

func TestAFileChangedOutsideIsNoticedOnce(t *testing.T) {
	b := newBench(t)
	path := b.file(two)
	d := b.open(b.window(), path)
	sees := func(want Outside) {
		t.Helper()
		if got := d.Outside(); got != want {
			t.Errorf("sees %v, want %v", got, want)
		}
	}
	sees(Untouched)
	b.must(os.Chtimes(path, b.now, b.now.Add(time.Hour)))
	sees(Untouched) // its time is new, what stands in it is not
	b.file(four)
	sees(Rewritten)
	sees(Untouched)
	b.must(pattern.Save(path, mat(two)))
	b.must(d.Saved(path))
	sees(Untouched)
	b.must(os.Remove(path))
	sees(Gone)
	sees(Untouched)
}

func TestAnUnreadableRecordBarsNothing(t *testing.T) {
	b := newBench(t)
	j := b.window()
	b.must(os.WriteFile(filepath.Join(b.dir, "journal", "x"+recordEnd), []byte("{"), 0o600))
	b.open(j, "").Keep(mat(four))
	b.pass(Delay)
	b.must(j.Abandon())
	if got := b.left(b.window()); len(got) != 1 || got[0].Rows != 4 {
		t.Errorf("offered: %+v", got)
	}
}

func TestDifferences(t *testing.T) {
	for _, c := range []struct {
		name, there, here string
		want              []Difference
	}{
		{"nothing", two, two, nil},
		{"one row written anew", "a\nb\nc\n", "a\nB\nc\n", []Difference{{"Body", "b", "B"}}},
		{"one row more", "a\nc\n", "a\nb\nc\n", []Difference{{"Body", "", "b"}}},
		{"one row less", "a\nb\nc\n", "a\nc", []Difference{{"Body", "b", ""}}},
		{"two places", "a\nb\nc\nd\n", "x\nb\nc\ny\n", []Difference{{"Body", "a", "x"}, {"Body", "d", "y"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := Differences(mat(c.there), mat(c.here))
			if len(got) != len(c.want) {
				t.Fatalf("%+v, want %+v", got, c.want)
			}
			for i := range got {
				if got[i] != c.want[i] {
					t.Errorf("%+v, want %+v", got[i], c.want[i])
				}
			}
		})
	}
	gone := mat(two)
	gone.Pieces = append(gone.Pieces, pattern.Piece{Name: "Edging", Rows: "Rnd 1\n"})
	if got := Differences(gone, mat(two)); len(got) != 1 || got[0].Piece != "Edging" || got[0].Here != "" {
		t.Errorf("a piece that is gone: %+v", got)
	}
}
