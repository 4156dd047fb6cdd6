package length_test

import (
	"math/rand/v2"
	"testing"

	"cutbinder/layout/length"
)

const (
	withUnit = length.WithUnit
	typeset  = length.Typeset
)

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		system length.System
		l      length.Length
		style  length.Style
		want   string
	}{
		{length.Imperial, 0, 0, "0"},
		{length.Imperial, 4 * in, 0, "4"},
		{length.Imperial, 9 * in / 2, 0, "4 1/2"},
		{length.Imperial, 9 * in / 2, withUnit, "4 1/2 in"},
		{length.Imperial, 9 * in / 2, typeset, "4½"},
		{length.Imperial, 9 * in / 2, typeset | withUnit, "4½ in"},
		{length.Imperial, in / 2, typeset, "½"},
		{length.Imperial, 207 * in / 16, 0, "12 15/16"},
		{length.Imperial, 207 * in / 16, typeset, "12 15⁄16"},
		{length.Imperial, in / 16, typeset, "1⁄16"},
		{length.Imperial, 7 * in / 8, typeset, "⅞"},
		{length.Imperial, in / 32, 0, "1/32"},
		{length.Imperial, in/64 + 5*in, 0, "5 1/64"},
		{length.Imperial, 33325, 0, "4.1"},           // what Parse reads from 4.1
		{length.Imperial, 13 * cm, 0, "about 5.118"}, // 41600/8128 = 5.11811...
		{length.Imperial, 13 * cm, withUnit, "about 5.118 in"},
		{length.Imperial, 13 * cm, typeset | withUnit, "≈5.118 in"},
		{length.Imperial, 1, 0, "about 0"},
		{length.Imperial, -9 * in / 2, 0, "-4 1/2"},
		{length.Imperial, length.WOF, withUnit, "WOF"},
		{length.Imperial, 100_000 * length.Max, withUnit, "about 3937007874.016 in"},
		{length.Metric, 65 * mm, 0, "6.5"},
		{length.Metric, 65 * mm, withUnit, "6.5 cm"},
		{length.Metric, 7 * cm, withUnit, "7 cm"},
		{length.Metric, mm / 10, withUnit, "0.01 cm"},
		{length.Metric, 102 * cm, withUnit, "102 cm"},
		{length.Metric, in / 4, withUnit, "0.635 cm"},      // exact
		{length.Metric, in / 8, withUnit, "about 0.32 cm"}, // 0.3175
		{length.Metric, in / 8, typeset, "≈0.32"},
	} {
		if got := c.system.Format(c.l, c.style); got != c.want {
			t.Errorf("%v.Format(%d, %d) = %q, want %q", c.system, c.l, c.style, got, c.want)
		}
	}
}

func TestFormatSize(t *testing.T) {
	size := func(w, h length.Length) length.Size { return length.Size{W: w, H: h} }
	for _, c := range []struct {
		system length.System
		z      length.Size
		style  length.Style
		want   string
	}{
		{length.Imperial, size(13*in/4, 13*in/4), 0, "3 1/4 x 3 1/4"},
		{length.Imperial, size(7*in/2, 13*in/2), typeset, "3½ × 6½"},
		{length.Imperial, size(7*in/2, 13*in/2), withUnit, "3 1/2 x 6 1/2 in"},
		{length.Imperial, size(length.WOF, 5*in/2), withUnit, "WOF x 2 1/2 in"},
		{length.Imperial, size(5*in/2, length.WOF), withUnit, "2 1/2 in x WOF"},
		{length.Imperial, size(5*in/2, length.WOF), typeset, "2½ × WOF"},
		{length.Metric, size(65*mm, 12*cm), withUnit, "6.5 x 12 cm"},
		{length.Metric, size(65*mm, 12*cm), typeset | withUnit, "6.5 × 12 cm"},
	} {
		if got := c.system.FormatSize(c.z, c.style); got != c.want {
			t.Errorf("%v.FormatSize(%v, %d) = %q, want %q", c.system, c.z, c.style, got, c.want)
		}
	}
}

