package cutting

import (
	"fmt"
	"slices"
	"testing"

	"cutbinder/layout/length"
)

// stripOf is a cloth 40 in wide and a strip of pieces side by side, each a width
// in inches and the index of its size; what is left is left over.
func stripOf(pieces ...[2]int) (*Cloth, Section) {
	c := &Cloth{}
	strip := Section{W: 40 * length.Inch, H: 4 * length.Inch, Dir: Along, Placed: -1}
	x := length.Length(0)
	for i, p := range pieces {
		w := length.Length(p[0]) * length.Inch
		c.Placed = append(c.Placed, Placed{Piece: p[1], X: x, W: w, H: strip.H})
		strip.Parts = append(strip.Parts, Section{X: x, W: w, H: strip.H, Placed: i})
		x += w
	}
	if x < strip.W {
		strip.Parts = append(strip.Parts, Section{X: x, W: strip.W - x, H: strip.H, Placed: -1})
	}
	return c, strip
}

func TestFolding(t *testing.T) {
	times := func(n int, p [2]int) [][2]int { return slices.Repeat([][2]int{p}, n) }
	a, b, d := [2]int{4, 0}, [2]int{3, 1}, [2]int{7, 2}
	for _, test := range []struct {
		name   string
		pieces [][2]int
		folded bool
		want   string // parts from one selvage to the other, by size
	}{
		{"alike and even", times(8, a), true, "0000.0000"},
		{"alike and odd", times(9, a), true, "00000.0000"},
		{"exactly half the width", times(10, a), true, "0000000000"},
		{"two sizes", slices.Concat(times(4, a), times(2, b)), true, "001.100"},
		{"one left to cut open", slices.Concat(times(4, a), times(3, b)), true, "0011.100"},
		{"a single one of its size", slices.Concat(times(4, a), times(1, b)), true, "001.00"},
		{"two to cut open", slices.Concat(times(1, d), times(9, b)), true, "111121.1111"},
		{"too few in twos", slices.Concat(times(2, a), times(1, b)), false, "001."},
		{"nothing left over", slices.Concat(times(4, d), times(4, b)), true, "22111122"},
		{"nothing in twos", [][2]int{a, b, d}, false, "012."},
		{"one over the fold", [][2]int{{22, 0}}, true, ".0."},
		{"one that ends before it", [][2]int{{12, 0}}, false, "0."},
	} {
		c, strip := stripOf(test.pieces...)
		f, ok := c.foldingOf(strip)
		if ok {
			strip.Parts = f.arrange(strip.Parts)
			c.closeUp(&strip)
		}
		got, x := "", length.Length(0)
		for _, part := range strip.Parts {
			if part.X != x {
				t.Errorf("%s: a part lies at %v, want %v", test.name, part.X, x)
			}
			x += part.W
			if part.Leftover() {
				got += "."
				continue
			}
			if at := c.Placed[part.Placed].X; at != part.X {
				t.Errorf("%s: a piece lies at %v, its part at %v", test.name, at, part.X)
			}
			got += fmt.Sprint(c.Placed[part.Placed].Piece)
		}
		if again, _ := c.foldingOf(strip); ok && !slices.IsSortedFunc(again.odd, func(a, b Section) int { return int(a.X - b.X) }) {
			t.Errorf("%s: what is cut open isn't named as it lies: %v", test.name, again.odd)
		}
		if ok != test.folded || got != test.want {
			t.Errorf("%s: folded %v, %q; want %v, %q", test.name, ok, got, test.folded, test.want)
		}
	}
}
