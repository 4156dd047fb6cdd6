package fonts

import (
	"sync/atomic"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// An extent is how far a glyph reaches above and below the baseline, in font
// units, packed into one word so that it can be kept without a lock: bit 32
// says that it is known, then come the bottom and the top as 16 bits each.
type extent struct{ atomic.Uint64 }

func (e *extent) keep(bottom, top int) {
	e.Store(1<<32 | uint64(uint16(int16(bottom)))<<16 | uint64(uint16(int16(top))))
}

func (e *extent) get() (bottom, top int, ok bool) {
	v := e.Load()
	return int(int16(v >> 16)), int(int16(v)), v>>32 == 1
}

// Extent is how far the character's ink reaches: bottom is negative below the
// baseline, top positive above it, both in font units. A character without
// ink, or that the face lacks, has 0 and 0.
func (f *Face) Extent(r rune) (bottom, top int) {
	if !f.Has(r) {
		return 0, 0
	}
	var kept *extent
	switch {
	case r < latinEnd:
		kept = &f.latinExtent[r]
	case r >= signsStart && r < signsEnd:
		kept = &f.signsExtent[r-signsStart]
	default:
		return f.readExtent(r)
	}
	if bottom, top, ok := kept.get(); ok {
		return bottom, top
	}
	bottom, top = f.readExtent(r)
	kept.keep(bottom, top)
	return bottom, top
}

// readExtent measures a glyph's outline.
func (f *Face) readExtent(r rune) (bottom, top int) {
	var buf sfnt.Buffer
	i, err := f.font.GlyphIndex(&buf, r)
	if err != nil {
		return 0, 0
	}
	segments, err := f.font.LoadGlyph(&buf, i, fixed.I(f.metrics.UnitsPerEm), nil)
	if err != nil || len(segments) == 0 {
		return 0, 0
	}
	b := segments.Bounds() // y grows downward
	return -b.Max.Y.Ceil(), -b.Min.Y.Floor()
}
