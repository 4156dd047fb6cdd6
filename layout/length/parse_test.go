package length_test

import (
	"strings"
	"testing"

	"cutbinder/layout/length"
)

const (
	in = length.Inch
	cm = length.CM
	mm = length.MM
)

// notations are texts and what they are worth, by hand: inch and metric plans.
var notations = []struct {
	text             string
	imperial, metric length.Length
}{
	{"4", 4 * in, 4 * cm},
	{"4.", 4 * in, 4 * cm},
	{"4.5", 36576, 45 * mm},
	{".5", in / 2, 5 * mm},
	{"0", 0, 0},
	{"4 1/2", 36576, 45 * mm},
	{"4  1/2", 36576, 45 * mm},
	{"4-1/2", 36576, 45 * mm},
	{"4–1/2", 36576, 45 * mm},
	{"4½", 36576, 45 * mm},
	{"4 ½", 36576, 45 * mm},
	{"4-½", 36576, 45 * mm},
	{"½", in / 2, 5 * mm},
	{"12 15⁄16", 105156, 129*mm + mm*3/8},
	{"12 15 / 16", 105156, 129*mm + mm*3/8},
	{"5/2", 5 * in / 2, 25 * mm},
	{"9/8", 9 * in / 8, 9 * cm / 8},
	{"20/8", 5 * in / 2, 25 * mm},
	{"4 1/2 in", 36576, 36576},
	{"4 1/2in", 36576, 36576},
	{"4 1/2 in.", 36576, 36576},
	{"4 1/2 inches", 36576, 36576},
	{"1 inch", in, in},
	{`4 1/2"`, 36576, 36576},
	{"4½″", 36576, 36576},
	{"4½”", 36576, 36576},
	{"4 1/2''", 36576, 36576},
	{"4 1/2 IN", 36576, 36576},
	{"5 ft", 60 * in, 60 * in},
	{"5'", 60 * in, 60 * in},
	{"5′", 60 * in, 60 * in},
	{"1 foot", 12 * in, 12 * in},
	{`5' 6"`, 66 * in, 66 * in},
	{`5'6 1/2"`, 133 * in / 2, 133 * in / 2},
	{"1 yd 9 in", 45 * in, 45 * in},
	{"1 m 20 cm", 120 * cm, 120 * cm},
	{"1 1/4 yd", 45 * in, 45 * in},
	{"1/3 yd", 12 * in, 12 * in},
	{"2 yards", 72 * in, 72 * in},
	{"1 yard", 36 * in, 36 * in},
	{"half yard", 18 * in, 18 * in},
	{"Half a yard", 18 * in, 18 * in},
	{"a half yard", 18 * in, 18 * in},
	{"quarter yard", 9 * in, 9 * in},
	{"quarter of a yard", 9 * in, 9 * in},
	{"three quarters of a yard", 27 * in, 27 * in},
	{"three-quarter yard", 27 * in, 27 * in},
	{"third yard", 12 * in, 12 * in},
	{"eighth yard", 9 * in / 2, 9 * in / 2},
	{"a yard", 36 * in, 36 * in},
	{"one metre", 100 * cm, 100 * cm},
	{"one and a half yards", 54 * in, 54 * in},
	{"half metre", 50 * cm, 50 * cm},
	{"6.5 cm", 65 * mm, 65 * mm},
	{"6,5 cm", 65 * mm, 65 * mm},
	{"6,5", 13 * in / 2, 65 * mm},
	{"0,375", 3 * in / 8, 375 * mm / 100},
	{"0,375 m", 375 * mm, 375 * mm},
	{"63.5 mm", 5 * in / 2, 5 * in / 2},
	{"30cm", 30 * cm, 30 * cm},
	{"1.2 m", 120 * cm, 120 * cm},
	{"12 millimeters", 12 * mm, 12 * mm},
	{"1 km", -1, -1},
	{"1000 m", length.Max, length.Max},
	{"1/3 in", 2709, 2709},  // 2709 1/3, the nearest whole length
	{"2/3 in", 5419, 5419},  // 5418 2/3
	{"4.1", 33325, 41 * mm}, // 33324.8
	{"1/64 in", 127, 127},   // exact by the choice of unit
	{"1/128 in", 64, 64},    // 63 1/2: halves go up
	{"0.0001 mm", 0, 0},     // nothing that a ruler shows
	{"\u00a06½\u00a0in ", 13 * in / 2, 13 * in / 2},
}

func TestParse(t *testing.T) {
	for _, c := range notations {
		for bare, want := range map[length.System]length.Length{length.Imperial: c.imperial, length.Metric: c.metric} {
			got, err := length.Parse(c.text, bare)
			if want < 0 && err != nil {
				continue
			}
			if err != nil || got != want {
				t.Errorf("Parse(%q, %v) = %d, %v; want %d", c.text, bare, got, err, want)
			}
		}
	}
}

