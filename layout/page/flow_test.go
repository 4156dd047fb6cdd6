package page

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
)

// brick is a drawing of a height with a mark.
func brick(h length.Length, mark string) Block {
	return Drawing{H: h, Draw: func(p *Pen, b Box) { p.Rect(b.Inset(MinLine), Mist, Stroke{}, mark) }}
}

// bricks are where marked rectangles stand: "a1" is mark a on page 1.
func bricks(d Document) (out []string) {
	for i, p := range d.Pages {
		for _, it := range p.Items {
			if r, ok := it.(Rect); ok && r.Fill == Mist {
				out = append(out, fmt.Sprintf("%s%d", r.What(), i+1))
			}
		}
	}
	return out
}

// TestFlow says on which page each brick stands; a page's body is h high.
func TestFlow(t *testing.T) {
	h := NewBook(Setup{Paper: Letter, Style: testStyle()}).Body().H
	half, third := h/2, h/3
	s := testStyle()
	tests := []struct {
		name   string
		blocks []Block
		want   string
	}{
		{"nothing", nil, ""},
		{"one", []Block{brick(half, "a")}, "a1"},
		{"full page", []Block{brick(half, "a"), brick(half, "b")}, "a1 b1"},
		{"over", []Block{brick(half, "a"), brick(half+1, "b")}, "a1 b2"},
		{"gap over", []Block{brick(half, "a"), Gap{1}, brick(half, "b")}, "a1 b2"},
		{"gap at the top", []Block{Gap{half}, brick(half, "a"), brick(half, "b")}, "a1 b1"},
		{"gap at the foot", []Block{brick(h, "a"), Gap{half}, brick(h, "b")}, "a1 b2"},
		{"gaps meet", []Block{brick(third, "a"), Gap{third}, Gap{third}, brick(third, "b")}, "a1 b1"},
		{"break", []Block{brick(1000, "a"), Break{}, brick(1000, "b")}, "a1 b2"},
		{"break first and last", []Block{Break{}, brick(1000, "a"), Break{}}, "a1"},
		{"keep", []Block{brick(half, "a"), Keep{Blocks: []Block{brick(third, "b"), brick(third, "c")}}}, "a1 b2 c2"},
		{"keep next", []Block{brick(half, "a"), Keep{Next: true, Blocks: []Block{brick(third, "b")}}, brick(third, "c")}, "a1 b2 c2"},
		{"keep too much", []Block{brick(half, "a"), Keep{Blocks: []Block{brick(half, "b"), brick(half, "c"), brick(half, "d")}}}, "a1 b1 c2 d2"},
		{"too high", []Block{brick(third, "a"), brick(2*h, "b"), brick(third, "c")}, "a1 b2 c3"},
		{"heading stays", []Block{brick(h-s.Caps.Lead*3, "a"), Heading{Text: "x"}, brick(third, "b")}, "a1 b2"},
		{"heading stays with the first of too much", []Block{Heading{Text: "x"}, Keep{Next: true, Blocks: []Block{brick(half, "a")}}, brick(third*2, "b")}, "a1 b2"},
		{"columns", []Block{Columns{N: 2, Blocks: []Block{brick(half, "a"), brick(half, "b"), brick(half, "c")}}, brick(1000, "d")}, "a1 b1 c1 d2"},
		{"columns over", []Block{Columns{N: 2, Blocks: []Block{brick(half, "a"), brick(half+1, "b"), brick(half, "c"), brick(half, "d")}}}, "a1 b1 c2 d2"},
		{"columns level", []Block{Columns{N: 2, Blocks: []Block{brick(third, "a"), brick(third, "b")}}, brick(third*2, "c")}, "a1 b1 c1"},
		{"heading stays with columns", []Block{brick(half, "a"), Heading{Text: "x"}, Columns{N: 2, Blocks: []Block{brick(half, "b"), brick(third, "c")}}}, "a1 b2 c2"},
		{"columns too high", []Block{brick(third, "a"), Columns{N: 2, Blocks: []Block{brick(2*h, "b"), brick(third, "c")}}}, "a1 b2 c2"},
		{"columns in columns", []Block{Columns{N: 2, Blocks: []Block{brick(third, "a"), Columns{N: 2, Blocks: []Block{Break{}, brick(third, "b"), brick(third, "c")}}}}}, "a1 b1 c1"},
		{"empty columns", []Block{Columns{N: 3}, brick(third, "a")}, "a1"},
		{"no columns", []Block{Columns{Blocks: []Block{brick(third, "a")}}}, "a1"},
	}
	for _, tt := range tests {
		if got := strings.Join(bricks(testBook(tt.blocks...)), " "); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// TestParagraphWhole keeps words together where that takes no more lines.
func TestParagraphWhole(t *testing.T) {
	s := testStyle()
	text := func(words string) Rich { return s.Body.Say(words) }
	w := text("red dot, blue").Width(s.Fonts)
	for _, c := range []struct{ words, whole, want string }{
		{"red dot, blue dot", "red\u00a0dot, blue\u00a0dot", "red\u00a0dot,|blue\u00a0dot"},
		{"red dot, blue dot, tan dot", "red\u00a0dot, blue\u00a0dot, tan\u00a0dot", "red dot, blue|dot, tan dot"},
		{"a, red dot, tan dots, a", "a, red\u00a0dot, tan\u00a0dots, a", "a, red\u00a0dot,|tan\u00a0dots, a"},
	} {
		var got []string
		p := NewPen(s, Box{W: w, H: endless})
		p.Blocks(Box{W: w, H: endless}, Para{Text: text(c.words), Whole: text(c.whole), Mark: "line"})
		for _, it := range p.Items() {
			got = append(got, it.(Text).Words())
		}
		if lines := strings.Join(got, "|"); lines != c.want {
			t.Errorf("%q: %q, want %q", c.words, lines, c.want)
		}
	}
}

// TestParagraphLines never leaves one line of a paragraph alone on a page.
func TestParagraphLines(t *testing.T) {
	s := testStyle()
	h := NewBook(Setup{Paper: Letter, Style: s}).Body().H
	para := Para{Text: s.Body.Say("one\ntwo\nthree\nfour"), Mark: "line"}
	for room := range length.Length(6) {
		doc := testBook(brick(h-room*s.Body.Lead, "a"), para)
		first := len(textsMarked(doc.Pages[0], "line"))
		want := []int{0, 0, 2, 2, 4, 4}[room] // with three lines of room two are set, so that two are left
		if first != want {
			t.Errorf("room for %d lines: %d set, want %d", room, first, want)
		}
	}
}

// TestHeadRepeats draws a table's head again on every page, and nowhere else.
func TestHeadRepeats(t *testing.T) {
	s := testStyle()
	table := Table{Head: []Row{TextRow(s.Label, "head")}, Columns: []Column{{Share: 1}}, Rules: Lined}
	table.Head[0].Mark = "top row"
	for i := range 120 {
		table.Rows = append(table.Rows, TextRow(s.Body, fmt.Sprint(i)))
	}
	doc := testBook(table)
	if len(doc.Pages) < 3 {
		t.Fatalf("%d pages", len(doc.Pages))
	}
	for _, p := range doc.Pages {
		if n := len(textsMarked(p, "top row")); n != 1 {
			t.Errorf("page %s has %d heads", p.Label, n)
		}
	}
}

// TestHeightOf agrees with what is drawn.
func TestHeightOf(t *testing.T) {
	s := testStyle()
	blocks := []Block{Heading{Text: "x"}, Para{Text: s.Body.Say("some words that are broken over lines")}, Gap{500}, brick(700, "a"), Gap{9999}}
	w := length.Length(4000)
	p := NewPen(s, Box{0, 0, Letter.W, Letter.H})
	if got, want := p.Blocks(Box{1000, 1000, w, 0}, blocks...), HeightOf(s, w, blocks...); got != want {
		t.Errorf("drawn %d, foretold %d", got, want)
	}
}

// randomBlocks is blocks of all kinds, texts marked "text 0", "text 1" in order.
func randomBlocks(rnd *rand.Rand, s *Style, n int, next *int) []Block {
	var out []Block
	text := func() (Rich, string) {
		*next++
		return s.Body.Say("w" + fmt.Sprint(*next) + " " + randomWords(rnd)), fmt.Sprintf("text %d", *next)
	}
	for range n {
		r, mark := text()
		switch rnd.IntN(9) {
		case 0:
			out = append(out, Heading{Text: "Heading"}, Para{Text: r, Mark: mark})
		case 1:
			out = append(out, Keep{Next: rnd.IntN(2) == 0, Blocks: []Block{Para{Text: r, Mark: mark}, Gap{s.Gap}}})
		case 2:
			out = append(out, Columns{N: 1 + rnd.IntN(3), Gutter: s.Break, Blocks: append([]Block{Para{Text: r, Mark: mark}}, randomBlocks(rnd, s, rnd.IntN(4), next)...)})
		case 3:
			out = append(out, Para{Text: r, Mark: mark}, Gap{length.Length(rnd.IntN(9000))})
		case 4:
			out = append(out, Framed{Blocks: []Block{Para{Text: r, Mark: mark}}})
		case 5:
			out = append(out, Tally{N: rnd.IntN(140), Spare: rnd.IntN(5), Mark: "tally"}, Para{Text: r, Mark: mark})
		case 6:
			out = append(out, Break{}, Para{Text: r, Mark: mark})
		case 7:
			out = append(out, List{Items: []ListItem{{Label: s.Bold.Say("1"), Blocks: []Block{Para{Text: r, Mark: mark}}}, {Label: s.Bold.Say("2–4")}}})
		case 8:
			out = append(out, Indent{Left: s.Break, Right: s.Break, Blocks: []Block{Para{Text: r, Mark: mark}, WriteOn{After: "in", Mark: "write"}}})
		}
	}
	return out
}

// TestFlowRandom flows random blocks: nothing overlaps or leaves the page, the
// texts come in their order, none is lost, and no page ends in a heading.
func TestFlowRandom(t *testing.T) {
	for seed := range uint64(100) {
		rnd := rand.New(rand.NewPCG(seed, 5))
		n := 0
		doc := testBook(randomBlocks(rnd, testStyle(), 25, &n)...)
		for _, f := range Check(doc.Pages) {
			t.Fatalf("seed %d: %v", seed, f)
		}
		last := 0
		for _, p := range doc.Pages {
			for _, text := range textsMarked(p, "text ") {
				var i int
				fmt.Sscanf(text.What(), "text %d", &i)
				if i != last && i != last+1 {
					t.Fatalf("seed %d: page %s: text %d after text %d", seed, p.Label, i, last)
				}
				last = i
			}
			if tail := textsMarked(p, ""); tail[len(tail)-1].What() == "heading" {
				t.Fatalf("seed %d: page %s ends in a heading", seed, p.Label)
			}
		}
		if last != n {
			t.Fatalf("seed %d: %d texts of %d", seed, last, n)
		}
	}
}

// TestTally counts boxes, groups and running counts.
func TestTally(t *testing.T) {
	doc := testBook(Tally{N: 33, Spare: 2, Mark: "tally x"})
	var boxes, dashed int
	var xs []length.Length
	for _, it := range doc.Pages[0].Items {
		if r, ok := it.(Rect); ok && strings.HasPrefix(r.What(), "tally x ") {
			boxes++
			if r.Stroke.Dash != Solid {
				dashed++
			}
			xs = append(xs, r.Box.X)
		}
	}
	if boxes != 33 || dashed != 2 {
		t.Errorf("%d boxes, %d dashed", boxes, dashed)
	}
	if four, five := xs[4]-xs[3], xs[5]-xs[4]; five <= four {
		t.Errorf("no white after five: steps %d, %d", four, five)
	}
	var counts []string
	for _, text := range textsMarked(doc.Pages[0], "tally x count") {
		counts = append(counts, text.Words())
	}
	if d := cmp.Diff([]string{"10", "20", "30", "33"}, counts); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if blocks := testBook(Tally{}).Pages; len(blocks) != 0 {
		t.Errorf("an empty tally makes %d pages", len(blocks))
	}
}

// A step's first line and its last stand with another of its lines, though each is
// a paragraph of its own, wherever the foot of the page falls.
func TestStepsHaveCompany(t *testing.T) {
	s := testStyle()
	body := NewBook(Setup{Paper: Letter, Style: s}).Body().H
	step := List{Items: []ListItem{{Label: s.Bold.Say("1"), Text: s.Body.Say("a"), Blocks: []Block{
		Para{Text: s.Body.Say("b")}, Para{Text: s.Body.Say("c")}, Para{Text: s.Body.Say("d")}}}}}
	split := 0
	for room := range 6 {
		before := body - s.Body.Lead*length.Length(room) - 1
		b := NewBook(Setup{Paper: Letter, Style: s})
		b.Add(Section{Blocks: []Block{brick(before, "above"), step}})
		first := 0
		pages := b.Document().Pages
		for _, it := range pages[0].Items {
			if text, ok := it.(Text); ok && strings.Contains("abcd", text.Words()) {
				first++
			}
		}
		if first == 1 || first == 3 {
			t.Errorf("with room for %d lines, %d of 4 stand on the first page", room, first)
		}
		if first == 2 {
			split++
		}
	}
	if split == 0 {
		t.Error("no step went over the page in the middle")
	}
}

// A table leaves neither its first row nor its last alone on a page, wherever the
// foot of the page falls.
func TestRowsHaveCompany(t *testing.T) {
	s := testStyle()
	body := NewBook(Setup{Paper: Letter, Style: s}).Body().H
	for _, rows := range []int{2, 3, 4, 7} {
		table := Table{Columns: []Column{{Share: 1}}, Head: []Row{TextRow(s.Label, "head")}, Rules: Lined}
		for range rows {
			table.Rows = append(table.Rows, Row{Mark: "row", Cells: []Cell{{Text: s.Body.Say("x")}}})
		}
		split := 0
		for room := range 20 {
			doc := testBook(brick(body-s.Body.Lead*length.Length(room)-1, "above"), table)
			first := len(textsMarked(doc.Pages[0], "row"))
			if first == 1 || first == rows-1 {
				t.Errorf("with room for %d lines, %d of %d rows stand on the first page", room, first, rows)
			}
			if first > 0 && first < rows {
				split++
			}
		}
		if rows > 3 && split == 0 {
			t.Errorf("a table of %d rows never went over the page", rows)
		}
	}
}

// What is kept stays whole though it stands in columns.
func TestKeepColumns(t *testing.T) {
	s := testStyle()
	body := NewBook(Setup{Paper: Letter, Style: s}).Body().H
	var parts []Block
	for i := range 6 {
		parts = append(parts, brick(body/12, fmt.Sprint(i)))
	}
	kept := Keep{Blocks: []Block{Heading{Text: "x"}, Columns{N: 2, Blocks: parts}}}
	got := strings.Join(bricks(testBook(brick(body*5/6, "above"), kept)), " ")
	if want := "above1 02 12 22 32 42 52"; got != want {
		t.Errorf("they stand at %s, want %s", got, want)
	}
}
