package page

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
)

const in = length.Inch

func TestPickScale(t *testing.T) {
	tests := []struct {
		cloth, room length.Length
		want        int
	}{
		{42 * in, 7 * in, 6}, {42*in + 8, 7 * in, 8}, {16 * in, 7 * in, 4}, {44 * in, 7 * in, 8},
		{108 * in, 7 * in, 16}, {150 * in, 7 * in, 0}, {0, 0, 4}, {1100 * length.MM, 171 * length.MM, 8},
	}
	for _, tt := range tests {
		if got := PickScale(tt.cloth, tt.room); got != tt.want {
			t.Errorf("%d on %d: 1:%d, want 1:%d", tt.cloth, tt.room, got, tt.want)
		}
	}
}

// testCanvas shows 42 x 10 in of cloth from y = 4 in on, at 1:6, 1 in from the
// paper's corner: it fills 7 x 1 2/3 in.
func testCanvas(mirror bool) *Canvas {
	p := NewPen(testStyle(), Box{0, 0, Letter.W, Letter.H})
	return &Canvas{Pen: p, At: Point{in, in}, Scale: 6, Window: Box{0, 4 * in, 42 * in, 10 * in}, Mirror: mirror}
}

func TestCanvasBox(t *testing.T) {
	tests := []struct {
		mirror bool
		cloth  Box
		want   Box
	}{
		{false, Box{0, 4 * in, 6 * in, 3 * in}, Box{in, in, in, in / 2}},
		{false, Box{36 * in, 7 * in, 6 * in, 3 * in}, Box{7 * in, in + in/2, in, in / 2}},
		{true, Box{0, 4 * in, 6 * in, 3 * in}, Box{7 * in, in, in, in / 2}},
		{true, Box{36 * in, 7 * in, 6 * in, 3 * in}, Box{in, in + in/2, in, in / 2}},
	}
	for _, tt := range tests {
		if got := testCanvas(tt.mirror).Box(tt.cloth); got != tt.want {
			t.Errorf("%v: %v, want %v", tt.cloth, got, tt.want)
		}
	}
}

// TestCanvasExact draws random pieces at every scale: each is its size divided
// by the scale, but for the rounding of its two edges (a unit, 1/320 mm, at
// most), and pieces that touch on cloth touch on paper.
func TestCanvasExact(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 7))
	for _, n := range Scales {
		for range 500 {
			c := testCanvas(rnd.IntN(2) == 0)
			c.Scale = n
			x, w, w2 := sixtyfourths(rnd), sixtyfourths(rnd), sixtyfourths(rnd)
			a, b := c.Box(Box{x, 0, w, in}), c.Box(Box{x + w, 0, w2, in})
			if d := a.W*length.Length(n) - w; d < -length.Length(n) || d > length.Length(n) {
				t.Fatalf("1:%d: %d is drawn %d wide", n, w, a.W)
			}
			if a.Right() != b.X && b.Right() != a.X {
				t.Fatalf("1:%d: %v and %v do not touch", n, a, b)
			}
		}
	}
}

func sixtyfourths(rnd *rand.Rand) length.Length {
	return length.Length(rnd.IntN(900)) * length.Sixtyfourth
}

// TestCanvasClip cuts pieces at the window's edge: the cut edge has no line.
func TestCanvasClip(t *testing.T) {
	tests := []struct {
		name  string
		cloth Box
		want  []string
	}{
		{"inside", Box{0, 5 * in, 6 * in, 3 * in}, []string{"rect piece"}},
		{"over the top", Box{6 * in, 2 * in, 6 * in, 5 * in}, []string{"rect piece", "line piece edge", "line piece edge", "line piece edge"}},
		{"over both", Box{6 * in, 0, 6 * in, 50 * in}, []string{"rect piece", "line piece edge", "line piece edge"}},
		{"outside", Box{0, 0, 6 * in, 4 * in}, nil},
	}
	for _, tt := range tests {
		c := testCanvas(false)
		c.Rect(tt.cloth, Mist, c.Pen.Style.Hair, "piece")
		var got []string
		for _, it := range c.Pen.Items() {
			kind := "line"
			if r, ok := it.(Rect); ok {
				kind = "rect"
				if !c.Paper().Contains(r.Box) {
					t.Errorf("%s: %v leaves the window %v", tt.name, r, c.Paper())
				}
			}
			got = append(got, kind+" "+it.What())
		}
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%s: (-want +got)\n%s", tt.name, d)
		}
	}
}

