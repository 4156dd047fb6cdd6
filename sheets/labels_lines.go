package sheets

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

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
	if f.head.H == 0 {
		c.heading(f.rule)
	}
	perRow := b.card && len(b.bag.Rows) > 1 && len(b.bag.Fabrics()) > 1
	for _, r := range b.bag.Rows[:t.rows] {
		if c.failed || c.h > f.body.H {
			return nil, false
		}
		c.row(r)
		if perRow && t.fabrics > 0 {
			c.fabrics(r.Fabrics)
		}
	}
	switch more := len(b.bag.Rows) - t.rows; {
	case t.rows == 0:
		c.more(fmt.Sprintf("%d sizes", more))
		c.more(say.Count(b.bag.Count())+" pieces", say.Count(b.bag.Count()))
	case more > 0:
		c.more(fmt.Sprintf("+ %d more %s", more, say.Plural(more, "size", "sizes")), fmt.Sprintf("+ %d more", more))
	}
	if t.fabrics > 0 && !perRow {
		c.fabrics(b.bag.Fabrics())
	}
	room := f.body.H
	if t.title && f.foot.H > 0 {
		room = f.foot.Y - f.body.Y - hair
	}
	return c.lines, !c.failed && c.h <= room
}

// inkTop is how far below a line's top its capitals begin: the first line's stand
// at the top of the body, beside the badge's edge. It is less in a paragraph, whose
// lines have room for what hangs below them too.
func (l *labeler) inkTop(line line) length.Length {
	st := line.style
	st.Weight = fonts.Regular // whose capitals the engine centres
	mid := (st.Lead + l.capital(st)) / 2
	if line.lines > 1 {
		mid -= st.Size / 10
	}
	return mid - l.capital(line.style)
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
		l.above = -c.b.inkTop(l)
	}
	c.lines = append(c.lines, l)
	c.h += l.height()
}

func (c *composer) fits(st page.TextStyle, s string) bool { return c.b.width(st, s) <= c.w }

// close says that lines stand as close as they can: a heading of two on the smallest
// labels, which has the least type.
func (c *composer) close() bool { return c.t.strict == twoLines && c.t.scale == scales[len(scales)-1] }

// closeLead is the least distance of two lines of a heading.
func closeLead(st page.TextStyle) length.Length { return st.Size * 21 / 20 }

// heading is in one line, or of a middling size in several where there is room.
func (c *composer) heading(rule bool) {
	st := c.b.bold(c.t.head)
	if c.close() {
		st.Lead = closeLead(st)
	}
	l := line{style: st, what: "heading", lines: 1}
	words := headings(c.b.bag)
	set := c.b.style.Fonts
	most := 1
	switch {
	case rule && c.b.card:
		most = 3
	case rule && c.t.head <= 200, c.t.strict == twoLines:
		most = 2
	}
	if c.t.strict < twoLines {
		words = []string{words[0], ""} // whole, or else nothing
	}
	l.text = st.ShortenLines(set, c.w, most, words...)
	c.failed = c.failed || l.text == ""
	for l.lines < most && st.ShortenLines(set, c.w, l.lines, l.text, "") == "" {
		l.lines++
	}
	if c.t.strict == twoLines && l.lines == 1 { // there are better ways to set it
		c.failed = true
	}
	c.add(l)
	if rule {
		c.h += hair
	}
}

