package sheets

import (
	"fmt"
	"slices"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/bag"
)

// A strictness says what may be shortened to make things fit.
type strictness int

const (
	whole       strictness = iota // nothing
	fabricsOnly                   // the list of fabrics
	headingToo                    // the heading too, and a size may stand in several lines
)

// A scale is the type of a heading, of sizes and of the rest, in hundredths of the
// least size.
type scale struct{ head, row, small length.Length }

// scales from the largest. Down to easy all can be read at arm's length.
var scales = []scale{
	{400, 340, 172}, {330, 290, 157}, {260, 240, 143}, {230, 215, 143}, {200, 190, 136}, {172, 164, 129},
	{157, 150, 121}, {143, 136, 114}, {129, 129, 107}, {114, 114, 100}, {100, 100, 100},
}

const (
	large = 6 // scales before this one are for labels with room
	easy  = 9 // scales from this one on are for want of anything else
)

// suits says whether a scale is in keeping with an area of that height: 18 pt in
// one of 47 mm, 11 pt in one of 21 mm.
func (s scale) suits(h length.Length) bool {
	return page.MinLabel*s.head/100 <= 2*length.MM+h/10
}

// An attempt is what a label is to hold, how large, and what may be shortened.
type attempt struct {
	rows    int // how many sizes are listed
	details bool
	fabrics int // lines of fabrics
	title   bool
	scale
	strict strictness
}

// attempts are the ways to fill an area h high with n sizes, in the order in which
// they are tried. Less important things are left out first: the plan's title, then
// a long list of fabrics, finished sizes and spares, sizes beyond the first, then
// the fabrics altogether.
func attempts(n int, h length.Length) []attempt {
	lines := 1 + int(h/(12*length.MM))
	n = min(n, 24)
	fill := []attempt{
		{rows: n, details: true, fabrics: lines, title: true},
		{rows: n, details: true, fabrics: lines},
		{rows: n, details: true, fabrics: 1},
		{rows: n, fabrics: 1},
		{rows: n},
	}
	for k := n - 1; k > 0; k-- {
		fill = append(fill, attempt{rows: k, fabrics: 1})
	}
	fill = append(fill, attempt{rows: 1})
	var all []attempt
	add := func(f attempt, scales []scale, strict strictness) {
		for _, s := range scales {
			if s.suits(h) {
				f.scale, f.strict = s, strict
				all = append(all, f)
			}
		}
	}
	for _, f := range fill {
		add(f, scales[:large], whole)
		add(f, scales[:large], fabricsOnly)
		add(f, scales[large:easy], whole)
		add(f, scales[large:easy], fabricsOnly)
		add(f, scales[large:easy], headingToo)
	}
	for _, f := range fill[2:] {
		add(f, scales[easy:], headingToo)
	}
	return all
}

// A line is one line or, for fabrics, a few, of the body.
type line struct {
	text  string
	style page.TextStyle
	what  string
	lines int
	above length.Length // distance from what is above
}

func (l line) height() length.Length { return l.above + l.style.Lead*length.Length(l.lines) }

// compose makes the lines of a frame's body, and says whether they fit.
func (b *bagLabel) compose(f frame, t attempt) ([]line, bool) {
	c := &composer{b: b, t: t, w: f.body.W}
	if f.head.W > 0 {
		if !c.fitsHead(f) {
			return nil, false
		}
	} else {
		c.heading(f.rule)
	}
	for _, r := range b.bag.Rows[:t.rows] {
		c.row(r)
	}
	if more := len(b.bag.Rows) - t.rows; more > 0 {
		c.more(more)
	}
	if t.fabrics > 0 {
		c.fabrics()
	}
	room := f.body.H
	if t.title && f.foot.H > 0 {
		room = f.foot.Y - f.body.Y - hair
	}
	return c.lines, !c.failed && c.h <= room
}

// A composer stacks lines.
type composer struct {
	b      *bagLabel
	t      attempt
	w      length.Length
	lines  []line
	h      length.Length
	failed bool
}

func (c *composer) add(l line) {
	if len(c.lines) == 0 {
		// The first line's capitals stand at the top of the body.
		l.above = -(l.style.Lead - c.b.capital(l.style)) / 2
	}
	c.lines = append(c.lines, l)
	c.h += l.height()
}

func (c *composer) fits(st page.TextStyle, s string) bool { return c.b.width(st, s) <= c.w }

