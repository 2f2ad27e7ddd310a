package pattern

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Load reads a pattern from a file.
func Load(path string) (*Pattern, error) {
	src, err := ReadFile(path)
	if err != nil {
		return nil, err
	}
	return Decode(src, path)
}

// ReadFile reads a pattern file as it stands, for callers that show its lines.
func ReadFile(path string) ([]byte, error) {
	const most = 16 << 20 // bytes; written rows of a whole book are under one million
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("cannot read %s: %w", path, reason(err))
	case info.IsDir():
		return nil, fmt.Errorf("cannot read %s: it is a folder", path)
	case info.Size() > most:
		return nil, fmt.Errorf("cannot read %s: with %d MB it is too large for a pattern", path, info.Size()>>20)
	}
	src, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", path, reason(err))
	}
	return src, nil
}

// Save writes a pattern to a file. The new text is complete on disk before it
// takes the old file's name, so that the one or the other is there whatever
// happens. The file keeps its permissions, and a link stays a link.
func Save(path string, p *Pattern) (err error) {
	defer func() {
		if err != nil {
			err = fmt.Errorf("cannot save %s: %w", path, reason(err))
		}
	}()
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if _, err := f.Write(p.Encode()); err != nil {
		return err
	}
	if err := f.Chmod(mode); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// reason is the bare reason of an error of the file system, without the
// operation and the path, which the caller names.
func reason(err error) error {
	if path := (*fs.PathError)(nil); errors.As(err, &path) {
		return path.Err
	}
	if link := (*os.LinkError)(nil); errors.As(err, &link) {
		return link.Err
	}
	return err
}
