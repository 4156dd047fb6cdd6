package trade

import "cutbinder/layout/length"

// The seam allowance of a backing's panels, wider than a patchwork seam because
// the seam is pressed open and carries the quilt.
const (
	BackingSeamInch   = length.Inch / 2
	BackingSeamMetric = 15 * length.MM
)

// Panels is a backing of full widths of fabric.
type Panels struct {
	Count  int           // full widths to cut
	Length length.Length // of each, along the cloth
	Halved bool          // one of them is cut in half along its length, a half for each side, so that no seam runs down the middle
	Seams  int
}

// Cloth is the length of fabric they take together.
func (p Panels) Cloth() length.Length { return length.Length(p.Count) * p.Length }

// Panelled makes up a backing that is wide across its panels and long along
// them, from fabric wof wide, with a seam allowance on each side of a seam. An
// even number of panels has a seam down the middle: then one is halved and a half
// goes to each side, at the price of one seam more, where that still serves. Its
// count is 0 where seams eat all a panel adds.
func Panelled(wide, long, wof, allowance length.Length) Panels {
	n := Join(wide, wof, 2*allowance)
	if n <= 0 {
		return Panels{}
	}
	p := Panels{Count: n, Length: long, Seams: n - 1}
	if n%2 == 0 && length.Length(n)*(wof-2*allowance) >= wide {
		p.Halved, p.Seams = true, n
	}
	return p
}

// Backing makes up a quilt's backing both ways: with its seams down the quilt,
// panels as long as it, and across it, panels as long as it is wide.
func Backing(quilt length.Size, overhang, wof, allowance length.Length) (down, across Panels) {
	size := WithOverhang(quilt, overhang)
	return Panelled(size.W, size.H, wof, allowance), Panelled(size.H, size.W, wof, allowance)
}

// WithOverhang is the size of a backing or batting that stands over the quilt on
// every side.
func WithOverhang(quilt length.Size, overhang length.Length) length.Size {
	return length.Size{W: quilt.W + 2*overhang, H: quilt.H + 2*overhang}
}
