package page

import "cutbinder/layout/length"

// A Side is an edge of a canvas, as it lies on paper.
type Side int

// The sides.
const (
	OnTop Side = iota
	OnBottom
	OnLeft
	OnRight
)

// Ticks draws a scale along an edge of the window: a short tick at every step
// of cloth, a longer one with words at every so many, counted from 0. Words
// that would touch their neighbours are left out.
func (c *Canvas) Ticks(side Side, step length.Length, every int, mark string, words func(at length.Length) string) {
	if step <= 0 || every <= 0 {
		return
	}
	w := c.Window
	from, to := w.X, w.Right()
	if side == OnLeft || side == OnRight {
		from, to = w.Y, w.Bottom()
	}
	var last Box
	for at := ceilTo(from, step); at <= to; at += step {
		labelled := at%(step*length.Length(every)) == 0
		size := c.Pen.Style.Label.Size / 2
		if labelled {
			size = size * 3 / 2
		}
		c.tick(side, at, size, mark+" tick")
		if labelled && words != nil {
			last = c.tickWords(side, at, size, mark, words(at), last)
		}
	}
}

// tick draws one tick outward from an edge of the window.
func (c *Canvas) tick(side Side, at, size length.Length, mark string) {
	b, st := c.Paper(), c.Pen.Style.Hair.With(Grey)
	switch side {
	case OnTop:
		c.Pen.VLine(c.X(at), b.Y-size, size, st, mark)
	case OnBottom:
		c.Pen.VLine(c.X(at), b.Bottom(), size, st, mark)
	case OnLeft:
		c.Pen.HLine(b.X-size, c.Y(at), size, st, mark)
	case OnRight:
		c.Pen.HLine(b.Right(), c.Y(at), size, st, mark)
	}
}

// tickWords sets the words of a tick beyond it, unless they would come near
// the last ones set. It returns the words that were set last.
func (c *Canvas) tickWords(side Side, at, size length.Length, mark, words string, last Box) Box {
	st := c.Pen.Style.Label
	w := st.Say(words).Width(c.Pen.Style.Fonts)
	h, near := st.Size, st.Size/3
	b := c.Paper()
	var room Box
	switch side {
	case OnTop:
		room = Box{c.X(at) - w/2, b.Y - size - near/2 - h, w, h}
	case OnBottom:
		room = Box{c.X(at) - w/2, b.Bottom() + size + near/2, w, h}
	case OnLeft:
		room = Box{b.X - size - near - w, c.Y(at) - h/2, w, h}
	case OnRight:
		room = Box{b.Right() + size + near, c.Y(at) - h/2, w, h}
	}
	if last.W > 0 && room.Inset(-near/2).Overlaps(last) {
		return last
	}
	c.Pen.Text(room, st, Left, mark, words)
	return room
}

// Measure writes a size beside an edge of the window, between the places from
// and to of the cloth, with a tick at each. off is how far from the edge the
// ticks start. It reports whether the words had room; if not, only the ticks
// are drawn.
func (c *Canvas) Measure(side Side, from, to, off length.Length, mark, words string) bool {
	st := c.Pen.Style.Measure
	size := st.Size / 2
	b := c.Paper()
	if side == OnTop || side == OnBottom {
		return c.measureAcross(side, c.X(from), c.X(to), off, mark, words)
	}
	x := b.Right() + off
	if side == OnLeft {
		x = b.X - off - size
	}
	y0, y1 := c.Y(from), c.Y(to)
	line := c.Pen.Style.Hair.With(Mid)
	c.Pen.HLine(x, y0, size, line, mark+" tick")
	c.Pen.HLine(x, y1, size, line, mark+" tick")
	if y1-y0 < st.Size+MinLine*2 {
		return false
	}
	w := st.Say(words).Width(c.Pen.Style.Fonts)
	room := Box{x, y0, w, y1 - y0}
	if side == OnLeft {
		room.X = x + size - w
	}
	c.Pen.Text(room, st, Left, mark, words)
	return true
}

// measureAcross is Measure along the top or bottom.
func (c *Canvas) measureAcross(side Side, x0, x1, off length.Length, mark, words string) bool {
	st := c.Pen.Style.Measure
	size, b := st.Size, c.Paper()
	x0, x1 = min(x0, x1), max(x0, x1)
	y := b.Y - off - size
	if side == OnBottom {
		y = b.Bottom() + off
	}
	line := c.Pen.Style.Hair.With(Mid)
	c.Pen.VLine(x0, y, size, line, mark+" tick")
	c.Pen.VLine(x1, y, size, line, mark+" tick")
	if st.Say(words).Width(c.Pen.Style.Fonts)+MinLine*4 > x1-x0 {
		return false
	}
	c.Pen.Text(Box{x0, y, x1 - x0, size}, st, Center, mark, words)
	return true
}

// ScaleBar draws a bar that stands for a length of cloth, half black and half
// white, with words after it, from a point downward. It returns what it fills.
func (c *Canvas) ScaleBar(at Point, cloth length.Length, words string) Box {
	s := c.Pen.Style
	w, h := onPaper(cloth, c.Scale), s.Label.Size/2
	line := Box{at.X, at.Y, w, s.Label.Lead}
	bar := line.Center(w, h)
	half, rest := bar.Left(w / 2)
	c.Pen.Rect(bar, White, s.Hair, "scale bar")
	c.Pen.Rect(half, Black, Stroke{}, "scale bar half")
	words_ := c.Pen.TextAt(Point{rest.Right() + s.Gap, line.MidY() + s.Label.Size*36/100}, s.Label, Left, "scale", words)
	return line.Union(words_)
}
