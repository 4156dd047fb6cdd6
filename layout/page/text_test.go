package page

import (
	"bytes"
	"encoding/binary"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font/gofont/goregular"

	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// pica is a style of 9 pt, 1016 units: widths are then easy to check by hand.
var pica = TextStyle{Size: length.Inch / 8, Ink: Black, Lead: length.Inch / 6}

// TestWidth holds widths worked out by hand: the sum of the advances (0 is
// 1139, M 1706, the space 569, ½ 1708 of 2048) times 1016 / 2048, up.
func TestWidth(t *testing.T) {
	tests := []struct {
		words string
		want  length.Length
	}{
		{"", 0},
		{"0", 566},        // 565.05
		{"00", 1131},      // 1130.1: rounded once, not per figure
		{"M", 847},        // 846.3
		{"M 0", 1694},     // 3414 -> 1693.7
		{"3½", 1413},      // 2847 -> 1412.4
		{"½", 848},        // 847.3
		{"1⁄2", 848},      // figures of 609 units: 2 x 338.7 + 169.7 = 847.1
		{"⅓", 848},        // no such glyph: composed
		{"15⁄16", 1525},   // 4 x 338.7 + 169.7 = 1524.5
		{"3 15⁄16", 2203}, // 565.05, a space of 406 units 112.8, and 1524.5: 2202.3
	}
	set := fonts.Default()
	for _, tt := range tests {
		if got := pica.Say(tt.words).Width(set); got != tt.want {
			t.Errorf("%q: %d, want %d", tt.words, got, tt.want)
		}
	}
}

// TestFractions says which characters a text is set in: composed fractions are
// one atom, whose copied text still reads as the fraction.
func TestFractions(t *testing.T) {
	tests := []struct {
		words string
		want  []string // the atoms
	}{
		{"3½", []string{"3", "½"}},
		{"15⁄16", []string{"15⁄16"}},
		{"3 15⁄16", []string{"3", "\u00a015⁄16"}},
		{"3\u00a015⁄16", []string{"3", "\u00a015⁄16"}},
		{"3⅓", []string{"3", "\u00a01⁄3"}},
		{"a 1⁄3", []string{"a", " ", "1⁄3"}},
		{"1⁄3 2⁄3", []string{"1⁄3", " ", "2⁄3"}},
		{"⁄3", []string{"⁄", "3"}},
		{"3⁄", []string{"3", "⁄"}},
		{"3/4", []string{"3", "/", "4"}},
	}
	for _, tt := range tests {
		var got []string
		as := pica.Say(tt.words).atoms(fonts.Default())
		for i := range as {
			got = append(got, plain(as[i:i+1]))
		}
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%q: (-want +got)\n%s", tt.words, d)
		}
	}
}

// TestRuns joins what looks alike and parts what does not.
func TestRuns(t *testing.T) {
	set := fonts.Default()
	r := Rich{pica.Span("cut "), pica.Heavy().Span("(3)"), pica.Heavy().Span(" strips"), pica.In(Grey).Span(" 7⁄8")}
	rs, w := runs(r.atoms(set))
	var got []string
	for _, r := range rs {
		got = append(got, r.Face.Name()+":"+r.S)
	}
	want := []string{"regular:cut ", "bold:(3) strips", "regular: ", "bold:7", "regular:⁄", "bold:8"}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if w != r.Width(set) {
		t.Errorf("width %d of the runs, %d of the text", w, r.Width(set))
	}
	if last := rs[len(rs)-1]; last.X >= w || rs[3].Rise <= 0 || last.Rise != 0 || !last.Part {
		t.Errorf("the fraction's runs: %+v", rs[3:])
	}
}

// faceWithThirds is the regular face with ⅓ and ⅔, made by stretching the range
// of characters ⅛ to ⅞ in its character map (the first code of the range is
// found in the map once) over the ones before it. What is drawn for them does
// not matter here.
func faceWithThirds(t *testing.T) *fonts.Face {
	t.Helper()
	ttf := append([]byte(nil), goregular.TTF...)
	at := bytes.Index(ttf, []byte("cmap"))
	at = int(binary.BigEndian.Uint32(ttf[at+8:]))
	i := bytes.Index(ttf[at:], []byte{0x21, 0x5B})
	if i < 0 {
		t.Fatal("no ⅛ in the character map")
	}
	ttf[at+i+1] = 0x53
	face, err := fonts.Parse("thirds", ttf)
	if err != nil {
		t.Fatal(err)
	}
	return face
}

