package sheets

import (
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// commonScale is the scale at which every cloth as wide as bolts usually are
// fits the page, so that diagrams can be compared.
func (b *binder) commonScale() int {
	scale := largest
	for i := range b.q.Fabrics {
		for j := range b.q.Fabrics[i].Cloths {
			if c := &b.q.Fabrics[i].Cloths[j]; c.W <= usualBolt && !c.Unused() {
				scale = max(scale, b.widthScale(c))
			}
		}
	}
	return scale
}

// largest is the largest scale a picture has: at 1:6 the steps of a fat quarter
// still stand beside it.
const largest = 6

// usualBolt is the widest that quilting cotton usually is; wider cloths get a
// scale of their own.
const usualBolt = 46 * length.Inch

func (b *binder) widthScale(c *cutting.Cloth) int {
	return scaleFor(c.W, b.book.Body().W)
}

// scaleOf is the scale of one cloth's diagram: the common one, unless the cloth
// is wider, or has a strip or lengthwise cuts that would not fit on a page.
func (b *binder) scaleOf(c *cutting.Cloth) int {
	tallest := c.Square
	if c.Root.Dir == cutting.Along {
		tallest += c.Root.H
	} else {
		for _, s := range c.Root.Parts {
			if !s.Leftover() {
				tallest = max(tallest, s.H+c.Square)
			}
		}
	}
	room := b.book.Body().H * 3 / 5
	scale := max(b.scale, b.widthScale(c), scaleFor(tallest, room))
	scale = b.smaller(scale, c.Square+c.Root.H)
	for range b.fitting.shrunk {
		scale = shrunkScale(scale)
	}
	return scale
}

// shrunkScale is the next smaller scale, also below the usual ones, but none at
// which a usual cloth is but a strip on the paper.
func shrunkScale(scale int) int {
	if n := nextScale(scale); n > 0 {
		return n
	}
	return max(scale, page.Scales[len(page.Scales)-1]*3/2)
}

// mostPages is over how many pages a picture may go before it is drawn smaller,
// as long as its sizes can still be read.
const (
	mostPages = 2
	smallest  = 12
)

// smaller is a smaller scale than the one given where the cloth is so long that
// its picture would go over too many pages.
func (b *binder) smaller(scale int, long length.Length) int {
	sheet := b.book.Body().H * 4 / 5
	for _, n := range page.Scales {
		if n > scale && n <= smallest && long/length.Length(scale) > mostPages*sheet {
			scale = n
		}
	}
	return scale
}

// nextScale is the usual scale below one, or 0 behind the last.
func nextScale(scale int) int {
	for _, n := range page.Scales {
		if n > scale {
			return n
		}
	}
	return 0
}

// scaleFor is the largest usual scale at which a length of cloth fits a room on
// paper; beyond those, the next whole ten.
func scaleFor(cloth, room length.Length) int {
	if n := page.PickScale(cloth, room); n > 0 {
		return n
	}
	n := page.Scales[len(page.Scales)-1]
	for cloth/length.Length(n) >= room {
		n += 10
	}
	return n
}
