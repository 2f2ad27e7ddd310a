package rows

import (
	"fyne.io/fyne/v2/driver/desktop"

	"strandway/app/translation"
	"strandway/model/diag"
)

// MouseIn implements desktop.Hoverable.
func (p *Page) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved tells the reason for a mark under the pointer: in the row's margin, or under its words.
func (p *Page) MouseMoved(e *desktop.MouseEvent) {
	if f := p.findingAt(e.Position.X, e.Position.Y+p.scroll); f != nil {
		says := translation.Sentence(f.Message)
		if f.Hint != "" {
			says += "; " + translation.Sentence(f.Hint)
		}
		p.Hint(upperFirst(says))
		return
	}
	p.Hint("")
}

// MouseOut implements desktop.Hoverable.
func (p *Page) MouseOut() { p.Hint("") }

// findingAt is the finding whose words, or whose row's mark, stand at a place of the page, nil where none does.
func (p *Page) findingAt(x, y float32) *diag.Finding {
	for i := range p.boxes {
		b := &p.boxes[i]
		if y < b.y || y >= b.y+b.height {
			continue
		}
		if x > p.Size().Width-markMargin-10 {
			return b.worst()
		}
		if y < b.textTop || y >= b.textBottom() {
			return nil
		}
		at := p.offsetAt(x, y)
		for k := range b.findings {
			if f := &b.findings[k]; at >= f.Span.Start && at < f.Span.End {
				return f
			}
		}
	}
	return nil
}
