package page

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"

	"cutbinder/fonts"
	"cutbinder/layout/length"
)

func TestLines(t *testing.T) {
	const ten = 5700 // ten figures of pica are 5651 wide
	tests := []struct {
		words string
		w     length.Length
		want  []string
	}{
		{"", ten, []string{""}},
		{"00000 00000", ten, []string{"00000", "00000"}},
		{"000 000 000 000", ten, []string{"000 000 000", "000"}}, // 9 figures and 2 spaces: 5650
		{"0000000000", ten, []string{"0000000000"}},
		{"000000000000", ten, []string{"0000000000", "00"}},
		{"0 000000000000", ten, []string{"0", "0000000000", "00"}},
		{"00000-000000", ten, []string{"00000-", "000000"}},
		{"00000/000000", ten, []string{"00000/", "000000"}},
		{"000000\u00a000000 0", ten, []string{"000000", "00000 0"}},
		{"000 0000\u00a0000\u00a000", ten, []string{"000", "0000\u00a0000\u00a000"}},
		{"0000\u00a000000\u00a0000000000000", ten, []string{"0000\u00a000000", "0000000000", "00"}},
		{"0000\u00a000000\u200700 0", ten, []string{"0000", "00000\u00a000 0"}}, // of spaces that keep words together a figure space is the last to yield
		{"00000\u200b000000", ten, []string{"00000", "000000"}},
		{"0\n0", ten, []string{"0", "0"}},
		{"0\n", ten, []string{"0", ""}},
		{"\n0", ten, []string{"", "0"}},
		{"0000000000   0", ten, []string{"0000000000", "0"}},
		{"00000 00000", 0, []string{"00000 00000"}}, // no limit
		{"00", 100, []string{"0", "0"}},             // narrower than a figure
	}
	for _, tt := range tests {
		got := pica.Say(tt.words).Lines(fonts.Default(), tt.w)
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%q in %d: (-want +got)\n%s", tt.words, tt.w, d)
		}
	}
}

// checkWrap checks what breaking lines promises: no line is wider than the room
// unless it is a single atom, and no character but white space is lost, added
// or moved.
func checkWrap(t *testing.T, words string, w length.Length) {
	t.Helper()
	as := pica.Say(words).atoms(fonts.Default())
	var got strings.Builder
	for _, l := range lines(as, w) {
		if w > 0 && measure(l).up() > w && len(l) > 1 {
			t.Fatalf("%q in %d: line %q is %d wide", words, w, plain(l), measure(l).up())
		}
		got.WriteString(plain(l))
	}
	if a, b := withoutSpace(plain(as)), withoutSpace(got.String()); a != b {
		t.Fatalf("%q in %d: read %q, set %q", words, w, a, b)
	}
}

func withoutSpace(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return -1
		}
		return r
	}, s)
}

func TestWrapRandom(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	letters := []rune("aaeinMW 0123½¾⁄  -–/\n\u00a0\u200bé縫")
	for range 3000 {
		rs := make([]rune, rnd.IntN(60))
		for i := range rs {
			rs[i] = letters[rnd.IntN(len(letters))]
		}
		checkWrap(t, string(rs), length.Length(rnd.IntN(8000)))
	}
}

func FuzzWrap(f *testing.F) {
	f.Add("Cut (3) strips 3½ in × width", 4000)
	f.Add("3 15⁄16 and\n⅓", 300)
	f.Fuzz(func(t *testing.T, words string, w int) {
		if len(words) > 2000 || w < 0 || w > 1<<30 {
			return
		}
		checkWrap(t, words, length.Length(w))
	})
}

func TestShorten(t *testing.T) {
	set := fonts.Default()
	width := func(s string) length.Length { return pica.Say(s).Width(set) }
	tests := []struct {
		w        length.Length
		wordings []string
		want     string
	}{
		{width("dusk, ember"), []string{"dusk, ember", "dusk"}, "dusk, ember"},
		{width("dusk, ember") - 1, []string{"dusk, ember", "dusk"}, "dusk"},
		{width("dusk…"), []string{"dusky"}, "dusky"}, // y is narrower than …
		{width("dusk…"), []string{"dusk, ember"}, "dusk…"},
		{width("dusk …"), []string{"dusk ember"}, "dusk…"}, // no space before the dots
		{width("…"), []string{"dusk ember"}, "…"},
		{width("…") - 1, []string{"dusk ember"}, ""},
		{0, []string{"x"}, ""},
		{100, nil, ""},
		{0, []string{""}, ""},
	}
	for _, tt := range tests {
		if got := pica.Shorten(set, tt.w, tt.wordings...); got != tt.want {
			t.Errorf("%q in %d: %q, want %q", tt.wordings, tt.w, got, tt.want)
		}
	}
}

// TestShortenFits shortens to every width: what comes out fits, and is the
// longest start of the words that does.
func TestShortenFits(t *testing.T) {
	set, words := fonts.Default(), "Half square triangles, night prints"
	for w := length.Length(0); w < 20000; w += 97 {
		got := pica.Shorten(set, w, words)
		if pica.Say(got).Width(set) > w {
			t.Fatalf("%q is wider than %d", got, w)
		}
		if start, cut := strings.CutSuffix(got, "…"); cut && !strings.HasPrefix(words, start) {
			t.Fatalf("%q is no start of %q", got, words)
		}
	}
}

func TestShortenLines(t *testing.T) {
	set := fonts.Default()
	w := pica.Say("night prints").Width(set)
	tests := []struct {
		n        int
		wordings []string
		want     string
	}{
		{2, []string{"night prints night prints"}, "night prints night prints"},
		{1, []string{"night prints night prints", "prints"}, "prints"},
		{1, []string{"night prints night prints"}, "night pri…"},
	}
	for _, tt := range tests {
		if got := pica.ShortenLines(set, w, tt.n, tt.wordings...); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.wordings, got, tt.want)
		}
	}
}

// TestFit takes the largest size at which words fit, but none under the least.
func TestFit(t *testing.T) {
	set := fonts.Default()
	tests := []struct {
		w, h length.Length
		want length.Length
	}{
		{10000, 10000, 1016}, {10000, 900, 900}, {1130, 10000, 1015}, {10, 10000, MinLabel},
	}
	for _, tt := range tests {
		if got := pica.Fit(set, tt.w, tt.h, "00").Size; got != tt.want {
			t.Errorf("in %d x %d: %d, want %d", tt.w, tt.h, got, tt.want)
		}
	}
}
