package theme

import (
	"fmt"
	"image/color"
	"io/fs"
	"strings"

	"fyne.io/fyne/v2"

	"strandway/assets"
)

// Icon is one of the program's icons, drawn in a colour.
func Icon(name string, c color.NRGBA) fyne.Resource {
	svg, err := fs.ReadFile(assets.Icons(), name+".svg")
	if err != nil {
		panic(err) // a name that is not embedded is a slip of the pen in this program
	}
	hex := fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
	return fyne.NewStaticResource(name+hex[1:]+".svg", []byte(strings.ReplaceAll(string(svg), "#000", hex)))
}
