package sheets

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// A frame is how an area is divided: a badge, which bag of how many, and the body
// for the rest. In a wide area the body stands right of the badge; in a narrow one
// below it.
type frame struct {
	area  page.Box // all of it
	badge page.Box
	of    page.Box // beside or below the badge
	head  page.Box // the heading's place beside the badge; of no height where it is in the body
	body  page.Box
	foot  page.Box // for the title; of no height where it stands elsewhere
	rule  bool     // a line under the heading
}

// frames are the ways to divide an area, the best first. A very small one may keep
// the heading beside the badge and do without "bag 7 of 24".
func (b *bagLabel) frames(area page.Box) []frame {
	switch {
	case area.W >= 55*length.MM || area.H < 22*length.MM && area.W >= 34*length.MM:
		return []frame{b.wideFrame(area)}
	case area.W >= 24*length.MM:
		return []frame{b.narrowFrame(area)}
	}
	f := b.badgeFrame(area, 5*length.MM)
	tiny := f
	tiny.head, tiny.of.W = f.of, 0
	return []frame{f, tiny}
}

// wideFrame has the badge in a column of its own.
func (b *bagLabel) wideFrame(area page.Box) frame {
	st := b.ofStyle(area)
	side := min(area.H*46/100, 20*length.MM)
	shortest := ofWords(b.bag)
	column := max(side, b.width(st, shortest[len(shortest)-1]))
	badge := page.Box{X: area.X, Y: area.Y, W: column, H: side}
	of := page.Box{X: area.X, Y: badge.Bottom() + hair, W: column, H: st.Lead}
	gap := min(side/4, 4*length.MM)
	body := page.Box{X: badge.Right() + gap, Y: area.Y, W: area.Right() - badge.Right() - gap, H: area.H}
	f := frame{area: area, badge: badge, of: of, body: body, rule: area.H >= 28*length.MM}
	if lead := b.small(100).Lead; f.rule {
		f.foot = page.Box{X: body.X, Y: area.Bottom() - lead, W: body.W, H: lead}
	}
	return f
}

// narrowFrame has the badge above the body, and beside it the heading over which
// bag it is.
func (b *bagLabel) narrowFrame(area page.Box) frame {
	f := b.badgeFrame(area, min(max(area.H*34/100, 7*length.MM), 12*length.MM))
	of := b.ofStyle(area).Lead
	f.head, f.of = f.of.Top(f.of.H - of)
	if lead := b.small(100).Lead; area.H >= 28*length.MM {
		f.foot = page.Box{X: area.X, Y: area.Bottom() - lead, W: area.W, H: lead}
	}
	return f
}

// badgeFrame has the badge, h high, above the body, and beside it which bag it is.
func (b *bagLabel) badgeFrame(area page.Box, h length.Length) frame {
	w := max(h, b.width(b.bold(100), fmt.Sprint(b.bag.Number))+4*hair)
	f := frame{area: area, badge: page.Box{X: area.X, Y: area.Y, W: w, H: h}}
	x := f.badge.Right() + 3*hair
	f.of = page.Box{X: x, Y: area.Y, W: area.Right() - x, H: h}
	y := f.badge.Bottom() + min(3*hair, area.H/18)
	f.body = page.Box{X: area.X, Y: y, W: area.W, H: area.Bottom() - y}
	return f
}

// ofStyle is the type of "bag 7 of 24".
func (b *bagLabel) ofStyle(area page.Box) page.TextStyle {
	if area.H >= 28*length.MM {
		return b.small(120)
	}
	return b.small(100)
}

// drawFrame draws the badge and which bag it is.
func (b *bagLabel) drawFrame(p *page.Pen, f frame) {
	p.Polygon(page.RoundBox(f.badge, min(f.badge.H/10, 2*length.MM)), page.Black, page.Stroke{}, b.mark("badge"))
	number := fmt.Sprint(b.bag.Number)
	st := b.bold(100)
	// The digits are as high as they are wide in most faces; they get half the badge.
	for size := f.badge.H * 3 / 4; size > page.MinLabel; size = size * 9 / 10 {
		if try := st.Sized(size); b.width(try, number) <= f.badge.W*4/5 {
			st = try
			break
		}
	}
	p.Text(f.badge, st.In(page.White), page.Center, b.mark("number"), number)
	of := b.ofStyle(f.area)
	for _, words := range ofWords(b.bag) {
		if b.width(of, words) <= f.of.W {
			al := page.Left
			if f.of.X == f.badge.X && f.badge.W < b.width(of, words)+4*hair {
				al = page.Center
			}
			p.Text(f.of, of.In(page.Grey), al, b.mark("of"), words)
			break
		}
	}
	b.picture(p, f)
}