// TestCanvasWords sets the fullest wording that fits and keeps off the fold.
func TestCanvasWords(t *testing.T) {
	tests := []struct {
		name  string
		cloth Box
		want  string // with < or > where it stands beside the fold
	}{
		{"all of it", Box{0, 4 * in, 6 * in, 3 * in}, "3½ × 3½"},
		{"the short one", Box{0, 4 * in, 5 * in / 2, 3 * in}, "3½"},
		{"nothing", Box{0, 4 * in, in, 3 * in}, ""},
		{"too low", Box{0, 4 * in, 6 * in, in / 2}, ""},
		{"left of the fold", Box{15 * in, 4 * in, 7 * in, 3 * in}, "3½ × 3½<"},
		{"right of the fold", Box{20 * in, 4 * in, 7 * in, 3 * in}, "3½ × 3½>"},
		{"no room on either side", Box{20 * in, 4 * in, 2 * in, 3 * in}, ""},
		{"beside it anyway", Box{10 * in, 4 * in, 12 * in, 3 * in}, "3½ × 3½<"},
	}
	for _, mirror := range []bool{false, true} {
		for _, tt := range tests {
			c := testCanvas(mirror)
			c.Avoid = []length.Length{21 * in}
			ok := c.Words(tt.cloth, c.Pen.Style.Measure, "size", "3½ × 3½", "3½")
			got := ""
			for _, it := range c.Pen.Items() {
				text := it.(Text)
				got = text.Words() + beside(c, tt.cloth, text)
			}
			want := tt.want
			if got != want || ok != (want != "") {
				t.Errorf("%s, mirror %v: %q %v, want %q", tt.name, mirror, got, ok, want)
			}
		}
	}
}

// TestCanvasLabel sets words on a white ground that leaves the strokes of the edges
// whole, however low the rectangle is.
func TestCanvasLabel(t *testing.T) {
	for _, h := range []length.Length{3 * in, in} { // drawn at 1:6
		c := testCanvas(false)
		cloth := Box{0, 4 * in, 24 * in, h}
		edges := c.Box(cloth).Inset(MinLine / 2)
		if !c.Label(cloth, c.Pen.Style.Measure, "size", "keep 24 × 1") {
			t.Fatalf("%v: no label", h)
		}
		for _, it := range c.Pen.Items() {
			if r, ok := it.(Rect); ok && !edges.Contains(r.Bounds()) {
				t.Errorf("%v: the ground %v covers the edges of %v", h, r.Bounds(), edges)
			}
		}
	}
}

// beside tells on which side of the fold words stand, as it lies on cloth.
func beside(c *Canvas, cloth Box, text Text) string {
	if cloth.X > 21*in || cloth.Right() < 21*in {
		return ""
	}
	left := text.Bounds().Right() <= c.X(21*in)
	if c.Mirror {
		left = !left
	}
	if left {
		return "<"
	}
	return ">"
}

// TestTicks labels every sixth inch, and leaves out what has no room.
func TestTicks(t *testing.T) {
	tests := []struct {
		side  Side
		scale int
		every int
		want  string
	}{
		{OnTop, 6, 6, "0 6 12 18 24 30 36 42"},
		{OnBottom, 6, 12, "0 12 24 36"},
		{OnLeft, 6, 2, "4 6 8 10 12 14"},
		{OnRight, 20, 1, "4 7 10 13"}, // 1 in is 1.27 mm on paper
	}
	for _, tt := range tests {
		c := testCanvas(false)
		c.Scale = tt.scale
		c.Ticks(tt.side, in, tt.every, "scale", func(at length.Length) string { return fmt.Sprint(int64(at / in)) })
		got, ticks := "", 0
		for _, it := range c.Pen.Items() {
			if text, ok := it.(Text); ok {
				got += " " + text.Words()
			} else {
				ticks++
			}
		}
		if got != " "+tt.want {
			t.Errorf("side %d: %q, want %q", tt.side, got, tt.want)
		}
		if want := map[bool]int{true: 43, false: 11}[tt.side == OnTop || tt.side == OnBottom]; ticks != want {
			t.Errorf("side %d: %d ticks, want %d", tt.side, ticks, want)
		}
	}
}

// TestMeasure writes a size where there is room for it.
func TestMeasure(t *testing.T) {
	tests := []struct {
		side     Side
		from, to length.Length
		want     bool
	}{
		{OnRight, 4 * in, 8 * in, true}, {OnRight, 4 * in, 4*in + in/2, false},
		{OnLeft, 4 * in, 8 * in, true}, {OnTop, 0, 6 * in, true}, {OnTop, 0, in, false}, {OnBottom, 0, 6 * in, true},
	}
	for _, tt := range tests {
		c := testCanvas(false)
		if got := c.Measure(tt.side, tt.from, tt.to, 100, "size", "3 15⁄16"); got != tt.want {
			t.Errorf("side %d from %d to %d: %v", tt.side, tt.from, tt.to, got)
		}
		for _, it := range c.Pen.Items() {
			if c.Paper().Overlaps(it.Bounds()) {
				t.Errorf("side %d: %v is on the cloth", tt.side, it)
			}
		}
	}
}
