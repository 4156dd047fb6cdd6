package pdf

import (
	"encoding/binary"
	"maps"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	parser "golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"cutbinder/fonts"
	"cutbinder/layout/page"
)

// glyphOf is the number of a character's glyph.
func glyphOf(t *testing.T, ttf []byte, r rune) int {
	t.Helper()
	f, err := parser.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	g, err := f.GlyphIndex(nil, r)
	if err != nil || g == 0 {
		t.Fatalf("no glyph for %q: %v", r, err)
	}
	return int(g)
}

// outline is a glyph's outline and advance as an independent parser reads them.
// A subset has no character map and names, so it gets those of the whole file.
func outline(t *testing.T, ttf, whole []byte, g int) (parser.Segments, fixed.Int26_6) {
	t.Helper()
	small, err := readSfnt(ttf)
	if err != nil {
		t.Fatal(err)
	}
	all, err := readSfnt(whole)
	if err != nil {
		t.Fatal(err)
	}
	for tag, table := range all {
		if small[tag] == nil {
			small[tag] = table
		}
	}
	tags := slices.Sorted(maps.Keys(small))
	f, err := parser.Parse(small.file(tags))
	if err != nil {
		t.Fatal(err)
	}
	var buf parser.Buffer
	s, err := f.LoadGlyph(&buf, parser.GlyphIndex(g), fixed.I(2048), nil)
	if err != nil {
		t.Fatalf("glyph %d: %v", g, err)
	}
	a, err := f.GlyphAdvance(&buf, parser.GlyphIndex(g), fixed.I(2048), 0)
	if err != nil {
		t.Fatalf("glyph %d: %v", g, err)
	}
	return append(parser.Segments(nil), s...), a
}

// TestSubset draws the glyphs in use as the whole face does, and leaves out the
// others.
func TestSubset(t *testing.T) {
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		var used []int
		for _, r := range "Qüilt 3½×⁄" {
			used = append(used, glyphOf(t, ttf, r))
		}
		small, err := subset(ttf, used)
		if err != nil {
			t.Fatal(err)
		}
		if len(small) > len(ttf)/6 {
			t.Errorf("%d bytes of %d", len(small), len(ttf))
		}
		for _, g := range used {
			want, wantAdvance := outline(t, ttf, ttf, g)
			got, gotAdvance := outline(t, small, ttf, g)
			if d := cmp.Diff(want, got); d != "" || gotAdvance != wantAdvance {
				t.Errorf("glyph %d differs: %s", g, d)
			}
		}
		if got, _ := outline(t, small, ttf, glyphOf(t, ttf, 'A')); len(got) != 0 {
			t.Error("a glyph not in use is there")
		}
	}
}

// composite overwrites a glyph of a copied file with one made of one part, moved
// by dx.
func composite(t *testing.T, ttf []byte, g, part int, dx int16) {
	t.Helper()
	s, err := readSfnt(ttf)
	if err != nil {
		t.Fatal(err)
	}
	at, err := s.offsets()
	if err != nil {
		t.Fatal(err)
	}
	glyph := s["glyf"][at[g]:at[g+1]]
	binary.BigEndian.PutUint16(glyph, 0xFFFF)
	binary.BigEndian.PutUint16(glyph[10:], wordArguments|2) // words, and they are places
	binary.BigEndian.PutUint16(glyph[12:], uint16(part))
	binary.BigEndian.PutUint16(glyph[14:], uint16(dx))
	binary.BigEndian.PutUint16(glyph[16:], 0)
}

// TestNestedParts keeps the parts of parts, and stands a glyph that is made of
// itself.
func TestNestedParts(t *testing.T) {
	ttf := append([]byte(nil), goregular.TTF...)
	a, b, c, d := glyphOf(t, ttf, 'A'), glyphOf(t, ttf, 'B'), glyphOf(t, ttf, 'C'), glyphOf(t, ttf, 'D')
	want, _ := outline(t, ttf, ttf, c)
	composite(t, ttf, a, b, 0)
	composite(t, ttf, b, c, 0)
	composite(t, ttf, d, d, 0)
	small, err := subset(ttf, []int{a, d})
	if err != nil {
		t.Fatal(err)
	}
	got, _ := outline(t, small, ttf, a)
	if diff := cmp.Diff(want, got); diff != "" || len(got) == 0 {
		t.Errorf("A, made of B, made of C, is not drawn as C: %s", diff)
	}
}

// TestChecksums adds up every table and the whole file as the specification
// says.
func TestChecksums(t *testing.T) {
	small, err := subset(goregular.TTF, []int{40, 41})
	if err != nil {
		t.Fatal(err)
	}
	if got := sum(small); got != 0xB1B0AFBA {
		t.Errorf("the file adds up to %08x", got)
	}
	for i := range int(binary.BigEndian.Uint16(small[4:])) {
		e := small[12+16*i:]
		at, n := binary.BigEndian.Uint32(e[8:]), binary.BigEndian.Uint32(e[12:])
		table := append([]byte(nil), small[at:at+n]...)
		if string(e[:4]) == "head" {
			copy(table[8:], []byte{0, 0, 0, 0})
		}
		if got := sum(table); got != binary.BigEndian.Uint32(e[4:]) {
			t.Errorf("table %s adds up to %08x", e[:4], got)
		}
	}
}

// TestCovers refuses a character that the library does not find in a face.
func TestCovers(t *testing.T) {
	face, err := fonts.Parse("mine", goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	for words, ok := range map[string]bool{"½ × x": true, "x 縫": false, "\U0001F9F5": false} {
		text := page.Text{Runs: []page.Run{{S: words, Face: face, Size: page.MinBody, Ink: page.Black}}}
		pages := []page.Page{{Paper: page.A4, Items: []page.Item{text}}}
		x := &writer{family: map[*fonts.Face]string{}}
		x.start(page.Document{Pages: pages})
		if err := x.embed(pages); err != nil {
			t.Fatal(err)
		}
		if err := x.page(&pages[0]); (err == nil) != ok {
			t.Errorf("%q: %v", words, err)
		}
	}
}
