package syntax

import (
	"fmt"
	"reflect"
	"strings"
)

// dump writes a tree, or a part of one, without its spans and without what is zero.
func dump(x any) string {
	var b strings.Builder
	dumpValue(&b, reflect.ValueOf(x))
	return b.String()
}

// enums gives the words for the numbers of a type.
var enums = map[reflect.Type][]string{
	reflect.TypeFor[Ord]():      {"Next", "Same", "First", "Last", "Each", "Nth"},
	reflect.TypeFor[What]():     {"St", "Ch", "StCh", "StSp", "Sp", "Kind", "Unit", "Ring", "Hook", "Tch", "Gap", "End", "Centre", "Corner", "Skipped", "Under", "Face"},
	reflect.TypeFor[Loop]():     {"", "Front", "Back", "Third"},
	reflect.TypeFor[Lie]():      {"", "InFront", "Behind"},
	reflect.TypeFor[How]():      {"Times", "Across", "ToLast", "ToNext", "OverN", "UntilN", "Evenly"},
	reflect.TypeFor[YarnDo]():   {"With", "Join", "Change", "Drop", "Cut", "PickUp", "Carry", "Hold"},
	reflect.TypeFor[Counting](): {"", "Counts", "CountsNot"},
	reflect.TypeFor[Edge]():     {"Next", "Left", "Right", "Side", "Lower", "Upper", "All"},
}

func dumpValue(b *strings.Builder, v reflect.Value) {
	switch v.Kind() {
	case reflect.Interface, reflect.Pointer:
		if v.IsNil() {
			b.WriteString("nil")
			return
		}
		if u, ok := v.Interface().(*Unit); ok { // a group may be met in its own definition
			b.WriteString(u.Name)
			return
		}
		dumpValue(b, v.Elem())
	case reflect.Slice:
		b.WriteString("[")
		for i := range v.Len() {
			if i > 0 {
				b.WriteString(" ")
			}
			dumpValue(b, v.Index(i))
		}
		b.WriteString("]")
	case reflect.Struct:
		if q, ok := v.Interface().(Num); ok {
			dumpNum(b, q)
			return
		}
		b.WriteString(v.Type().Name() + "{")
		first := true
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.Name == "Span" || f.Name == "Head" || v.Field(i).IsZero() && !(f.Name == "What" || f.Name == "Ord") {
				continue
			}
			if !first {
				b.WriteString(" ")
			}
			first = false
			if words := enums[f.Type]; words == nil {
				b.WriteString(f.Name + ":")
			}
			dumpValue(b, v.Field(i))
		}
		b.WriteString("}")
	default:
		if words := enums[v.Type()]; words != nil {
			b.WriteString(words[v.Uint()])
			return
		}
		fmt.Fprint(b, v.Interface())
	}
}

func dumpNum(b *strings.Builder, q Num) {
	switch {
	case q.Sizes != nil:
		fmt.Fprint(b, q.Sizes)
	case q.A != 0:
		fmt.Fprintf(b, "%dn%+d", q.A, q.B)
	default:
		fmt.Fprint(b, q.B)
	}
}

// difference shows two dumps from a little before they part.
func difference(want, have string) string {
	i := 0
	for i < min(len(want), len(have)) && want[i] == have[i] {
		i++
	}
	from := max(0, i-60)
	return fmt.Sprintf("want ...%.200s\nhave ...%.200s", want[from:], have[from:])
}

// dumpTree writes what a tree means: its groups, its rows and its remarks.
func dumpTree(t *Tree) string {
	var b strings.Builder
	for _, name := range t.Order {
		u := t.Units[name]
		fmt.Fprintf(&b, "unit %s macro=%v recipe=%q %s\n", name, u.Macro, u.Recipe, dump(u.Body))
	}
	fmt.Fprintln(&b, t.TchCounts, t.NoTurn)
	for _, n := range t.Notes {
		fmt.Fprintf(&b, "note %q\n", n.Text)
	}
	for _, row := range t.Rows {
		fmt.Fprintln(&b, dump(row))
	}
	return b.String()
}
