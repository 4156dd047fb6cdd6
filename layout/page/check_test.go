package page

import (
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// testStyle is the usual look.
func testStyle() *Style { return NewStyle(fonts.Default()) }

// testPage is one page drawn by a function.
func testPage(draw func(p *Pen)) Page {
	live := Box{0, 0, Letter.W, Letter.H}
	p := NewPen(testStyle(), live.Inset(Edge))
	draw(p)
	return Page{Paper: Letter, Live: p.Live, Label: "1", Items: p.Items()}
}

func TestCheck(t *testing.T) {
	const in = length.Inch
	box := Box{2 * in, 2 * in, 2 * in, in / 2}
	words := func(p *Pen) { p.Text(box, p.Style.Body, Center, "words", "some words") }
	dark := make([]bool, 21*21)
	code := func(p *Pen) { p.Code(Box{2 * in, 4 * in, in, in}, 21, dark, 4, "code") }
	tests := []struct {
		name string
		draw func(p *Pen)
		want []FaultKind
	}{
		{"nothing", func(p *Pen) {}, nil},
		{"words", words, nil},
		{"words in a box", func(p *Pen) { p.Rect(box, Mist, p.Style.Hair, ""); words(p) }, nil},
		{"words over a line", func(p *Pen) { p.HLine(in, box.MidY(), 4*in, p.Style.Hair, ""); words(p) }, []FaultKind{Crossed}},
		{"words under a line", func(p *Pen) { words(p); p.VLine(box.MidX(), in, 2*in, p.Style.Hair, "") }, []FaultKind{Crossed}},
		{"words over a slanting line", func(p *Pen) {
			p.Line(Point{box.X, box.Y}, Point{box.Right(), box.Bottom()}, p.Style.Hair, "")
			words(p)
		}, []FaultKind{Crossed}},
		{"words beside a slanting line", func(p *Pen) {
			p.Line(Point{box.X, box.Y}, Point{box.X + in/4, box.Bottom()}, p.Style.Hair, "")
			words(p)
		}, nil},
		{"words over a line hidden by a ground", func(p *Pen) {
			p.HLine(in, box.MidY(), 4*in, p.Style.Hair, "")
			p.Rect(box, White, Stroke{}, "")
			words(p)
		}, nil},
		{"words on an edge", func(p *Pen) { p.Rect(box.Shift(in, 0), NoInk, p.Style.Hair, ""); words(p) }, []FaultKind{Crossed}},
		{"words half on a tint", func(p *Pen) { p.Rect(box.Shift(in, 0), Mist, Stroke{}, ""); words(p) }, []FaultKind{Crossed}},
		{"words under a tint", func(p *Pen) { words(p); p.Rect(box, Mist, Stroke{}, "") }, []FaultKind{Covered}},
		{"words on a hatch", func(p *Pen) { p.Hatch(box, Waste, Stroke{}, ""); words(p) }, []FaultKind{Crossed}},
		{"words twice", func(p *Pen) { words(p); words(p) }, []FaultKind{Overlap}},
		{"words on a hidden line twice", func(p *Pen) { words(p); p.Rect(box, White, Stroke{}, ""); words(p) }, []FaultKind{Covered, Overlap}},
		{"a badge", func(p *Pen) { p.Badge(box, p.Style.Bold, "", "bag 7") }, nil},
		{"black on black", func(p *Pen) { p.Rect(box, Black, Stroke{}, ""); words(p) }, []FaultKind{Faint}},
		{"white on white", func(p *Pen) { p.Text(box, p.Style.Number, Center, "", "3") }, []FaultKind{Faint}},
		{"off the page", func(p *Pen) { p.HLine(0, in, in, p.Style.Hair, "") }, []FaultKind{OffPage}},
		{"too wide", func(p *Pen) { p.RichText(Box{in, in, in / 4, in}, p.Style.Body.Say("some words"), Left, "") }, []FaultKind{TooWide}},
		{"too high", func(p *Pen) { p.Text(Box{in, in, in, 300}, p.Style.Body, Left, "", "some words") }, []FaultKind{TooWide}},
		{"no glyph", func(p *Pen) { p.Text(box, p.Style.Body, Left, "", "縫") }, []FaultKind{NoGlyph}},
		{"small type", func(p *Pen) {
			st := p.Style.Body
			st.Size = MinLabel - 1
			p.Text(box, st, Left, "", "words")
		}, []FaultKind{TooSmall}},
		{"composed fraction", func(p *Pen) { p.Text(box, p.Style.Label, Left, "", "3 15⁄16") }, nil},
		{"thin line", func(p *Pen) { p.HLine(in, in, in, Stroke{Width: MinLine - 1, Ink: Black}, "") }, []FaultKind{TooSmall}},
		{"a code", code, nil},
		{"a code in a box", func(p *Pen) { p.Frame(Box{in, 3 * in, 3 * in, 3 * in}, NoInk, p.Style.Hair, ""); code(p) }, nil},
		{"a line in the quiet zone", func(p *Pen) { code(p); p.HLine(in, 4*in+20, 3*in, p.Style.Hair, "") }, []FaultKind{Quiet}},
		{"words in the quiet zone", func(p *Pen) { code(p); p.TextAt(Point{2 * in, 4*in + 200}, p.Style.Label, Left, "", "K7Q") }, []FaultKind{Quiet}},
		{"small modules", func(p *Pen) { p.Code(Box{in, in, in / 4, in / 4}, 21, dark, 4, "") }, []FaultKind{TooSmall}},
		{"narrow quiet zone", func(p *Pen) { p.Code(Box{in, in, in, in}, 21, dark, 2, "") }, []FaultKind{Quiet}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := Check([]Page{testPage(tt.draw)})
			if len(got) != len(tt.want) {
				t.Fatalf("got %v, want %v", got, tt.want)
			}
			for i := range got {
				if got[i].Kind != tt.want[i] {
					t.Errorf("fault %d: got %v, want %v", i, got[i], tt.want[i])
				}
			}
		})
	}
}
