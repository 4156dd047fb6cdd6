package page

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"cutbinder/layout/length"
)

// testBook is a one-section book of those blocks, flowed.
func testBook(blocks ...Block) Document {
	b := NewBook(Setup{Paper: Letter, Style: testStyle(), Title: "test"})
	b.Add(Section{Head: "test", Blocks: blocks})
	return b.Document()
}

// textsMarked are the texts whose mark starts so, in the order of the pages.
func textsMarked(p Page, mark string) []Text {
	var out []Text
	for _, it := range p.Items {
		if t, ok := it.(Text); ok && strings.HasPrefix(t.What(), mark) {
			out = append(out, t)
		}
	}
	return out
}

// randomTable is a table whose cells hold random words, with marks "top row" and
// "row 7".
func randomTable(rnd *rand.Rand, s *Style) (Table, []string) {
	t := Table{Rules: Rules(rnd.IntN(3)), Stretch: rnd.IntN(2) == 0}
	n := 1 + rnd.IntN(5)
	for range n {
		c := Column{Align: Align(rnd.IntN(4))}
		switch rnd.IntN(3) {
		case 0:
			c.Share = 1 + rnd.IntN(3)
		case 1:
			c.Width = length.Inch / 2 * length.Length(1+rnd.IntN(2))
		}
		t.Columns = append(t.Columns, c)
	}
	head := Row{Mark: "top row"}
	for i := range n {
		head.Cells = append(head.Cells, Cell{Text: s.Label.Say(fmt.Sprintf("head %d", i))})
	}
	t.Head = []Row{head}
	var want []string
	for i := range 5 + rnd.IntN(80) {
		row, words := randomRow(rnd, s, n, i)
		t.Rows, want = append(t.Rows, row), append(want, words)
	}
	return t, want
}

// randomRow is a row of n columns, some of them spanned.
func randomRow(rnd *rand.Rand, s *Style, n, i int) (Row, string) {
	row, all := Row{Mark: fmt.Sprintf("row %d", i), With: rnd.IntN(8) == 0}, ""
	for c := 0; c < n; {
		span := 1
		if rnd.IntN(6) == 0 {
			span = 1 + rnd.IntN(n-c)
		}
		words := randomWords(rnd)
		st := []TextStyle{s.Body, s.Label, s.Lead}[rnd.IntN(3)]
		row.Cells = append(row.Cells, Cell{Text: st.Say(words), Span: span, Sit: Sit(rnd.IntN(4))})
		all += words
		c += span
	}
	return row, withoutSpace(all)
}

// randomWords is a number, a few words, or now and then a great many.
func randomWords(rnd *rand.Rand) string {
	if rnd.IntN(3) == 0 {
		return []string{"3½", "12", "¾", "108⅞", "4 15⁄16", "(7)"}[rnd.IntN(6)]
	}
	n := rnd.IntN(12)
	if rnd.IntN(60) == 0 {
		n = 400
	}
	var words []string
	for range n {
		words = append(words, strings.Repeat("amil"[rnd.IntN(4):][:1], 1+rnd.IntN(9)))
	}
	return strings.Join(words, " ")
}

// TestTableRandom flows random tables. Nothing on the pages overlaps, leaves
// its box or the page; every page starts with the head; the rows come in their
// order and none twice; and all of their words are there.
func TestTableRandom(t *testing.T) {
	for seed := range uint64(60) {
		rnd := rand.New(rand.NewPCG(seed, 3))
		table, want := randomTable(rnd, testStyle())
		doc := testBook(table)
		for _, f := range Check(doc.Pages) {
			if f.Kind != TooWide { // a column narrower than a word's letter is the test's fault
				t.Fatalf("seed %d: %v", seed, f)
			}
		}
		got := make([]string, len(want))
		last := 0
		for _, p := range doc.Pages {
			if len(textsMarked(p, "top row")) < len(table.Columns) {
				t.Fatalf("seed %d: page %s lacks the head", seed, p.Label)
			}
			for _, text := range textsMarked(p, "row ") {
				var i int
				fmt.Sscanf(text.What(), "row %d", &i)
				if i < last {
					t.Fatalf("seed %d: row %d comes after row %d", seed, i, last)
				}
				last = i
				got[i] += text.Words()
			}
		}
		for i := range want {
			if sorted(want[i]) != sorted(got[i]) {
				t.Fatalf("seed %d: row %d: read %q, set %q", seed, i, want[i], got[i])
			}
		}
	}
}

// sorted is a text's characters in order, without white space: the cells of a
// row broken over pages come mixed.
func sorted(s string) string {
	rs := []rune(withoutSpace(strings.ReplaceAll(s, "\u00a0", "")))
	slices.Sort(rs)
	return string(rs)
}

