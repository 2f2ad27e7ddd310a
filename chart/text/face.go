package text

import (
	"fmt"
	"sync"

	"golang.org/x/image/font/sfnt"

	"strandway/assets"
)

// Face is one of the faces embedded in assets/fonts.
type Face uint8

const (
	Sans Face = iota
	SansBold
	Serif
	SerifItalic
)

// faces are the embedded faces in the order of the constants.
var faces = [...]struct {
	file, family string
	bold, italic bool
	font         func() *sfnt.Font
	letters      *sync.Map // outlines by index, kept like the font once they were needed
}{
	Sans:        {"NotoSans-Regular", "Noto Sans", false, false, parsed("NotoSans-Regular"), new(sync.Map)},
	SansBold:    {"NotoSans-Bold", "Noto Sans", true, false, parsed("NotoSans-Bold"), new(sync.Map)},
	Serif:       {"NotoSerif-Regular", "Noto Serif", false, false, parsed("NotoSerif-Regular"), new(sync.Map)},
	SerifItalic: {"NotoSerif-Italic", "Noto Serif", false, true, parsed("NotoSerif-Italic"), new(sync.Map)},
}

// known is the face itself, Sans for a number that is no face.
func (f Face) known() Face {
	if int(f) < len(faces) {
		return f
	}
	return Sans
}

// Family is the name of the face's family, "Noto Sans".
func (f Face) Family() string { return faces[f.known()].family }

// Bold reports whether the face is a bold one.
func (f Face) Bold() bool { return faces[f.known()].bold }

// Italic reports whether the face is an italic one.
func (f Face) Italic() bool { return faces[f.known()].italic }

// File is the face's TrueType file.
func (f Face) File() []byte { return file(faces[f.known()].file) }

func (f Face) load() *sfnt.Font { return faces[f.known()].font() }

func (f Face) letters() *sync.Map { return faces[f.known()].letters }

// parsed reads a font file when it is first needed, and keeps it.
func parsed(name string) func() *sfnt.Font {
	return sync.OnceValue(func() *sfnt.Font {
		f, err := sfnt.Parse(file(name))
		if err != nil {
			panic(fmt.Sprintf("the embedded font %s is broken: %v", name, err))
		}
		return f
	})
}

func file(name string) []byte {
	b, err := assets.Font(name)
	if err != nil {
		panic(fmt.Sprintf("the font %s is not embedded: %v", name, err))
	}
	return b
}
