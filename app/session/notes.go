package session

import (
	"errors"

	"strandway/chart"
	"strandway/chart/geom"
	"strandway/model/edit"
	"strandway/model/pattern"
)

// Notes are the notes beside the chart of the piece in hand.
func (s *Session) Notes() []pattern.Callout {
	var out []pattern.Callout
	for _, i := range edit.CalloutsOn(s.Pattern(), s.piece) {
		out = append(out, s.Pattern().Callouts[i])
	}
	return out
}

// AddNote puts a note beside the chart, with a line to a stitch, where there is room.
func (s *Session) AddNote(stitch int32, text string) error {
	m := s.Made()
	if m == nil || m.Plan == nil || m.pattern != s.Pattern() {
		return errors.New("the rows are still being worked; try again in a moment")
	}
	c, ok := chart.CalloutAt(m.Plan, stitch)
	if !ok {
		return errors.New("a note stands beside a stitch of a row; choose one in the chart")
	}
	note := pattern.Callout{Row: c.Row, Stitch: c.Stitch, Text: text}
	if s.piece > 0 {
		note.Piece = s.Pattern().Pieces[s.piece].Name
	}
	s.Do("Note on the chart", func(now edit.State) edit.State {
		now.Pattern = edit.AddCallout(now.Pattern, note)
		return now
	})
	return nil
}

// MoveNote puts note n to a place, in stitch widths from the head of its stitch. With on it goes
// on with the move before, so that both are one step.
func (s *Session) MoveNote(n int, away geom.Point, on bool) {
	if away == (geom.Point{}) {
		away.Y = .01 // no place at all would have one found for it
	}
	add := s.history.Grow
	if !on {
		s.history.Seal()
		add = s.history.Do
	}
	s.changeNote("Move the note", n, func(c *pattern.Callout) { c.X, c.Y = hundredths(away.X), hundredths(away.Y) }, add)
}

// hundredths are as fine as a place is written in a file.
func hundredths(v float64) float64 { return float64(int(v*100+500_000.5)-500_000) / 100 }

// WordNote gives note n other words.
func (s *Session) WordNote(n int, text string) {
	s.history.Seal()
	s.changeNote("Words of the note", n, func(c *pattern.Callout) { c.Text = text }, s.history.Do)
	s.history.Seal()
}

// TakeOutNote takes note n away.
func (s *Session) TakeOutNote(n int) {
	if at := edit.CalloutsOn(s.Pattern(), s.piece); n >= 0 && n < len(at) {
		s.Do("Take the note out", func(now edit.State) edit.State {
			now.Pattern = edit.TakeOutCallout(now.Pattern, at[n])
			return now
		})
	}
}

func (s *Session) changeNote(label string, n int, change func(*pattern.Callout), add func(string, edit.State)) {
	at := edit.CalloutsOn(s.Pattern(), s.piece)
	if n < 0 || n >= len(at) {
		return
	}
	s.step(label, func(now edit.State) edit.State {
		c := now.Pattern.Callouts[at[n]]
		change(&c)
		now.Pattern = edit.SetCallout(now.Pattern, at[n], c)
		return now
	}, add)
}
