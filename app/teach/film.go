package teach

import (
	"context"
	"image"
	"path/filepath"
	"strings"

	"strandway/model/steps"
	"strandway/render/stage"
)

// Film is what Save frames writes: in steps of a row all of the piece, in steps of a
// stitch the row in hand.
func (v *View) Film() (film stage.Film, what string, ok bool) {
	st := v.Stage()
	if st == nil {
		return stage.Film{}, "", false
	}
	const seconds = 2
	film = stage.Film{To: st.Steps.Len(), Size: image.Pt(stage.Width, stage.Height), Seconds: seconds}
	if v.by == steps.Row {
		return film, "all rows", true
	}
	now := st.Steps.Find(v.at)
	row := st.Steps.At(now)
	for film.From = now; film.From > 0 && st.Steps.At(film.From-1).Row == row.Row; {
		film.From--
	}
	for film.To = now + 1; film.To < st.Steps.Len() && st.Steps.At(film.To).Row == row.Row; {
		film.To++
	}
	what, _, _ = strings.Cut(row.Where, " (")
	return film, what, true
}

// Write writes frames in the background: one film for a name ending in .gif, else a new
// folder of PNGs. done is called on the window's goroutine.
func (v *View) Write(ctx context.Context, path string, film stage.Film, done func(error)) {
	st := v.Stage()
	if report := film.Progress; report != nil {
		film.Progress = func(n, all int) { v.post(func() { report(n, all) }) }
	}
	go func() {
		var err error
		if strings.EqualFold(filepath.Ext(path), ".gif") {
			err = st.WriteGIF(ctx, path, film)
		} else {
			err = st.WriteFrames(ctx, path, film)
		}
		v.post(func() { done(err) })
	}()
}
