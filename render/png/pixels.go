package png

import (
	"bytes"
	"encoding/binary"
	"hash/adler32"
	"image"
	"runtime"

	"github.com/klauspost/compress/flate"
)

// bandRows is the height of a band. It is fixed, and not shared out by the
// number of processors, so that a picture has the same bytes everywhere.
const bandRows = 128

// band is some rows on their way into the file.
type band struct {
	packed []byte
	sum    uint32 // adler-32 of the rows
	length int    // bytes of the rows
}

// pixels writes the picture's data: bands are made on all processors and
// written in order.
func (c *chunks) pixels(size image.Point, form Form, paint func(*image.RGBA)) {
	count := (size.Y + bandRows - 1) / bandRows
	done := make([]chan band, count)
	for i := range done {
		done[i] = make(chan band, 1)
	}
	workers := min(runtime.GOMAXPROCS(0), count)
	next := make(chan int) // bands are begun only as fast as they are written
	for range workers {
		go func() {
			p := newPacker(size, form)
			for i := range next {
				done[i] <- p.pack(i, i == count-1, paint)
			}
		}()
	}
	begun := 0
	begin := func() {
		if begun < count {
			next <- begun
			begun++
		}
	}
	for range workers {
		begin()
	}
	sum := uint32(1)
	for i := range done {
		b := <-done[i]
		begin()
		if i == 0 {
			b.packed = append([]byte{0x78, 0x01}, b.packed...) // zlib's header: deflate, fastest
		}
		sum = joinSums(sum, b.sum, b.length)
		if i == count-1 {
			b.packed = binary.BigEndian.AppendUint32(b.packed, sum)
		}
		c.chunk("IDAT", b.packed)
	}
	close(next)
}

// packer paints and compresses bands, one at a time.
type packer struct {
	size   image.Point
	form   Form
	pixels []uint8
	rows   []byte
	flate  *flate.Writer
}

func newPacker(size image.Point, form Form) *packer {
	rows := min(bandRows, size.Y)
	w, _ := flate.NewWriter(nil, flate.BestSpeed) // fails only for a level that is none
	return &packer{
		size: size, form: form,
		pixels: make([]uint8, 4*size.X*rows),
		rows:   make([]byte, (1+form.bytes()*size.X)*rows),
		flate:  w,
	}
}

func (p *packer) pack(i int, last bool, paint func(*image.RGBA)) band {
	r := image.Rect(0, i*bandRows, p.size.X, min((i+1)*bandRows, p.size.Y))
	m := &image.RGBA{Pix: p.pixels[:4*r.Dx()*r.Dy()], Stride: 4 * r.Dx(), Rect: r}
	clear(m.Pix)
	paint(m)
	rows := p.rows[:(1+p.form.bytes()*r.Dx())*r.Dy()]
	for y := range r.Dy() {
		row := rows[y*(1+p.form.bytes()*r.Dx()):][:1+p.form.bytes()*r.Dx()]
		row[0] = 0 // no filter
		p.form.convert(row[1:], m.Pix[y*m.Stride:][:4*r.Dx()])
	}
	var packed bytes.Buffer
	p.flate.Reset(&packed)
	p.flate.Write(rows)
	if last {
		p.flate.Close()
	} else {
		p.flate.Flush() // ends on a whole byte, so that the next band can follow
	}
	return band{packed.Bytes(), adler32.Checksum(rows), len(rows)}
}

// convert turns a row of premultiplied RGBA into the form's values.
func (f Form) convert(dst, src []byte) {
	switch f {
	case RGB:
		for i, j := 0, 0; j+3 < len(src); i, j = i+3, j+4 {
			dst[i], dst[i+1], dst[i+2] = src[j], src[j+1], src[j+2]
		}
	case RGBA:
		for j := 0; j+3 < len(src); j += 4 {
			a := src[j+3]
			dst[j], dst[j+1], dst[j+2], dst[j+3] = plain(src[j], a), plain(src[j+1], a), plain(src[j+2], a), a
		}
	case Grey:
		for i, j := 0, 0; j+3 < len(src); i, j = i+1, j+4 {
			dst[i] = grey(src[j], src[j+1], src[j+2])
		}
	case GreyAlpha:
		for i, j := 0, 0; j+3 < len(src); i, j = i+2, j+4 {
			a := src[j+3]
			dst[i], dst[i+1] = plain(grey(src[j], src[j+1], src[j+2]), a), a
		}
	}
}

// plain is a value with the alpha that it was multiplied by taken out again.
func plain(v, a uint8) uint8 {
	if a == 0 || a == 255 {
		return v
	}
	return uint8(min(255, (uint32(v)*255+uint32(a)/2)/uint32(a)))
}

// grey is the lightness of a colour, with the weights of ITU-R BT.601.
func grey(r, g, b uint8) uint8 {
	return uint8((19595*uint32(r) + 38470*uint32(g) + 7471*uint32(b) + 1<<15) >> 16)
}

// joinSums is the adler-32 of two runs of bytes from the sums of each, the second so many bytes long.
func joinSums(first, second uint32, length int) uint32 {
	const base = 65521
	a1, b1 := first&0xffff, first>>16
	a2, b2 := second&0xffff, second>>16
	n := uint32(length % base)
	a := (a1 + a2 + base - 1) % base
	b := (b1 + b2 + uint32(uint64(n)*uint64(a1+base-1)%base)) % base
	return b<<16 | a
}
