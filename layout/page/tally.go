package page

import (
	"strconv"

	"cutbinder/layout/length"
)

// A Tally is rows of small boxes to tick, one for each of N things: in groups
// of five, with the running count after every ten and after the last. The last
// Spare of them are dashed.
type Tally struct {
	N, Spare int
	// Mark is put before each box's number in its mark: "tally dusk-1" marks
	// the seventh box "tally dusk-1 7".
	Mark string
}

// A tallyRow is how a row of boxes is spaced.
type tallyRow struct {
	box, gap, five length.Length // a box, the white after it, the white after five
	count          length.Length // room for the running count
	ten            length.Length // a group of ten with its count and the white after it
	tens           int           // groups of ten in a row
	lead           length.Length // from one row to the next
}

// spacing fits groups of ten into a width; at least one goes into a row, whose
// boxes shrink if they must.
func (t Tally) spacing(s *Style, w length.Length) tallyRow {
	r := tallyRow{box: s.Tally}
	digits := max(len(strconv.Itoa(t.N)), 2)
	figure := s.Label.Say("0").Width(s.Fonts)
	for {
		r.gap, r.five = r.box/5, r.box*3/5
		r.count = figure*length.Length(digits) + r.box/3
		bare := 10*r.box + 8*r.gap + r.five + r.count
		r.ten = bare + r.box*4/5
		if bare <= w || r.box <= s.Label.Size/2 {
			r.tens = max(1, int((w+r.ten-bare)/r.ten))
			r.lead = max(r.box*7/5, s.Label.Lead)
			return r
		}
		r.box = r.box * 9 / 10
	}
}

// slabs is one slab a row of boxes, the first two rows together.
func (t Tally) slabs(c *setting, w length.Length) []slab {
	r := t.spacing(c.style, w)
	per := r.tens * 10
	var out []slab
	for from := 0; from < t.N; from += per {
		out = append(out, slab{
			h: r.lead, with: from == 0 && t.N > per,
			draw: func(p *Pen, b Box) { t.row(p, b, r, from, min(from+per, t.N)) },
		})
	}
	return out
}

// row draws the boxes from+1 to to.
func (t Tally) row(p *Pen, b Box, r tallyRow, from, to int) {
	y := b.Y + (b.H-r.box)/2
	for i := from; i < to; i++ {
		k := i - from
		x := b.X + length.Length(k/10)*r.ten + length.Length(k%10)*(r.box+r.gap)
		if k%10 >= 5 {
			x += r.five - r.gap
		}
		st := p.Style.Hair
		if i >= t.N-t.Spare {
			st = st.Broken(Dotted)
		}
		p.Rect(Box{x, y, r.box, r.box}, White, st, t.Mark+" "+strconv.Itoa(i+1))
		if i+1 == t.N || (i+1)%10 == 0 {
			room := Box{x + r.box + r.box/3, b.Y, r.count, b.H}
			p.Text(room, p.Style.Label, Left, t.Mark+" count", strconv.Itoa(i+1))
		}
	}
}
