// Package theme holds how the window looks: its colours for light and dark, its
// type and its icons, and how a yarn's colour is drawn upon paper.
package theme

import "image/color"

// Tokens are the colours of the window. Text in Ink, Ink2, Accent, Fault, Caution
// or Note reads at 4.5:1 or better on each of Paper, Desk, Well and Wash.
type Tokens struct {
	Dark bool

	Desk  color.NRGBA // menu, tray, strip
	Paper color.NRGBA // pages and pictures
	Well  color.NRGBA // status line
	Line  color.NRGBA // hairlines
	Edge  color.NRGBA // edges of fields and cards

	Ink, Ink2        color.NRGBA // text, second text
	Accent, OnAccent color.NRGBA // choice, caret, focus
	Wash             color.NRGBA // row in hand, what is chosen

	Fault, FaultWash     color.NRGBA
	Caution, CautionWash color.NRGBA
	Note                 color.NRGBA
}

var (
	light = Tokens{
		Desk: rgb(0xEFE9DE), Paper: rgb(0xFBF8F2), Well: rgb(0xE6DED0),
		Line: rgb(0xD5CAB8), Edge: rgb(0x8A7F6F),
		Ink: rgb(0x2B2622), Ink2: rgb(0x62594E),
		Accent: rgb(0x17645C), OnAccent: rgb(0xFFFFFF), Wash: rgb(0xDCEAE5),
		Fault: rgb(0xA3301F), FaultWash: rgb(0xF8E4DE),
		Caution: rgb(0x7A5200), CautionWash: rgb(0xF7ECD2),
		Note: rgb(0x3A5A7A),
	}
	dark = Tokens{
		Dark: true,
		Desk: rgb(0x1B1816), Paper: rgb(0x262320), Well: rgb(0x332E2A),
		Line: rgb(0x49423B), Edge: rgb(0x8B8173),
		Ink: rgb(0xEFE8DC), Ink2: rgb(0xB8AD9E),
		Accent: rgb(0x7FC8BB), OnAccent: rgb(0x10211E), Wash: rgb(0x24423D),
		Fault: rgb(0xF2A091), FaultWash: rgb(0x472A24),
		Caution: rgb(0xE5B866), CautionWash: rgb(0x42351C),
		Note: rgb(0xA3BEDD),
	}
)

// For gives the tokens of the light or the dark window.
func For(isDark bool) Tokens {
	if isDark {
		return dark
	}
	return light
}

func rgb(hex uint32) color.NRGBA {
	return color.NRGBA{uint8(hex >> 16), uint8(hex >> 8), uint8(hex), 255}
}

// Shades of the drawings that stand for no yarn of a pattern.
var (
	Harbour = rgb(0x27405C)
	Ember   = rgb(0xC2612F)
)
