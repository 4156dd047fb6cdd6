package page

import (
	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// point is the printer's point, 1/72 in, times n/10, rounded up to a whole
// unit. Only the sizes below are thought of in points.
func point(tenths int64) length.Length {
	return length.Length((int64(length.Inch)*tenths + 719) / 720)
}

// The least sizes: of running text (9.5 pt), of labels and measures (7 pt), of
// lines (0.4 pt).
var (
	MinBody  = point(95)
	MinLabel = point(70)
	MinLine  = point(4)
)

// A TextStyle is how words are set.
type TextStyle struct {
	Weight fonts.Weight
	Size   length.Length
	Ink    Ink
	// Lead is the distance from one baseline to the next.
	Lead length.Length
	// Track is extra space after each character, for spaced capitals.
	Track length.Length
	// Caps sets the words in capitals.
	Caps bool
}

// In is the style in another ink.
func (t TextStyle) In(k Ink) TextStyle {
	t.Ink = k
	return t
}

// Heavy is the style in bold.
func (t TextStyle) Heavy() TextStyle {
	t.Weight = fonts.Bold
	return t
}

// Sized is the style at another size, at least MinLabel, its leading with it.
func (t TextStyle) Sized(size length.Length) TextStyle {
	size = max(size, MinLabel)
	if t.Size > 0 {
		t.Lead, t.Track = t.Lead*size/t.Size, t.Track*size/t.Size
	}
	t.Size = size
	return t
}

// Span is words in this style.
func (t TextStyle) Span(s string) Span { return Span{s, t} }

// Say is rich text of one span.
func (t TextStyle) Say(s string) Rich { return Rich{{s, t}} }

// A Style is the look of a document: every size, line and distance that sheets
// may use has its name here.
type Style struct {
	Fonts fonts.Set

	Title   TextStyle // the name a sheet is about
	Lead    TextStyle // a line that must be seen: bold, a little larger
	Body    TextStyle // running text
	Bold    TextStyle // running text, bold
	Help    TextStyle // helping words, grey, at the body's size
	Small   TextStyle // notes, smaller; still a body size
	Label   TextStyle // words at boxes and lines, grey, the smallest
	Caps    TextStyle // headings: small spaced capitals
	Measure TextStyle // sizes and numbers in drawings
	Number  TextStyle // a number in a badge or disc, white
	Typed   TextStyle // codes that are typed, one width

	Hair, Rule, Heavy Stroke // the three line widths

	// Gap is the distance between things that belong together, Space between
	// paragraphs, Break between headed parts of a sheet.
	Gap, Space, Break length.Length
	// Tick is the side of a box to tick, Tally of a box in a tally row.
	Tick, Tally length.Length
	// Round is the radius of rounded corners.
	Round length.Length
	// Tints are grounds that tell neighbouring sizes apart.
	Tints []Ink
}

// An Option changes a style.
type Option int

// The options of NewStyle.
const (
	Large    Option = iota // large print: running text of 14 pt
	OneColor               // no tints: white and pale grey in their place
)

// NewStyle is the binder's look in the given faces. Running text is 10 pt, or
// 14 pt in large print; every other size follows from it.
func NewStyle(set fonts.Set, opts ...Option) *Style {
	body, tints := int64(100), []Ink{Mist, Sand, Sage, Clay}
	for _, o := range opts {
		switch o {
		case Large:
			body = 140
		case OneColor:
			tints = []Ink{White, Wash}
		}
	}
	of := func(w fonts.Weight, percent int64, k Ink) TextStyle {
		size := point(body * percent / 100)
		return TextStyle{Weight: w, Size: size, Ink: k, Lead: size * 7 / 5}
	}
	s := &Style{
		Fonts:   set,
		Title:   of(fonts.Bold, 240, Black),
		Lead:    of(fonts.Bold, 115, Black),
		Body:    of(fonts.Regular, 100, Black),
		Bold:    of(fonts.Bold, 100, Black),
		Help:    of(fonts.Regular, 100, Grey),
		Small:   of(fonts.Regular, 95, Black),
		Label:   of(fonts.Regular, 80, Grey),
		Caps:    of(fonts.Bold, 90, Black),
		Measure: of(fonts.Regular, 80, Black),
		Number:  of(fonts.Bold, 85, White),
		Typed:   of(fonts.Mono, 100, Black),
		Hair:    Stroke{Width: MinLine, Ink: Black},
		Rule:    Stroke{Width: point(6), Ink: Black},
		Heavy:   Stroke{Width: point(12), Ink: Black},
		Gap:     point(body * 4 / 10),
		Space:   point(body * 7 / 10),
		Break:   point(body * 16 / 10),
		Tick:    point(body * 105 / 100),
		Tally:   point(body * 105 / 100),
		Round:   point(35),
		Tints:   tints,
	}
	// a disc may hang into the binding margin, which does not grow
	s.Number.Size = min(s.Number.Size, (bindingMargin-punched)/2)
	s.Small = s.Small.Sized(max(s.Small.Size, MinBody))
	s.Title.Lead = s.Title.Size * 6 / 5
	s.Caps.Caps, s.Caps.Track = true, s.Caps.Size*9/100
	return s
}
