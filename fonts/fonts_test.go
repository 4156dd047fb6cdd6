package fonts

import (
	"bytes"
	"encoding/binary"
	"strings"
	"sync"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
)

// TestHas says what the embedded faces can draw and what has to be composed or
// drawn otherwise.
func TestHas(t *testing.T) {
	set := Default()
	for _, r := range "azAZ09½¼¾⅛⅜⅝⅞×″′⁄·–—…’“”°±≤≥→←éüßñøŁœЖα\u00a0" {
		for _, f := range set.All()[:2] {
			if !f.Has(r) {
				t.Errorf("%s lacks %q", f.Name(), r)
			}
		}
	}
	for _, r := range "✓☐⅓⅔\u2009縫\U0001F9F5\n" {
		if set.Has(r) {
			t.Errorf("the set has %q, which is drawn another way", r)
		}
	}
}

// TestAdvance holds widths read off the faces' hmtx tables, 2048 units to the
// em. Figures are all of one width, or columns of them would not line up.
func TestAdvance(t *testing.T) {
	tests := []struct {
		w    Weight
		r    rune
		want int
	}{
		{Regular, '0', 1139}, {Bold, '0', 1139}, {Regular, ' ', 569}, {Regular, 'M', 1706},
		{Regular, '½', 1708}, {Regular, '⁄', 342}, {Regular, '×', 1196}, {Regular, '縫', 0},
	}
	for _, tt := range tests {
		if got := Default().Face(tt.w).Advance(tt.r); got != tt.want {
			t.Errorf("%v %q: %d, want %d", tt.w, tt.r, got, tt.want)
		}
	}
	for _, f := range Default().All() {
		for _, r := range "123456789" {
			if f.Advance(r) != f.Advance('0') {
				t.Errorf("%s: %q is not as wide as 0", f.Name(), r)
			}
		}
	}
}

// TestExtent asks how far characters reach; the figures are the outlines'
// bounds in the regular face.
func TestExtent(t *testing.T) {
	tests := []struct {
		r           rune
		bottom, top int
	}{{'H', 0, 1480}, {'0', -37, 1517}, {'g', -420, 1110}, {' ', 0, 0}, {'縫', 0, 0}, {'½', -37, 1517}}
	f := Default().Face(Regular)
	for _, tt := range tests {
		for range 2 { // the second answer comes from what was kept
			if b, top := f.Extent(tt.r); b != tt.bottom || top != tt.top {
				t.Errorf("%q: %d, %d, want %d, %d", tt.r, b, top, tt.bottom, tt.top)
			}
		}
	}
}

func TestMetrics(t *testing.T) {
	want := Metrics{UnitsPerEm: 2048, Ascent: 1935, Descent: 432, CapHeight: 1480, XHeight: 1086}
	if got := Default().Face(Regular).Metrics(); got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// TestPick tries the faces in their order: the wanted one, the regular one, the
// fallback.
func TestPick(t *testing.T) {
	fallback := &Face{name: "fallback", ttf: goregular.TTF}
	if err := fallback.load(); err != nil {
		t.Fatal(err)
	}
	fallback.signs['⅓'-signsStart] = glyph{1000, true} // as if it had ⅓
	set := Default().WithFallback(fallback)
	tests := []struct {
		set  Set
		w    Weight
		r    rune
		face string
		ok   bool
	}{
		{Default(), Bold, 'a', "bold", true},
		{Default(), Mono, 'a', "mono", true},
		{set, Bold, '⅓', "fallback", true},
		{set, Bold, 'b', "bold", true},
		{Default(), Bold, '縫', "bold", false},
		{set, Regular, '縫', "regular", false},
	}
	for _, tt := range tests {
		if f, ok := tt.set.Pick(tt.w, tt.r); f.Name() != tt.face || ok != tt.ok {
			t.Errorf("%q: %s %v, want %s %v", tt.r, f.Name(), ok, tt.face, tt.ok)
		}
	}
}

// with returns a copy of a face with its table directory's tag replaced.
func with(ttf []byte, tag, other string) []byte {
	return bytes.Replace(ttf, []byte(tag), []byte(other), 1)
}

func TestParse(t *testing.T) {
	good := goregular.TTF
	far := append([]byte(nil), good...)
	binary.BigEndian.PutUint32(far[12+8:], 1<<31)
	tests := []struct {
		name string
		ttf  []byte
		want string // part of the error, "" for none
	}{
		{"good", good, ""},
		{"empty", nil, "expected a TrueType face"},
		{"text", []byte("this is no typeface"), `starts with "this"`},
		{"postscript", []byte("OTTO\x00\x01xxxxxxxx"), "PostScript outlines"},
		{"collection", []byte("ttcf\x00\x01xxxxxxxx"), "collection of faces"},
		{"web", []byte("wOF2\x00\x01xxxxxxxx"), "packed web font"},
		{"cut short", good[:len(good)/2], "cut short"},
		{"directory cut short", good[:40], "cut short"},
		{"no outlines", with(good, "glyf", "flyg"), `without table "glyf"`},
		{"far table", far, "cut short"},
	}
	for _, tt := range tests {
		_, err := Parse("mine", tt.ttf)
		switch {
		case tt.want == "" && err != nil:
			t.Errorf("%s: %v", tt.name, err)
		case tt.want != "" && (err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "mine: ")):
			t.Errorf("%s: %v, want mine: … %s", tt.name, err, tt.want)
		}
	}
}

// FuzzParse feeds damaged faces: reading one must end in an error or a face
// that answers, never in a panic.
func FuzzParse(f *testing.F) {
	f.Add(12, byte(0xff))
	f.Add(300, byte(0))
	f.Fuzz(func(t *testing.T, at int, b byte) {
		ttf := append([]byte(nil), goregular.TTF...)
		ttf[uint(at)%uint(len(ttf))] = b
		face, err := Parse("damaged", ttf)
		if err != nil {
			return
		}
		for _, r := range "aé½⁄縫" {
			face.Has(r)
			face.Advance(r)
			face.Extent(r)
		}
	})
}

// BenchmarkLoad is what the first question to a face costs.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		f := &Face{name: "regular", ttf: goregular.TTF}
		if err := f.load(); err != nil {
			b.Fatal(err)
		}
	}
}

// A face may be asked by several goroutines before it was ever read.
func TestFaceAtOnce(t *testing.T) {
	f := &Face{name: "fresh", ttf: goregular.TTF}
	var wait sync.WaitGroup
	for range 4 {
		wait.Go(func() {
			if !f.Has('a') || f.Has(1) || f.Advance('½') == 0 {
				t.Error("a fresh face lacks a, has U+0001 or gives ½ no width")
			}
		})
	}
	wait.Wait()
}
