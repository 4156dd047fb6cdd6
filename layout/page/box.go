package page

import (
	"fmt"

	"cutbinder/layout/length"
)

// A Point is a place on a page: X to the right, Y down from the top left.
type Point struct{ X, Y length.Length }

// A Box is a rectangle on a page: its top left corner and its size.
type Box struct{ X, Y, W, H length.Length }

// Right is the x of the right edge.
func (b Box) Right() length.Length { return b.X + b.W }

// Bottom is the y of the bottom edge.
func (b Box) Bottom() length.Length { return b.Y + b.H }

// MidX is the x halfway between left and right.
func (b Box) MidX() length.Length { return b.X + b.W/2 }

// MidY is the y halfway between top and bottom.
func (b Box) MidY() length.Length { return b.Y + b.H/2 }

// Inset is the box with d taken off on all four sides (added, if negative).
func (b Box) Inset(d length.Length) Box {
	return Box{b.X + d, b.Y + d, b.W - 2*d, b.H - 2*d}
}

// Shift is the box moved.
func (b Box) Shift(dx, dy length.Length) Box { return Box{b.X + dx, b.Y + dy, b.W, b.H} }

// Top cuts h off the top and returns it and what is below it.
func (b Box) Top(h length.Length) (top, rest Box) {
	return Box{b.X, b.Y, b.W, h}, Box{b.X, b.Y + h, b.W, b.H - h}
}

// Left cuts w off the left and returns it and what is right of it.
func (b Box) Left(w length.Length) (left, rest Box) {
	return Box{b.X, b.Y, w, b.H}, Box{b.X + w, b.Y, b.W - w, b.H}
}

// Center is a box of size w x h in the middle of b.
func (b Box) Center(w, h length.Length) Box {
	return Box{b.X + (b.W-w)/2, b.Y + (b.H-h)/2, w, h}
}

// Contains reports whether c lies in b, edges included.
func (b Box) Contains(c Box) bool {
	return c.X >= b.X && c.Y >= b.Y && c.Right() <= b.Right() && c.Bottom() <= b.Bottom()
}

// Overlaps reports whether the two share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.X < c.Right() && c.X < b.Right() && b.Y < c.Bottom() && c.Y < b.Bottom()
}

// Intersect is what the two share; its size is zero or less where they share
// nothing.
func (b Box) Intersect(c Box) Box {
	x, y := max(b.X, c.X), max(b.Y, c.Y)
	return Box{x, y, min(b.Right(), c.Right()) - x, min(b.Bottom(), c.Bottom()) - y}
}

// Union is the smallest box that holds both.
func (b Box) Union(c Box) Box {
	x, y := min(b.X, c.X), min(b.Y, c.Y)
	return Box{x, y, max(b.Right(), c.Right()) - x, max(b.Bottom(), c.Bottom()) - y}
}

// String is "x,y w x h" in millimetres with three decimals.
func (b Box) String() string {
	return fmt.Sprintf("%s,%s %sx%s", mm(b.X), mm(b.Y), mm(b.W), mm(b.H))
}

// String is "x,y" in millimetres with three decimals.
func (p Point) String() string { return mm(p.X) + "," + mm(p.Y) }

// mm writes a length in millimetres, rounded to three decimals (one unit is
// 0.003125 mm, so the text tells any two lengths apart) without trailing
// zeros.
func mm(l length.Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	thousandths := (int64(l)*1000 + int64(length.MM)/2) / int64(length.MM)
	whole, frac := thousandths/1000, thousandths%1000
	if frac == 0 {
		return fmt.Sprintf("%s%d", sign, whole)
	}
	s := fmt.Sprintf("%s%d.%03d", sign, whole, frac)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	return s
}
