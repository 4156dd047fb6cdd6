package photo

import (
	"bytes"
	"image"
	"image/jpeg"
	"testing"
)

// The same seed makes the same photo, another seed another one, and a photo is as
// large as was asked for with its labels on it.
func TestNew(t *testing.T) {
	labels, err := Sample()
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Least: 60, Most: 80, Labels: 3, Least2D: image.Pt(400, 500)}
	a, b, c := New(labels, 1, o), New(labels, 1, o), New(labels, 2, o)
	if !bytes.Equal(a.JPEG, b.JPEG) || bytes.Equal(a.JPEG, c.JPEG) {
		t.Error("photos do not follow their seeds")
	}
	img, err := jpeg.DecodeConfig(bytes.NewReader(a.JPEG))
	if err != nil || img.Width != a.Size.X || img.Height != a.Size.Y || img.Width < 400 || img.Height < 500 || len(a.Seen) != 3 {
		t.Errorf("%d labels on %d x %d pixels, said %v (%v)", len(a.Seen), img.Width, img.Height, a.Size, err)
	}
	for _, s := range a.Seen {
		if side := s.Module * float64(s.Modules); side < 59.9 || side > 80.1 {
			t.Errorf("a code of %.1f pixels; expected 60 to 80", side)
		}
		for _, p := range s.Corners {
			if !image.Pt(int(p[0]), int(p[1])).In(image.Rect(0, 0, a.Size.X, a.Size.Y)) {
				t.Errorf("a corner at %v of %v", p, a.Size)
			}
		}
	}
}

// Every stock that holds a code is among the labels, with what its code says.
func TestSample(t *testing.T) {
	labels, err := Sample()
	if err != nil {
		t.Fatal(err)
	}
	stocks := map[string]bool{}
	for _, l := range labels {
		stocks[l.Stock] = true
		if l.Text == "" || l.Code.Size != l.Modules || len(l.Code.Dark) != l.Modules*l.Modules {
			t.Errorf("%s, bag %d: %q in %d modules", l.Stock, l.Bag.Number, l.Text, l.Modules)
		}
	}
	if len(stocks) < 15 {
		t.Errorf("labels of %d stocks; expected all but the smallest", len(stocks))
	}
}
