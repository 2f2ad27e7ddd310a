package rows

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// carry is a row that is being dragged by its number, as indices of written rows; nil while none is.
type carry struct{ from, to int }

// beginCarry takes hold of the row whose number is at a place of the page.
func (p *Page) beginCarry(y float32) {
	if b := p.rowAt(y); b != nil && b.number != "" {
		p.carried = &carry{b.row, b.row}
	}
}

// carryOn marks the row whose place the carried one would take.
func (p *Page) carryOn(y float32) {
	if b := p.rowAt(y); b != nil && b.number != "" && b.row != p.carried.to {
		p.carried.to = b.row
		p.show()
	}
}

// endCarry lets the carried row go where it is.
func (p *Page) endCarry() {
	c := p.carried
	p.carried = nil
	if c != nil && c.from != c.to {
		p.MoveRow(c.from, c.to)
	}
	p.show()
}

// rowAt is the box of the written row at a height of the page, before scrolling; nil where there is none.
func (p *Page) rowAt(y float32) *box {
	for i := range p.boxes {
		if b := &p.boxes[i]; y >= b.y && y < b.y+b.height && b.row >= 0 {
			return b
		}
	}
	return nil
}

// target draws a line where the carried row would go: above the row whose place it takes, or below it on the way down.
func (d *picture) target() {
	c := d.p.carried
	if c == nil || c.from == c.to {
		return
	}
	for i := range d.p.boxes {
		b := &d.p.boxes[i]
		if b.row != c.to {
			continue
		}
		y := b.y + 1
		if c.to > c.from {
			y = b.y + b.height - 3
		}
		line := canvas.NewRectangle(d.k.Accent)
		line.Move(fyne.NewPos(washLeft, y-d.p.scroll))
		line.Resize(fyne.NewSize(d.p.Size().Width-washLeft-washMargin, 3))
		d.over = append(d.over, line)
	}
}
