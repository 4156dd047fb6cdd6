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

// A load is the area that a piece takes of a shelf.
type load struct {
	share int64 // by the rule of thumb; more than there is where no cloth holds it
	own   int64 // its own
}

// load is what one piece of a size takes.
func (s *shelf) load(size length.Size, fixed bool) load {
	if s.endless {
		return load{}
	}
	size, _ = asCut(size, usable(s.fabric), trade.Sum{})
	var n int64
	for _, c := range s.cloths {
		fit := int64(c.W/size.W) * int64(c.H/size.H)
		if !fixed && !s.fabric.OneWay {
			fit = max(fit, int64(c.W/size.H)*int64(c.H/size.W))
		}
		n = plus(n, fit)
	}
	if n == 0 {
		return load{plus(s.area, 1), squares(size)}
	}
	return load{ceilDiv(s.area, n), squares(size)}
}

func ceilDiv(a, b int64) int64 {
	q := a / b
	if a%b > 0 {
		q++
	}
	return q
}

// holds says whether any cloth is large enough for one.
func (s *shelf) holds(l load) bool { return s.endless || l.share <= s.area }

// byRule says whether there's room for one more by the rule of thumb.
func (s *shelf) byRule(l load) bool {
	return s.endless || plus(s.ruled, l.share) <= s.area
}

// byArea says whether there's room for one more by the area alone, on cloth that
// is large enough for it.
func (s *shelf) byArea(l load) bool {
	return s.endless || s.holds(l) && plus(s.taken, l.own) <= s.area
}

// anyRoom says yes: what has no room anywhere is told once it is laid out.
func (s *shelf) anyRoom(load) bool { return true }

// take notes that n pieces are cut from the fabric.
func (s *shelf) take(l load, n int64) {
	s.ruled = plus(s.ruled, product(l.share, n))
	s.taken = plus(s.taken, product(l.own, n))
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
