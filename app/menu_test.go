package app

import (
	"slices"
	"strings"
	"testing"

	"strandway/app/session"
)

// The Yarn menu shows the yarns there are, and no others.
func TestTheMenuShowsTheYarnsThereAre(t *testing.T) {
	w, settle := shown(t, "", 1024, 700)
	w.beginWith(session.Blank())
	yarns := func() string {
		var shown []string
		for _, m := range w.win.MainMenu().Items {
			for _, i := range m.Items {
				if letter, ok := strings.CutPrefix(i.Label, "Row in yarn "); ok {
					shown = append(shown, letter)
				}
			}
		}
		return strings.Join(shown, " ")
	}
	if got := yarns(); got != "A" {
		t.Errorf("with one yarn the menu shows %s", got)
	}
	w.addYarn()
	settle()
	if got := yarns(); got != "A B" {
		t.Errorf("with two yarns the menu shows %s", got)
	}
	w.s.Undo()
	settle()
	if got := yarns(); got != "A" {
		t.Errorf("with the second taken back the menu shows %s", got)
	}
}

func TestMenuLetters(t *testing.T) {
	for _, c := range []struct{ names, want string }{
		{"File Edit Row Stitch Yarn View Help", "F E R S Y V H"},
		{"Datei Bearbeiten Reihe Masche Garn Ansicht Hilfe", "D B R M G A H"},
		{"Archivo Editar Vuelta Punto Hilo Ver Ayuda", "A E V P H R Y"},
	} {
		if got := strings.Join(menuLetters(slices.Collect(strings.FieldsSeq(c.names))), " "); got != c.want {
			t.Errorf("%s: %s, want %s", c.names, got, c.want)
		}
	}
}
