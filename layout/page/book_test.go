package page

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
)

// refsBook is a book whose first section names the pages of the others.
func refsBook(twoSided bool, entries int) *Book {
	s := testStyle()
	b := NewBook(Setup{Paper: A4, Style: s, TwoSided: twoSided, PageOf: func(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) }})
	b.Add(Section{Name: "contents", Build: func(at *Refs) []Block {
		var out []Block
		for i := range entries {
			out = append(out, Para{Text: s.Body.Say(fmt.Sprintf("part %d: %s", i, at.Page(fmt.Sprintf("part %d", i)))), Mark: "entry"})
		}
		return out
	}})
	for i := range entries {
		b.Add(Section{
			Name: fmt.Sprintf("part %d", i), Bookmark: "Part", Thumb: fmt.Sprint(i), RightHand: i%2 == 0,
			Blocks: []Block{Para{Text: s.Body.Say("words"), Mark: "words"}},
		})
	}
	return b
}

// TestRefs checks that every page reference names the page the anchor is on.
func TestRefs(t *testing.T) {
	for _, twoSided := range []bool{false, true} {
		for _, entries := range []int{1, 5, 60, 150} {
			doc := refsBook(twoSided, entries).Document()
			at := map[string]string{}
			for _, p := range doc.Pages {
				for _, it := range p.Items {
					if a, ok := it.(Anchor); ok {
						at[a.Name] = p.Label
					}
				}
			}
			n := 0
			for _, p := range doc.Pages {
				for _, e := range textsMarked(p, "entry") {
					name, number, _ := strings.Cut(e.Words(), ": ")
					if at[name] != number {
						t.Fatalf("two-sided %v, %d entries: %s is said to be on page %s, is on %s", twoSided, entries, name, number, at[name])
					}
					n++
				}
			}
			if n != entries {
				t.Errorf("%d entries of %d", n, entries)
			}
			for _, f := range Check(doc.Pages) {
				t.Errorf("%d entries: %v", entries, f)
			}
		}
	}
}

