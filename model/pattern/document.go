package pattern

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"strandway/model/diag"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// document is a TOML document with the place of each key, and the faults found in it so far.
type document struct {
	name   string
	src    []byte
	places map[string]place // by path, see [join]
	faults []fault
}

// place is where a key and its value stand, in bytes.
type place struct {
	key, value int
}

type fault struct {
	at            int
	message, hint string
}

// join makes the path of a key; the parts are set apart by a byte that no key may hold.
func join(path string, parts ...string) string {
	for _, part := range parts {
		path += "\x00" + part
	}
	return path
}

// open reads src as TOML. What it finds wrong with the TOML itself is among the faults.
func open(src []byte, name string) (*document, *table) {
	d := &document{name: name, src: src, places: map[string]place{}}
	values := map[string]any{}
	if err := toml.Unmarshal(src, &values); err != nil {
		at := 0
		if bad := (*toml.DecodeError)(nil); errors.As(err, &bad) {
			line, column := bad.Position()
			at = offset(src, line, column)
		}
		d.fault(at, strings.TrimPrefix(err.Error(), "toml: "), `the head is written in TOML: key = value, text in "quotes"`)
		return d, nil
	}
	d.places = walk(src)
	return d, &table{doc: d, values: values}
}

func (d *document) fault(at int, message, hint string) {
	d.faults = append(d.faults, fault{at, message, hint})
}

// errors gives the faults in the order of the file; nil when there are none.
func (d *document) errors() error {
	if len(d.faults) == 0 {
		return nil
	}
	slices.SortStableFunc(d.faults, func(a, b fault) int { return cmp.Compare(a.at, b.at) })
	text := string(d.src)
	list := make(Errors, len(d.faults))
	for i, f := range d.faults {
		line, column := diag.Place(text, f.at)
		list[i] = &Error{File: d.name, Line: line, Column: column, Message: f.message, Hint: f.hint}
	}
	return list
}

// offset is the byte at a line and a byte column, both from 1.
func offset(src []byte, line, column int) int {
	at := 0
	for ; line > 1; line-- {
		next := bytes.IndexByte(src[at:], '\n')
		if next < 0 {
			break
		}
		at += next + 1
	}
	return min(at+max(column-1, 0), len(src))
}

// walk notes where each key of a valid document stands.
func walk(src []byte) map[string]place {
	w := walker{places: map[string]place{}, count: map[string]int{}}
	w.Reset(src)
	here := ""
	for w.NextExpression() {
		switch e := w.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			here = w.header(e)
		case unstable.KeyValue:
			w.pair(here, e)
		}
	}
	return w.places
}

type walker struct {
	unstable.Parser
	places map[string]place
	count  map[string]int // elements met of each array of tables
}

// header is the path of a [table] or a new [[table]].
func (w *walker) header(e *unstable.Node) string {
	path := ""
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		at := int(it.Node().Raw.Offset)
		if _, known := w.places[path]; !known {
			w.places[path] = place{at, at}
		}
		if it.IsLast() && e.Kind == unstable.ArrayTable {
			w.count[path]++
		}
		if n := w.count[path]; n > 0 {
			path = join(path, strconv.Itoa(n-1))
			w.places[path] = place{at, at}
		}
	}
	return path
}

// pair notes a key with its value and all that the value holds.
func (w *walker) pair(path string, e *unstable.Node) {
	at := 0
	for it := e.Key(); it.Next(); {
		path = join(path, string(it.Node().Data))
		at = int(it.Node().Raw.Offset)
		if !it.IsLast() {
			w.places[path] = place{at, at}
		}
	}
	w.value(path, at, e.Value())
}

func (w *walker) value(path string, key int, v *unstable.Node) {
	at := key
	if v.Raw.Length > 0 {
		at = int(v.Raw.Offset)
	}
	w.places[path] = place{key, at}
	switch v.Kind {
	case unstable.Array:
		n := 0
		for it := v.Children(); it.Next(); n++ {
			w.value(join(path, strconv.Itoa(n)), at, it.Node())
		}
	case unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			w.pair(path, it.Node())
		}
	}
}

// table is one TOML table. Its readers give the zero value where a key is
// missing or of the wrong type, and note the fault.
type table struct {
	doc    *document
	path   string
	values map[string]any
	known  []string // the keys that have been asked for
}

// take gives the value of a key.
func (t *table) take(key string) (v any, ok bool) {
	t.known = append(t.known, key)
	v, ok = t.values[key]
	return v, ok
}

// has reports whether a key is written.
func (t *table) has(key string) bool {
	_, ok := t.values[key]
	return ok
}

// fault notes what is wrong with the value of a key.
func (t *table) fault(key, message, hint string) {
	t.doc.fault(t.doc.places[join(t.path, key)].value, message, hint)
}

func (t *table) wrongType(key, want, hint string) {
	t.fault(key, fmt.Sprintf("%s must be %s", key, want), hint)
}

// text reads one line of text.
func (t *table) text(key string) string {
	s := t.lines(key)
	if strings.ContainsAny(s, "\n\r") {
		t.fault(key, key+" must be one line of text", "")
	}
	return s
}

