// Package settings keeps what the window remembers between two runs: the
// files opened last, the list of yarns at home, light or dark, and how the page was divided. The file is replaced
// as a whole, so that a crash leaves the old one or the new one.
package settings

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"strandway/render"
)

// Settings are what is remembered.
type Settings struct {
	Theme  string   `json:"theme"` // "system", "light" or "dark"
	Recent []Recent `json:"recent"`
	Rows   float32  `json:"rows"` // width of the rows page, px; 0 for the usual one
	Width  float32  `json:"width"`
	Height float32  `json:"height"`
	Folder string   `json:"folder"` // where files were opened or saved last

	Scale      float32 `json:"scale"`       // of letters and all about them; 0 for the usual one
	LeftHanded bool    `json:"left_handed"` // pieces are taught as a left-hander works them

	First bool `json:"-"` // nothing was remembered: the program is opened for the first time

	Stitches []string `json:"stitches"` // taken lately, by their US names, the last one first
	Stash    string   `json:"stash"`    // the list of the yarns at home, "" for none
}

// Recent is a file that was opened.
type Recent struct {
	Path   string    `json:"path"`
	Title  string    `json:"title"`
	Opened time.Time `json:"opened"`
	Tells  string    `json:"tells"` // "26 rows, three yarns"
	Yarns  []string  `json:"yarns"` // "#rrggbb" of its stripes, in working order
}

// most is how many files are remembered.
const most = 12

// Defaults are the settings of a first run.
func Defaults() *Settings { return &Settings{Theme: "system", Width: 1440, Height: 900} }

func path() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "strandway", "settings.json"), nil
}

// Load reads the settings. Where they cannot be read it gives the defaults and says why.
func Load() (*Settings, error) {
	s := Defaults()
	p, err := path()
	if err != nil {
		return s, err
	}
	src, err := os.ReadFile(p)
	if errors.Is(err, fs.ErrNotExist) {
		s.First = true
		return s, nil
	}
	if err != nil {
		return s, err
	}
	if err := json.Unmarshal(src, s); err != nil {
		return Defaults(), fmt.Errorf("cannot read %s: %w", p, err)
	}
	return s, nil
}

// Save writes the settings.
func (s *Settings) Save() error {
	p, err := path()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		return err
	}
	src, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return err
	}
	return render.WriteFile(p, func(w io.Writer) error {
		_, err := w.Write(append(src, '\n'))
		return err
	})
}

// Opened puts a file at the head of those opened last.
func (s *Settings) Opened(r Recent) {
	s.Recent = slices.DeleteFunc(s.Recent, func(old Recent) bool { return old.Path == r.Path })
	s.Recent = slices.Insert(s.Recent, 0, r)
	s.Recent = s.Recent[:min(len(s.Recent), most)]
	s.Folder = filepath.Dir(r.Path)
}
