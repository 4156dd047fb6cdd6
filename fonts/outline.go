package fonts

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A SegmentKind says what a segment of an outline does.
type SegmentKind int

// The kinds of segments. Each but MoveTo goes on from where the last one ended.
const (
	MoveTo SegmentKind = iota // begins a loop at Points[0]; loops are closed
	LineTo                    // straight to Points[0]
	QuadTo                    // a parabola by Points[0] to Points[1]
	CubeTo                    // a cubic curve by Points[0] and Points[1] to Points[2]
)

// A Segment is one piece of a glyph's outline. Points are x and y in 1/64 of a
// font unit from the glyph's origin on the baseline, y downward.
type Segment struct {
	Kind   SegmentKind
	Points [3][2]int
}

// Outline is the character's outline: loops to be filled by the nonzero rule. A
// character without ink, or that the face lacks, has none.
func (f *Face) Outline(r rune) []Segment {
	if !f.Has(r) {
		return nil
	}
	var buf sfnt.Buffer
	i, err := f.font.GlyphIndex(&buf, r)
	if err != nil {
		return nil
	}
	loaded, err := f.font.LoadGlyph(&buf, i, fixed.I(f.metrics.UnitsPerEm), nil)
	if err != nil {
		return nil
	}
	out := make([]Segment, len(loaded))
	for i, s := range loaded {
		out[i].Kind = map[sfnt.SegmentOp]SegmentKind{
			sfnt.SegmentOpMoveTo: MoveTo, sfnt.SegmentOpLineTo: LineTo,
			sfnt.SegmentOpQuadTo: QuadTo, sfnt.SegmentOpCubeTo: CubeTo}[s.Op]
		for k, p := range s.Args {
			out[i].Points[k] = [2]int{int(p.X), int(p.Y)}
		}
	}
	return out
}
