// Package fonts holds the typefaces the binder is set in: their glyph widths
// in font units, which characters they have, and their bytes for embedding.
//
// The faces are the Go fonts, which come with a module and so stand in no
// repository as a binary; they have × ″ ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞ and figures of one width.
// A script they lack is drawn with a TrueType face the user names: read its
// bytes and give them to Parse. This package reads no file itself.
//
// Start with Default, or with Parse and Set.WithFallback.
package fonts

import (
	"encoding/binary"
	"fmt"
	"sync"
	"sync/atomic"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A Face is one typeface in one weight. Its methods may be called from several
// goroutines. The glyph table is read at the first question asked, so a face
// that is never used costs nothing.
type Face struct {
	name string
	ttf  []byte

	once    sync.Once
	loaded  atomic.Bool // for a question asked a million times a binder
	font    *sfnt.Font
	metrics Metrics
	latin   [latinEnd]glyph
	signs   [signsEnd - signsStart]glyph

	latinExtent [latinEnd]extent
	signsExtent [signsEnd - signsStart]extent
}

// Metrics are a face's measures in font units, UnitsPerEm of them to the em.
// Descent is positive, measured down from the baseline.
type Metrics struct {
	UnitsPerEm, Ascent, Descent, CapHeight, XHeight int
}

// The two ranges of characters that are looked up ahead: Latin letters, and
// general punctuation with fractions, arrows and signs.
const (
	latinEnd   = 0x180
	signsStart = 0x2010
	signsEnd   = 0x2270
)

// A glyph is a character's advance width; known is set where the face has it.
type glyph struct {
	advance int32
	known   bool
}

// Parse reads a TrueType face from the bytes of its file. The name says which
// face it is in dumps. Faces with PostScript outlines and collections of
// faces are refused, for they cannot be embedded.
func Parse(name string, ttf []byte) (*Face, error) {
	if err := checkKind(ttf); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if err := checkTables(ttf); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	f := &Face{name: name, ttf: ttf}
	if err := f.load(); err != nil {
		return nil, fmt.Errorf("%s: read a file that is no sound TrueType face: %w", name, err)
	}
	return f, nil
}

// checkKind tells the kinds of font files apart by their first four bytes
// (OpenType specification, "Font file").
func checkKind(ttf []byte) error {
	if len(ttf) < 12 {
		return fmt.Errorf("read %d bytes, expected a TrueType face", len(ttf))
	}
	switch string(ttf[:4]) {
	case "\x00\x01\x00\x00":
		return nil
	case "OTTO":
		return fmt.Errorf("read a face with PostScript outlines, expected TrueType outlines (.ttf)")
	case "ttcf":
		return fmt.Errorf("read a collection of faces, expected one TrueType face (.ttf)")
	case "wOFF", "wOF2":
		return fmt.Errorf("read a packed web font, expected a TrueType face (.ttf)")
	}
	return fmt.Errorf("read a file that starts with %q, expected a TrueType face (.ttf)", ttf[:4])
}

// checkTables sees that the tables that embedding needs are there and lie
// inside the file.
func checkTables(ttf []byte) error {
	found := map[string]bool{}
	n := int(binary.BigEndian.Uint16(ttf[4:]))
	for i := range n {
		at := 12 + 16*i
		if at+16 > len(ttf) {
			return fmt.Errorf("read a table directory cut short, expected %d tables", n)
		}
		tag := string(ttf[at : at+4])
		start, size := binary.BigEndian.Uint32(ttf[at+8:]), binary.BigEndian.Uint32(ttf[at+12:])
		if uint64(start)+uint64(size) > uint64(len(ttf)) {
			return fmt.Errorf("read a file cut short: table %q ends past its end", tag)
		}
		found[tag] = true
	}
	for _, tag := range []string{"cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "OS/2"} {
		if !found[tag] {
			return fmt.Errorf("read a face without table %q, expected a whole TrueType face", tag)
		}
	}
	return nil
}

// load parses the face and looks up the common characters. It runs once.
func (f *Face) load() (err error) {
	f.once.Do(func() {
		if f.font, err = sfnt.Parse(f.ttf); err != nil {
			return
		}
		if f.metrics, err = readMetrics(f.font); err != nil {
			return
		}
		var buf sfnt.Buffer
		for r := rune(' '); r < latinEnd; r++ {
			f.latin[r] = f.lookUp(&buf, r)
		}
		for r := rune(signsStart); r < signsEnd; r++ {
			f.signs[r-signsStart] = f.lookUp(&buf, r)
		}
		f.loaded.Store(true)
	})
	return err
}

// readMetrics asks for the measures at one pixel a font unit, so that they come
// out as whole font units.
func readMetrics(font0 *sfnt.Font) (Metrics, error) {
	var buf sfnt.Buffer
	em := int(font0.UnitsPerEm())
	m, err := font0.Metrics(&buf, fixed.I(em), font.HintingNone)
	if err != nil {
		return Metrics{}, err
	}
	got := Metrics{
		UnitsPerEm: em,
		Ascent:     m.Ascent.Round(), Descent: m.Descent.Round(),
		CapHeight: m.CapHeight.Round(), XHeight: m.XHeight.Round(),
	}
	if got.CapHeight <= 0 {
		got.CapHeight = em * 7 / 10
	}
	if got.XHeight <= 0 {
		got.XHeight = em / 2
	}
	return got, nil
}

// lookUp reads one character's advance from the face's tables.
func (f *Face) lookUp(buf *sfnt.Buffer, r rune) glyph {
	i, err := f.font.GlyphIndex(buf, r)
	if err != nil || i == 0 {
		return glyph{}
	}
	a, err := f.font.GlyphAdvance(buf, i, fixed.I(f.metrics.UnitsPerEm), font.HintingNone)
	if err != nil {
		return glyph{}
	}
	return glyph{int32(a.Round()), true}
}

// glyph returns a character's advance, from the tables made ahead if it can.
func (f *Face) glyph(r rune) glyph {
	if !f.loaded.Load() {
		_ = f.load() // an embedded face is sound; a parsed one is loaded
	}
	switch {
	case r < 0:
		return glyph{}
	case r < latinEnd:
		return f.latin[r]
	case r >= signsStart && r < signsEnd:
		return f.signs[r-signsStart]
	}
	var buf sfnt.Buffer
	return f.lookUp(&buf, r)
}

// Name is the face's short name, such as "regular".
func (f *Face) Name() string { return f.name }

// TTF is the face's file, for embedding. It must not be changed.
func (f *Face) TTF() []byte { return f.ttf }

// Has reports whether the face can draw the character.
func (f *Face) Has(r rune) bool { return f.glyph(r).known }

// Advance is how far the character moves the pen, in font units, or 0 where
// the face lacks it. Kerning is not used: sums of advances are exact.
func (f *Face) Advance(r rune) int { return int(f.glyph(r).advance) }

// Metrics are the face's measures.
func (f *Face) Metrics() Metrics {
	_ = f.load()
	return f.metrics
}
