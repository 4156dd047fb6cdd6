package page

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// A Span is words in one style.
type Span struct {
	S     string
	Style TextStyle
}

// Rich is words in several styles, one after another. A "\n" in them ends a
// line; a no-break space (U+00A0) keeps words together; "15⁄16" with a
// fraction slash (U+2044) is set as a fraction.
type Rich []Span

// Plain is the words without their styles.
func (r Rich) Plain() string {
	var b strings.Builder
	for _, s := range r {
		b.WriteString(s.S)
	}
	return b.String()
}

// fine is a width in 1/2048 of a length unit. Advances are whole font units,
// mostly 2048 to the em, so sums of them stay exact.
type fine int64

const fineUnit = 2048

// up rounds a fine width up to a whole length.
func (f fine) up() length.Length { return length.Length((f + fineUnit - 1) / fineUnit) }

// down rounds a fine width down to a whole length.
func (f fine) down() length.Length { return length.Length(f / fineUnit) }

// advance is a character's width at a size, to the next fine unit.
func advance(f *fonts.Face, r rune, size length.Length) fine {
	em := int64(f.Metrics().UnitsPerEm)
	if em == fineUnit {
		return fine(f.Advance(r)) * fine(size)
	}
	return fine((int64(f.Advance(r))*int64(size)*fineUnit + em - 1) / em)
}

// An atom is what is never broken: a character, or a composed fraction. Its
// glyphs share a style.
type atom struct {
	glyphs []glyph
	w      fine
	lead   length.Length
	// space is set for a space that a line may end at and that is dropped
	// there; soft for an atom after which a line may end; brk for a forced end;
	// tie for a space that keeps words together while a line has room for all.
	space, soft, brk, tie bool
}

// A glyph is one character ready to be placed.
type glyph struct {
	r    rune
	face *fonts.Face
	size length.Length
	rise length.Length
	trk  length.Length
	ink  Ink
	part bool
	w    fine
}

// atoms cuts rich text into atoms, in the faces of the set. They are not to be
// changed: whoever asks for the same text again may get them too.
func (r Rich) atoms(set fonts.Set) []atom {
	t := trays.Get().(*tray)
	defer trays.Put(t)
	return t.text(r, set)
}

// runes counts the characters.
func (r Rich) runes() (n int) {
	for _, s := range r {
		n += utf8.RuneCountInString(s.S)
	}
	return n
}

// A tray keeps texts that are set, as printers keep standing type: most texts are
// measured several times, and a sheet is tried in several ways before it is drawn.
// What it gives is never changed again. It is for one goroutine at a time.
type tray struct {
	set    fonts.Set // of the texts it keeps
	texts  standing
	kept   int     // characters
	atoms  []atom  // those of the last texts, with room for more
	glyphs []glyph // theirs
}

// A standing is a text that is set, and those that go on from it with one span more.
type standing struct {
	atoms  []atom
	set    bool
	longer map[Span]*standing
}

var trays = sync.Pool{New: func() any { return new(tray) }}

// The room a tray makes for characters at a time, and how many it keeps.
const leastRoom, mostRoom, mostKept = 1 << 8, 1 << 13, 1 << 15

// text cuts rich text into atoms.
func (t *tray) text(r Rich, set fonts.Set) []atom {
	if t.set != set || t.kept > mostKept {
		*t = tray{set: set}
	}
	at := &t.texts
	for _, s := range r {
		next := at.longer[s]
		if next == nil {
			next = new(standing)
			if at.longer == nil {
				at.longer = map[Span]*standing{}
			}
			at.longer[s] = next
		}
		at = next
	}
	if !at.set {
		at.atoms, at.set = t.setNew(r), true
	}
	return at.atoms
}

// setNew sets a text.
func (t *tray) setNew(r Rich) []atom {
	n := r.runes()
	t.kept += n + 1
	a, g := len(t.atoms), len(t.glyphs)
	if cap(t.atoms)-a < n || cap(t.glyphs)-g < n {
		size := max(n, min(2*cap(t.atoms), mostRoom), leastRoom)
		t.atoms, t.glyphs, a, g = make([]atom, 0, size), make([]glyph, 0, size), 0, 0
	}
	ts := typesetter{set: t.set, out: t.atoms[a : a : a+n], glyphs: t.glyphs[g : g : g+n]}
	ts.rich(r)
	t.atoms, t.glyphs = t.atoms[:a+n], t.glyphs[:g+n]
	return ts.out
}

// rich sets rich text.
func (t *typesetter) rich(r Rich) {
	for _, s := range r {
		text := s.S
		if s.Style.Caps {
			text = strings.Map(unicode.ToUpper, text)
		}
		t.span(text, s.Style)
	}
}

// A typesetter turns characters into atoms. Its glyphs share one backing
// array, so that a paragraph costs few allocations.
type typesetter struct {
	set    fonts.Set
	out    []atom
	glyphs []glyph
}