// TestTwoSided mirrors margins on left-hand pages, starts parts on right-hand
// ones, and puts the thumb index on the outer edge.
func TestTwoSided(t *testing.T) {
	doc := refsBook(true, 4).Document()
	var got []string
	for i, p := range doc.Pages {
		where := "blank"
		if ws := textsMarked(p, "words"); len(ws) > 0 {
			where = mm(ws[0].Base.X)
		} else if len(textsMarked(p, "entry")) > 0 {
			where = "contents"
		}
		thumb := ""
		for _, it := range p.Items {
			if r, ok := it.(Rect); ok && r.What() == "thumb index" {
				thumb = " thumb " + mm(r.Box.X)
			}
		}
		got = append(got, fmt.Sprintf("%d %s%s", i+1, where, thumb))
	}
	want := []string{
		"1 contents", "2 blank", "3 21.6 thumb 199.35", "4 16.5 thumb 6.35",
		"5 21.6 thumb 199.35", "6 16.5 thumb 6.35",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// TestPageNumbers numbers all pages, raw ones in the count but without header
// and footer.
func TestPageNumbers(t *testing.T) {
	b := refsBook(false, 1)
	raw := func(p *Pen) { p.HLine(0, 0, p.Live.W, p.Style.Hair, "label edge") }
	b.Add(Section{Name: "labels", Raw: []func(*Pen){raw, raw}})
	doc := b.Document()
	var got []string
	for _, p := range doc.Pages {
		s := p.Label
		for _, n := range textsMarked(p, "page number") {
			s += " " + n.Words()
		}
		got = append(got, s)
	}
	if d := cmp.Diff([]string{"1 page 1 of 4", "2 page 2 of 4", "3", "4"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if live := doc.Pages[3].Live; live != (Box{0, 0, A4.W, A4.H}) {
		t.Errorf("a raw page's live part is %v", live)
	}
}

// TestContinued changes the heading after a section's first page.
func TestContinued(t *testing.T) {
	b := NewBook(Setup{Paper: Letter, Style: testStyle()})
	b.Add(Section{Head: "bags", Continued: "bags, continued", Blocks: []Block{brick(100, "a"), Break{}, brick(100, "b")}})
	b.Add(Section{Head: "notes", Blocks: []Block{brick(100, "a"), Break{}, brick(100, "b")}})
	var got []string
	for _, p := range b.Document().Pages {
		got = append(got, textsMarked(p, "header")[0].Words())
	}
	if d := cmp.Diff([]string{"BAGS", "BAGS, CONTINUED", "NOTES", "NOTES"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// TestMargins keeps every page's body off the edges, with room for holes on the
// binding side, at every size of print.
func TestMargins(t *testing.T) {
	for _, paper := range []Paper{Letter, A4} {
		for _, opts := range [][]Option{nil, {Large}} {
			b := NewBook(Setup{Paper: paper, Style: NewStyle(testStyle().Fonts, opts...)})
			for _, left := range []bool{false, true} {
				body, live := b.body(left), b.live(left)
				if !live.Contains(body) || live.X < Edge || live.Y < Edge || live.Right() > paper.W-Edge || live.Bottom() > paper.H-Edge {
					t.Errorf("%s %v: body %v, live %v", paper.Name, opts, body, live)
				}
				binding := body.X
				if left {
					binding = paper.W - body.Right()
				}
				if binding < 20*length.MM {
					t.Errorf("%s: binding margin %d", paper.Name, binding)
				}
			}
		}
	}
}

// TestLongHeadings shortens what does not fit into header and footer.
func TestLongHeadings(t *testing.T) {
	long := strings.Repeat("very long ", 20)
	s := testStyle()
	b := NewBook(Setup{
		Paper: Letter, Style: s, Head: []string{long, "short"}, Foot: []string{long}, Check: "must be 1 in",
		PageOf: func(n, of int) string { return "page 100 of 200" },
	})
	b.Add(Section{Head: long, Thumb: "123456", Blocks: []Block{Heading{Text: long, Aside: long}, Para{Text: s.Body.Say("words")}}})
	doc := b.Document()
	for _, f := range Check(doc.Pages) {
		t.Error(f)
	}
	var got []string
	for _, h := range textsMarked(doc.Pages[0], "header") {
		got = append(got, h.Words()[:5])
	}
	if d := cmp.Diff([]string{"VERY ", "short"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// TestHeadEnd cuts a long head before its end, unless the end is long too.
func TestHeadEnd(t *testing.T) {
	long := strings.Repeat("very long ", 20)
	for _, c := range []struct{ head, end, want string }{
		{"title · v2", " · v2", "title · v2"},
		{long + " · v2", " · v2", "very long very l… · v2"},
		{long + " · " + long, " · " + long, "very long very long…"},
		{long, "", "very long very long…"},
	} {
		b := NewBook(Setup{Paper: Letter, Style: testStyle(), Head: []string{c.head}, HeadEnd: c.end})
		st := b.Style.Label
		room := st.Say("very long very long… ").Width(b.Style.Fonts)
		if got := b.headIn(room); got != c.want {
			t.Errorf("%.10s with %.10s: %q, want %q", c.head, c.end, got, c.want)
		}
	}
}

// TestStyleSizes holds the least sizes: running text 9.5 pt (14 pt in large
// print), everything else 7 pt, lines 0.4 pt; a length unit is 72/8128 pt.
func TestStyleSizes(t *testing.T) {
	points := func(l length.Length) float64 { return float64(l) * 72 / float64(length.Inch) }
	for _, opts := range [][]Option{nil, {Large}, {OneColor}} {
		s := NewStyle(testStyle().Fonts, opts...)
		body := 9.5
		if len(opts) > 0 && opts[0] == Large {
			body = 13.3 // notes; running text itself is 14 pt
			if points(s.Body.Size) < 14 {
				t.Errorf("large print is %f pt", points(s.Body.Size))
			}
		}
		for _, st := range []TextStyle{s.Title, s.Lead, s.Body, s.Bold, s.Help, s.Small, s.Typed} {
			if points(st.Size) < body {
				t.Errorf("%v: running text of %f pt", opts, points(st.Size))
			}
		}
		for _, st := range []TextStyle{s.Label, s.Caps, s.Measure, s.Number} {
			if points(st.Size) < 7 {
				t.Errorf("%v: type of %f pt", opts, points(st.Size))
			}
		}
		for _, st := range []Stroke{s.Hair, s.Rule, s.Heavy, HatchStroke} {
			if points(st.Width) < 0.4 {
				t.Errorf("%v: a line of %f pt", opts, points(st.Width))
			}
		}
	}
}
