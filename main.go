// Strandway is a chart editor for crochet: it turns the written rows of a
// pattern into a symbol chart and a picture of the cloth.
//
// Without a command word it opens its window; strandway --help lists the commands.
package main

import (
	"fmt"
	"os"

	"strandway/app/command"
)

func main() {
	args := os.Args[1:]
	if command.Asked(args) {
		os.Exit(command.Run(args, os.Stdout, os.Stderr))
	}
	if len(args) > 1 {
		fmt.Fprintf(os.Stderr, "strandway: %q is no command, and the window opens one pattern file at a time (see strandway --help)\n", args[0])
		os.Exit(2)
	}
	if err := openWindow(append(args, "")[0]); err != nil {
		fmt.Fprintf(os.Stderr, "strandway: %v\n", err)
		os.Exit(1)
	}
}