// row is a size in one line, or for want of width in several; figures are never
// cut. What its last line has room for is said below it.
func (c *composer) row(r bag.Row) {
	st := c.b.bold(c.t.row)
	if c.close() {
		st.Lead = st.Size * 11 / 10
	}
	texts := []string{}
	words := c.b.rowWords(r)
	if i := slices.IndexFunc(words, func(s string) bool { return c.fits(st, s) }); i >= 0 {
		texts = append(texts, words[i])
	} else if c.t.strict == sizesToo {
		st.Lead = st.Size * 11 / 10
		texts = c.broken(st, c.b.rowParts(r))
	} else {
		c.failed = true
		return
	}
	for i, text := range texts {
		l := line{text: text, style: st, what: "size", lines: 1}
		if i == 0 && !c.close() {
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

// detail says the finished size and the spares, as much as fits uncut: of one size
// on a label with room for lists in several lines, so that counts add up.
func (c *composer) detail(r bag.Row) {
	st := c.b.small(c.t.small)
	words, most := c.b.details(r), 1
	if c.t.rows == 1 {
		most = max(c.t.fabrics-1, 1)
	}
	for range most {
		i := slices.IndexFunc(words, func(s string) bool { return c.fits(st, s) })
		if i < 0 {
			return
		}
		c.add(line{text: words[i], style: st, what: "detail", lines: 1})
		rest := strings.TrimPrefix(words[0], words[i])
		if len(rest) == len(words[0]) || rest == "" {
			return
		}
		words = shorter(parted(rest))
	}
}

// more says how many sizes there are besides, in one of the wordings.
func (c *composer) more(wordings ...string) {
	st := c.b.bold(c.t.small)
	for _, text := range wordings {
		if c.fits(st, text) {
			c.add(line{text: text, style: st, what: "more", lines: 1})
			return
		}
	}
	c.failed = true
}

// fabrics lists the fabrics of the bag, or on a card of each size.
func (c *composer) fabrics(shares []bag.Share) {
	st := c.b.small(c.t.small)
	words := fabricWords(c.b.voice, shares)
	if words[0] == "" {
		return
	}
	set := c.b.style.Fonts
	switch {
	case c.t.strict == whole:
		words = append(words[:min(2, len(words))], "")
	case c.t.strict == fabricsOnly && len(words) > 1:
		words[len(words)-1] = "" // how many fabrics there are says too little
	}
	text := st.ShortenLines(set, c.w, c.t.fabrics, words...)
	if text == "" {
		c.failed = true
		return
	}
	n := 1
	for n < c.t.fabrics && st.ShortenLines(set, c.w, n, text, "") == "" {
		n++
	}
	c.add(line{text: c.unbroken(st, text, n), style: st, what: "fabrics", lines: n, above: st.Size / 3})
}

// unbroken is a list that breaks between fabrics rather than in the name of one, where
// that takes no more lines.
func (c *composer) unbroken(st page.TextStyle, text string, lines int) string {
	items := strings.Split(text, ", ")
	for i, item := range items {
		if c.fits(st, item+",") {
			items[i] = strings.ReplaceAll(item, " ", "\u00a0")
		}
	}
	if whole := strings.Join(items, ", "); st.ShortenLines(c.b.style.Fonts, c.w, lines, whole, "") != "" {
		return whole
	}
	return text
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
	if f.head.H > 0 {
		b.headBeside(p, f.head, t)
	}
	if f.foot.H > 0 && y+hair <= f.foot.Y {
		b.title(p, f.foot, page.Right)
	}
}

// headBeside sets the heading beside the badge: whole in one line, or in two, as
// large as can be, or else shortened in a size that can be read at arm's length.
func (b *bagLabel) headBeside(p *page.Pen, box page.Box, t attempt) {
	st, text, lines := b.fitHead(box, max(t.head, 143), 1)
	if text != headings(b.bag)[0] {
		st, text, lines = b.fitHead(box, max(t.head, 143), 2)
	}
	if lines == 1 {
		p.Text(box, st, page.Left, b.mark("heading"), text)
		return
	}
	box.Y += (box.H - 2*st.Lead) / 2
	p.Para(box, st.Say(text), page.Left, b.mark("heading"))
}

// fitHead fits the heading into a box, in type of at most that size and in at most
// so many lines. One line must be easy to read.
func (b *bagLabel) fitHead(box page.Box, largest length.Length, most int) (st page.TextStyle, text string, lines int) {
	words := headings(b.bag)
	set := b.style.Fonts
	for _, s := range scales {
		try := b.bold(s.head)
		if most > 1 && s == scales[len(scales)-1] {
			try.Lead = closeLead(try)
		}
		fit := min(int(box.H/try.Lead), most)
		if fit == 0 || s.head > largest || most == 1 && s.head < 129 {
			continue
		}
		short := try.ShortenLines(set, box.W, fit, words...)
		if text == "" || short == words[0] || s.head >= 129 {
			st, text, lines = try, short, fit
		}
		if text == words[0] {
			break
		}
	}
	if lines > 1 && st.ShortenLines(set, box.W, 1, text) == text {
		lines = 1
	}
	return st, text, lines
}
