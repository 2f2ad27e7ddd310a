package session

import (
	"testing"
	"time"

	"strandway/model/stitch"
)

// BenchmarkKey is the time from a key to new plans of chart and cloth, at 2,177 stitches of ripple, which
// is laid out by relaxation, and at 2,724 of long stitches in straight columns.
func BenchmarkKey(b *testing.B) {
	for _, sample := range []string{"breakwater-blanket", "groyne-runner"} {
		b.Run(sample, func(b *testing.B) {
			lib, err := stitch.Standard()
			if err != nil {
				b.Fatal(err)
			}
			posted := make(chan func(), 64)
			s := New(lib, func(f func()) { posted <- f })
			defer s.Close()
			if err := s.Open("../../samples/" + sample + ".strand"); err != nil {
				b.Fatal(err)
			}
			s.ShowSize(1)
			settle := func() {
				for !s.Current() {
					select {
					case f := <-posted:
						f()
					case <-time.After(10 * time.Second):
						b.Fatal("the background never came to an end")
					}
				}
			}
			settle()
			for b.Loop() {
				s.Type(" ")
				settle()
			}
			b.ReportMetric(float64(len(s.Made().Fabric().Stitches)), "stitches")
		})
	}
}