// heading is in one line, or two of a middling size where there is room.
func (c *composer) heading(rule bool) {
	st := c.b.bold(c.t.head)
	l := line{style: st, what: "heading", lines: 1}
	words := headings(c.b.bag)
	set := c.b.style.Fonts
	switch {
	case c.fits(st, words[0]):
		l.text = words[0]
	case rule && c.t.head <= 200 && st.ShortenLines(set, c.w, 2, words[0]) == words[0]:
		l.text, l.lines = words[0], 2
	case c.t.strict < headingToo:
		c.failed = true
	case rule:
		l.text, l.lines = st.ShortenLines(set, c.w, 2, words...), 2
	default:
		l.text = st.Shorten(set, c.w, words...)
	}
	c.add(l)
	if rule {
		c.h += hair
	}
}

// fitsHead says whether the heading fits beside the badge.
func (c *composer) fitsHead(f frame) bool {
	st := c.b.bold(c.t.head)
	return st.Lead <= f.head.H && (c.t.strict == headingToo || c.b.width(st, headings(c.b.bag)[0]) <= f.head.W)
}

// row is a size in one line, or for want of width in several; figures are never
// cut. What its last line has room for is said below it.
func (c *composer) row(r bag.Row) {
	st := c.b.bold(c.t.row)
	texts := []string{}
	words := c.b.rowWords(r)
	if i := slices.IndexFunc(words, func(s string) bool { return c.fits(st, s) }); i >= 0 {
		texts = append(texts, words[i])
	} else if c.t.strict == headingToo {
		texts = c.broken(st, c.b.rowParts(r))
	} else {
		c.failed = true
		return
	}
	for i, text := range texts {
		l := line{text: text, style: st, what: "size", lines: 1}
		if i == 0 {
			l.above = st.Size / 5
		}
		c.add(l)
	}
	if c.t.details {
		c.detail(r)
	}
}

// broken puts parts into as few lines as they need.
func (c *composer) broken(st page.TextStyle, parts []string) []string {
	var texts []string
	for _, part := range parts {
		if !c.fits(st, part) {
			c.failed = true
		}
		if n := len(texts); n > 0 && c.fits(st, texts[n-1]+" "+part) {
			texts[n-1] += " " + part
			continue
		}
		texts = append(texts, part)
	}
	return texts
}

// detail says the finished size and the spares, as much as fits uncut.
func (c *composer) detail(r bag.Row) {
	st := c.b.small(c.t.small)
	words := c.b.details(r)
	if i := slices.IndexFunc(words, func(s string) bool { return c.fits(st, s) }); i >= 0 {
		c.add(line{text: words[i], style: st, what: "detail", lines: 1})
	}
}

func (c *composer) more(n int) {
	text := fmt.Sprintf("+ %d more sizes", n)
	if n == 1 {
		text = "+ 1 more size"
	}
	st := c.b.bold(c.t.small)
	c.failed = c.failed || !c.fits(st, text)
	c.add(line{text: text, style: st, what: "more", lines: 1})
}

// fabrics lists the bag's fabrics.
func (c *composer) fabrics() {
	st := c.b.small(c.t.small)
	words := fabricWords(c.b.bag.Fabrics())
	set := c.b.style.Fonts
	text := st.ShortenLines(set, c.w, c.t.fabrics, words...)
	if c.t.strict == whole && text != words[0] && (len(words) < 2 || text != words[1]) {
		c.failed = true
	}
	n := 1
	for n < c.t.fabrics && st.ShortenLines(set, c.w, n, text) != text {
		n++
	}
	c.add(line{text: text, style: st, what: "fabrics", lines: n, above: st.Size / 3})
}

// drawLines draws the lines from the body's top, the heading where the frame has
// it, and the title at the foot where there is room for it.
func (b *bagLabel) drawLines(p *page.Pen, f frame, t attempt, lines []line) {
	y := f.body.Y
	for i, l := range lines {
		y += l.above
		box := page.Box{X: f.body.X, Y: y, W: f.body.W, H: l.style.Lead * length.Length(l.lines)}
		if l.lines == 1 {
			p.Text(box, l.style, page.Left, b.mark(l.what), l.text)
		} else {
			p.Para(box, l.style.Say(l.text), page.Left, b.mark(l.what))
		}
		y = box.Bottom()
		if f.rule && i == 0 {
			p.HLine(f.body.X, y, f.body.W, p.Style.Hair, b.mark("rule"))
			y += hair
		}
	}
	if f.head.W > 0 {
		p.Text(f.head, b.bold(t.head), page.Left, b.mark("heading"), headings(b.bag)...)
	}
	if f.foot.H > 0 && y+hair <= f.foot.Y {
		b.title(p, f.foot, page.Right)
	}
}
