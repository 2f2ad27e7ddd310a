package render

import (
	"bytes"
	"errors"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"strandway/chart/display"
	"strandway/render/rendertest"
	"strandway/render/sheet"
)

func TestWriteByExtension(t *testing.T) {
	dir := t.TempDir()
	for name, start := range map[string]string{
		"mat.png": "\x89PNG\r\n\x1a\n", "MAT.PNG": "\x89PNG", "mat.svg": "<?xml", "mat.pdf": "%PDF-", "mat of 3.Pdf": "%PDF-",
	} {
		path := filepath.Join(dir, name)
		if err := Write(path, rendertest.Page(), Options{}); err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.HasPrefix(got, []byte(start)) {
			t.Errorf("%s starts with %q, want %q", name, got[:min(8, len(got))], start)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestOptionsReachTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mat.png")
	if err := Write(path, rendertest.Page(), Options{DPI: 127, Transparent: true}); err != nil {
		t.Fatal(err)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	m, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if size := m.Bounds().Size(); size.X != 450 || size.Y != 300 {
		t.Errorf("90 by 60 mm at 127 dpi has %v pixels, want 450 by 300", size)
	}
	if _, _, _, a := m.At(0, 0).RGBA(); a != 0 {
		t.Errorf("the paper has alpha %d, want it clear", a)
	}
}

func TestPages(t *testing.T) {
	dir := t.TempDir()
	pages := []*display.List{rendertest.Page(), rendertest.Page(), rendertest.Page()}
	path := filepath.Join(dir, "mats.pdf")
	if err := WritePages(path, pages, Options{Paper: sheet.A4}); err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(got, []byte("/Count 3")) {
		t.Error("the PDF has not three pages")
	}
	if err := WritePages(filepath.Join(dir, "mats.png"), pages, Options{}); err == nil || !strings.Contains(err.Error(), "3 pages") {
		t.Errorf("three pages in a picture: error %v", err)
	}
	if err := WritePages(path, nil, Options{}); err == nil || !strings.Contains(err.Error(), "no page") {
		t.Errorf("no page: error %v", err)
	}
}

func TestErrorsSayWhatToDo(t *testing.T) {
	dir := t.TempDir()
	folder := filepath.Join(dir, "folder.png")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	notFolder := filepath.Join(dir, "file")
	if err := os.WriteFile(notFolder, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		filepath.Join(dir, "mat.gif"):         "charts are written as .png, .svg or .pdf, not as .gif",
		filepath.Join(dir, "mat"):             "end its name in .png, .svg or .pdf",
		filepath.Join(dir, "none", "mat.svg"): "its folder does not exist; make the folder or choose another",
		folder:                                "there is a folder of that name; choose another name",
		filepath.Join(notFolder, "mat.pdf"):   "not a directory",
	} {
		err := Write(path, rendertest.Page(), Options{})
		if err == nil {
			t.Errorf("%s was written", path)
			continue
		}
		if message := err.Error(); !strings.Contains(message, want) || !strings.Contains(message, path) || strings.Contains(message, "\n") {
			t.Errorf("%s: %q, want one sentence with %q", path, message, want)
		}
	}
}

func TestFailedWriteKeepsTheOldFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "mat.svg")
	if err := os.WriteFile(path, []byte("old"), 0o600); err != nil {
		t.Fatal(err)
	}
	fault := errors.New("the yarn ran out")
	err := WriteFile(path, func(w io.Writer) error {
		io.WriteString(w, "half of the ne")
		return fault
	})
	if !errors.Is(err, fault) || !strings.Contains(err.Error(), path) {
		t.Errorf("error %v, want the fault and the file's name", err)
	}
	if got, _ := os.ReadFile(path); string(got) != "old" {
		t.Errorf("the file holds %q, want what it held", got)
	}
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil || len(files) != 1 {
		t.Errorf("%d files in the folder, want one", len(files))
	}

	if err := WriteFile(path, func(w io.Writer) error { _, err := io.WriteString(w, "new"); return err }); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(path); string(got) != "new" {
		t.Errorf("the file holds %q, want the new text", got)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the file's mode is %v, want that of the old one", info.Mode())
	}
}

func TestLinksStayLinks(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target.svg"), filepath.Join(dir, "link.svg")
	if err := os.WriteFile(target, []byte("old"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, link); err != nil {
		t.Skip(err)
	}
	if err := Write(link, rendertest.Page(), Options{}); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Error("the link has become a file")
	}
	if got, _ := os.ReadFile(target); !bytes.HasPrefix(got, []byte("<?xml")) {
		t.Error("what the link stands for was not written")
	}
}
