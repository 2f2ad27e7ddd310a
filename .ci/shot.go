//go:build ignore

// Shot makes a PNG of the screen file that Xvfb keeps with -fbdir, which is an X window dump.
//
//	go run .ci/shot.go Xvfb_screen0 OUT.png
package main

import (
	"encoding/binary"
	"fmt"
	"image"
	"image/png"
	"os"
)

func main() {
	if err := shoot(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "shot:", err)
		os.Exit(1)
	}
}

func shoot(dump, out string) error {
	src, err := os.ReadFile(dump)
	if err != nil {
		return err
	}
	field := func(i int) int { return int(binary.BigEndian.Uint32(src[4*i:])) }
	header, width, height, bits, line, colours := field(0), field(4), field(5), field(11), field(12), field(19)
	if bits != 32 {
		return fmt.Errorf("a screen of %d bits a pixel", bits)
	}
	pixels := src[header+12*colours:]
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			from, to := pixels[y*line+4*x:], img.Pix[img.PixOffset(x, y):]
			to[0], to[1], to[2], to[3] = from[2], from[1], from[0], 255
		}
	}
	f, err := os.Create(out)
	if err != nil {
		return err
	}
	defer f.Close()
	return png.Encode(f, img)
}
