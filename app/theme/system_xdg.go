//go:build linux || freebsd || openbsd || netbsd

package theme

import "github.com/rymdport/portal/settings/appearance"

// SystemTells reports whether the desktop has told that it is dark or light; one that says nothing is taken for light.
// The question can hang on some desktops, so it is not for the window's goroutine.
func SystemTells() bool {
	scheme, err := appearance.GetColorScheme()
	return err == nil && scheme != appearance.NoPreference
}
