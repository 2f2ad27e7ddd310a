package journal

import (
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"

	"strandway/model/pattern"
)

// Document is the journal of one open pattern. Its methods may be called from any goroutine.
type Document struct {
	j    *Journal
	file string // the record's file name

	mu      sync.Mutex
	r       record
	stamp   stamp            // the pattern's file as this window knows it
	pending *pattern.Pattern // not written yet
	waiting bool             // a writing is on its way
	closed  bool
	err     error // of the last writing
}

// Document begins the journal of a pattern that was opened from path, or with "" of one that has no file yet.
func (j *Journal) Document(path, title string) (*Document, error) {
	j.mu.Lock()
	j.opened++
	file := fmt.Sprintf("%s-%d%s", j.window, j.opened, recordEnd)
	j.mu.Unlock()
	d := &Document{j: j, file: file}
	d.r = record{Window: j.window, PID: os.Getpid(), Title: title, Opened: j.clock.Now(), Written: j.clock.Now()}
	d.setPath(path)
	return d, j.write(file, d.r)
}

func (d *Document) setPath(path string) {
	d.r.Path, d.stamp = "", stamp{}
	if path != "" {
		d.r.Path = absolute(path)
		d.stamp = stampOf(d.r.Path)
	}
}

// absolute is a path by which two windows know the same file, whatever links lead to it.
func absolute(path string) string {
	if full, err := filepath.Abs(path); err == nil {
		path = full
	}
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	return path
}

// Keep has a state of the pattern written, within [Delay] and without waiting for it.
func (d *Document) Keep(p *pattern.Pattern) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.pending = p
	if !d.waiting && !d.closed {
		d.waiting = true
		d.j.clock.After(Delay, d.write)
	}
}

func (d *Document) write() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.waiting = false
	if d.pending == nil || d.closed {
		return // saved or closed meanwhile
	}
	d.r.Pattern, d.r.Title, d.r.Written = string(d.pending.Encode()), d.pending.Title, d.j.clock.Now()
	d.pending = nil
	d.err = d.j.write(d.file, d.r)
}

// Flush writes at once what waits to be written, and says whether that went well.
func (d *Document) Flush() error {
	d.write()
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.err
}

// Saved says that all stands in the file at path, which is the document's from now on.
func (d *Document) Saved(path string) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.pending = nil
	d.r.Pattern, d.r.Written = "", d.j.clock.Now()
	d.setPath(path)
	return d.j.write(d.file, d.r)
}

// Settled says that nothing is unsaved any more although nothing was written to the
// file: the edits were undone.
func (d *Document) Settled() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.pending = nil
	if d.r.Pattern == "" {
		return nil
	}
	d.r.Pattern, d.r.Written = "", d.j.clock.Now()
	return d.j.write(d.file, d.r)
}

// Close ends the journal: the document was saved, or its author gave up what was not.
func (d *Document) Close() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.closed, d.pending = true, nil
	return os.Remove(filepath.Join(d.j.dir, d.file))
}

// Outside is what became of the document's file without this window's doing.
type Outside int

const (
	Untouched Outside = iota
	Rewritten         // it holds something else now
	Gone              // it is not there any more
)

// Outside reports, once for each, a change of the file that this window did not make.
func (d *Document) Outside() Outside {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.r.Path == "" {
		return Untouched
	}
	was := d.stamp
	d.stamp = was.again(d.r.Path)
	switch {
	case was.sum == d.stamp.sum:
		return Untouched
	case d.stamp.sum == "":
		return Gone
	}
	return Rewritten
}

// Other is another window that has the same file open.
type Other struct {
	PID   int
	Since time.Time
	Edits bool // it has edits that are not saved
}

// Others are the other windows that have the document's file open.
func (d *Document) Others() ([]Other, error) {
	d.mu.Lock()
	path := d.r.Path
	d.mu.Unlock()
	if path == "" {
		return nil, nil
	}
	records, err := d.j.records()
	var out []Other
	for name, r := range records {
		if name != d.file && r.Path == path && d.j.alive(r) {
			out = append(out, Other{r.PID, r.Opened, r.Pattern != ""})
		}
	}
	return out, err
}
