package yarn

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// Remembered is what a weighed swatch told of a maker's hands, with one yarn and one hook.
type Remembered struct {
	Yarn   string  `toml:"yarn"`
	HookMM float64 `toml:"hook_mm"`
	Loops  float64 `toml:"loops"` // factors on the reckoned lengths, as in [Factors]
	Legs   float64 `toml:"legs"`
	From   string  `toml:"from"` // the pattern that the swatch was weighed for
	Day    string  `toml:"day"`  // when, as 2006-01-02
}

// Memory is what is remembered of a maker's hands. It is never changed; its
// methods give another.
type Memory []Remembered

// is reports whether an entry is of a yarn, by its name in any spelling, and a hook.
func (r *Remembered) is(yarn string, hookMM float64) bool {
	const same = .01 // mm
	return strings.EqualFold(strings.TrimSpace(r.Yarn), strings.TrimSpace(yarn)) && math.Abs(r.HookMM-hookMM) < same
}

// Of is what is remembered of a yarn with a hook.
func (m Memory) Of(yarn string, hookMM float64) (Remembered, bool) {
	i := slices.IndexFunc(m, func(r Remembered) bool { return r.is(yarn, hookMM) })
	if i < 0 || strings.TrimSpace(yarn) == "" {
		return Remembered{}, false
	}
	return m[i], true
}

// With is the memory with one entry more, in place of an older one of the same yarn and hook.
func (m Memory) With(r Remembered) Memory { return append(m.Without(r.Yarn, r.HookMM), r) }

// Without is the memory without a yarn and hook.
func (m Memory) Without(yarn string, hookMM float64) Memory {
	return slices.DeleteFunc(slices.Clone(m), func(r Remembered) bool { return r.is(yarn, hookMM) })
}

// Factors are those of the entry.
func (r *Remembered) Factors() Factors {
	return Factors{Loops: r.Loops, Legs: r.Legs, Calibrated: true, From: r.From}
}

// memoryFile is a memory as it is kept.
type memoryFile struct {
	Swatch []Remembered `toml:"swatch"`
}

const memoryHead = `# What weighed swatches told of your hands, by yarn and hook: how much more or less yarn your
# loops and legs take than is reckoned. Entries may be changed or taken out.

`

// Encode writes a memory as TOML.
func (m Memory) Encode() ([]byte, error) {
	body, err := toml.Marshal(memoryFile{m})
	return append([]byte(memoryHead), body...), err
}

// DecodeMemory reads a memory. Factors must be from .5 to 2: beyond that a swatch was weighed wrongly.
func DecodeMemory(src []byte) (Memory, error) {
	var file memoryFile
	if err := toml.Unmarshal(src, &file); err != nil {
		return nil, err
	}
	for _, r := range file.Swatch {
		for _, k := range []float64{r.Loops, r.Legs} {
			if !(k >= .5 && k <= 2) {
				return nil, fmt.Errorf("the factors of %q with a %g mm hook must be from 0.5 to 2, not %g", r.Yarn, r.HookMM, k)
			}
		}
	}
	return file.Swatch, nil
}
