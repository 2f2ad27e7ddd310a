package app

import "testing"

// BenchmarkTyping is what a key costs on the window's goroutine: rows laid out and every panel drawn anew,
// without the working in the background and without the frame itself.
func BenchmarkTyping(b *testing.B) {
	w, _ := shown(b, "groyne-runner", 1440, 900)
	for b.Loop() {
		w.s.Type("x")
		w.s.Undo()
	}
}
