package stitch

import (
	"fmt"
	"strconv"
	"strings"
)

// Movement is one movement of the hook, as compositions write it:
//
//	yo2          two yarn-overs
//	ins(place)   insert the hook
//	up           yarn over and pull up one loop
//	off2         yarn over and pull through two loops on the hook; straight after
//	             an insertion it comes through the work as well
//	ch1          one chain to close
//	st(dc)       a whole stitch
//	drop, catch  let the loop off the hook, take it up again
//	[...] x3     the actions in brackets three times
//
// Anything else (twist, bead) is a remark that moves no loop.
type Movement struct {
	Do string // yo, ins, up, off, ch, st, drop, catch, or the remark
	N  int    // yarn-overs, loops or chains
	In string // where the hook goes, or the stitch that is worked
}

// maxActions keeps a recipe from a pattern within what hands could make.
const maxActions = 2000

func parseComposition(text string) ([]Movement, error) {
	var out []Movement
	for _, part := range splitOutside(text, ';') {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		if inner, ok := strings.CutPrefix(part, "["); ok {
			end := strings.LastIndex(inner, "]")
			n, err := strconv.Atoi(strings.TrimPrefix(strings.TrimSpace(inner[end+1:]), "x"))
			if end < 0 || err != nil || n < 1 {
				return nil, fmt.Errorf("%q: write a repeated part as [yo1; up] x3", part)
			}
			acts, err := parseComposition(inner[:end])
			if err != nil {
				return nil, err
			}
			if len(out)+n*len(acts) > maxActions {
				return nil, fmt.Errorf("%q: more than %d movements in one stitch", part, maxActions)
			}
			for range n {
				out = append(out, acts...)
			}
			continue
		}
		name, in, _ := strings.Cut(part, "(")
		word := strings.TrimRight(name, "0123456789")
		n := 1
		if digits := name[len(word):]; digits != "" {
			var err error
			if n, err = strconv.Atoi(digits); err != nil || n > maxActions {
				return nil, fmt.Errorf("%q: number out of range", part)
			}
		}
		out = append(out, Movement{word, n, strings.TrimSuffix(in, ")")})
	}
	return out, nil
}

// Movements are the movements of the hook that make the stitch, in order and
// with nothing folded.
func (k *Kind) Movements() []Movement {
	acts, err := parseComposition(k.Composition)
	if err != nil {
		return nil // the library was read without that error
	}
	return acts
}

// splitOutside splits at sep, but not inside brackets.
func splitOutside(s string, sep rune) []string {
	var out []string
	depth, from := 0, 0
	for i, r := range s {
		switch r {
		case '(', '[':
			depth++
		case ')', ']':
			depth--
		case sep:
			if depth == 0 {
				out = append(out, s[from:i])
				from = i + 1
			}
		}
	}
	return append(out, s[from:])
}

// making is what a composition tells of a stitch.
type making struct {
	wraps, legs, pulls int
	left               int // loops on the hook when it is finished; 1 for a stitch that closes
}

func analyse(acts []Movement) making {
	m := making{left: 1}
	offs := 0
	for _, a := range acts {
		switch a.Do {
		case "yo":
			if m.legs == 0 {
				m.wraps += a.N
			}
			m.left += a.N
		case "ins":
			m.legs++
		case "up", "catch":
			m.left++
		case "drop":
			m.left--
		case "off":
			offs++
			m.left -= a.N - 1
		}
	}
	if m.legs > 0 && offs > 0 {
		m.pulls = (offs - 1) / m.legs
	}
	return m
}

// leg is a plain stitch's composition short of its last pull-through, and the
// loops that it leaves on the hook.
func leg(composition string) (text string, loops int) {
	parts := splitOutside(composition, ';')
	last := strings.TrimSpace(parts[len(parts)-1])
	parts = parts[:len(parts)-1]
	if inner, ok := strings.CutPrefix(last, "["); ok { // "[off2] x3" leaves "[off2] x2"
		body, times, _ := strings.Cut(inner, "]")
		n, _ := strconv.Atoi(strings.TrimPrefix(strings.TrimSpace(times), "x"))
		last = body
		switch {
		case n == 2:
			parts = append(parts, " "+body)
		case n > 2:
			parts = append(parts, fmt.Sprintf(" [%s] x%d", body, n-1))
		}
	}
	k, _ := strconv.Atoi(strings.TrimPrefix(last, "off"))
	return strings.Join(parts, ";"), k - 1
}

// Compile makes a kind from a recipe in the library's notation, as a pattern
// gives one for a special stitch: "[yo1; ins(same); up; off2] x3; off4". All
// its legs stand in one place.
func (l *Library) Compile(name, recipe string) (*Kind, error) {
	acts, err := parseComposition(recipe)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	m := analyse(acts)
	if m.legs == 0 {
		return nil, fmt.Errorf("%s: the recipe never inserts the hook: say where, as in \"yo1; ins(top); up; off2; off2\"", name)
	}
	if m.left != 1 {
		return nil, fmt.Errorf("%s: the recipe leaves %d loops on the hook: a finished stitch leaves 1", name, m.left)
	}
	plain := l.plainLike(m)
	k := *plain
	k.ID, k.Name, k.Family = name, name, "cluster"
	k.Terms = map[string]Term{"us": {Name: name, Abbr: name, Sure: true}, "uk": {Name: name, Abbr: name, Sure: true}}
	k.Composition, k.Wraps, k.Legs, k.Pulls = recipe, m.wraps, m.legs, m.pulls
	k.Plain, k.Sure = plain, false
	k.SamePlace = m.legs > 1
	switch {
	case m.legs > 1 && m.pulls == 0:
		k.Lump = Puff
	case m.legs >= 5:
		k.Lump = Bobble
	case m.legs > 1:
		k.Lump = Cluster
	}
	return &k, nil
}

// plainLike is the basic stitch that is made most like m.
func (l *Library) plainLike(m making) *Kind {
	best, least := l.kinds[0], 1<<30
	for _, k := range l.kinds {
		if k.Family != "basic" || k.Plain != k {
			continue
		}
		if d := 4*abs(k.Wraps-m.wraps) + abs(k.Pulls-m.pulls); d < least {
			best, least = k, d
		}
	}
	return best
}

func abs(x int) int { return max(x, -x) }
