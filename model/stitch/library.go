package stitch

import (
	"fmt"
	"io/fs"
	"slices"
	"sync"

	"strandway/assets"
)

// Library is all kinds of stitches and what they are called. It is safe for
// use by several goroutines; nothing it hands out is to be changed.
type Library struct {
	kinds     []*Kind    // the records, then the common compounds
	modifiers []compound // rules for compounds
	groups    []group
	words     map[string]map[string]string // terms, then folded word, to canonical name
	phrases   map[string][]phrase          // terms, to names of several words
	shown     map[string][]string          // terms, to the words offered for a misspelled one

	mu     sync.RWMutex
	byName map[string]*Kind // grows with the compounds that are asked for
}

// Standard is the library that the program carries.
func Standard() (*Library, error) { return standard() }

var standard = sync.OnceValues(func() (*Library, error) { return New(assets.Stitches()) })

// New reads a library from the TOML files of dir.
func New(dir fs.FS) (*Library, error) {
	d, err := readData(dir)
	if err != nil {
		return nil, err
	}
	l := &Library{groups: d.Groups, byName: make(map[string]*Kind, 2*len(d.Stitches))}
	for i := range d.Modifiers {
		c, err := newCompound(&d.Modifiers[i])
		if err != nil {
			return nil, err
		}
		l.modifiers = append(l.modifiers, c)
	}
	if err := l.addStitches(d); err != nil {
		return nil, err
	}
	for _, name := range d.Compounds {
		k, ok := l.Kind(name)
		if !ok {
			return nil, fmt.Errorf("stitch library: no rule builds the compound %q", name)
		}
		if !slices.Contains(l.kinds, k) {
			l.kinds = append(l.kinds, k)
		}
	}
	l.index(d.Words)
	return l, nil
}

func (l *Library) addStitches(d *data) error {
	for i := range d.Stitches {
		r := &d.Stitches[i]
		if r.As != "" {
			continue
		}
		k, err := r.kind(d.families[i])
		if err != nil {
			return err
		}
		if l.byName[k.Name] != nil {
			return fmt.Errorf("stitch %s: the name %q is taken", k.ID, k.Name)
		}
		l.byName[k.Name] = k
		l.kinds = append(l.kinds, k)
	}
	for i := range d.Stitches {
		r := &d.Stitches[i]
		if r.Plain == "" {
			continue
		}
		p := l.byName[r.Plain]
		if p == nil {
			return fmt.Errorf("stitch %s: its plain stitch %q is not in the library", r.ID, r.Plain)
		}
		l.byName[r.Name].Plain = p
	}
	for i := range d.Stitches {
		r := &d.Stitches[i]
		if r.As == "" {
			continue
		}
		like, ok := l.Kind(r.As)
		if !ok {
			return fmt.Errorf("stitch %s: no rule builds %q", r.ID, r.As)
		}
		k := *like
		k.ID, k.Name, k.Terms, k.Family, k.Sure = r.ID, r.Name, r.byTerms(), d.families[i], r.Sure
		l.byName[k.Name] = &k
		l.kinds = append(l.kinds, &k)
	}
	return nil
}

// Kind is the kind of a canonical US name: "dc", "fpdc", "bldc2tog", "3-dc cl".
// Compounds are built when they are first asked for.
func (l *Library) Kind(name string) (*Kind, bool) {
	l.mu.RLock()
	k := l.byName[name]
	l.mu.RUnlock()
	if k != nil {
		return k, true
	}
	k, ok := l.build(name)
	if !ok {
		return nil, false
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	if first := l.byName[name]; first != nil { // built at the same time elsewhere: one Kind a name
		return first, true
	}
	l.byName[name] = k
	return k, true
}

// Kinds are all records of the library and the compounds in common use.
func (l *Library) Kinds() []*Kind { return slices.Clone(l.kinds) }
