package page

import (
	"slices"

	"cutbinder/layout/length"
)

// A Block is something that is flowed onto pages: it takes the width it is
// given and as much height as it needs. The blocks are Para, Heading, List,
// Table, Tally, Tick, Drawing, Columns, WriteOn,
// Framed, Indent, Keep, Gap and Break.
type Block interface {
	slabs(c *setting, w length.Length) []slab
}

// A setting is what blocks need to know to cut themselves into slabs.
type setting struct {
	style *Style
	// tall is the height of a whole page's body: no slab should be higher.
	tall length.Length
	// inColumns is set for what stands in columns already.
	inColumns bool
}

// A slab is a piece of a block that is not broken over pages.
type slab struct {
	h    length.Length
	draw func(p *Pen, b Box)
	// with keeps the slab on the page of the one after it.
	with bool
	// gap is set for white space, which is dropped at the top of a page;
	// of neighbouring gaps only the largest counts.
	gap bool
	// head is drawn before the slab where it starts a page, as table rows have
	// it; it is nil for the slabs of the head itself.
	head []slab
	// next starts a new page.
	next bool
	// columns is set for a slab that stands for blocks in columns; h is then
	// what it needs at least.
	columns *columnSet
	// base is where the slab's first baseline lies, to line up cells of a row;
	// 0 where it has none.
	base length.Length
}

// A Para is text broken into lines. Whole, where it is set, is the same text with
// more words kept together: it stands in place of Text where it takes no more lines.
type Para struct {
	Text  Rich
	Whole Rich
	Align Align
	Mark  string
}

// slabs is one slab a line. A paragraph's first two lines stay together, and
// its last two.
func (t Para) slabs(c *setting, w length.Length) []slab {
	var out []slab
	lead := length.Length(0)
	ls := lines(t.Text.atoms(c.style.Fonts), max(w, 1)) // 0 would set no limit
	if t.Whole != nil {
		if whole := lines(t.Whole.atoms(c.style.Fonts), max(w, 1)); len(whole) <= len(ls) {
			ls = whole
		}
	}
	pen := &Pen{Style: c.style}
	for i, l := range ls {
		lead = leadOf(l, lead)
		base := pen.baseline(l, lead)
		out = append(out, slab{
			h: lead, base: base,
			with: len(ls) > 1 && (i == 0 || i == len(ls)-2),
			draw: func(p *Pen, b Box) { p.set(l, b, b.Y+base, t.Align, t.Mark) },
		})
	}
	return out
}

// A Heading starts a part of a sheet: small spaced capitals over a rule, with
// helping words at the right, or the first of Shorter that has room where Aside
// has none. It stays with what follows.
type Heading struct {
	Text    string
	Aside   string
	Shorter []string
}

// slabs is a gap, the line with its rule, and a smaller gap.
func (h Heading) slabs(c *setting, w length.Length) []slab {
	s := c.style
	lead := max(s.Caps.Lead, s.Label.Lead)
	draw := func(p *Pen, b Box) {
		line, _ := b.Top(lead)
		used := p.Text(line, s.Caps, Left, "heading", h.Text)
		if room := b.W - used.W - s.Break; h.Aside != "" && room > 0 {
			p.Text(Box{b.Right() - room, line.Y, room, lead}, s.Label, Right, "aside", append([]string{h.Aside}, h.Shorter...)...)
		}
		p.HLine(b.X, b.Bottom(), b.W, s.Rule, "heading rule")
	}
	return []slab{
		{gap: true, h: s.Break},
		{h: lead + s.Gap/2, draw: draw, with: true},
		{gap: true, h: s.Space, with: true},
	}
}

// A Gap is white space. It is dropped at the top of a page, and of gaps that
// meet only the largest counts.
type Gap struct{ H length.Length }

func (g Gap) slabs(*setting, length.Length) []slab { return []slab{{gap: true, h: g.H}} }

// A Break ends the page.
type Break struct{}

func (Break) slabs(*setting, length.Length) []slab { return []slab{{next: true}} }

// A Drawing is a box of a height of its own that a function draws in. The
// function may be called more than once, for as many pens, and must draw the
// same each time.
type Drawing struct {
	// H is the height; Height, where it is set, gives it for a width.
	H      length.Length
	Height func(w length.Length) length.Length
	Draw   func(p *Pen, b Box)
}