func TestFormatCloth(t *testing.T) {
	for _, c := range []struct {
		system length.System
		l      length.Length
		style  length.Style
		want   string
	}{
		{length.Imperial, 45 * in, 0, "1 1/4 yd"},
		{length.Imperial, 27 * in / 2, 0, "3/8 yd"},
		{length.Imperial, 27 * in / 2, typeset, "⅜ yd"},
		{length.Imperial, 45 * in, typeset, "1¼ yd"},
		{length.Imperial, 12 * in, 0, "1/3 yd"},
		{length.Imperial, 24 * in, typeset, "2⁄3 yd"},
		{length.Imperial, 72 * in, 0, "2 yd"},
		{length.Imperial, 9 * in / 4, 0, "1/16 yd"},
		{length.Imperial, 209006, 0, "5/7 yd"}, // 209005.7
		{length.Imperial, 543415, 0, "1 6/7 yd"},
		{length.Imperial, 209007, 0, "about 25.714 in"},
		{length.Imperial, 10 * in, 0, "10 in"},
		{length.Imperial, 39 * in / 4, 0, "9 3/4 in"},
		{length.Imperial, length.M, 0, "about 39.37 in"},
		{length.Imperial, 0, 0, "0 in"},
		{length.Metric, 120 * cm, 0, "1.2 m"},
		{length.Metric, 35 * cm, 0, "35 cm"},
		{length.Metric, 2 * length.M, 0, "2 m"},
		{length.Metric, 1255 * mm, 0, "1.255 m"},
		{length.Metric, length.Yard, 0, "91.44 cm"},
		{length.Metric, 0, 0, "0 cm"},
	} {
		if got := c.system.FormatCloth(c.l, c.style); got != c.want {
			t.Errorf("%v.FormatCloth(%v, %d) = %q, want %q", c.system, c.l, c.style, got, c.want)
		}
	}
}

func TestInches(t *testing.T) {
	for l, want := range map[length.Length]float64{0: 0, 13 * in / 4: 3.25, 39 * in / 4: 9.75, in / 64: 0.015625, 3 * in / 10: 0.3} {
		if got := l.Inches(); got < want-1e-4 || got > want+1e-4 || l%length.Sixtyfourth == 0 && got != want {
			t.Errorf("%d.Inches() = %v, want %v", l, got, want)
		}
	}
}

func TestString(t *testing.T) {
	for l, want := range map[length.Length]string{9 * in / 2: "4 1/2 in", 66675 * mm / 1000: "2 5/8 in", 65 * mm: "65 mm", 1: "0.003125 mm", length.WOF: "WOF"} {
		if got := l.String(); got != want {
			t.Errorf("%d prints as %q, want %q", l, got, want)
		}
	}
	if got := (length.Size{W: 5 * in / 2, H: 65 * mm}).String(); got != "2 1/2 in x 65 mm" {
		t.Errorf("got %q", got)
	}
	if length.Imperial.String() != "inch" || length.Metric.String() != "metric" {
		t.Error("systems print wrongly")
	}
}

// TestRoundTrip: what is printed is read back as the same length, in every style,
// for 64ths of an inch and tenths of a millimetre.
func TestRoundTrip(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2_000 {
		for system, grain := range map[length.System]length.Length{length.Imperial: length.Sixtyfourth, length.Metric: mm / 10} {
			l, m := grain*length.Length(rng.Int64N(200_000)), grain*length.Length(rng.Int64N(200_000))
			for style := range length.Style(4) {
				text := system.Format(l, style)
				if got, err := length.Parse(text, system); err != nil || got != l {
					t.Fatalf("%v: %d prints as %q and reads as %d, %v", system, l, text, got, err)
				}
				z := length.Size{W: l, H: m}
				text = system.FormatSize(z, style)
				if got, err := length.ParseSize(text, system); err != nil || got != z {
					t.Fatalf("%v: %v prints as %q and reads as %v, %v", system, z, text, got, err)
				}
			}
			text := system.FormatCloth(l)
			if got, err := length.Parse(text, system); err != nil || got != l {
				t.Fatalf("%v: cloth %d prints as %q and reads as %d, %v", system, l, text, got, err)
			}
		}
	}
}

// TestNoRoundedLies: what isn't marked as rounded is the length itself, and what
// is marked is near.
func TestNoRoundedLies(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 2_000 {
		l := length.Length(rng.Int64N(int64(10 * length.M)))
		for _, system := range []length.System{length.Imperial, length.Metric} {
			text := system.Format(l)
			rounded := len(text) > 6 && text[:6] == "about "
			if rounded {
				text = text[6:]
			}
			got, err := length.Parse(text, system)
			if off := max(got-l, l-got); err != nil || off > 0 && !rounded || off > mm/20+1 {
				t.Fatalf("%v: %d prints as %q and reads as %d, %v", system, l, text, got, err)
			}
		}
	}
}
