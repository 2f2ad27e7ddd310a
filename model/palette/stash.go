package palette

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"strandway/model/colour"
)

// ReadStash reads a list of the yarns that one has at home:
//
//	[[yarn]]
//	name = "Harbour Worsted"
//	shade = "Slate"
//	colour = "#5b6b73"
//
// Other keys, such as grams and a note, are let stand. The name of the file is
// for errors, which say line and column.
func ReadStash(src []byte, name string) ([]Shade, error) {
	var list struct {
		Yarn []struct{ Name, Shade, Colour string }
	}
	if err := toml.Unmarshal(src, &list); err != nil {
		if bad := (*toml.DecodeError)(nil); errors.As(err, &bad) {
			line, column := bad.Position()
			return nil, fmt.Errorf("%s:%d:%d: %s", name, line, column, strings.TrimPrefix(bad.Error(), "toml: "))
		}
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(list.Yarn) == 0 {
		return nil, fmt.Errorf(`%s lists no yarns: write [[yarn]] for each, with name, shade and colour = "#rrggbb"`, name)
	}
	var out []Shade
	for i, y := range list.Yarn {
		c, err := colour.Read(y.Colour)
		if err != nil {
			return nil, fmt.Errorf("%s: yarn %d: %w", name, i+1, err)
		}
		words := y.Name
		if y.Shade != "" && words != "" {
			words += ", "
		}
		out = append(out, Shade{Name: words + y.Shade, Colour: c})
	}
	return out, nil
}
