package journal

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"strandway/model/pattern"
)

// Left is work that a window left behind when it fell over.
type Left struct {
	Path    string // its file, "" when it had none
	Title   string
	Written time.Time
	Pattern *pattern.Pattern
	Rows    int // how many rows differ from what stands in the file

	file   string
	record record
}

// Says is the sentence with which the work is offered.
func (l *Left) Says() string {
	name := l.Title
	switch {
	case name != "" && name != pattern.Untitled:
	case l.Path != "":
		name = strings.TrimSuffix(filepath.Base(l.Path), filepath.Ext(l.Path))
	default:
		name = "A piece without a name"
	}
	switch l.Rows {
	case 0:
		return name + " has changes that were never saved."
	case 1:
		return name + " has 1 row that was never saved."
	}
	return fmt.Sprintf("%s has %d rows that were never saved.", name, l.Rows)
}

// Left finds work that no running window holds and its author has not let go of, the newest first.
func (j *Journal) Left() ([]Left, error) {
	records, err := j.records()
	if err != nil {
		return nil, err
	}
	var out []Left
	for name, r := range records {
		if r.Pattern == "" || r.LetGo != nil || j.alive(r) {
			continue
		}
		p, err := pattern.Decode([]byte(r.Pattern), r.Path)
		if err != nil {
			continue // it cannot be opened, so it is not offered
		}
		var saved *pattern.Pattern
		if r.Path != "" {
			saved, _ = pattern.Load(r.Path) // all its rows are new where the file is gone
		}
		l := Left{Path: r.Path, Title: r.Title, Written: r.Written, Pattern: p, file: name, record: r}
		for _, d := range Differences(saved, p) {
			if d.Here != "" {
				l.Rows++
			}
		}
		out = append(out, l)
	}
	slices.SortFunc(out, func(a, b Left) int { return b.Written.Compare(a.Written) })
	return out, nil
}

// LetGo stops offering left work. It is kept for [Keeping], then thrown away.
func (j *Journal) LetGo(l Left) error {
	now := j.clock.Now()
	l.record.LetGo = &now
	return j.write(l.file, l.record)
}

// Taken removes left work from the journal once a window has it open and journals it anew.
func (j *Journal) Taken(l Left) error { return os.Remove(filepath.Join(j.dir, l.file)) }
