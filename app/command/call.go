package command

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"

	"strandway/model"
	"strandway/model/pattern"
	"strandway/model/stitch"
)

// call is one run of a command.
type call struct {
	command
	args           []string
	stdout, stderr io.Writer
	flags          *flag.FlagSet // nil until the command has said which it takes
}

// options makes the flag set of this call; the command adds its flags, then asks for the file.
func (c *call) options() *flag.FlagSet {
	c.flags = flag.NewFlagSet(c.name, flag.ContinueOnError)
	c.flags.SetOutput(io.Discard)
	return c.flags
}

// file reads the command line, on which options may stand before and behind
// the one file, and gives the file's path.
func (c *call) file() (string, error) {
	var files []string
	for rest := c.args; len(rest) > 0; {
		if err := c.flags.Parse(rest); errors.Is(err, flag.ErrHelp) {
			return "", errHelp
		} else if err != nil {
			return "", c.misread(err)
		}
		if rest = c.flags.Args(); len(rest) > 0 {
			files, rest = append(files, rest[0]), rest[1:]
		}
	}
	switch len(files) {
	case 0:
		return "", misused("say which pattern file")
	case 1:
		return files[0], nil
	}
	return "", misused("one pattern file at a time, not %q and %q", files[0], files[1])
}

// misread says in the words of this program what [flag.FlagSet.Parse] found wrong with an option.
func (c *call) misread(err error) error {
	said := err.Error()
	if name, ok := strings.CutPrefix(said, "flag provided but not defined: -"); ok {
		return misused("there is no option %s", dashed(name))
	}
	if name, ok := strings.CutPrefix(said, "flag needs an argument: -"); ok {
		value, _ := flag.UnquoteUsage(c.flags.Lookup(name))
		return misused("%s stands without its value: write %[1]s %s", dashed(name), value)
	}
	before, after, ok := strings.Cut(said, " for flag -")
	if _, own, found := strings.Cut(after, ": --"); found { // as oneOf has it
		return misused("--%s", own)
	}
	if name, _, named := strings.Cut(after, ": "); ok && named {
		value, _ := flag.UnquoteUsage(c.flags.Lookup(name))
		return misused("%s cannot be %s: write %[1]s %[3]s", dashed(name), strings.TrimPrefix(before, "invalid value "), value)
	}
	return misused("%s", said)
}

// oneOf adds an option that takes one of some words, in capitals or not, and puts
// what the word stands for into chosen.
func oneOf[T any](flags *flag.FlagSet, chosen *T, name, usage string, of map[string]T) {
	flags.Func(name, usage, func(word string) error {
		v, ok := of[strings.ToLower(word)]
		if !ok {
			words := slices.Sorted(maps.Keys(of))
			last := len(words) - 1
			return fmt.Errorf("--%s must be %s or %s, not %s", name, strings.Join(words[:last], ", "), words[last], word)
		}
		*chosen = v
		return nil
	})
}

// dashed writes an option as it is given.
func dashed(name string) string {
	if len(name) == 1 {
		return "-" + name
	}
	return "--" + name
}

// help describes the command with its options.
func (c *call) help(w io.Writer) {
	fmt.Fprintf(w, "strandway %s %s\n\n%s.\n", c.name, c.use, upper(c.summary))
	if c.detail != "" {
		fmt.Fprintf(w, "\n%s\n", c.detail)
	}
	first := true
	c.flags.VisitAll(func(f *flag.Flag) {
		if first {
			fmt.Fprint(w, "\n")
			first = false
		}
		value, what := flag.UnquoteUsage(f)
		fmt.Fprintf(w, "  %s\n        %s\n", strings.TrimSpace(dashed(f.Name)+" "+value), what)
	})
}

// given reports whether an option stands on the command line.
func given(flags *flag.FlagSet, name string) (found bool) {
	flags.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// library is the stitch library, read once.
var library = sync.OnceValues(stitch.Standard)

// source is a pattern file with its text, for findings that show its lines.
type source struct {
	path    string
	text    string // as [pattern.Decode] saw it
	rowsAt  []int
	pattern *pattern.Pattern
}

// open reads a pattern file. What bars it from being read is told with its lines.
func (c *call) open(path string) (*source, error) {
	src, err := pattern.ReadFile(path)
	if err != nil {
		return nil, err
	}
	s := &source{path: path, text: pattern.Text(src)}
	s.pattern, err = pattern.Decode(src, path)
	if bad := (pattern.Errors{}); errors.As(err, &bad) {
		for _, e := range bad {
			s.tell(c.stderr, e.Line, e.Column, "fault: "+e.Sentence())
		}
		return nil, errFaults
	}
	s.rowsAt = pattern.RowsAt(src)
	return s, err
}

// worked opens a pattern file and works it as chosen; piece is the index of the piece chosen.
func (c *call) worked(path string, of *choice) (src *source, worked *model.Worked, piece int, err error) {
	if src, err = c.open(path); err != nil {
		return nil, nil, 0, err
	}
	worked, piece, err = of.work(src, c.stderr)
	return src, worked, piece, err
}

// work works the pattern for a size, by its name; "" is the first.
func (s *source) work(size string) (*model.Worked, error) {
	lib, err := library()
	if err != nil {
		return nil, err
	}
	i := 0
	if size != "" {
		if i, err = model.SizeNamed(s.pattern, size); err != nil {
			return nil, wrongUse{err}
		}
	}
	return model.Work(lib, s.pattern, i), nil
}
