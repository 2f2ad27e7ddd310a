package action

import "testing"

func TestChordsAreWrittenAsTheyAreRead(t *testing.T) {
	for _, s := range []string{"Ctrl+S", "Ctrl+Shift+S", "Alt+Up", "Shift+F8", "F1", "Ctrl+.", "Ctrl++"} {
		if got := Key(s).String(); got != s {
			t.Errorf("Key(%q) is written %q", s, got)
		}
	}
	if Key("Ctrl+S").Plain() || !Key("Shift+F8").Plain() {
		t.Error("Shift+F8 is plain, Ctrl+S is not")
	}
}

func TestATableFindsWhatClashes(t *testing.T) {
	do := func() {}
	good := Table{
		{ID: "save", Menu: "File", Label: "Save", Keys: []Chord{Key("Ctrl+S")}, Do: do},
		{ID: "undo", Menu: "Edit", Label: "Undo", Keys: []Chord{Key("Ctrl+Z")}, Do: do},
	}
	if err := good.Check(); err != nil {
		t.Errorf("a sound table: %v", err)
	}
	for name, bad := range map[string]Table{
		"same key twice": append(good[:2:2], &Action{ID: "x", Menu: "Edit", Label: "X", Keys: []Chord{Key("Ctrl+S")}, Do: do}),
		"same id twice":  append(good[:2:2], &Action{ID: "save", Menu: "Edit", Label: "X", Do: do}),
		"does nothing":   append(good[:2:2], &Action{ID: "x", Menu: "Edit", Label: "X"}),
		"no menu":        append(good[:2:2], &Action{ID: "x", Label: "X", Do: do}),
	} {
		if bad.Check() == nil {
			t.Errorf("%s: not found", name)
		}
	}
}

func TestAnImpossibleActionDoesNothing(t *testing.T) {
	done := false
	a := Action{Can: func() bool { return false }, Do: func() { done = true }}
	a.Run()
	if done {
		t.Error("it was done all the same")
	}
}
