package scan

import (
	"bytes"
	"context"
	"encoding/binary"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"runtime"
	"strings"
	"testing"

	"cutbinder/sheets/scan/photo"
)

func (g grey) image() *image.Gray {
	return &image.Gray{Pix: g.pix, Stride: g.w, Rect: image.Rect(0, 0, g.w, g.h)}
}

func pngOf(t testing.TB, img image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// webpOf writes a picture in black and white as a lossless WebP file, a bit a
// pixel: only green has two values, red and blue are told from it.
func webpOf(g grey) []byte {
	var bits []byte
	n := 0
	put := func(v, count int) {
		for range count {
			if n%8 == 0 {
				bits = append(bits, 0)
			}
			bits[n/8] |= byte(v&1) << (n % 8)
			v >>= 1
			n++
		}
	}
	put(0x2F, 8)
	put(g.w-1, 14)
	put(g.h-1, 14)
	put(0, 4)              // no alpha, version 0
	put(1|2<<1, 3)         // transform: subtract green
	put(0, 3)              // no other, no colour cache, one set of codes
	put(1|1<<1|1<<2, 3)    // green: two symbols
	put(0|255<<8, 16)      // 0 and 255
	put(1, 4)              // red: one symbol, 0
	put(1, 4)              // blue
	put(1|1<<2|255<<3, 11) // alpha: 255
	put(1, 4)              // distance
	for _, v := range g.pix {
		put(int(v>>7), 1)
	}
	for len(bits)%2 != 0 {
		bits = append(bits, 0)
	}
	out := append([]byte("RIFF....WEBPVP8L...."), bits...)
	binary.LittleEndian.PutUint32(out[4:], uint32(len(out)-8))
	binary.LittleEndian.PutUint32(out[16:], uint32(len(bits)))
	return out
}

// clear is a photo that is easily read, decoded.
func clear(t *testing.T) (grey, string) {
	t.Helper()
	p := photo.New(sample(t), 11, photo.Options{Least: 150, Most: 160, Labels: 1})
	pic, err := decode(p.JPEG, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return pic.grey, p.Seen[0].Text
}

func jpegOf(t *testing.T, img image.Image, exif []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, img, &jpeg.Options{Quality: 90}); err != nil {
		t.Fatal(err)
	}
	data := out.Bytes()
	if exif == nil {
		return data
	}
	body := append([]byte("Exif\x00\x00"), exif...)
	segment := append([]byte{0xFF, 0xE1, 0, 0}, body...)
	binary.BigEndian.PutUint16(segment[2:], uint16(len(body)+2))
	return append(append(append([]byte(nil), data[:2]...), segment...), data[2:]...)
}

// exifOf is Exif data that states an orientation, after a tag that doesn't matter.
func exifOf(order binary.AppendByteOrder, v uint16) []byte {
	out := []byte("II")
	if order == binary.BigEndian {
		out = []byte("MM")
	}
	out = order.AppendUint16(out, 42)
	out = order.AppendUint32(out, 8)
	out = order.AppendUint16(out, 2)
	for _, tag := range [][2]uint16{{0x010F, 7}, {0x0112, v}} {
		out = order.AppendUint16(out, tag[0])
		out = order.AppendUint16(out, 3)
		out = order.AppendUint32(out, 1)
		out = order.AppendUint16(out, tag[1])
		out = order.AppendUint16(out, 0)
	}
	return out
}

// However a photo is stored, its code is read and is where it is shown.
func TestTurns(t *testing.T) {
	shown, text := clear(t)
	var want image.Point
	for v := turn(1); v <= 8; v++ {
		w, h := shown.w, shown.h
		if v >= 5 {
			w, h = h, w
		}
		stored := newGrey(w, h)
		for i := range stored.pix {
			at := v.point(image.Pt(i%w, i/w), w, h)
			stored.pix[i] = shown.pix[at.Y*shown.w+at.X]
		}
		var order binary.AppendByteOrder = binary.LittleEndian
		if v%2 == 0 {
			order = binary.BigEndian
		}
		found := find(t, jpegOf(t, stored.image(), exifOf(order, uint16(v))))
		if len(found) != 1 || found[0].Text != text {
			t.Errorf("orientation %d: found %+v", v, found)
			continue
		}
		got := found[0].middle()
		if v == 1 {
			want = got
		}
		if d := got.Sub(want); d.X*d.X+d.Y*d.Y > 8 {
			t.Errorf("orientation %d: found at %v, want %v", v, got, want)
		}
	}
}

// The first row and column of the stored picture are shown where the standard says.
func TestTurnPoints(t *testing.T) {
	for _, c := range []struct {
		turn     turn
		row, col image.Point // where (1,0) and (0,1) of 3 x 5 pixels are shown
	}{
		{0, image.Pt(1, 0), image.Pt(0, 1)}, {1, image.Pt(1, 0), image.Pt(0, 1)},
		{2, image.Pt(1, 0), image.Pt(2, 1)}, {3, image.Pt(1, 4), image.Pt(2, 3)},
		{4, image.Pt(1, 4), image.Pt(0, 3)}, {5, image.Pt(0, 1), image.Pt(1, 0)},
		{6, image.Pt(4, 1), image.Pt(3, 0)}, {7, image.Pt(4, 1), image.Pt(3, 2)},
		{8, image.Pt(0, 1), image.Pt(1, 2)},
	} {
		if row, col := c.turn.point(image.Pt(1, 0), 3, 5), c.turn.point(image.Pt(0, 1), 3, 5); row != c.row || col != c.col {
			t.Errorf("%d: (1,0) at %v and (0,1) at %v, want %v and %v", c.turn, row, col, c.row, c.col)
		}
	}
}

func TestFormats(t *testing.T) {
	g, text := clear(t)
	black := newGrey(g.w, g.h)
	for i, d := range reliefOf(g, 20).d {
		if d >= 0 {
			black.pix[i] = 255
		}
	}
	deep := image.NewRGBA64(g.image().Rect)
	draw.Draw(deep, deep.Rect, g.image(), image.Point{}, draw.Src)
	few := image.NewPaletted(g.image().Rect, color.Palette{color.Black, color.White, color.Gray{Y: 128}, color.Gray{Y: 60}, color.Gray{Y: 190}})
	draw.Draw(few, few.Rect, g.image(), image.Point{}, draw.Src)
	ink := image.NewNRGBA(g.image().Rect) // black on nothing
	for i, v := range g.pix {
		ink.Pix[4*i+3] = 255 - v
	}
	for _, c := range []struct {
		name string
		data []byte
	}{
		{"JPEG", jpegOf(t, g.image(), nil)}, {"PNG grey", pngOf(t, g.image())}, {"PNG 16 bits", pngOf(t, deep)},
		{"PNG palette", pngOf(t, few)}, {"PNG transparent", pngOf(t, ink)}, {"WebP", webpOf(black)},
	} {
		if found := find(t, c.data); len(found) != 1 || found[0].Text != text {
			t.Errorf("%s: found %+v", c.name, found)
		}
	}
}

// A preview inside another format is read where it is large enough.
func TestPreview(t *testing.T) {
	p := photo.New(sample(t), 11, photo.Options{Least: 150, Most: 160, Labels: 1, Least2D: image.Pt(700, 700)})
	tiny := photo.New(nil, 1, photo.Options{Labels: -1})
	head := []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic")
	both := bytes.Join([][]byte{head, tiny.JPEG, []byte("\xff\xd8\xff no picture"), p.JPEG}, nil)
	if found := find(t, both); len(found) != 1 || found[0].Text != p.Seen[0].Text {
		t.Errorf("found %+v", found)
	}
}

func TestRefused(t *testing.T) {
	tiny := photo.New(nil, 1, photo.Options{Labels: -1})
	huge := pngOf(t, image.NewGray(image.Rect(0, 0, 1, 1)))
	binary.BigEndian.PutUint32(huge[16:], 60000) // the header's width and height
	binary.BigEndian.PutUint32(huge[20:], 50000)
	huge[29], huge[30], huge[31], huge[32] = 0, 0, 0, 0
	binary.BigEndian.PutUint32(huge[29:], crc(huge[12:29]))
	for _, c := range []struct{ data, want string }{
		{"", "an empty file"}, {"%PDF-1.7", "a PDF file"}, {"GIF89a", "a GIF picture"}, {"hello", "something else"},
		{"\x00\x00\x00\x18ftypheic\x00\x00\x00\x00", "the HEIC file is damaged or of an unusual kind"},
		{"\x00\x00\x00\x18ftypavif\x00\x00\x00\x00", "is AVIF, which can't be read here"}, {"\x00\x00\x00\x18ftypqt  \x00\x00\x00\x00", "a film"},
		{"\x00\x00\x00\x18ftypheic" + string(tiny.JPEG), "the HEIC file is damaged"},
		{string(tiny.JPEG[:len(tiny.JPEG)/2]), "the JPEG file is cut short"},
		{"\x89PNG\r\n\x1a\n\x00\x00\x00\x0dJUNK", "the PNG file is"},
		{string(huge), "60000 x 50000 pixels; expected at most 65 million"},
	} {
		_, err := Find(context.Background(), []byte(c.data), Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.12q: %v, want %q", c.data, err, c.want)
		}
	}
	// A large photo is refused by its header, before there is memory for it.
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	Find(context.Background(), huge, Options{})
	if runtime.ReadMemStats(&after); after.TotalAlloc-before.TotalAlloc > 1<<20 {
		t.Errorf("took %d bytes to refuse", after.TotalAlloc-before.TotalAlloc)
	}
}

// crc is the check of a PNG chunk (ISO/IEC 15948, annex D).
func crc(data []byte) uint32 {
	c := ^uint32(0)
	for _, b := range data {
		c ^= uint32(b)
		for range 8 {
			c = c>>1 ^ 0xEDB88320&-(c&1)
		}
	}
	return ^c
}
