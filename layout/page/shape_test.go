package page

import (
	"math"
	"math/rand/v2"
	"testing"

	"cutbinder/layout/length"
)

// TestHatchLines lays hatches over random boxes: every line lies in its box,
// slants by one in one, and the lines are evenly apart.
func TestHatchLines(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 9))
	for range 500 {
		b := Box{length.Length(rnd.IntN(50000)), length.Length(rnd.IntN(50000)), length.Length(rnd.IntN(20000)), length.Length(rnd.IntN(20000))}
		for _, h := range []Hatch{NoHatch, Leftover, Waste, Trimmed} {
			ls := h.Lines(b)
			if enough := b.W > in && b.H > in; enough && (len(ls) == 0) != (h == NoHatch) {
				t.Fatalf("%v on %v: %d lines", h, b, len(ls))
			}
			for _, l := range ls {
				if !b.Contains(Box{l.A.X, min(l.A.Y, l.B.Y), l.B.X - l.A.X, max(l.A.Y, l.B.Y) - min(l.A.Y, l.B.Y)}) {
					t.Fatalf("%v on %v: %v leaves it", h, b, l)
				}
				if dx, dy := l.B.X-l.A.X, l.B.Y-l.A.Y; dx <= 0 || dx != dy && dx != -dy {
					t.Fatalf("%v: %v has another slope", h, l)
				}
			}
		}
	}
}

// TestHatchesDiffer counts the lines on a square inch: the hatches are told
// apart by density and direction.
func TestHatchesDiffer(t *testing.T) {
	tests := []struct {
		h               Hatch
		rising, falling int
	}{{Leftover, 18, 0}, {Waste, 26, 27}, {Trimmed, 0, 37}}
	for _, tt := range tests {
		up, down := 0, 0
		for _, l := range tt.h.Lines(Box{0, 0, in, in}) {
			if l.B.Y < l.A.Y {
				up++
			} else {
				down++
			}
		}
		if up != tt.rising || down != tt.falling {
			t.Errorf("%v: %d rising, %d falling, want %d, %d", tt.h, up, down, tt.rising, tt.falling)
		}
	}
}

// TestCodeRuns covers each dark module of random codes once, and no light one,
// and needs fewer rectangles than there are dark modules.
func TestCodeRuns(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 11))
	for range 200 {
		c := Code{At: Point{500, 700}, Module: 128, Quiet: 4, Size: 1 + rnd.IntN(33)}
		c.Dark = make([]bool, c.Size*c.Size)
		dark := 0
		for i := range c.Dark {
			if c.Dark[i] = rnd.IntN(2) == 0; c.Dark[i] {
				dark++
			}
		}
		times := make([]int, len(c.Dark))
		for _, b := range c.Runs() {
			x, y := (b.X-c.At.X)/c.Module-4, (b.Y-c.At.Y)/c.Module-4
			for dy := range b.H / c.Module {
				for dx := range b.W / c.Module {
					times[int(y+dy)*c.Size+int(x+dx)]++
				}
			}
		}
		for i := range times {
			if (times[i] == 1) != c.Dark[i] || times[i] > 1 {
				t.Fatalf("module %d of %d: dark %v, covered %d times", i, c.Size, c.Dark[i], times[i])
			}
		}
		if n := len(c.Runs()); n > dark {
			t.Fatalf("%d rectangles for %d dark modules", n, dark)
		}
	}
}

// TestCodeBox makes the modules the largest whole length that fits.
func TestCodeBox(t *testing.T) {
	p := NewPen(testStyle(), Box{0, 0, Letter.W, Letter.H})
	b, module := p.Code(Box{0, 0, 5000, 4000}, 21, make([]bool, 21*21), 4, "code")
	if module != 137 || b.W != 137*29 || b.H != b.W {
		t.Errorf("module %d, box %v", module, b)
	}
}

// TestRoundBox keeps corners within the box and on their circles.
func TestRoundBox(t *testing.T) {
	for _, r := range []length.Length{0, 300, 1279, 5000, 99999} {
		b := Box{1000, 2000, 10000, 10000}
		points := RoundBox(b, r)
		if got := (Polygon{Points: points}).Bounds(); got != b {
			t.Errorf("radius %d: bounds %v, want %v", r, got, b)
		}
		if r < 5000 {
			continue
		}
		for _, p := range points {
			dx, dy := float64(p.X-b.MidX()), float64(p.Y-b.MidY())
			if d := math.Hypot(dx, dy) - 5000; d < -2 || d > 2 {
				t.Errorf("radius %d: %v is %f off the circle", r, p, d)
			}
		}
	}
}

// TestRuler draws print checks of the exact length.
func TestRuler(t *testing.T) {
	for _, l := range []length.Length{in, 4 * in, 10 * length.CM} {
		p := NewPen(testStyle(), Box{0, 0, Letter.W, Letter.H})
		p.Ruler(Box{in, in, 6 * in, in / 4}, l, "must be so", "check")
		var ends []length.Length
		for _, it := range p.Items() {
			if line, ok := it.(Line); ok && line.A.X == line.B.X {
				ends = append(ends, line.A.X)
			}
		}
		if len(ends) != 2 || ends[1]-ends[0] != l {
			t.Errorf("%d: end marks at %v", l, ends)
		}
	}
}
