package cutting

import (
	"fmt"
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// fits says whether a size goes between the selvages of cloth so wide. Along the
// cloth there is no limit.
func fits(size length.Size, fixed bool, width length.Length) bool {
	return size.W <= width || !fixed && size.H <= width
}

// usable is how long strips across a fabric's whole width are: its usable width,
// but no more than the widest cloth where all that is on the shelf is narrower,
// such as fat quarters.
func usable(f *plan.Fabric) length.Length {
	var widest length.Length
	for _, c := range f.Have {
		widest = max(widest, c.W)
	}
	if widest > 0 {
		return min(f.Width, widest)
	}
	return f.Width
}

// tooWide tells that none of a demand's fabrics is wide enough for it.
func (b *builder) tooWide(d *demand) {
	u := b.plan.Units
	widest := d.fabrics[0]
	for _, f := range d.fabrics {
		if f.Width > widest.Width {
			widest = f
		}
	}
	room := fmt.Sprintf("fabric %q is %s wide", d.source.ID, u.Format(widest.Width, length.WithUnit))
	if d.source.Mix {
		room = fmt.Sprintf("the widest fabric of mix %q, %q, is %s wide", d.source.ID, widest.ID, u.Format(widest.Width, length.WithUnit))
	}
	what := fmt.Sprintf("a piece cut %s is wider than the fabric: %s", u.FormatSize(d.size, length.WithUnit), room)
	border := slices.ContainsFunc(b.plan.Borders, func(o *plan.Border) bool { return o.At == d.use.At })
	switch {
	case border && d.size.H <= widest.Width && widest.OneWay:
		b.fault(d.at, what+" and one-way, so that the border's top and bottom can't lie along it",
			"join them from strips (join: true), or take wider cloth; where the print may lie on its side there, leave one-way out and tell it in the fabric's note")
	case d.size.H <= widest.Width && widest.OneWay && !d.use.NoTurn:
		b.fault(d.at, what+" and one-way, so that the piece may not be turned",
			"cut it with its longer side along the cloth, join it from strips (join: true), or take wider cloth")
	case d.size.H <= widest.Width:
		b.fault(d.at, what+" and the piece may not be turned",
			"let it be turned, join it from strips (join: true), or take wider cloth")
	default:
		b.fault(d.at, what, "join it from strips (join: true), or take wider cloth")
	}
}

// sizePlace is where the size of a line stands.
func sizePlace(n plan.Node) plan.Pos {
	for _, key := range []string{"cut", "finished", "block", "width", "strip", "overhang"} {
		if n.Stated(key) {
			return n.Place(key)
		}
	}
	return n.At
}
