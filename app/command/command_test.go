package command_test

import (
	"flag"
	"os"
	"testing"

	"strandway/app/command"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "write the output of the commands into the scripts")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"strandway": func() { os.Exit(command.Run(os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", UpdateScripts: *update})
}

func TestAskedTellsACommandFromAFile(t *testing.T) {
	for arg, want := range map[string]bool{"check": true, "chart": true, "--help": true, "-h": true, "help": true, "mat.strand": false, "checks": false} {
		if command.Asked([]string{arg}) != want {
			t.Errorf("%s: %v", arg, !want)
		}
	}
	if command.Asked(nil) {
		t.Error("without arguments the window is asked for")
	}
}
