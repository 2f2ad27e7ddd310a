//go:build !headless

package main

import (
	"errors"
	"os"
	"runtime"

	"strandway/app"
)

// openWindow shows the window with a pattern file, or with the start page for
// "", until it is closed.
func openWindow(path string) error {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return errors.New("there is no display to open the window on; strandway --help lists the commands, which need none")
	}
	return app.Run(path)
}
