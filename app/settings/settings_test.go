package settings

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

func TestWhatIsSavedIsLoaded(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	s, err := Load()
	if err != nil || s.Theme != "system" {
		t.Fatalf("a first run: %v, %+v", err, s)
	}
	s.Theme = "dark"
	for i := range 20 {
		s.Opened(Recent{Path: fmt.Sprintf("/tmp/%d.strand", i%15)})
	}
	if err := s.Save(); err != nil {
		t.Fatal(err)
	}
	got, err := Load()
	if err != nil || got.Theme != "dark" || len(got.Recent) != most || got.Recent[0].Path != "/tmp/4.strand" {
		t.Errorf("got %+v, %v", got, err)
	}
}

func TestASpoiltFileGivesDefaults(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	os.MkdirAll(filepath.Join(dir, "strandway"), 0o755)
	os.WriteFile(filepath.Join(dir, "strandway", "settings.json"), []byte("{\"theme\": 4"), 0o644)
	s, err := Load()
	if err == nil || s.Theme != "system" {
		t.Errorf("got %+v, %v", s, err)
	}
}

// The first time nothing is remembered; the second time something is.
func TestTheFirstTimeIsKnown(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	s, err := Load()
	if err != nil || !s.First {
		t.Fatalf("first %t, %v", s.First, err)
	}
	if err := s.Save(); err != nil {
		t.Fatal(err)
	}
	if s, err = Load(); err != nil || s.First {
		t.Errorf("the second time: first %t, %v", s.First, err)
	}
}
