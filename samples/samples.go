// Package samples is a few patterns from Marram Bay, which a newcomer opens
// first and tests work through, and the starters that a new piece begins with.
// They are data: embedded files and their names.
package samples

import (
	"embed"
	"io/fs"
	"path"
	"strings"
)

//go:embed *.strand
var files embed.FS

// Names are the samples' file names without ".strand", in order.
func Names() []string {
	entries, err := fs.ReadDir(files, ".")
	if err != nil {
		panic(err) // the files are part of the program
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), path.Ext(e.Name()))
	}
	return names
}

// Read gives a sample's file.
func Read(name string) ([]byte, error) { return files.ReadFile(name + ".strand") }

//go:embed starters/*.strand
var starters embed.FS

// Starters are the names of the starters, in the order in which they are offered.
func Starters() []string { return []string{"flat", "rounds", "edging", "blank"} }

// Starter gives a starter's file.
func Starter(name string) ([]byte, error) { return starters.ReadFile("starters/" + name + ".strand") }
