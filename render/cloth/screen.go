package cloth

import (
	"context"
	"image"
	"slices"
)

// Screen keeps the picture of a cloth that is shown. After an edit of its rows, or when the
// view is shifted by whole pixels, only what differs is drawn and coloured anew. The zero
// Screen is ready to use, by one goroutine at a time.
type Screen struct {
	buffer  *Buffer
	picture *image.RGBA
	table   [][256]uint64
	back    Background
}

// Show gives the picture of a cloth, the same as drawing and colouring it gives. It is not
// changed later. When ctx is done first, the screen stays as it was.
func (s *Screen) Show(ctx context.Context, c *Cloth, v View, yarns []Yarn, back Background) (*image.RGBA, error) {
	buffer, err := c.redraw(ctx, v, s.buffer)
	if err != nil {
		return nil, err
	}
	table := colours(c.looks, yarns, back.Light)
	picture := image.NewRGBA(image.Rect(0, 0, buffer.Width, buffer.Height))
	keeps := s.buffer != nil && s.back == back && slices.Equal(s.table, table) && buffer.of.continues(s.buffer.of)
	if keeps {
		copyShifted(picture, s.picture, s.buffer.of.view.Min.Sub(buffer.of.view.Min))
	}
	buffer.resolve(picture, table, back.ground(), keeps)
	s.buffer, s.picture, s.table, s.back = buffer, picture, table, back
	return picture, nil
}

// copyShifted copies what of src falls on dst when its corner is put at a point.
func copyShifted(dst, src *image.RGBA, at image.Point) {
	r := dst.Rect.Intersect(src.Rect.Add(at))
	for y := r.Min.Y; y < r.Max.Y; y++ {
		from := src.PixOffset(r.Min.X-at.X, y-at.Y)
		to := dst.PixOffset(r.Min.X, y)
		copy(dst.Pix[to:to+4*r.Dx()], src.Pix[from:])
	}
}
