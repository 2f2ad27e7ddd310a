package session

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"strandway/model"
)

// Whatever was made and shown before, the pictures are those of the rows worked, laid out and drawn
// from nothing: after every step of every script, byte for byte.
func TestPicturesAreThoseOfRowsWorkedAnew(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal("there are no scripts", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			d := newDesk(t)
			var shown painter
			for n, line := range strings.Split(string(src), "\n") {
				if line = strings.TrimSpace(line); line == "" || strings.HasPrefix(line, "#") {
					continue
				}
				verb, rest, _ := strings.Cut(line, " ")
				if why := d.do(t, verb, strings.ReplaceAll(rest, `\n`, "\n")); why != "" {
					t.Fatalf("line %d: %s: %s", n+1, line, why)
				}
				d.settleDown(t)
				got := shown.paint(t, d.Made())
				var afresh painter
				want := afresh.paint(t, d.anew())
				for i, name := range []string{"chart", "cloth"} {
					if !bytes.Equal(got[i].Pix, want[i].Pix) {
						t.Fatalf("line %d: %s: the %s is not that of the rows worked anew", n+1, line, name)
					}
				}
			}
		})
	}
}

// anew makes everything of the present rows with nothing to take over.
func (d *desk) anew() *Made {
	s := d.Session
	m := &Made{job: job{s.document, s.Pattern(), s.piece, s.size, s.colourway, s.look, s.hands}}
	m.Work = model.Work(s.lib, m.pattern, m.size)
	k := &maker{lib: s.lib, sprites: s.maker.sprites}
	k.chart(m, &Made{})
	k.cloth(m, &Made{})
	return m
}
