package app

import (
	"context"
	"image/png"
	"io"
	"strings"

	"strandway/app/session"
	"strandway/app/translation"
	"strandway/model"
	"strandway/model/colour"
	"strandway/model/pattern"
	"strandway/render"
	"strandway/render/cloth"
)

// askContact saves the pictures of the leaf that is open as one sheet.
func (w *window) askContact() {
	m := w.s.Made()
	if m == nil || m.Cloth == nil {
		return
	}
	name := fileName(w.s.Name()) + " " + lowerFirst(strings.TrimSuffix(translation.Say(leaves[w.contact.leaf].name), "?")) + ".png"
	w.askFile(translation.Say("Save the sheet as .png"), translation.Say("Save"), name, true, []string{".png"}, func(path string) {
		ways, title, back := w.contactWays(m), w.contactTitle(), w.contact.back()
		go func() {
			picture, err := m.Cloth.DrawContact(context.Background(), ways, cloth.Contact{Title: title, Background: back})
			if err == nil {
				err = render.WriteFile(path, func(out io.Writer) error { return png.Encode(out, picture) })
			}
			w.post(func() { w.saved(path, err) })
		}()
	})
}

// contactTitle says what stands on a sheet: the piece, in which colourway where it is one, and how it is seen.
func (w *window) contactTitle() string {
	p, c := w.s.Pattern(), &w.contact
	parts := []string{p.Title}
	if len(p.Pieces) > 1 {
		parts[0] += ": " + p.Pieces[w.s.Piece()].Name
	}
	if c.leaf == lettersLeaf || c.leaf == readLeaf {
		parts = append(parts, w.wayName())
	}
	if c.seen != (sight{}) && c.seen != sights()[0] && (c.leaf != readLeaf || c.seen.vision == colour.Full) {
		parts = append(parts, translation.Say(c.seen.name))
	}
	return strings.Join(parts, ", ")
}

// contactWays are the pictures of the leaf that is open, as a saved sheet shows them.
func (w *window) contactWays(m *session.Made) []cloth.Way {
	piece, seen := w.s.Piece(), w.contact.seen
	way := func(name string, shades []pattern.Shade, v colour.Vision) cloth.Way {
		out := cloth.Way{Name: name, Yarns: cloth.Seen(cloth.YarnsIn(m.Work, piece, shades), v)}
		fine := true
		out.Says, fine = apart(m, m.Work.ColoursIn(piece, shades), v, 1e4)
		out.Doubt = !fine
		return out
	}
	var out []cloth.Way
	if w.contact.leaf == readLeaf {
		for _, v := range colour.Visions() {
			out = append(out, way(visionName(v), model.Shades(w.s.Pattern(), w.s.Colourway()), v))
		}
		return out
	}
	swatches := w.ways()
	switch w.contact.leaf {
	case lettersLeaf:
		swatches, _ = w.orders()
	case suggestLeaf:
		swatches, _ = w.suggested(m)
	}
	for _, s := range swatches {
		out = append(out, way(s.name, s.shades, seen.vision))
	}
	return out
}