// TestColumnWidths works widths out by hand. A figure at 9 pt is 565.05 units
// wide, so words of 1, 2 and 10 figures want 566, 1131 and 5651.
func TestColumnWidths(t *testing.T) {
	cells := []string{"0", "00", "00000 00000"}
	auto, share := Column{}, Column{Share: 1}
	tests := []struct {
		name    string
		columns []Column
		room    length.Length
		stretch bool
		want    []length.Length
	}{
		{"natural", []Column{auto, auto, auto}, 10000, false, []length.Length{566, 1131, 5933}},
		{"stretched", []Column{auto, auto, auto}, 7930, true, []length.Length{666, 1231, 6033}},
		{"fixed", []Column{{Width: 700}, auto, auto}, 10000, false, []length.Length{700, 1131, 5933}},
		{"fixed is not stretched", []Column{{Width: 700}, auto, auto}, 7964, true, []length.Length{700, 1231, 6033}},
		{"shared", []Column{auto, auto, share}, 10000, false, []length.Length{566, 1131, 8303}},
		{"two shares", []Column{auto, share, {Share: 2}}, 9566, false, []length.Length{566, 3000, 6000}},
		{"a share keeps its word", []Column{auto, share, {Share: 99}}, 9566, false, []length.Length{566, 1131, 7869}},
		{"squeezed", []Column{auto, auto, auto}, 5000, false, []length.Length{566, 1131, 3303}},
		{"too narrow", []Column{auto, auto, auto}, 3000, false, []length.Length{566, 1131, 1303}},
		{"far too narrow", []Column{auto, auto, auto}, 900, false, []length.Length{300, 300, 300}},
	}
	for _, tt := range tests {
		table := Table{Columns: tt.columns, Rows: []Row{TextRow(pica, cells...)}, Gutter: NoPad, Stretch: tt.stretch}
		g := table.measure(&setting{style: testStyle(), tall: endless}, tt.room)
		if d := cmp.Diff(tt.want, g.w); d != "" {
			t.Errorf("%s: (-want +got)\n%s", tt.name, d)
		}
	}
}

// TestFigures lines numbers up at the end of their whole part.
func TestFigures(t *testing.T) {
	words := []string{"3½", "12", "(108)", "¾", "4 15⁄16", "9 × 42"}
	table := Table{Columns: []Column{{Align: Figures}}}
	for i, w := range words {
		table.Rows = append(table.Rows, Row{Mark: fmt.Sprintf("row %d", i), Cells: []Cell{{Text: pica.Say(w)}}})
	}
	doc := testBook(table)
	var ends []length.Length
	for _, text := range textsMarked(doc.Pages[0], "row ") {
		whole := text.Words()
		if i := strings.IndexAny(whole, "½¾)× \u00a0"); i >= 0 {
			whole = whole[:i]
		}
		ends = append(ends, text.Base.X+pica.Say(whole).Width(testStyle().Fonts))
	}
	if len(ends) != len(words) || slices.Max(ends)-slices.Min(ends) > 1 {
		t.Errorf("the whole numbers end at %v", ends)
	}
}

// TestBaselines puts the first lines of a row's cells on one baseline, whatever
// their sizes.
func TestBaselines(t *testing.T) {
	s := testStyle()
	row := RichRow(s.Title.Say("M"), s.Label.Say("M\nM"), s.Body.Say("M"))
	row.Mark = "row"
	doc := testBook(Table{Columns: make([]Column, 3), Rows: []Row{row}})
	texts := textsMarked(doc.Pages[0], "row")
	if len(texts) != 4 || texts[0].Base.Y != texts[1].Base.Y || texts[0].Base.Y != texts[3].Base.Y {
		t.Errorf("texts %v", texts)
	}
}

// TestNoColumns takes a table without columns as one column.
func TestNoColumns(t *testing.T) {
	doc := testBook(Table{Rows: []Row{TextRow(pica, "only", "beyond")}})
	if got := doc.String(); !strings.Contains(got, `"only"`) || strings.Contains(got, `"beyond"`) {
		t.Errorf("got %s", got)
	}
}

// A word without end leaves its neighbours the room for their words.
func TestEndlessWord(t *testing.T) {
	s := testStyle()
	w := 180 * length.MM
	table := Table{Columns: []Column{{Share: 1}, {Share: 1}, {}}, Rows: []Row{
		TextRow(s.Body, strings.Repeat("W", 60), "all pieces come from one of three lengths", "binding waits until all else is cut")}}
	g := table.measure(&setting{style: s, tall: endless}, w)
	for i, least := range []length.Length{w / 4, w / 6, w / 6} {
		if g.w[i] < least {
			t.Errorf("column %d is %v wide, want %v or more", i, g.w[i], least)
		}
	}
	if n := len(lines(table.Rows[0].Cells[1].Text.atoms(s.Fonts), g.w[1])); n > 3 {
		t.Errorf("the words beside it go over %d lines", n)
	}
}

