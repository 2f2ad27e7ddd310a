package command_test

import (
	"io"
	"path/filepath"
	"testing"

	"strandway/app/command"
)

// Benchmarks run whole commands on a sample: chart from file to PNG, cloth of some 500 stitches.
func BenchmarkChart(b *testing.B) { run(b, "chart") }
func BenchmarkCloth(b *testing.B) { run(b, "cloth") }

func run(b *testing.B, name string) {
	out := filepath.Join(b.TempDir(), "x.png")
	for b.Loop() {
		if status := command.Run([]string{name, "../../samples/groyne-runner.strand", "-o", out}, io.Discard, io.Discard); status != 0 {
			b.Fatalf("exit status %d", status)
		}
	}
}
