package theme

import (
	"fyne.io/fyne/v2"

	"strandway/assets"
)

// faces are the embedded faces as the toolkit takes them. What is set in serif will be
// printed; what is set in sans is the program speaking.
type faces struct {
	sans, bold, serif, serifItalic fyne.Resource
}

func loadFaces() faces {
	face := func(name string) fyne.Resource {
		ttf, err := assets.Font(name)
		if err != nil {
			panic(err) // the faces are part of the program
		}
		return fyne.NewStaticResource(name+".ttf", ttf)
	}
	return faces{
		sans:        face("NotoSans-Regular"),
		bold:        face("NotoSans-Bold"),
		serif:       face("NotoSerif-Regular"),
		serifItalic: face("NotoSerif-Italic"),
	}
}
