package page

import (
	"fmt"

	"cutbinder/layout/length"
)

// An Ink is a colour as 0xRRGGBB with the high byte set, so that the zero Ink
// is no ink at all.
type Ink uint32

// The inks. Greys are named by use. A tint tells neighbouring sizes apart and
// carries no meaning; each prints as a pale grey on a one-colour printer.
const (
	NoInk Ink = 0
	Black Ink = 0xFF000000
	White Ink = 0xFFFFFFFF
	Grey  Ink = 0xFF555555 // helping words
	Mid   Ink = 0xFF777777 // lines that help the eye
	Pale  Ink = 0xFFC4C4C4 // cutting guides, the faintest line
	Wash  Ink = 0xFFF1F1F1 // a ground under words
	Mist  Ink = 0xFFE8ECF1 // tint, bluish
	Sand  Ink = 0xFFEFE9DC // tint, yellowish
	Sage  Ink = 0xFFE6EEE4 // tint, greenish
	Clay  Ink = 0xFFF3E7E3 // tint, reddish
)

// RGB is the ink's red, green and blue, each 0 to 255.
func (k Ink) RGB() (r, g, b uint8) { return uint8(k >> 16), uint8(k >> 8), uint8(k) }

// Luma is how light the ink is, 0 (black) to 255 (white), by the weights of
// ITU-R BT.601. It is what a one-colour printer makes of it.
func (k Ink) Luma() int {
	r, g, b := k.RGB()
	return (299*int(r) + 587*int(g) + 114*int(b)) / 1000
}

var inkNames = map[Ink]string{
	NoInk: "none", Black: "black", White: "white", Grey: "grey", Mid: "mid", Pale: "pale",
	Wash: "wash", Mist: "mist", Sand: "sand", Sage: "sage", Clay: "clay",
}

// String is the ink's name, or its colour as #rrggbb.
func (k Ink) String() string {
	if n, ok := inkNames[k]; ok {
		return n
	}
	return fmt.Sprintf("#%06x", uint32(k)&0xFFFFFF)
}

// A Dash is how a line is broken up.
type Dash int

// The dashes.
const (
	Solid  Dash = iota
	Dashed      // cut here, fold here
	Dotted      // guides
)

// Pattern is the lengths of ink and gap in turn, nil for a solid line.
func (d Dash) Pattern() []length.Length {
	switch d {
	case Dashed:
		return []length.Length{length.Inch / 24, length.Inch / 36}
	case Dotted:
		return []length.Length{length.Inch / 96, length.Inch / 36}
	}
	return nil
}

// String is the dash's name.
func (d Dash) String() string { return [...]string{"solid", "dashed", "dotted"}[d] }

// A Stroke is how a line is drawn. The zero Stroke draws nothing.
type Stroke struct {
	Width length.Length
	Ink   Ink
	Dash  Dash
}

// Visible reports whether the stroke leaves ink.
func (s Stroke) Visible() bool { return s.Width > 0 && s.Ink != NoInk }

// With is the stroke in another ink.
func (s Stroke) With(k Ink) Stroke {
	s.Ink = k
	return s
}

// Broken is the stroke with a dash.
func (s Stroke) Broken(d Dash) Stroke {
	s.Dash = d
	return s
}

// String is "0.176 black", with the dash where there is one.
func (s Stroke) String() string {
	out := mm(s.Width) + " " + s.Ink.String()
	if s.Dash != Solid {
		out += " " + s.Dash.String()
	}
	return out
}
