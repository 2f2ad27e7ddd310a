package app

import (
	"os"
	"testing"
)

// Letters go from 90 to 160 per cent, are remembered, and leave alone a scale that was asked for from outside.
func TestLettersAreScaled(t *testing.T) {
	t.Setenv(scaleVariable, "")
	w, _ := shown(t, "", 1024, 700)
	for range 9 {
		w.scaleLetters(.1)
	}
	if w.set.Scale != mostScale || os.Getenv(scaleVariable) != "1.6" {
		t.Errorf("at most %g, %q", w.set.Scale, os.Getenv(scaleVariable))
	}
	for range 9 {
		w.scaleLetters(-.1)
	}
	if w.set.Scale != leastScale || os.Getenv(scaleVariable) != "0.9" {
		t.Errorf("at least %g, %q", w.set.Scale, os.Getenv(scaleVariable))
	}
	t.Setenv(scaleVariable, "2")
	applyScale(w.set)
	if got := os.Getenv(scaleVariable); got != "2" {
		t.Errorf("the scale from outside became %s", got)
	}
}
