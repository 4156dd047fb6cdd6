package sheets_test

import (
	"strings"
	"testing"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// The lines to write on fill their page down to its foot, and take no other.
func TestNotesFillTheirPage(t *testing.T) {
	for _, o := range []sheets.Options{{}, {Large: true}} {
		o.Only = []sheets.Part{sheets.Notes}
		each(t, func(t *testing.T, q *sheets.Quilt) {
			pages := binder(t, q, o).Pages
			want := 1
			if o.Large {
				want = 2
			}
			if len(pages) != want {
				t.Fatalf("%d pages, want %d", len(pages), want)
			}
			var lines []page.Box
			foot := length.Length(0)
			for _, it := range pages[want-1].Items {
				switch it.What() {
				case "writing line":
					lines = append(lines, it.Bounds())
				case "footer rule":
					foot = it.Bounds().Y
				}
			}
			n := len(lines)
			if n < 2 {
				t.Fatalf("%d lines", n)
			}
			if step := lines[1].Y - lines[0].Y; foot-lines[n-1].Y > 2*step || lines[n-1].Y >= foot {
				t.Errorf("the last of %d lines is at %d, the foot at %d", n, lines[n-1].Y, foot)
			}
		})
	}
}

// Of a quilt of washed and unwashed cloth the page on washing says what comes of it.
func TestWashing(t *testing.T) {
	for fabrics, want := range map[string]string{
		"{a: {}, b: {}}":                         "washes no fabric",
		"{a: {prewash: yes}, b: {}}":             "leaves the other fabrics unwashed",
		"{a: {prewash: yes}, b: {prewash: yes}}": "",
	} {
		q := work("wash.yaml", "plan: Wash\nfabrics: "+fabrics+"\npieces: [{cut: 4, need: 4, fabric: a}, {cut: 4, need: 4, fabric: b}]")
		said := ""
		for _, p := range binder(t, q, sheets.Options{Only: []sheets.Part{sheets.Safety}}).Pages {
			for _, it := range p.Items {
				if text, ok := it.(page.Text); ok && text.What() == "washing" {
					said += text.Words() + " "
				}
			}
		}
		if (said != "") != (want != "") || !strings.Contains(said, want) {
			t.Errorf("%s: %q, want %q", fabrics, said, want)
		}
	}
}
