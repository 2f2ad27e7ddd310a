// Package guide leads a newcomer through her first mat in the real window: it
// knows the steps, sees from the state of the window which are done, and names the
// next key or click. The steps are data, in mat.toml.
package guide

import (
	_ "embed"
	"fmt"
	"regexp"

	"github.com/pelletier/go-toml/v2"
)

//go:embed mat.toml
var mat []byte

// Step is one step: what to press or type and why, and what shows that it is done.
type Step struct {
	Say   string `toml:"say"`
	Press string `toml:"press"` // a key, words to type, or what to click

	Rows       string `toml:"rows"` // found in the written rows
	Did        string `toml:"did"`  // id of an action that was done
	Yarns      int    `toml:"yarns"`
	Colourways int    `toml:"colourways"`
	Saved      bool   `toml:"saved"`

	rows *regexp.Regexp
}

// State is what the guide sees of the window.
type State struct {
	Rows       string
	Did        string // id of the action just done, "" for none
	Yarns      int
	Colourways int
	Saved      bool
}

// Guide is a walk through the steps.
type Guide struct {
	steps []Step
	at    int
}

// Mat begins the first mat.
func Mat() (*Guide, error) {
	var file struct {
		Step []Step `toml:"step"`
	}
	if err := toml.Unmarshal(mat, &file); err != nil {
		return nil, err
	}
	for i := range file.Step {
		s := &file.Step[i]
		if s.Rows == "" {
			continue
		}
		var err error
		if s.rows, err = regexp.Compile("(?i)" + s.Rows); err != nil {
			return nil, fmt.Errorf("step %d: %w", i+1, err)
		}
	}
	return &Guide{steps: file.Step}, nil
}

// See goes on past all steps that are done and reports whether there were any.
// An action counts once: it does not do two steps.
func (g *Guide) See(s State) (moved bool) {
	for !g.Done() && g.steps[g.at].done(s) {
		if g.steps[g.at].Did != "" {
			s.Did = ""
		}
		g.at++
		moved = true
	}
	return moved
}

func (s *Step) done(now State) bool {
	return (s.rows == nil || s.rows.MatchString(now.Rows)) &&
		(s.Did == "" || s.Did == now.Did) &&
		now.Yarns >= s.Yarns && now.Colourways >= s.Colourways &&
		(now.Saved || !s.Saved)
}

// Done reports whether the mat is finished.
func (g *Guide) Done() bool { return g.at == len(g.steps) }

// Step is the step to do now, its number from 1, and how many there are. It must not be asked for once the guide is done.
func (g *Guide) Step() (s Step, number, of int) { return g.steps[g.at], g.at + 1, len(g.steps) }