func (d Drawing) slabs(_ *setting, w length.Length) []slab {
	h := d.H
	if d.Height != nil {
		h = d.Height(w)
	}
	return []slab{{h: h, draw: d.Draw}}
}

// A Tick is a box to tick, in line with a line of running text.
type Tick struct{ Mark string }

func (t Tick) slabs(c *setting, _ length.Length) []slab {
	s := c.style
	base := (&Pen{Style: s}).baseline(s.Body.Say("0").atoms(s.Fonts), s.Body.Lead)
	draw := func(p *Pen, b Box) { p.TickBox(b, t.Mark) }
	return []slab{{h: s.Body.Lead, base: base, draw: draw}}
}

// A Keep holds blocks on one page if they fit on one; else they break as they do by
// themselves. With Next it keeps them with what follows too.
type Keep struct {
	Blocks []Block
	Next   bool
}

func (k Keep) slabs(c *setting, w length.Length) []slab {
	out := slabsOf(c, w, k.Blocks)
	// Columns are dealt over pages by themselves, so what is kept sets them whole.
	n := len(out)
	if kept := solid(out); !hasBreak(out) && heightOf(kept) <= c.tall {
		out, n = kept, len(kept)
		for i := range n - 1 {
			out[i].with = true
		}
	}
	if n > 0 {
		out[n-1].with = k.Next
	}
	if n > 0 && out[0].gap { // a gap before needs no company
		out[0].with = false
	}
	return out
}

// hasBreak reports whether slabs hold one that ends a page.
func hasBreak(slabs []slab) bool {
	return slices.ContainsFunc(slabs, func(s slab) bool { return s.next })
}

// A Framed is blocks in a box with round corners, in one piece. What is too high
// for a page is set in without the box.
type Framed struct {
	Blocks []Block
	Fill   Ink
	Mark   string
}

func (f Framed) slabs(c *setting, w length.Length) []slab {
	pad := c.style.Space
	placed, _, h := stack(solid(slabsOf(&setting{style: c.style, tall: endless}, w-2*pad, f.Blocks)), endless, false)
	if h+2*pad > c.tall {
		return Indent{Left: pad, Right: pad, Blocks: f.Blocks}.slabs(c, w)
	}
	draw := func(p *Pen, b Box) {
		p.Frame(b, f.Fill, p.Style.Hair, f.Mark)
		for _, s := range placed {
			s.drawAt(p, b.Inset(pad))
		}
	}
	return []slab{{h: h + 2*pad, draw: draw}}
}

// A WriteOn is a line to write on, with words after it, as high as a line of
// running text.
type WriteOn struct{ After, Mark string }

func (l WriteOn) slabs(c *setting, _ length.Length) []slab {
	s := c.style
	base := (&Pen{Style: s}).baseline(s.Body.Say("0").atoms(s.Fonts), s.Body.Lead)
	draw := func(p *Pen, b Box) { p.FillIn(b, l.After, l.Mark) }
	return []slab{{h: s.Body.Lead, base: base, draw: draw}}
}

// An Indent sets blocks in from the left and the right.
type Indent struct {
	Left, Right length.Length
	Blocks      []Block
}

func (in Indent) slabs(c *setting, w length.Length) []slab {
	out := slabsOf(c, w-in.Left-in.Right, in.Blocks)
	for i := range out {
		if draw := out[i].draw; draw != nil {
			out[i].draw = func(p *Pen, b Box) {
				draw(p, Box{b.X + in.Left, b.Y, b.W - in.Left - in.Right, b.H})
			}
		}
	}
	return out
}

// slabsOf is the slabs of blocks one after another.
func slabsOf(c *setting, w length.Length, blocks []Block) []slab {
	var out []slab
	for _, b := range blocks {
		out = append(out, b.slabs(c, w)...)
	}
	return out
}

// HeightOf is how high blocks stand when nothing breaks them, in a width.
func HeightOf(s *Style, w length.Length, blocks ...Block) length.Length {
	_, _, h := stack(solid(slabsOf(&setting{style: s, tall: endless}, w, blocks)), endless, false)
	return h
}

// Blocks draws blocks in a box from its top, as one piece, and returns the
// height they took.
func (p *Pen) Blocks(b Box, blocks ...Block) length.Length {
	placed, _, h := stack(solid(slabsOf(&setting{style: p.Style, tall: endless}, b.W, blocks)), endless, false)
	for _, s := range placed {
		s.drawAt(p, b)
	}
	return h
}

// endless is a height nothing reaches.
const endless = length.Length(1) << 40
