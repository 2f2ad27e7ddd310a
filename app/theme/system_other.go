//go:build !(linux || freebsd || openbsd || netbsd)

package theme

// SystemTells reports whether the desktop has told that it is dark or light.
func SystemTells() bool { return true }
