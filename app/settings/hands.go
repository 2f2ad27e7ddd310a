package settings

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"strandway/model/yarn"
	"strandway/render"
)

// HandsPath is the file in which weighed swatches are remembered.
func HandsPath() (string, error) {
	p, err := path()
	if err != nil {
		return "", err
	}
	return filepath.Join(filepath.Dir(p), "swatches.toml"), nil
}

// LoadHands reads what weighed swatches told of the maker's hands; nothing before the first, nor where there is no
// folder for settings.
func LoadHands() (yarn.Memory, error) {
	p, err := HandsPath()
	if err != nil {
		return nil, nil
	}
	src, err := os.ReadFile(p)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	hands, err := yarn.DecodeMemory(src)
	if err != nil {
		return nil, fmt.Errorf("cannot read %s: %w", p, err)
	}
	return hands, nil
}

// SaveHands writes what is remembered.
func SaveHands(hands yarn.Memory) error {
	p, err := HandsPath()
	if err != nil {
		return err
	}
	src, err := hands.Encode()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
		return err
	}
	return render.WriteFile(p, func(w io.Writer) error {
		_, err := w.Write(src)
		return err
	})
}
