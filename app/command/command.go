// Package command is the program without a window: what it does when it is
// called with a command word.
//
// Answers go to standard output and what is wrong to standard error. The exit
// status is 0, or 1 when the pattern has a fault or a file cannot be read or
// written, or 2 when the command line itself is wrong.
package command

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Exit statuses.
const (
	ok     = 0
	failed = 1
	misuse = 2
)

// command is one command word.
type command struct {
	name    string
	use     string // the arguments it takes
	summary string
	detail  string // what --help says besides
	run     func(c *call) error
}

// commands are in the order of a designer's day.
func commands() []command {
	return []command{
		check, rows, counts, read,
		strandsCommand, sizesCommand, yarnCommand, measureCommand,
		chartCommand, clothCommand, colourwaysCommand, coloursCommand, shadeCommand,
		teachCommand, tapestryCommand,
	}
}

// Asked reports whether the arguments ask for a command rather than for a window.
func Asked(args []string) bool {
	if len(args) == 0 {
		return false
	}
	_, known := find(args[0])
	return known || strings.HasPrefix(args[0], "-") || args[0] == "help"
}

func find(name string) (command, bool) {
	list := commands()
	i := slices.IndexFunc(list, func(c command) bool { return c.name == name })
	if i < 0 {
		return command{}, false
	}
	return list[i], true
}

// Run carries out a command line, without the program's own name, and gives the exit status.
func Run(args []string, stdout, stderr io.Writer) int {
	if len(args) == 0 || slices.Contains([]string{"-h", "--help", "help"}, args[0]) {
		usage(stdout)
		return ok
	}
	cmd, known := find(args[0])
	if !known {
		fmt.Fprintf(stderr, "strandway: there is no command %q (see strandway --help)\n", args[0])
		return misuse
	}
	c := &call{command: cmd, args: args[1:], stdout: stdout, stderr: stderr}
	err := cmd.run(c)
	switch wrong := (wrongUse{}); {
	case err == nil:
		return ok
	case errors.Is(err, errHelp):
		c.help(stdout)
		return ok
	case errors.As(err, &wrong):
		fmt.Fprintf(stderr, "strandway %s: %v (see strandway %s --help)\n", cmd.name, err, cmd.name)
		return misuse
	case errors.Is(err, errFaults): // they have been told already
		return failed
	}
	fmt.Fprintf(stderr, "strandway %s: %v\n", cmd.name, err)
	return failed
}

func usage(w io.Writer) {
	fmt.Fprint(w, "Strandway turns the written rows of a crochet pattern into a chart and a picture of the cloth.\n\n"+
		"  strandway [FILE]\n        open the window\n")
	for _, c := range commands() {
		fmt.Fprintf(w, "  strandway %s %s\n        %s\n", c.name, c.use, c.summary)
	}
	fmt.Fprint(w, "\nEach command has --help.\n")
}

// wrongUse is an error of the command line itself.
type wrongUse struct{ error }

func misused(format string, a ...any) error { return wrongUse{fmt.Errorf(format, a...)} }

var (
	errHelp   = errors.New("help asked for")
	errFaults = errors.New("the pattern has faults")
)
