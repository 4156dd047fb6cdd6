package page

import "cutbinder/layout/length"

// A List is steps: each has a label hanging at the left, and words or blocks
// beside it. The column of labels is as wide as its widest.
type List struct {
	Items []ListItem
	// Center puts the labels in the middle of their column.
	Center bool
	// Whole keeps each step in one column, or on one page.
	Whole bool
}

// A ListItem is one step. Draw, if it is set, draws the label in place of the
// text: W wide, on the height of a line of running text.
type ListItem struct {
	Label  Rich
	Draw   func(p *Pen, b Box)
	W      length.Length
	Text   Rich
	Blocks []Block
	// With keeps the step on the page of the next.
	With bool
}

// slabs is a table of two columns without rules. A step of several lines may
// go over a page, its lines kept by twos as a paragraph's are, whether they are of
// one paragraph or of several: what has a number does not stand alone at the foot,
// and its last line not alone at the head.
func (l List) slabs(c *setting, w length.Length) []slab {
	label := length.Length(0)
	for i := range l.Items {
		it := &l.Items[i]
		label = max(label, it.Label.Width(c.style.Fonts), it.W)
	}
	in := label + c.style.Break
	var out []slab
	for i := range l.Items {
		out = append(out, l.item(c, &l.Items[i], label, in, w)...)
		if i < len(l.Items)-1 {
			out = append(out, slab{gap: true, h: c.style.Gap / 2, with: l.Items[i].With})
		}
	}
	return out
}

// item is one step's slabs: those of its words, set in, with the label drawn at
// the first.
func (l List) item(c *setting, it *ListItem, label, in, w length.Length) []slab {
	blocks := it.Blocks
	if it.Text != nil {
		blocks = append([]Block{Para{Text: it.Text}}, blocks...)
	}
	out := Indent{Left: in, Blocks: blocks}.slabs(c, w)
	if len(out) == 0 {
		out = []slab{{h: c.style.Body.Lead}}
	}
	first := out[0]
	align := Left
	if l.Center {
		align = Center
	}
	out[0].draw = func(p *Pen, b Box) {
		room := Box{b.X, b.Y, label, b.H}
		if it.Draw != nil {
			room.H = c.style.Body.Lead
			it.Draw(p, room)
		} else if as := it.Label.atoms(p.Style.Fonts); len(as) > 0 {
			base := first.base
			if base == 0 {
				base = p.baseline(as, leadOf(as, 0))
			}
			p.set(as, room, b.Y+base, align, "step")
		}
		if first.draw != nil {
			first.draw(p, b)
		}
	}
	if n := len(out); l.Whole {
		for k := range n {
			out[k].with = true
		}
	} else if n > 1 {
		out[0].with, out[n-2].with = true, true
	}
	out[len(out)-1].with = it.With
	return out
}
