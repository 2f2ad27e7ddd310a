package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// Mode is an author's choice of light or dark.
type Mode string

const (
	System Mode = "system"
	Light  Mode = "light"
	Dark   Mode = "dark"
)

// Sizes of type, px.
const (
	Body    = 14   // rows, buttons
	Second  = 12.5 // heads' second words, counts
	Small   = 11.5 // tray, side marks
	Number  = 15   // row numbers
	Name    = 16   // name of the piece
	Chapter = 24   // heads of the start page
)

// Theme dresses the toolkit's own widgets (menus, fields) in the tokens. Widgets of
// this program take theirs from [Theme.Tokens].
type Theme struct {
	Mode  Mode
	Told  bool // the desktop has told whether it is dark: until then the window is light
	fonts faces
}

// New makes the theme with the embedded faces.
func New(mode Mode) *Theme {
	return &Theme{Mode: mode, fonts: loadFaces()}
}

// IsDark tells whether the window is dark now.
func (t *Theme) IsDark() bool {
	switch t.Mode {
	case Dark:
		return true
	case Light:
		return false
	}
	return t.Told && fyne.CurrentApp().Settings().ThemeVariant() == fynetheme.VariantDark
}

// Tokens are the present colours.
func (t *Theme) Tokens() Tokens { return For(t.IsDark()) }

// Color implements fyne.Theme.
func (t *Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	k := t.Tokens()
	switch name {
	case fynetheme.ColorNameOverlayBackground, fynetheme.ColorNameInputBackground, fynetheme.ColorNameMenuBackground:
		return k.Paper
	case fynetheme.ColorNameBackground, fynetheme.ColorNameHeaderBackground, fynetheme.ColorNameButton:
		return k.Desk
	case fynetheme.ColorNameForeground:
		return k.Ink
	case fynetheme.ColorNamePlaceHolder, fynetheme.ColorNameDisabled:
		return k.Ink2
	case fynetheme.ColorNamePrimary, fynetheme.ColorNameHyperlink:
		return k.Accent
	case fynetheme.ColorNameForegroundOnPrimary:
		return k.OnAccent
	case fynetheme.ColorNameFocus, fynetheme.ColorNameSelection, fynetheme.ColorNameHover, fynetheme.ColorNamePressed:
		return k.Wash
	case fynetheme.ColorNameSeparator:
		return k.Line
	case fynetheme.ColorNameInputBorder:
		return k.Edge
	case fynetheme.ColorNameScrollBar:
		c := k.Edge
		c.A = 150
		return c
	case fynetheme.ColorNameScrollBarBackground:
		return color.Transparent
	case fynetheme.ColorNameShadow:
		return color.NRGBA{A: 60}
	case fynetheme.ColorNameError:
		return k.Fault
	case fynetheme.ColorNameWarning:
		return k.Caution
	case fynetheme.ColorNameSuccess:
		return k.Accent
	}
	variant := fynetheme.VariantLight
	if k.Dark {
		variant = fynetheme.VariantDark
	}
	return fynetheme.DefaultTheme().Color(name, variant)
}

// Font implements fyne.Theme.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol, style.Monospace:
		return fynetheme.DefaultTheme().Font(style)
	case style.Bold:
		return t.fonts.bold
	}
	return t.fonts.sans
}

// Serif is the face of what will be printed.
func (t *Theme) Serif(italic bool) fyne.Resource {
	if italic {
		return t.fonts.serifItalic
	}
	return t.fonts.serif
}

// Icon implements fyne.Theme.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return fynetheme.DefaultTheme().Icon(name)
}

// Size implements fyne.Theme.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	switch name {
	case fynetheme.SizeNameText:
		return Body
	case fynetheme.SizeNameCaptionText:
		return Small
	case fynetheme.SizeNameInputRadius:
		return 5
	case fynetheme.SizeNameSelectionRadius:
		return 3
	}
	return fynetheme.DefaultTheme().Size(name)
}