// TestFallback draws a character that the faces lack with the fallback, in a
// run of its own, and does not compose a fraction that the fallback has.
func TestFallback(t *testing.T) {
	face := faceWithThirds(t)
	set := fonts.Default().WithFallback(face)
	rs, _ := runs(pica.Heavy().Say("3⅓b").atoms(set))
	if len(rs) != 3 || rs[1].Face != face || rs[1].S != "⅓" {
		t.Errorf("runs %+v", rs)
	}
}

// TestWidthAgrees measures spans of all kinds of characters both ways: without
// setting them, and set.
func TestWidthAgrees(t *testing.T) {
	s := testStyle()
	for _, st := range []TextStyle{s.Body, s.Caps, s.Typed, s.Title} {
		for _, words := range []string{"", "some words", "straße\tǆ\n\u200bx\u00a0\u202f\a", "3 15⁄16 ½ ⅓", "縫"} {
			if got, want := st.Say(words).Width(s.Fonts), measure(st.Say(words).atoms(s.Fonts)).up(); got != want {
				t.Errorf("%q: %d, set %d", words, got, want)
			}
		}
	}
}

// TestCanSet asks for characters as users paste them.
func TestCanSet(t *testing.T) {
	tests := []struct {
		r     rune
		want  bool
		drawn string // what the text "a" + r + "b" draws
	}{
		{'x', true, "axb"}, {'⅓', true, "a1⁄3b"}, {'⅞', true, "a⅞b"}, {'\t', true, "a b"}, {'\n', true, "ab"},
		{'\u2009', true, "a b"}, {'\u202f', true, "a\u00a0b"}, {'\u00ad', true, "ab"}, {'\ufeff', true, "ab"},
		{'\ufe0f', true, "ab"}, {'\u200b', true, "ab"}, {'\r', true, "ab"}, {'縫', false, "a縫b"}, {'\a', true, "a\ufffdb"}, {'✓', false, "a✓b"},
	}
	for _, tt := range tests {
		if got := CanSet(fonts.Default(), tt.r); got != tt.want {
			t.Errorf("%q: %v", tt.r, got)
		}
		if got := plain(pica.Say("a" + string(tt.r) + "b").atoms(fonts.Default())); got != tt.drawn {
			t.Errorf("%q draws %q, want %q", tt.r, got, tt.drawn)
		}
	}
}

// TestWidthOverSpans keeps the narrow gap where number and fraction are in two
// spans.
func TestWidthOverSpans(t *testing.T) {
	set := fonts.Default()
	two, one := Rich{pica.Span("3"), pica.Span(" 15⁄16")}, pica.Say("3 15⁄16")
	if two.Width(set) != one.Width(set) {
		t.Errorf("%d in two spans, %d in one", two.Width(set), one.Width(set))
	}
}

func TestCaps(t *testing.T) {
	s := testStyle()
	rs, _ := runs(s.Caps.Say("Fabric 3 of 9").atoms(s.Fonts))
	if len(rs) != 1 || rs[0].S != "FABRIC 3 OF 9" || rs[0].Track <= 0 {
		t.Errorf("runs %+v", rs)
	}
}

// TestTray asks a tray for texts again and again, more of them than it keeps, in two
// sets of faces: it gives each as it is set anew, and what it gave stays as it was.
func TestTray(t *testing.T) {
	sets := []fonts.Set{fonts.Default(), fonts.Default().WithFallback(faceWithThirds(t))}
	words := []string{"3", " 15⁄16", "½ ", "⅓", "cut ", "Strips\n", "two-sided ", "", strings.Repeat("cloth ", 200)}
	styles := []TextStyle{pica, pica.Heavy(), pica.In(Grey), {Size: pica.Size, Ink: pica.Ink, Lead: pica.Lead, Caps: true}}
	rng := rand.New(rand.NewPCG(1, 2))
	type given struct{ got, want []atom }
	var all []given
	var tr tray
	for range 3000 {
		var r Rich
		for range rng.IntN(4) {
			r = append(r, Span{words[rng.IntN(len(words))], styles[rng.IntN(len(styles))]})
		}
		set := sets[rng.IntN(20)/19]
		anew := tray{set: set}
		all = append(all, given{tr.text(r, set), anew.setNew(r)})
	}
	for i, g := range all {
		if len(g.want)+len(g.got) > 0 && !reflect.DeepEqual(g.want, g.got) {
			t.Fatalf("text %d is %q, want %q as it is set anew", i, plain(g.got), plain(g.want))
		}
	}
}
