package picture

import (
	"context"
	"image"
	"image/color"
	"image/draw"
	"sync"
	"time"

	xdraw "golang.org/x/image/draw"

	"strandway/app/session"
	"strandway/chart/geom"
)

// shot is what a pane is to show: a piece, where from, how large, on what paper.
type shot struct {
	sight  sight
	at     geom.Matrix // places to pixels
	size   image.Point
	paper  color.NRGBA
	unsure *session.Unsure
}

// screen is the picture of a pane. Pictures are drawn one at a time in the background; until the
// one that is wanted is done, the last one is shown, scaled and shifted to where it belongs.
type screen struct {
	changed func() // called in the background when there is a new picture, and when one has become late
	scaled  *image.RGBA

	mu      sync.Mutex
	picture *image.RGBA // never changed
	shows   shot        // what the picture shows
	wanted  shot
	drawing shot
	busy    bool
	cancel  context.CancelFunc
	late    bool
}

// lateAfter is how long a picture may take before that is told.
const lateAfter = 500 * time.Millisecond

// show is the best picture there is, and has a better one drawn if there is one. A shot without a
// sight is empty paper.
func (s *screen) show(want shot) image.Image {
	s.mu.Lock()
	defer s.mu.Unlock()
	switch {
	case want.sight == nil:
		s.picture, s.shows, s.wanted = nil, shot{}, want
	case s.shows == want:
		return s.picture
	default:
		s.ask(want)
	}
	if s.scaled == nil || s.scaled.Rect.Size() != want.size {
		s.scaled = image.NewRGBA(image.Rectangle{Max: want.size})
	}
	draw.Draw(s.scaled, s.scaled.Rect, image.NewUniform(want.paper), image.Point{}, draw.Src)
	if s.picture != nil {
		s.lay(want.at)
	}
	return s.scaled
}

// lay lays the last picture where it belongs when places are mapped to pixels by at.
func (s *screen) lay(at geom.Matrix) {
	k := at.A / s.shows.at.A
	x, y := at.E-s.shows.at.E*k, at.F-s.shows.at.F*k
	if k == 1 {
		draw.Draw(s.scaled, s.picture.Rect.Add(image.Pt(int(x), int(y))), s.picture, image.Point{}, draw.Src)
		return
	}
	xdraw.NearestNeighbor.Transform(s.scaled, [6]float64{k, 0, x, 0, k, y}, s.picture, s.picture.Rect, draw.Src, nil)
}

// ask has a picture drawn. One that is being drawn is given up for it, unless it is of the same
// drawing at the same scale: then it shows most of what is wanted.
func (s *screen) ask(want shot) {
	s.wanted = want
	if !s.busy {
		s.busy = true
		go s.draw()
		return
	}
	if s.drawing.sight != want.sight || s.drawing.at.A != want.at.A {
		s.cancel()
	}
}

// draw draws what is wanted until there is nothing new.
func (s *screen) draw() {
	late := time.AfterFunc(lateAfter, func() { s.tellLate(true) })
	defer func() {
		if !late.Stop() {
			s.tellLate(false)
		}
	}()
	for {
		s.mu.Lock()
		if s.wanted.sight == nil || s.shows == s.wanted {
			s.busy = false
			s.mu.Unlock()
			return
		}
		var ctx context.Context
		ctx, s.cancel = context.WithCancel(context.Background())
		s.drawing = s.wanted
		want, cancel := s.drawing, s.cancel
		s.mu.Unlock()

		picture, err := want.sight.draw(ctx, want)
		cancel()
		if err != nil {
			continue // another is wanted
		}
		if want.unsure != nil {
			picture = veiled(picture, want)
		}
		s.mu.Lock()
		if s.wanted.sight != nil {
			s.picture, s.shows = picture, want
		}
		s.mu.Unlock()
		s.changed()
	}
}

func (s *screen) tellLate(late bool) {
	s.mu.Lock()
	s.late = late && s.busy
	s.mu.Unlock()
	s.changed()
}

// isLate reports whether a picture is taking long.
func (s *screen) isLate() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.late
}
