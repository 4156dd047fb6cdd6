package sheets

import (
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// A fitting is how tightly a fabric's sheet is set.
type fitting struct {
	close   bool // rows of the tally stand closer
	tight   bool // steps stand as near to a picture as leaves room for strips' heights
	columns bool // the steps stand in two columns
	last    bool // the steps stand beside the last of several narrow pictures
	abreast bool // parts of a picture that isn't whole stand two side by side
	apart   bool // the steps start a page, so that all of them are on it
	below   bool // steps stand below their picture also where they have room beside it
	shrunk  int  // how many steps of scale smaller than usual every picture of the sheet is drawn
}

// fabricSection is the sheet of one fabric. It is set closer, drawn a step or two
// smaller than the others or has its steps in columns where that saves the maker a
// page: what she cuts from, how, and what she ticks are then side by side. Where
// more pages remain, her steps are not spread over two if one has room for all.
func (b *binder) fabricSection(i int) page.Section {
	b = b.withTallies()
	best, sheet := b, b.fabricSheet(i)
	pages, _ := b.book.Extent(sheet)
	for _, way := range b.tighter(&b.q.Fabrics[i]) {
		if pages == 1 {
			break
		}
		s := way.fabricSheet(i)
		if n, _ := b.book.Extent(s); n < pages {
			best, sheet, pages = way, s, n
		}
	}
	if pages > 1 {
		if way := best.pictured(i, pages); way != best {
			best, sheet = way, way.fabricSheet(i)
			pages, _ = b.book.Extent(sheet)
		}
	}
	if best.fitting.tight {
		roomy := *best
		roomy.fitting.tight = false
		s := roomy.fabricSheet(i)
		if n, _ := b.book.Extent(s); n == pages && best.headAlone(i) == roomy.headAlone(i) {
			best, sheet = &roomy, s
		}
	}
	if pages == 1 {
		return sheet
	}
	apart := *best
	apart.fitting.apart = true
	s := apart.fabricSheet(i)
	if n, _ := b.book.Extent(s); n == pages && best.stepsSplit(i) {
		return s
	}
	return sheet
}

// tighter lists the ways to set a fabric's sheet on fewer pages, from the least
// change to the greatest.
func (b *binder) tighter(f *cutting.Fabric) []*binder {
	narrow := slices.ContainsFunc(f.Cloths, func(c cutting.Cloth) bool { return b.narrow(c.W / length.Length(b.scaleOf(&c))) })
	own := slices.ContainsFunc(f.Cloths, func(c cutting.Cloth) bool {
		scale := b.scaleOf(&c)
		return !c.Unused() && scale > b.scale && nextScale(scale) > 0
	})
	var ways []*binder
	for _, w := range []struct {
		smaller       int // steps of scale
		columns, last bool
		shrunk        int // steps of a scale of the fabric's own
		abreast       bool
	}{{}, {last: true}, {abreast: true}, {smaller: 1}, {columns: true}, {abreast: true, columns: true}, {shrunk: 1}, {shrunk: 1, abreast: true},
		{smaller: 1, columns: true}, {smaller: 1, abreast: true}, {smaller: 2}, {smaller: 2, columns: true}} {
		if (w.last || w.abreast && w.smaller+w.shrunk == 0) && !narrow || w.shrunk > 0 && !own {
			continue
		}
		way := *b
		way.fitting = fitting{close: true, tight: true, columns: w.columns, last: w.last, shrunk: w.shrunk, abreast: w.abreast}
		for range w.smaller {
			way.scale = nextScale(way.scale)
		}
		if way.scale > 0 && way.scale <= max(smallest, b.scale) && !(w.columns && b.o.Large) {
			ways = append(ways, &way)
		}
	}
	return ways
}

// mostShrunk is how many steps of scale smaller a sheet's pictures are drawn at the
// most, so that the first stands on the sheet's first page.
const mostShrunk = 3

// pictured is the binder itself, or set so that a sheet's first picture stands below
// the fabric's head where it would start a page of its own, and leave most of the
// first one empty: in as many pages at the most, and no smaller than need be.
func (b *binder) pictured(i, pages int) *binder {
	if !b.headAlone(i) {
		return b
	}
	for shrunk := range mostShrunk + 1 {
		for _, below := range []bool{false, true} {
			way := *b
			way.fitting = fitting{close: true, tight: true, below: below, shrunk: shrunk, last: b.fitting.last, columns: b.fitting.columns, abreast: b.fitting.abreast}
			if n, _ := b.book.Extent(way.fabricSheet(i)); n <= pages && !way.headAlone(i) {
				return &way
			}
		}
	}
	return b
}

// headAlone says whether the first picture of a sheet starts a page after the one
// that the fabric's head stands on.
func (b *binder) headAlone(i int) bool {
	f := &b.q.Fabrics[i]
	c := slices.IndexFunc(f.Cloths, func(c cutting.Cloth) bool { return !c.Unused() })
	if c < 0 {
		return false
	}
	head := append(b.fabricHead(f), b.missing(f)...)
	picture, _ := b.cloth(f, c)
	before, _ := b.book.Extent(page.Section{Blocks: head})
	with, _ := b.book.Extent(page.Section{Blocks: append(head, picture[:2]...)}) // its heading, and the first of it
	return with > before
}

// stepsSplit says whether the steps of a sheet with one cloth end on another page
// than its picture.
func (b *binder) stepsSplit(i int) bool {
	f := &b.q.Fabrics[i]
	top, steps := b.fabricTop(f)
	picture, _ := b.book.Extent(page.Section{Blocks: top})
	all, _ := b.book.Extent(page.Section{Blocks: append(top, steps...)})
	return all > picture
}