// Where a page starts inside a group of rows, what the group shares stands under
// the head; where it starts with a group, only the head does.
func TestTableAgain(t *testing.T) {
	s := testStyle()
	for _, size := range []int{7, 50, 200} {
		table := Table{Columns: make([]Column, 2), Head: []Row{TextRow(s.Label, "group", "row")}}
		for g := range 12 {
			again := &Row{Mark: fmt.Sprintf("again %d", g), Cells: TextRow(s.Label, fmt.Sprint(g), "continued").Cells}
			for i := range size {
				row := TextRow(s.Body, fmt.Sprint(g), fmt.Sprint(i))
				row.Mark, row.Again = fmt.Sprintf("row %d %d", g, i), again
				table.Rows = append(table.Rows, row)
			}
		}
		inside := 0
		for n, p := range testBook(table).Pages {
			var group, row int
			if _, err := fmt.Sscanf(textsMarked(p, "row")[0].What(), "row %d %d", &group, &row); err != nil {
				t.Fatal(err)
			}
			var want []string
			if row > 0 {
				inside++
				want = []string{fmt.Sprintf("again %d", group)}
			}
			var got []string
			for _, text := range textsMarked(p, "again") {
				got = append(got, text.What())
			}
			if got = slices.Compact(got); !slices.Equal(got, want) { // a cell may take several lines
				t.Errorf("groups of %d, page %d starts with row %d of group %d: %v is repeated, want %v", size, n+1, row, group, got, want)
			}
		}
		if inside == 0 {
			t.Errorf("groups of %d: no page starts inside one", size)
		}
	}
}

// A row that is higher than a page is one row: its drawings are drawn once, and one
// line ends it.
func TestHighRow(t *testing.T) {
	s := testStyle()
	words := strings.Repeat("word\n", 149) + "word"
	doc := testBook(Table{Columns: []Column{{Width: s.Tick}, {Share: 1}}, Rules: Lined, Rows: []Row{
		{Mark: "row", Cells: []Cell{
			{W: s.Tick, H: s.Body.Lead, Draw: func(p *Pen, b Box) { p.Disc(Point{b.X, b.MidY()}, "drawn", "1") }},
			{Text: s.Body.Say(words)},
		}},
	}})
	if len(doc.Pages) < 2 {
		t.Fatalf("%d pages", len(doc.Pages))
	}
	got := map[string]int{}
	for _, p := range doc.Pages {
		for _, it := range p.Items {
			got[it.What()]++
		}
	}
	for what, want := range map[string]int{"row": 150, "drawn": 2, "table rule": 1} { // a disc and its figure
		if got[what] != want {
			t.Errorf("%d of %q, want %d", got[what], what, want)
		}
	}
}

// A column's natural width is that of its widest cell that spans no other.
func TestNatural(t *testing.T) {
	s := testStyle()
	table := Table{Head: []Row{TextRow(s.Label, "a", "b")}, Rows: []Row{TextRow(s.Body, "x", "two words"), {Cells: []Cell{{Text: s.Body.Say("a cell over both columns"), Span: 2}}}, {Cells: []Cell{{W: 5000}}}}}
	for i, want := range []length.Length{5000, s.Body.Say("two words").Width(s.Fonts)} {
		if got := table.Natural(s, i); got != want {
			t.Errorf("column %d: %v, want %v", i, got, want)
		}
	}
}

// What stands beside a high drawing isn't torn apart, as long as a page holds both.
func TestRowBesideDrawing(t *testing.T) {
	h := NewBook(Setup{Paper: Letter, Style: testStyle()}).Body().H
	beside := func(high length.Length) []length.Length {
		row := Row{Cells: []Cell{{Blocks: []Block{brick(high, "a")}, Sit: Top}, {Blocks: []Block{brick(h*3/10, "b"), brick(h*3/10, "c")}, Sit: Top}}}
		var ys []length.Length
		for _, it := range testBook(Table{Columns: []Column{{Share: 1}, {Share: 1}}, Pad: NoPad, Rows: []Row{row}}).Pages[0].Items {
			if r, ok := it.(Rect); ok && r.Fill == Mist {
				ys = append(ys, r.Box.Y)
			}
		}
		return ys
	}
	for _, high := range []length.Length{h / 2, h * 4 / 5, h} {
		if ys := beside(high); len(ys) != 3 || ys[0] != ys[1] || ys[2]-ys[1] != h*3/10 {
			t.Errorf("beside %v: %v", high, ys)
		}
	}
}
