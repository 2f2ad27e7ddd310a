// Package journal keeps what is written but not saved yet, so that a crash
// costs no more than the last second, and tells windows that have the same file
// open of one another.
//
// A folder holds one record for each open pattern and one lock for each window. A
// window that ends as it should removes both. The system lets go of the lock of one that falls
// over, and the next window finds the records that nobody holds.
package journal

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"strandway/render"
)

const (
	// Delay is how long the journal waits for the next edit before it writes.
	Delay = 700 * time.Millisecond
	// Keeping is how long work is kept that its author let go of.
	Keeping = 30 * 24 * time.Hour
)

const (
	recordEnd = ".journal"
	lockEnd   = ".lock"
)

// Clock is what the journal needs of time.
type Clock struct {
	Now   func() time.Time
	After func(wait time.Duration, do func()) // runs do once, later and elsewhere
}

// System is the system's own clock.
func System() Clock {
	return Clock{Now: time.Now, After: func(wait time.Duration, do func()) { time.AfterFunc(wait, do) }}
}

// Journal is one window's hold on the folder of journals.
type Journal struct {
	dir    string
	clock  Clock
	window string // this window's name: process and start
	lock   *os.File

	mu     sync.Mutex
	opened int // counts the patterns opened
}

// Folder is where journals are kept.
func Folder() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "strandway", "journal"), nil
}

// Open takes hold of a folder of journals, which is made where there is none,
// and throws away what was let go of long ago.
func Open(dir string, clock Clock) (*Journal, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, fmt.Errorf("cannot keep a journal: %w", err)
	}
	j := &Journal{dir: dir, clock: clock}
	lock, err := os.CreateTemp(dir, fmt.Sprintf("%d-%d-*%s", os.Getpid(), clock.Now().UnixNano(), lockEnd))
	if err != nil {
		return nil, fmt.Errorf("cannot keep a journal: %w", err)
	}
	if err := hold(lock); err != nil {
		lock.Close()
		return nil, fmt.Errorf("cannot keep a journal: %w", err)
	}
	j.lock, j.window = lock, strings.TrimSuffix(filepath.Base(lock.Name()), lockEnd)
	return j, j.sweep()
}

// Dir is the folder of the journals.
func (j *Journal) Dir() string { return j.dir }

// Close lets go of the folder. Documents must be closed before.
func (j *Journal) Close() error {
	return errors.Join(j.lock.Close(), os.Remove(j.lock.Name()))
}

// Abandon lets go of the folder as the system does when the window falls over: all records stay.
func (j *Journal) Abandon() error { return j.lock.Close() }

// record is what stands in a journal's file.
type record struct {
	Window  string     `json:"window"`
	PID     int        `json:"pid"`
	Path    string     `json:"path"` // absolute; "" while the pattern has no file
	Title   string     `json:"title"`
	Opened  time.Time  `json:"opened"`
	Written time.Time  `json:"written"`
	Pattern string     `json:"pattern"` // as its file would be; "" while all is saved
	LetGo   *time.Time `json:"let_go,omitempty"`
}

func (j *Journal) write(name string, r record) error {
	src, err := json.MarshalIndent(r, "", "  ")
	if err != nil {
		return err
	}
	return render.WriteFile(filepath.Join(j.dir, name), func(w io.Writer) error {
		_, err := w.Write(append(src, '\n'))
		return err
	})
}

// records are all records that can be read, by file name.
func (j *Journal) records() (map[string]record, error) {
	files, err := filepath.Glob(filepath.Join(j.dir, "*"+recordEnd))
	if err != nil {
		return nil, err
	}
	out := map[string]record{}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			continue // another window has closed it meanwhile
		}
		var r record
		if json.Unmarshal(src, &r) == nil {
			out[filepath.Base(file)] = r
		}
	}
	return out, nil
}

// alive reports whether the window of a record still runs.
func (j *Journal) alive(r record) bool {
	return r.Window == j.window || held(filepath.Join(j.dir, r.Window+lockEnd))
}

// sweep removes records that hold nothing, or were let go of long ago, and the locks of windows that fell over.
func (j *Journal) sweep() error {
	records, err := j.records()
	if err != nil {
		return err
	}
	for name, r := range records {
		old := r.LetGo != nil && j.clock.Now().Sub(*r.LetGo) > Keeping
		if !j.alive(r) && (r.Pattern == "" || old) {
			os.Remove(filepath.Join(j.dir, name))
		}
	}
	locks, err := filepath.Glob(filepath.Join(j.dir, "*"+lockEnd))
	for _, lock := range locks {
		if lock != j.lock.Name() && !held(lock) {
			os.Remove(lock)
		}
	}
	return err
}
