// Package assets holds the data the program carries inside itself: the stitch
// library, the chart symbols, the trade's tables, the fonts and the icons.
// It knows the files and nothing of what is in them.
package assets

import (
	"embed"
	"io/fs"
)

//go:embed stitches/*.toml symbols/*.toml trade/*.toml fonts/*.ttf icons/*.svg
var files embed.FS

// Stitches are the records of the stitch library, one TOML file a family,
// with the rules for compounds, groups and words.
func Stitches() fs.FS { return sub("stitches") }

// Symbols are the shapes of the chart symbols.
func Symbols() fs.FS { return sub("symbols") }

// Trade are tables of the trade: hooks, yarn weights, thread numbers.
func Trade() fs.FS { return sub("trade") }

// Icons are the program's icons, 20 by 20 units each.
func Icons() fs.FS { return sub("icons") }

// Font is the TrueType file of one face: "NotoSans-Regular", "NotoSans-Bold",
// "NotoSerif-Regular" or "NotoSerif-Italic".
func Font(name string) ([]byte, error) { return files.ReadFile("fonts/" + name + ".ttf") }

func sub(dir string) fs.FS {
	f, err := fs.Sub(files, dir)
	if err != nil {
		panic(err) // only for a name that is not a valid path
	}
	return f
}
