package render

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// WriteFile writes a file whole or not at all: into a new file beside it, which
// takes its place only when everything is written. The error is one sentence
// for whoever asked for the file.
func WriteFile(path string, write func(io.Writer) error) error {
	if err := writeFile(path, write); err != nil {
		return fmt.Errorf("cannot write %s: %w", path, plain(err))
	}
	return nil
}

func writeFile(path string, write func(io.Writer) error) error {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return errors.New("there is a folder of that name; choose another name")
	}
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target // write what the link stands for, and leave the link
	}
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	defer os.Remove(f.Name()) // once renamed, there is nothing to remove
	err = write(f)
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return err
	}
	mode := fs.FileMode(0o644)
	if info, err := os.Stat(path); err == nil {
		mode = info.Mode().Perm()
	}
	if err := os.Chmod(f.Name(), mode); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}

// plain is an error of the file system in a designer's words.
func plain(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("its folder does not exist; make the folder or choose another")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("its folder does not allow it; choose a folder of your own")
	}
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err // without the name of the file that was to take its place
	}
	return err
}