// span sets the characters of one span.
func (t *typesetter) span(s string, st TextStyle) {
	if !mayHoldFraction(s) {
		for _, r := range s {
			t.char(r, st)
		}
		return
	}
	rs := []rune(s)
	for i := 0; i < len(rs); {
		if f, n := fractionAt(rs[i:], t.set); n > 0 {
			t.fraction(f, st)
			i += n
			continue
		}
		t.char(rs[i], st)
		i++
	}
}

// A role is what a character does in a text.
type role int

const (
	ink     role = iota // it is drawn
	ending              // it ends the line
	opening             // it draws nothing, and a line may end after what is before it
	nothing             // it draws nothing
)

// drawn is the character that is drawn for one in a text, and its role. Spaces
// of other widths become the ordinary space, or the no-break space where they
// may not be broken at; characters that only steer other programs are dropped.
func drawn(r rune) (rune, role) {
	switch {
	case r > ' ' && r < 0x7f:
		return r, ink
	case r == '\n':
		return r, ending
	case r == '\u200b':
		return r, opening
	case r == '\u00a0' || r == '\u202f' || r == '\u2007':
		return '\u00a0', ink
	case r == '\t' || unicode.Is(unicode.Zs, r):
		return ' ', ink
	case unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Variation_Selector, r) || r == '\r':
		return r, nothing // joiners, direction marks, soft hyphens, byte order marks
	case unicode.IsControl(r):
		return '\ufffd', ink
	}
	return r, ink
}

// CanSet reports whether a character of a text can be set: a face of the set
// has it, or it is composed of others, or it draws nothing.
func CanSet(set fonts.Set, r rune) bool {
	r, role := drawn(r)
	_, composed := vulgar[r]
	return role != ink || composed || set.Has(r)
}

// char sets one character.
func (t *typesetter) char(r rune, st TextStyle) {
	a := atom{lead: st.Lead, tie: r == '\u00a0'}
	r, role := drawn(r)
	switch role {
	case ending:
		a.brk = true
		t.out = append(t.out, a)
		return
	case opening:
		if n := len(t.out); n > 0 {
			t.out[n-1].soft = true
		}
		return
	case nothing:
		return
	}
	a.space = r == ' '
	a.soft = r == '-' || r == '–' || r == '—' || r == '/'
	start := len(t.glyphs)
	g := t.glyph(r, st, st.Size, 0)
	a.glyphs, a.w = t.glyphs[start:], g.w
	t.out = append(t.out, a)
}

// glyph picks the face for a character, measures it and appends it.
func (t *typesetter) glyph(r rune, st TextStyle, size, rise length.Length) glyph {
	face, _ := t.set.Pick(st.Weight, r)
	g := glyph{r: r, face: face, size: size, rise: rise, trk: st.Track, ink: st.Ink}
	g.w = advance(face, r, size) + fine(st.Track)*fineUnit
	t.glyphs = append(t.glyphs, g)
	return g
}

// measure is the width of atoms in a row.
func measure(as []atom) fine {
	var w fine
	for i := range as {
		w += as[i].w
	}
	return w
}

// Width is how wide the words are on one line.
func (r Rich) Width(set fonts.Set) length.Length {
	var w fine
	for _, s := range r {
		if mayHoldFraction(s.S) { // its gap depends on what is before it
			return measure(r.atoms(set)).up()
		}
		w += s.width(set)
	}
	return w.up()
}

// width is the width of a span without fractions.
func (s Span) width(set fonts.Set) fine {
	var w fine
	for _, r := range s.S {
		r, role := drawn(r)
		if role != ink {
			continue
		}
		if s.Style.Caps {
			r = unicode.ToUpper(r)
		}
		face, _ := set.Pick(s.Style.Weight, r)
		w += advance(face, r, s.Style.Size) + fine(s.Style.Track)*fineUnit
	}
	return w
}

// leadOf is the largest leading among atoms, or that of the style given where
// there are none.
func leadOf(as []atom, otherwise length.Length) length.Length {
	lead := length.Length(0)
	for i := range as {
		lead = max(lead, as[i].lead)
	}
	if lead == 0 {
		return otherwise
	}
	return lead
}

// runs joins the glyphs of atoms that look alike into runs, from x = 0.
func runs(as []atom) (out []Run, w length.Length) {
	var x fine
	var text []rune
	var last glyph
	flush := func() {
		if len(text) > 0 {
			out[len(out)-1].S, text = string(text), text[:0]
		}
	}
	for i := range as {
		for _, g := range as[i].glyphs {
			if len(text) == 0 || !g.alike(last) {
				flush()
				out = append(out, Run{
					Face: g.face, Size: g.size, Ink: g.ink,
					X: x.down(), Rise: g.rise, Track: g.trk, Part: g.part,
				})
			}
			text, last = append(text, g.r), g
			x += g.w
		}
	}
	flush()
	return out, x.up()
}

// alike reports whether two glyphs can stand in one run.
func (g glyph) alike(h glyph) bool {
	return g.face == h.face && g.size == h.size && g.rise == h.rise &&
		g.trk == h.trk && g.ink == h.ink && g.part == h.part
}
