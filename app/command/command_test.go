package command_test

import (
	"flag"
	"image"
	"image/color"
	"image/draw"
	"image/png"
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
	testscript.Run(t, testscript.Params{Dir: "testdata/script", UpdateScripts: *update,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"picture": picture}})
}

// picture FILE draws a light on a dark coast, 64 by 48 pixels.
func picture(ts *testscript.TestScript, _ bool, args []string) {
	img := image.NewNRGBA(image.Rect(0, 0, 64, 48))
	draw.Draw(img, img.Bounds(), image.NewUniform(color.NRGBA{0x27, 0x40, 0x5c, 255}), image.Point{}, draw.Src)
	draw.Draw(img, image.Rect(24, 12, 40, 36), image.NewUniform(color.NRGBA{0xe6, 0xdc, 0xc6, 255}), image.Point{}, draw.Src)
	f, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(png.Encode(f, img))
	ts.Check(f.Close())
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
