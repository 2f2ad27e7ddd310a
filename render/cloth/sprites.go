package cloth

import (
	"context"
	"math"
	"runtime"
	"slices"
	"sync"
)

// leanSteps is the fineness of a part's axis: sprites are shared among parts
// whose axes agree to 1/12 w.
const leanSteps = 12

// key says what a sprite shows.
type key struct {
	part    part
	variant uint8
	dx, dy  int16 // axis, 1/leanSteps w
	shape   Shape
}

// Sprites keeps drawn parts of stitches, so that the next cloth need not draw
// them again. Cloths of one window share one; it is safe for concurrent use.
type Sprites struct {
	mu     sync.Mutex
	limit  int
	levels []*level // the one used last comes first
}

// level holds the sprites of one scale.
type level struct {
	scale float64
	byKey map[key]*sprite
	size  int
}

// NewSprites is a keeper of up to about limit bytes; 0 means 96 MB.
func NewSprites(limit int) *Sprites {
	if limit <= 0 {
		limit = 96 << 20
	}
	return &Sprites{limit: limit}
}

// level gives the level of a scale and marks it as the one used last.
func (s *Sprites) level(scale float64) *level {
	i := slices.IndexFunc(s.levels, func(l *level) bool { return l.scale == scale })
	l := &level{scale: scale, byKey: map[key]*sprite{}}
	if i >= 0 {
		l = s.levels[i]
		s.levels = slices.Delete(s.levels, i, i+1)
	}
	s.levels = slices.Insert(s.levels, 0, l)
	return l
}

// get gives the sprites of keys at scale samples per w, in the order of keys,
// drawing those that are missing with one worker a core.
func (s *Sprites) get(ctx context.Context, keys []key, scale float64) ([]*sprite, error) {
	out := make([]*sprite, len(keys))
	var missing []int
	s.mu.Lock()
	l := s.level(scale)
	for i, k := range keys {
		if out[i] = l.byKey[k]; out[i] == nil {
			missing = append(missing, i)
		}
	}
	s.mu.Unlock()

	// Neighbours in the list share the yarn's shape, and so an artist.
	slices.SortStableFunc(missing, func(i, j int) int { return int(keys[i].shape.Plies) - int(keys[j].shape.Plies) })
	err := inParallel(ctx, len(missing), func() func(int) {
		var a *artist
		return func(n int) {
			k := keys[missing[n]]
			if a == nil || a.shape != k.shape {
				a = newArtist(scale, k.shape)
			}
			out[missing[n]] = k.draw(a)
		}
	})
	if err != nil {
		return nil, err
	}

	s.mu.Lock()
	defer s.mu.Unlock()
	for _, i := range missing {
		if l.byKey[keys[i]] == nil {
			l.byKey[keys[i]] = out[i]
			l.size += out[i].size()
		}
	}
	s.trim()
	return out, nil
}

// trim forgets the scales used longest ago.
func (s *Sprites) trim() {
	total := 0
	for i, l := range s.levels {
		total += l.size
		if i > 0 && total > s.limit {
			s.levels = slices.Delete(s.levels, i, len(s.levels))
			return
		}
	}
}

// draw draws the sprite that the key stands for.
func (k key) draw(a *artist) *sprite {
	strands := k.part.strands(float64(k.dx)/leanSteps, float64(k.dy)/leanSteps, k.variant, k.shape.thickness())
	return a.draw(strands, uint32(k.variant)*77+uint32(k.part.form))
}

func quantised(v float64) int16 { return int16(math.Round(v * leanSteps)) }

// inParallel does jobs 0 to n-1 with one worker a core; each worker is made by
// worker. It stops early when ctx is done, and returns its error.
func inParallel(ctx context.Context, n int, worker func() func(int)) error {
	jobs := make(chan int)
	var wg sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wg.Go(func() {
			do := worker()
			for i := range jobs {
				do(i)
			}
		})
	}
	for i := 0; i < n && ctx.Err() == nil; i++ {
		jobs <- i
	}
	close(jobs)
	wg.Wait()
	return ctx.Err()
}
