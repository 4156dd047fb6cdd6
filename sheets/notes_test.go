package sheets_test

import (
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
