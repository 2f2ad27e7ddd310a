package session

import "strandway/render/cloth"

// ClothYarns are the yarns of the piece as cloth is made of them, in a colourway.
func (m *Made) ClothYarns(colourway string) []cloth.Yarn {
	return cloth.YarnsOf(m.Work, m.piece, colourway)
}
