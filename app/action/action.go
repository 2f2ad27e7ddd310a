// Package action is the one table of what the window can do: menus, keys and
// the list of all keys are made from it.
package action

import (
	"fmt"
	"strings"
)

// Action is one thing the window can do.
type Action struct {
	ID    string        // stable name
	Menu  string        // the menu it stands in
	Label string        // as the menu says it
	Say   func() string // the label where it changes with the state; nil: Label
	Keys  []Chord       // the first is shown in the menu
	Can   func() bool   // whether it can be done now; nil: always
	Why   func() string // says why it cannot be done, when its keys are pressed all the same; nil: nothing is said
	On    func() bool   // whether it is ticked; nil: it has no tick
	Gone  func() bool   // whether no menu shows it now; nil: it is always there
	Do    func()
	Rule  bool // a rule stands above it in its menu
	Bare  bool // its keys alone do it: it stands in the list of all keys, and no menu shows it
	Field bool // it concerns the field that has the keys too, so it goes on while a question is asked
}

// Text is the label to show now.
func (a *Action) Text() string {
	if a.Say != nil {
		return a.Say()
	}
	return a.Label
}

// Shown reports whether menus show the action now.
func (a *Action) Shown() bool { return !a.Bare && (a.Gone == nil || !a.Gone()) }

// Possible reports whether the action can be done now.
func (a *Action) Possible() bool { return a.Can == nil || a.Can() }

// Run does the action when it is possible.
func (a *Action) Run() {
	if a.Possible() {
		a.Do()
	}
}

// Chord is a key with the keys held beside it.
type Chord struct {
	Ctrl, Shift, Alt bool
	Key              string // "S", "F8", "Delete", ".", "Return", "Up"
}

// Key reads a chord as it is written in a menu: "Ctrl+Shift+S".
func Key(s string) Chord {
	var c Chord
	for {
		switch {
		case strings.HasPrefix(s, "Ctrl+"):
			c.Ctrl, s = true, s[5:]
		case strings.HasPrefix(s, "Shift+"):
			c.Shift, s = true, s[6:]
		case strings.HasPrefix(s, "Alt+"):
			c.Alt, s = true, s[4:]
		default:
			c.Key = s
			return c
		}
	}
}

// String writes the chord as a menu shows it.
func (c Chord) String() string {
	s := ""
	if c.Ctrl {
		s = "Ctrl+"
	}
	if c.Shift {
		s += "Shift+"
	}
	if c.Alt {
		s += "Alt+"
	}
	return s + c.Key
}

// Plain reports whether the chord has neither Ctrl nor Alt, as F8 and Shift+F8.
// The window system hands such keys to the widget in focus only.
func (c Chord) Plain() bool { return !c.Ctrl && !c.Alt }

// Table is all actions, in the order of the menus.
type Table []*Action

// Menus are the names of the menus in order.
func (t Table) Menus() []string {
	var names []string
	seen := map[string]bool{}
	for _, a := range t {
		if !seen[a.Menu] {
			seen[a.Menu] = true
			names = append(names, a.Menu)
		}
	}
	return names
}

// In gives the actions of one menu.
func (t Table) In(menu string) []*Action {
	var in []*Action
	for _, a := range t {
		if a.Menu == menu {
			in = append(in, a)
		}
	}
	return in
}

// For gives the action of a chord, nil when it has none.
func (t Table) For(c Chord) *Action {
	for _, a := range t {
		for _, k := range a.Keys {
			if k == c {
				return a
			}
		}
	}
	return nil
}

// Check reports what is wrong with the table: ids or keys used twice, actions that do nothing.
func (t Table) Check() error {
	ids, keys := map[string]bool{}, map[Chord]string{}
	for _, a := range t {
		switch {
		case ids[a.ID]:
			return fmt.Errorf("two actions are called %q", a.ID)
		case a.Do == nil:
			return fmt.Errorf("action %q does nothing", a.ID)
		case a.Menu == "" || a.Label == "" && a.Say == nil:
			return fmt.Errorf("action %q stands in no menu or has no label", a.ID)
		}
		ids[a.ID] = true
		for _, k := range a.Keys {
			if other, taken := keys[k]; taken {
				return fmt.Errorf("%v belongs to both %q and %q", k, other, a.ID)
			}
			keys[k] = a.ID
		}
	}
	return nil
}
