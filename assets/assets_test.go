package assets

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
)

func TestFontsAreTrueType(t *testing.T) {
	for _, name := range []string{"NotoSans-Regular", "NotoSans-Bold", "NotoSerif-Regular", "NotoSerif-Italic"} {
		b, err := Font(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(b, []byte{0, 1, 0, 0}) {
			t.Errorf("%s is no TrueType file", name)
		}
	}
	if _, err := Font("Elsewhere"); err == nil {
		t.Error("a font that is not there: no error")
	}
}

func TestTablesAreTOML(t *testing.T) {
	for dir, files := range map[string]fs.FS{"stitches": Stitches(), "symbols": Symbols(), "trade": Trade()} {
		names, _ := fs.Glob(files, "*.toml")
		if len(names) < 3 {
			t.Errorf("%s: %d tables", dir, len(names))
		}
		for _, name := range names {
			b, err := fs.ReadFile(files, name)
			if err != nil {
				t.Fatal(err)
			}
			var v map[string]any
			if err := toml.Unmarshal(b, &v); err != nil {
				t.Errorf("%s/%s: %v", dir, name, err)
			}
		}
	}
}

// Icons take the colour of the text they stand beside, so each is one shape on a 20 by 20 grid.
func TestIconsShareOneGrid(t *testing.T) {
	names, _ := fs.Glob(Icons(), "*.svg")
	if len(names) == 0 {
		t.Fatal("no icons")
	}
	for _, name := range names {
		b, _ := fs.ReadFile(Icons(), name)
		if !strings.Contains(string(b), `viewBox="0 0 20 20"`) {
			t.Errorf("%s is not drawn on the 20 by 20 grid", name)
		}
	}
}
