package sheets

import (
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// leastMarked is the least side of a picture on a label.
const leastMarked = 8 * length.MM

// picture draws where the bag's pieces go, below the badge, where the frame has
// room for it and the block is drawn.
func (b *bagLabel) picture(p *page.Pen, f frame) {
	if f.of.X != f.badge.X || f.of.Y < f.badge.Bottom() {
		return // what is below the badge is the body's
	}
	pictures := b.q.spotted(b.bag)
	if len(pictures) == 0 {
		return
	}
	top := f.of.Bottom() + 3*hair
	column := page.Box{X: f.badge.X, Y: top, W: f.badge.W, H: f.area.Bottom() - top}
	words, box := page.Box{}, column
	st := b.small(100)
	if column.H >= leastMarked+4*hair+2*st.Lead {
		box, words = column.Top(column.H - 2*st.Lead - hair)
		box.H = min(box.H, box.W)
		words = page.Box{X: column.X, Y: box.Bottom() + hair, W: column.W, H: 2 * st.Lead}
	}
	pl := place(pictures[0].pic, box.Inset(p.Style.Hair.Width/2))
	if min(box.W, box.H) < leastMarked || pl.finest() < finestPatch {
		return
	}
	pl.box.X, pl.box.Y = box.X+p.Style.Hair.Width/2, box.Y+p.Style.Hair.Width/2
	drawMarked(p, pl, pictures[0].marked, b.mark("picture"))
	if words.H > 0 && b.width(st, "black: where") <= words.W {
		p.Para(words, st.In(page.Grey).Say("black: where these go"), page.Left, b.mark("picture words"))
	}
}