// refused are texts that are no length, and words the error must hold.
var refused = []struct{ text, why string }{
	{"", "is not a length"},
	{" ", "is not a length"},
	{"abc", "is not a length"},
	{"NaN", "is not a length"},
	{"Inf", "is not a length"},
	{"in", "is not a length"},
	{"-3", "is negative"},
	{"−3 in", "is negative"},
	{"-0", "is negative"},
	{"4 1/0", "divides by zero"},
	{"1/0", "divides by zero"},
	{"4 5/2", "fraction that is not below one"},
	{"4 2/2", "fraction that is not below one"},
	{"41/2", "may mean 4 1/2 or 20 1/2"},
	{"17/16", "may mean 1 7/16 or 1 1/16"},
	{"1,234 mm", "may mean thousands"},
	{"4 q", `no unit named "q"`},
	{"1e3", `no unit named "e"`},
	{"0x10", `no unit named "x"`},
	{"4 1/2 1/2", "is not a length"},
	{"4 5", "is not a length"},
	{"4 in 5", "is not a length"},
	{`6" 5'`, "is not a length"},
	{"4 in 5 in", "is not a length"},
	{"4 5 in", "is not a length"},
	{"1..2", "is not a length"},
	{"half", "is not a length"},
	{"3/4/5", "is not a length"},
	{"2000 m", "is too long"},
	{"999999999999999", "is too long"},
	{"99999999999999999999", "too many digits"},
	{"0.00000000000000001", "too many digits"},
	{strings.Repeat("9", 100), "is not a length"},
	{"1000 m 1 mm", "is too long"},
}

func TestParseRefuses(t *testing.T) {
	for _, c := range refused {
		l, err := length.Parse(c.text, length.Imperial)
		if err == nil || l != 0 || !strings.Contains(err.Error(), c.why) {
			t.Errorf("Parse(%q) = %d, %v; want an error with %q", c.text, l, err, c.why)
		}
	}
}

func TestErrorShowsAnExample(t *testing.T) {
	_, err := length.Parse("four", length.Imperial)
	want := `"four" is not a length; expected a length such as 4 1/2, 4.5 or 6.5 cm`
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	_, err = length.ParseSize("3 x", length.Metric)
	want = `"3 x" is not a size; expected a size such as 6.5 x 12, or one length for a square`
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

var sizes = []struct {
	text string
	bare length.System
	w, h length.Length
}{
	{"3", length.Imperial, 3 * in, 3 * in},
	{"3 1/2 x 6 1/2", length.Imperial, 7 * in / 2, 13 * in / 2},
	{"3½×6½", length.Imperial, 7 * in / 2, 13 * in / 2},
	{"3 X 5", length.Imperial, 3 * in, 5 * in},
	{"3x5", length.Imperial, 3 * in, 5 * in},
	{"3 by 5", length.Imperial, 3 * in, 5 * in},
	{`3" x 5"`, length.Imperial, 3 * in, 5 * in},
	{"54 x 66", length.Metric, 54 * cm, 66 * cm},
	{"2 5/8 x 1 in", length.Metric, 21 * in / 8, in},
	{"2 5/8 x 1 in", length.Imperial, 21 * in / 8, in},
	{"63.5 x 38.1 mm", length.Imperial, 5 * in / 2, 3 * in / 2},
	{"63,5 x 38,1 mm", length.Imperial, 5 * in / 2, 3 * in / 2},
	{"60 mm x 40", length.Metric, 60 * mm, 40 * mm},
	{"1 yd x 42 in", length.Imperial, 36 * in, 42 * in},
	{"6 cm x 2 in", length.Imperial, 6 * cm, 2 * in},
	{"2 1/2 x WOF", length.Imperial, 5 * in / 2, length.WOF},
	{"wof x 2 1/2", length.Imperial, length.WOF, 5 * in / 2},
	{"6 cm x Wof", length.Imperial, 6 * cm, length.WOF},
	{"half yard x 20 in", length.Imperial, 18 * in, 20 * in},
	{"0 x 3", length.Imperial, 0, 3 * in},
}

func TestParseSize(t *testing.T) {
	for _, c := range sizes {
		got, err := length.ParseSize(c.text, c.bare)
		if err != nil || got != (length.Size{W: c.w, H: c.h}) {
			t.Errorf("ParseSize(%q, %v) = %v, %v; want %v x %v", c.text, c.bare, got, err, c.w, c.h)
		}
	}
	for _, text := range []string{"", "x", "3 x", "x 3", "3 x 4 x 5", "WOF", "WOF x WOF", "3 x -4", "a x b", "3 x 41/2", strings.Repeat("3 x ", 100)} {
		if got, err := length.ParseSize(text, length.Imperial); err == nil {
			t.Errorf("ParseSize(%q) = %v, want an error", text, got)
		}
	}
}

// FuzzParse: whatever is read, the answer is a length in range or an error.
func FuzzParse(f *testing.F) {
	for _, c := range notations {
		f.Add(c.text)
	}
	for _, c := range refused {
		f.Add(c.text)
	}
	for _, c := range sizes {
		f.Add(c.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, bare := range []length.System{length.Imperial, length.Metric} {
			l, err := length.Parse(text, bare)
			if l < 0 || l > length.Max || err != nil && l != 0 {
				t.Errorf("Parse(%q) = %d, %v", text, l, err)
			}
			z, err := length.ParseSize(text, bare)
			if err != nil && z != (length.Size{}) {
				t.Errorf("ParseSize(%q) = %v, %v", text, z, err)
			}
			if err == nil && z.W == z.H && z.W == length.WOF {
				t.Errorf("ParseSize(%q) has no length", text)
			}
		}
	})
}
