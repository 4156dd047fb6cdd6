package scan

import (
	"context"
	"image"
	"math"
	"testing"

	"cutbinder/sheets/scan/photo"
)

// sample is the labels that photos are made up of.
func sample(t testing.TB) []photo.Label {
	t.Helper()
	labels, err := photo.Sample()
	if err != nil {
		t.Fatal(err)
	}
	return labels
}

func find(t testing.TB, data []byte) []Found {
	t.Helper()
	found, err := Find(context.Background(), data, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// On bad photos no text is read that isn't there, nearly all labels are read whose
// modules have three pixels, and what is found is where it is.
func TestPhotos(t *testing.T) {
	labels := sample(t)
	seen, read := 0, 0
	for seed := range uint64(36) {
		p := photo.New(labels, seed, photo.Options{Least: 60, Most: 180})
		found := find(t, p.JPEG)
		for _, f := range found {
			if f.Text != "" && !isThere(p, f) {
				t.Errorf("photo %d: read %q at %v, which isn't there", seed, f.Text, f.middle())
			}
		}
		for _, s := range p.Seen {
			if s.Module < 3 {
				continue
			}
			seen++
			for _, f := range found {
				if f.Text == s.Text && apart(s, f) < 0.1 {
					read++
					break
				}
			}
		}
	}
	if seen < 15 || float64(read) < 0.95*float64(seen) {
		t.Errorf("read %d of %d labels of 3 pixels a module and more; expected 95 %%", read, seen)
	}
}

// isThere says whether a label of this text is where it was found.
func isThere(p photo.Photo, f Found) bool {
	for _, s := range p.Seen {
		if s.Text == f.Text && apart(s, f) < 0.1 {
			return true
		}
	}
	return false
}

// apart is how far the corners of a label are from those that were found, at most,
// in sides of its code.
func apart(s photo.Seen, f Found) float64 {
	worst := 0.0
	for i, c := range s.Corners {
		worst = max(worst, math.Hypot(c[0]-float64(f.Corners[i].X), c[1]-float64(f.Corners[i].Y)))
	}
	return worst / (s.Module * float64(s.Modules))
}

// Codes come in rows, as one reads.
func TestOrder(t *testing.T) {
	at := func(x, y int) Found {
		f := Found{Modules: 25, Module: 4}
		for i := range f.Corners {
			f.Corners[i] = image.Pt(x, y)
		}
		return f
	}
	all := []Found{at(10, 300), at(500, 90), at(20, 100), at(260, 110), at(300, 290)}
	inOrder(all)
	for i, want := range []image.Point{{X: 20, Y: 100}, {X: 260, Y: 110}, {X: 500, Y: 90}, {X: 10, Y: 300}, {X: 300, Y: 290}} {
		if got := all[i].middle(); got != want {
			t.Errorf("%d: %v, want %v", i, got, want)
		}
	}
}

// What has no label on it has no text, and an interrupt is an error.
func TestNothing(t *testing.T) {
	p := photo.New(nil, 5, photo.Options{Labels: -1, Least2D: image.Pt(900, 700)})
	for _, f := range find(t, p.JPEG) {
		t.Errorf("found %+v", f)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Find(ctx, p.JPEG, Options{}); err != context.Canceled {
		t.Errorf("interrupted: %v", err)
	}
}

// FuzzFind finds that no bytes make it panic or take large pictures on.
func FuzzFind(f *testing.F) {
	labels := sample(f)
	small := photo.New(labels, 1, photo.Options{Least: 60, Most: 70, Labels: 1})
	f.Add(small.JPEG)
	f.Add(small.JPEG[:len(small.JPEG)/2])
	g := newGrey(40, 30)
	f.Add(pngOf(f, g.image()))
	f.Add(webpOf(g))
	f.Add([]byte("....ftypheic....\xff\xd8\xff\xe0"))
	f.Fuzz(func(t *testing.T, data []byte) {
		Find(context.Background(), data, Options{MaxPixels: 1 << 17})
	})
}

// FuzzGrey looks for codes in pictures of any bytes: squares, stripes, noise.
func FuzzGrey(f *testing.F) {
	f.Add([]byte{0, 255}, uint8(50))
	f.Add([]byte("\x00\x00\xff\x00\xff\xff\xff"), uint8(7))
	f.Fuzz(func(t *testing.T, data []byte, width uint8) {
		if len(data) == 0 {
			return
		}
		g := newGrey(int(width)%128+1, 60) // small, so that each is looked through in no time
		for i := range g.pix {
			g.pix[i] = data[i%len(data)]
		}
		h := hunt{ctx: context.Background()}
		h.hunt(g)
	})
}

func BenchmarkFind12MP(b *testing.B) {
	p := photo.New(sample(b), 1, photo.Options{Least: 200, Most: 210, Labels: 1, Least2D: image.Pt(4000, 3000)})
	b.ReportAllocs()
	for b.Loop() {
		find(b, p.JPEG)
	}
}

func BenchmarkFindNothing12MP(b *testing.B) {
	p := photo.New(nil, 2, photo.Options{Labels: -1, Least2D: image.Pt(4000, 3000)})
	b.ReportAllocs()
	for b.Loop() {
		find(b, p.JPEG)
	}
}
