package cutting

import (
	"math"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A shelf is what is at hand of a fabric and how much of it is spoken for.
// Areas are in squares of 1/64 inch.
type shelf struct {
	fabric  *plan.Fabric
	cloths  []length.Size // squared
	endless bool          // it is bought
	area    int64
	ruled   int64 // spoken for by the rule of thumb: a piece takes its share of the cloth as if all were cut to its size
	taken   int64 // spoken for by the pieces' own area
}

func newShelf(f *plan.Fabric, squaring length.Length) *shelf {
	s := &shelf{fabric: f, endless: len(f.Have) == 0}
	for _, c := range f.Have {
		size := length.Size{W: c.W, H: max(c.H-squaring, 0)}
		s.cloths = append(s.cloths, size)
		s.area = plus(s.area, squares(size))
	}
	return s
}

// squares is a size's area in squares of 1/64 inch, rounded down.
func squares(size length.Size) int64 {
	return int64(size.W/length.Sixtyfourth) * int64(size.H/length.Sixtyfourth)
}

// plus is a+b, or the largest number there is.
func plus(a, b int64) int64 {
	if a > math.MaxInt64-b {
		return math.MaxInt64
	}
	return a + b
}

// share is the area that a piece takes by the rule of thumb, or more than there
// is where no cloth holds it.
func (s *shelf) share(d *demand) int64 {
	size, _ := asCut(d.size, s.fabric.Width, trade.Sum{})
	var n int64
	for _, c := range s.cloths {
		fit := int64(c.W/size.W) * int64(c.H/size.H)
		if !d.fixed && !s.fabric.OneWay {
			fit = max(fit, int64(c.W/size.H)*int64(c.H/size.W))
		}
		n = plus(n, fit)
	}
	if n == 0 {
		return plus(s.area, 1)
	}
	return (s.area + n - 1) / n
}

// byRule says whether there's room for one more by the rule of thumb.
func (s *shelf) byRule(d *demand) bool {
	return s.endless || plus(s.ruled, s.share(d)) <= s.area
}

// byArea says whether there's room for one more by the area alone, on cloth that
// is large enough for it.
func (s *shelf) byArea(d *demand) bool {
	size, _ := asCut(d.size, s.fabric.Width, trade.Sum{})
	return s.endless || s.share(d) <= s.area && plus(s.taken, squares(size)) <= s.area
}

// take notes that n pieces are cut from the fabric.
func (s *shelf) take(d *demand, n int64) {
	if s.endless {
		return
	}
	size, _ := asCut(d.size, s.fabric.Width, trade.Sum{})
	s.ruled = plus(s.ruled, product(s.share(d), n))
	s.taken = plus(s.taken, product(squares(size), n))
}

// product is a·n, or the largest number there is.
func product(a, n int64) int64 {
	if n > 0 && a > math.MaxInt64/n {
		return math.MaxInt64
	}
	return a * n
}

// asCut is a size with the fabric's width for WOF, and its whole sum: that of a
// strip across the width is its height's.
func asCut(size length.Size, width length.Length, sum trade.Sum) (length.Size, trade.Sum) {
	if size.W != length.WOF {
		return size, sum
	}
	size.W = width
	return size, trade.Sum{
		Terms: []trade.Term{{What: trade.FullWidth, Times: 1, Each: width}}, Along: &sum}
}