// lines reads text of any number of lines.
func (t *table) lines(key string) string {
	v, ok := t.take(key)
	if !ok {
		return ""
	}
	s, ok := v.(string)
	if !ok {
		t.wrongType(key, "text", fmt.Sprintf(`write it in quotes: %s = "..."`, key))
	}
	return s
}

// away reads a distance across and up, in stitch widths: "1.5 -2".
func (t *table) away(key string) (x, y float64) {
	s := t.text(key)
	if s == "" {
		return 0, 0
	}
	fields := strings.Fields(s)
	if len(fields) == 2 {
		var errX, errY error
		x, errX = strconv.ParseFloat(fields[0], 64)
		y, errY = strconv.ParseFloat(fields[1], 64)
		if errX == nil && errY == nil && math.Abs(x) < 1000 && math.Abs(y) < 1000 {
			return x, y
		}
	}
	t.fault(key, key+" must be two numbers of stitch widths, across and up", `write it as: `+key+` = "1.5 2"`)
	return 0, 0
}

// number reads a measure: finite and more than 0.
func (t *table) number(key string) float64 {
	v, ok := t.take(key)
	if !ok {
		return 0
	}
	var x float64
	switch v := v.(type) {
	case int64:
		x = float64(v)
	case float64:
		x = v
	default:
		t.wrongType(key, "a number", "write it without quotes: "+key+" = 4.5")
		return 0
	}
	if !(x > 0) || math.IsInf(x, 0) {
		t.fault(key, key+" must be more than 0", "leave the line out if it is not known")
		return 0
	}
	return x
}

// yes reads true or false; false where the key is missing.
func (t *table) yes(key string) bool {
	v, ok := t.take(key)
	if !ok {
		return false
	}
	b, ok := v.(bool)
	if !ok {
		t.wrongType(key, "true or false", "write it without quotes: "+key+" = true")
	}
	return b
}

// anyMany stands for no upper bound of a whole number.
const anyMany = 1 << 30

// whole reads a whole number from least to most; missing where the key is.
func (t *table) whole(key string, least, most, missing int) int {
	v, ok := t.take(key)
	if !ok {
		return missing
	}
	n, ok := v.(int64)
	switch {
	case !ok:
		t.wrongType(key, "a whole number", fmt.Sprintf("write it without quotes: %s = %d", key, max(least, 1)))
	case n < int64(least) && most == anyMany:
		t.fault(key, fmt.Sprintf("%s must be %d or more", key, least), "leave the line out if it is not known")
	case n < int64(least) || n > int64(most):
		t.fault(key, fmt.Sprintf("%s must be from %d to %d", key, least, most), "leave the line out if it is not known")
	default:
		return int(n)
	}
	return missing
}

// oneOf reads one of a few words, in any case.
func (t *table) oneOf(key string, words []string) string {
	s := t.text(key)
	for _, word := range words {
		if strings.EqualFold(s, word) {
			return word
		}
	}
	if s != "" {
		t.fault(key, fmt.Sprintf("%s %q is not known", key, s), "write one of: "+strings.Join(words, ", "))
	}
	return ""
}

// table reads a table inside this one; nil where there is none.
func (t *table) table(key string) *table {
	v, ok := t.take(key)
	if !ok {
		return nil
	}
	values, ok := v.(map[string]any)
	if !ok {
		t.wrongType(key, "a table", fmt.Sprintf("write [%s] on a line of its own, then its keys", key))
		return nil
	}
	return &table{doc: t.doc, path: join(t.path, key), values: values}
}

// tables reads an array of tables.
func (t *table) tables(key string) []*table {
	v, ok := t.take(key)
	if !ok {
		return nil
	}
	list, _ := v.([]any)
	var out []*table
	for i, v := range list {
		if values, ok := v.(map[string]any); ok {
			out = append(out, &table{doc: t.doc, path: join(t.path, key, strconv.Itoa(i)), values: values})
		}
	}
	if len(out) == 0 || len(out) != len(list) {
		t.wrongType(key, "a list of tables", fmt.Sprintf("write [[%s]] on a line of its own for each, then its keys", key))
	}
	return out
}

// here is where the table stands, for faults of what it lacks.
func (t *table) here() int { return t.doc.places[t.path].key }

// close notes every key that nothing asked for.
func (t *table) close() {
	for key := range t.values {
		if slices.Contains(t.known, key) {
			continue
		}
		hint := "the keys here are " + strings.Join(t.known, ", ")
		if near, ok := nearest(key, t.known); ok {
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		t.doc.fault(t.doc.places[join(t.path, key)].key, fmt.Sprintf("unknown key %q", key), hint)
	}
}

// nearest is the word that takes the fewest changes of a letter to reach, if they are few.
func nearest(word string, words []string) (best string, ok bool) {
	least := 1 + len(word)/3
	for _, w := range words {
		if d := diag.Distance(word, w); d <= least && (best == "" || d < diag.Distance(word, best)) {
			best = w
		}
	}
	return best, best != ""
}
