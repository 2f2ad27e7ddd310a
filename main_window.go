//go:build !headless

package main

import "strandway/app"

// openWindow shows the window with a pattern file, or with the start page for
// "", until it is closed.
func openWindow(path string) error { return app.Run(path) }
