package page

import (
	"fmt"

	"cutbinder/layout/length"
)

// A FaultKind is a way in which a page can be wrong.
type FaultKind int

// The kinds of faults.
const (
	OffPage  FaultKind = iota // ink outside the part of the paper that may be printed
	TooWide                   // a line of type wider or higher than the room it was set for
	NoGlyph                   // a character no face has
	TooSmall                  // type, a line or a code's module under the least size
	Overlap                   // type over type
	Crossed                   // type crossed by a line, an edge or a hatch
	Covered                   // type under something that was drawn later
	Faint                     // type too like its ground to be read
	Quiet                     // ink in the quiet zone of a code, or too narrow a zone
)

var faultNames = [...]string{
	OffPage: "off the page", TooWide: "too large for its room", NoGlyph: "no glyph", TooSmall: "too small",
	Overlap: "over other type", Crossed: "crossed", Covered: "covered", Faint: "faint", Quiet: "in a quiet zone",
}

// String is the kind in words.
func (k FaultKind) String() string { return faultNames[k] }

// A Fault is something wrong with a page: which item, and with which other one
// where there are two.
type Fault struct {
	Page string // the page's label
	Kind FaultKind
	Item Item
	With Item // may be nil
}

// String is "page 3: crossed: text … [mark] with line … [mark]".
func (f Fault) String() string {
	s := fmt.Sprintf("page %s: %s: %s [%s]", f.Page, f.Kind, f.Item, f.Item.What())
	if f.With != nil {
		s += fmt.Sprintf(" with %s [%s]", f.With, f.With.What())
	}
	return s
}

// MinModule is the least side of a code's module, 0.4 mm: what a phone's
// camera still tells apart on a home printer's paper.
const MinModule = 4 * length.MM / 10

// minQuiet is the width of a code's quiet zone in modules (ISO/IEC 18004).
const minQuiet = 4

// minContrast is the least difference in lightness (of 255) between type and
// its ground.
const minContrast = 100
