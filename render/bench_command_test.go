package render

import (
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// shells is a sheet of shells as large as A3 at the usual size, about 5,000 symbols.
const shells = `strandway = 1
title = "Shells"
[[piece]]
name = "Sheet"
worked = "flat"
rows = """
Ch 80.
Row 1 (RS): Sc in 2nd ch from hook, *skip next 2 ch, 5 dc in next ch, skip next 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3 (counts as dc), 2 dc in first sc, *skip next 2 dc, sc in next dc, skip next 2 dc, 5 dc in next sc; rep from * to last 6 sts, skip next 2 dc, sc in next dc, skip next 2 dc, 3 dc in last sc, turn.
Row 3: Ch 1, sc in first dc, *skip next 2 dc, 5 dc in next sc, skip next 2 dc, sc in next dc; rep from * across, turn.
Rows 4-61: Rep Rows 2-3 29 times.
"""
`

// BenchmarkChart runs the whole command, from the pattern file to the PNG at 300
// dpi, and rsvg-convert on the SVG of the same chart, and tells the ratio of
// their times and the memory that the command took at most.
func BenchmarkChart(b *testing.B) {
	dir := b.TempDir()
	program, in := filepath.Join(dir, "strandway"), filepath.Join(dir, "shells.strand")
	build := exec.Command("go", "build", "-tags", "headless", "-o", program, "strandway")
	build.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		b.Skipf("%v: %s", err, out)
	}
	if err := os.WriteFile(in, []byte(shells), 0o644); err != nil {
		b.Fatal(err)
	}
	var most int64
	run := func(name string, args ...string) time.Duration {
		c := exec.Command(name, args...)
		start := time.Now()
		if out, err := c.CombinedOutput(); err != nil {
			b.Skipf("%s: %v: %s", name, err, out)
		}
		took := time.Since(start)
		if use, ok := c.ProcessState.SysUsage().(*syscall.Rusage); ok && name == program {
			most = max(most, use.Maxrss)
		}
		return took
	}
	svg := filepath.Join(dir, "shells.svg")
	run(program, "chart", in, "-o", svg)
	var own, other time.Duration
	for b.Loop() {
		own += run(program, "chart", in, "-o", filepath.Join(dir, "own.png"), "--dpi", "300")
		other += run("rsvg-convert", "-d", "300", "-p", "300", "-o", filepath.Join(dir, "other.png"), svg)
	}
	b.ReportMetric(float64(other)/float64(own), "times-as-fast")
	b.ReportMetric(float64(most)/1024, "MB")
	b.Logf("own %v, rsvg-convert %v, %.0f MB", own/time.Duration(b.N), other/time.Duration(b.N), float64(most)/1024)
}
