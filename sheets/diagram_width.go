package sheets

import (
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// width is the room across the page that the drawing takes: where steps stand
// beside it, so much that they keep off the strips' numbers and heights, unless
// the sheet is set tight.
func (d *diagram) width() length.Length {
	st, w := d.b.style, d.paperWidth()
	switch {
	case d.abreast:
		return (d.b.book.Body().W - abreastGutter(st)) / 2
	case !d.besideSteps():
		return d.b.book.Body().W
	case d.b.fitting.tight:
		return max(w, d.legend)
	}
	return max(w, d.legend, w+d.flanks+st.Break-besideGutter(st))
}

// legendWidth is the room that the scale bar, the grain's arrow and their words take,
// and never so little that the key below them is a column of single words.
func (d *diagram) legendWidth() length.Length {
	nowhere := d.canvas(page.NewPen(d.b.style, page.Box{}), page.Point{}, d.whole())
	return max(leastLegend, d.scaleBar(nowhere, page.Point{}).W)
}

// leastLegend is the least room for what stands below a picture.
const leastLegend = 60 * length.MM

// besideSteps says that the cloth is so narrow on paper that its steps stand
// beside it.
func (d *diagram) besideSteps() bool { return !d.abreast && d.b.narrow(d.paperWidth()) }

// isAbreast says whether two parts of a picture have room side by side where the
// sheet is set so: with what stands beside and below each, up to where it goes on.
func (d *diagram) isAbreast() bool {
	st := d.b.style
	below := d.legend + 2*st.Gap + st.Label.Say(goesOn).Width(st.Fonts)
	return d.b.fitting.abreast && 2*max(d.paperWidth()+d.flanks, below)+abreastGutter(st) <= d.b.book.Body().W
}

// abreastGutter is the white between two parts of a picture side by side: the
// numbers of the second's cuts stand in it.
func abreastGutter(s *page.Style) length.Length { return besideGutter(s) + discRoom }

// narrow says whether steps have room beside a picture so wide: in large print they
// take more of it.
func (b *binder) narrow(w length.Length) bool {
	room := b.book.Body().W
	switch {
	case b.fitting.below:
		return false
	case b.o.Large:
		return w <= room*2/5
	}
	return w <= room*11/20
}
