//go:build headless

package main

import "errors"

// openWindow refuses: this build has no window, so that it needs neither cgo nor a display.
func openWindow(string) error {
	return errors.New("this build has no window; its commands are listed by strandway --help")
}
