package page

import (
	"slices"
	"strconv"
	"strings"

	"cutbinder/layout/length"
)

// The margins. The binding side leaves room for punched holes; the outer side
// for the thumb index, which stands between the body and the paper's edge.
// Together they leave 7 in of Letter: 42 in of cloth at 1:6. Each leaves more
// than 5 mm between the body and the holes or the thumb index, where drawings
// put the numbers and measures that belong to their edges.
const (
	bindingMargin = 216 * length.MM / 10
	outerMargin   = 165 * length.MM / 10
	topMargin     = 3 * length.Inch / 8
	bottomMargin  = 3 * length.Inch / 8
	// punched is how far from the binding edge holes and their rings reach.
	punched = 5 * length.Inch / 8
	// thumb is the width of a thumb index.
	thumb = 43 * length.MM / 10
)

// live is the part of a page that ink may stand on: off the edges, and off the
// holes on the binding side.
func (b *Book) live(leftHand bool) Box {
	x := length.Length(punched)
	if leftHand {
		x = Edge
	}
	return Box{x, Edge, b.Paper.W - punched - Edge, b.Paper.H - 2*Edge}
}

// body is the part of a page that blocks are flowed on.
func (b *Book) body(leftHand bool) Box {
	x := length.Length(bindingMargin)
	if leftHand {
		x = outerMargin
	}
	top := topMargin + b.headHeight() + b.Style.Space*3/2
	foot := bottomMargin + b.footHeight() + b.Style.Space
	return Box{x, top, b.Paper.W - bindingMargin - outerMargin, b.Paper.H - top - foot}
}

// Body is the box that blocks are flowed on, on right-hand pages: sheets ask
// it for the width they have.
func (b *Book) Body() Box { return b.body(false) }

// headHeight is from the header's top to its rule.
func (b *Book) headHeight() length.Length {
	return max(b.Style.Caps.Lead, b.Style.Label.Lead) + b.Style.Gap/2
}

// footHeight is from the footer's rule to its foot.
func (b *Book) footHeight() length.Length { return b.Style.Gap + b.Style.Label.Lead }

// finish draws what stands on every page and makes the page.
func (b *Book) finish(leaves []leaf, i int) Page {
	l := leaves[i]
	page := Page{Paper: b.Paper, Live: l.pen.Live, Label: strconv.Itoa(i + 1)}
	if !l.raw {
		p := &Pen{Style: b.Style, Live: l.pen.Live, LeftHand: l.pen.LeftHand}
		if l.section >= 0 {
			b.header(p, &b.sections[l.section], l.more)
			b.thumb(p, l.section)
		}
		b.footer(p, i+1, len(leaves))
		page.Items = p.items
	}
	page.Items = append(page.Items, l.pen.items...)
	return page
}

// header draws the section's heading and the document's over a rule.
func (b *Book) header(p *Pen, s *Section, more bool) {
	words := s.Head
	if more && s.Continued != "" {
		words = s.Continued
	}
	body := b.body(p.LeftHand)
	h := b.headHeight()
	line := Box{body.X, topMargin, body.W, h - b.Style.Gap/2}
	head := p.Text(Box{line.X, line.Y, line.W * 2 / 3, line.H}, b.Style.Caps, Left, "header", words)
	room := line.W - head.W - b.Style.Break
	right := Box{line.Right() - room, line.Y, room, line.H}
	p.Text(right, b.Style.Label.In(Black), Right, "header", b.headIn(room))
	p.HLine(body.X, topMargin+h, body.W, b.Style.Heavy, "header rule")
}

// headIn is the wording of Head for a room; one that is cut keeps its end, unless
// that takes more than half of it.
func (b *Book) headIn(room length.Length) string {
	st := b.Style.Label
	text := st.Shorten(b.Style.Fonts, room, b.Head...)
	end := st.Say(b.HeadEnd).Width(b.Style.Fonts)
	if len(b.Head) == 0 || end > room/2 || slices.Contains(b.Head, text) {
		return text
	}
	return st.Shorten(b.Style.Fonts, room-end, strings.TrimSuffix(b.Head[len(b.Head)-1], b.HeadEnd)) + b.HeadEnd
}

// footer draws the plan's mark, the page number and the print check under a
// rule.
func (b *Book) footer(p *Pen, n, of int) {
	s, body := b.Style, b.body(p.LeftHand)
	top := b.Paper.H - bottomMargin - b.footHeight()
	p.HLine(body.X, top, body.W, s.Hair.With(Mid), "footer rule")
	line := Box{body.X, top + s.Gap, body.W, s.Label.Lead}
	number := strconv.Itoa(n)
	if b.PageOf != nil {
		number = b.PageOf(n, of)
	}
	mid := p.Text(line, s.Label.In(Black).Heavy(), Center, "page number", number)
	side := (body.W-mid.W)/2 - s.Gap*2
	p.Text(Box{line.X, line.Y, side, line.H}, s.Label, Left, "footer", b.Foot...)
	check := b.CheckLen
	if check == 0 {
		check = length.Inch
	}
	p.Ruler(Box{line.Right() - side, line.Y, side, line.H}, check, b.Check, "print check")
}

// thumb draws the section's thumb index on the outer edge. The indexes of a
// book step down the page in the order of their sections and start again at
// the top when they reach its foot.
func (b *Book) thumb(p *Pen, section int) {
	s := b.sections[section]
	if s.Thumb == "" {
		return
	}
	k := 0
	for i := range section {
		if b.sections[i].Thumb != "" {
			k++
		}
	}
	body := b.body(p.LeftHand)
	h := b.Style.Number.Size * 9 / 4
	slots := max(int(body.H/(h+b.Style.Gap/2)), 1)
	y := body.Y + length.Length(k%slots)*(h+b.Style.Gap/2)
	x := b.Paper.W - Edge - thumb
	if p.LeftHand {
		x = Edge
	}
	p.Rect(Box{x, y, thumb, h}, Black, Stroke{}, "thumb index")
	p.Text(Box{x, y, thumb, h}, b.Style.Number, Center, "thumb index", s.Thumb)
}
