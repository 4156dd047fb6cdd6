package main

import (
	"bytes"
	"strings"
	"testing"
)

// TestPaint: the place, the caret and the hint are coloured, and without the
// colours nothing has changed, however the text comes.
func TestPaint(t *testing.T) {
	const text = "p.yaml:3:16: cut: found \"0\"\n  pieces: [{cut: 0}]\n                 ^\n  hint: write more\n\ncutbinder: stopped\n"
	want := bold + "p.yaml:3:16:" + plain + " cut: found \"0\"\n  pieces: [{cut: 0}]\n" + red + "                 ^" + plain + "\n" + cyan + "  hint: write more" + plain + "\n\n" + bold + "cutbinder:" + plain + " stopped\n"
	for _, size := range []int{1, 7, len(text)} {
		var out bytes.Buffer
		p := &painter{to: &out}
		for rest := text; rest != ""; {
			n := min(size, len(rest))
			if m, err := p.Write([]byte(rest[:n])); m != n || err != nil {
				t.Fatal(m, err)
			}
			rest = rest[n:]
		}
		if out.String() != want {
			t.Errorf("%d at a time:\n%q, want\n%q", size, out.String(), want)
		}
		if got := strings.NewReplacer(bold, "", red, "", cyan, "", plain, "").Replace(out.String()); got != text {
			t.Errorf("%d at a time: without colours\n%q", size, got)
		}
	}
}

// TestFolded: help is folded at spaces to the width that there is.
func TestFolded(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  string
	}{
		{"one two three four five six", 20, "one two three four|five six"},
		{"a-word-that-is-longer-than-the-line is whole", 20, "a-word-that-is-longer-than-the-line|is whole"},
		{"   indented lines stay as they are, however long", 20, "   indented lines stay as they are, however long"},
		{"", 20, ""},
	} {
		if got := strings.Join(folded(c.text, c.width), "|"); got != c.want {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
}
