package page

import "cutbinder/layout/length"

// Scales are the scales 1:n that drawings of cloth may have, largest first.
var Scales = []int{4, 5, 6, 8, 10, 12, 16, 20}

// PickScale is the largest scale at which a length of cloth takes no more than
// a room of paper, or 0 where none is small enough.
func PickScale(cloth, room length.Length) int {
	for _, n := range Scales {
		if onPaper(cloth, n) <= room {
			return n
		}
	}
	return 0
}

// onPaper is a length of cloth on paper, rounded to the nearest unit (a unit
// is 1/320 mm; the true size differs by half of that at most).
func onPaper(l length.Length, n int) length.Length {
	d := length.Length(n)
	if l < 0 {
		return -((-l + d/2) / d)
	}
	return (l + d/2) / d
}

// A Canvas is a pen's view of cloth at 1:Scale. Cloth has x from the left
// selvage and y along its length; the canvas shows a window of it, and what
// lies outside is cut off, so a long length can be drawn in parts. Edges are
// mapped, not sizes: pieces that touch on cloth touch on paper.
type Canvas struct {
	Pen *Pen
	// At is where the window's top left corner lies on paper.
	At Point
	// Scale is n of 1:n.
	Scale int
	// Window is the part of the cloth that is shown, in cloth lengths.
	Window Box
	// Mirror turns left and right round, for the left hand. Words stay
	// readable.
	Mirror bool
	// Avoid are places across the cloth (x) that words must not stand on, such
	// as the fold.
	Avoid []length.Length
}

// Paper is the window on paper.
func (c *Canvas) Paper() Box {
	return Box{c.At.X, c.At.Y, onPaper(c.Window.W, c.Scale), onPaper(c.Window.H, c.Scale)}
}

// X is where a place across the cloth lies on paper.
func (c *Canvas) X(x length.Length) length.Length {
	d := onPaper(x-c.Window.X, c.Scale)
	if c.Mirror {
		return c.At.X + onPaper(c.Window.W, c.Scale) - d
	}
	return c.At.X + d
}

// Y is where a place along the cloth lies on paper.
func (c *Canvas) Y(y length.Length) length.Length {
	return c.At.Y + onPaper(y-c.Window.Y, c.Scale)
}

// Box is a rectangle of cloth on paper, uncut.
func (c *Canvas) Box(cloth Box) Box {
	x0, x1 := c.X(cloth.X), c.X(cloth.Right())
	y0, y1 := c.Y(cloth.Y), c.Y(cloth.Bottom())
	return Box{min(x0, x1), y0, max(x0, x1) - min(x0, x1), y1 - y0}
}

// Clip is the part of a rectangle of cloth that is in the window, on paper; ok
// is false where nothing of it is.
func (c *Canvas) Clip(cloth Box) (paper Box, ok bool) {
	in := cloth.Intersect(c.Window)
	if in.W <= 0 || in.H <= 0 {
		return Box{}, false
	}
	return c.Box(in), true
}

// Rect draws a rectangle of cloth and returns what it fills on paper. Where
// the window cuts it, the cut edge has no outline.
func (c *Canvas) Rect(cloth Box, fill Ink, st Stroke, mark string) (Box, bool) {
	return c.rect(Rect{Mark: Mark(mark), Fill: fill, Stroke: st}, cloth)
}

// Hatch draws a hatched rectangle of cloth as Rect does.
func (c *Canvas) Hatch(cloth Box, h Hatch, st Stroke, mark string) (Box, bool) {
	return c.rect(Rect{Mark: Mark(mark), Hatch: h, Stroke: st}, cloth)
}

func (c *Canvas) rect(r Rect, cloth Box) (Box, bool) {
	b, ok := c.Clip(cloth)
	if !ok {
		return b, false
	}
	r.Box = b
	if st := r.Stroke; st.Visible() && !c.Window.Contains(cloth) {
		r.Stroke = Stroke{}
		c.Pen.Add(r)
		c.edges(cloth, st, r.What()+" edge")
		return b, true
	}
	c.Pen.Add(r)
	return b, true
}

// edges draws those parts of a rectangle's edges that are in the window.
func (c *Canvas) edges(b Box, st Stroke, mark string) {
	c.Line(Point{b.X, b.Y}, Point{b.Right(), b.Y}, st, mark)
	c.Line(Point{b.X, b.Bottom()}, Point{b.Right(), b.Bottom()}, st, mark)
	c.Line(Point{b.X, b.Y}, Point{b.X, b.Bottom()}, st, mark)
	c.Line(Point{b.Right(), b.Y}, Point{b.Right(), b.Bottom()}, st, mark)
}

// Line draws the part of a level or upright line on cloth that is in the
// window.
func (c *Canvas) Line(a, b Point, st Stroke, mark string) {
	w := c.Window
	x0, x1 := max(min(a.X, b.X), w.X), min(max(a.X, b.X), w.Right())
	y0, y1 := max(min(a.Y, b.Y), w.Y), min(max(a.Y, b.Y), w.Bottom())
	if x0 > x1 || y0 > y1 || x0 == x1 && y0 == y1 {
		return
	}
	from, to := Point{c.X(x0), c.Y(y0)}, Point{c.X(x1), c.Y(y1)}
	if from.X > to.X {
		from.X, to.X = to.X, from.X
	}
	c.Pen.Line(from, to, st, mark)
}

// Words sets one line in the middle of a rectangle of cloth, the first of the
// wordings that fits between its edges and stands on none of the places to
// avoid. It reports whether one did; nothing is cut short.
func (c *Canvas) Words(cloth Box, st TextStyle, mark string, wordings ...string) bool {
	return c.words(cloth, st, NoInk, mark, wordings)
}

// Label is Words on a white ground, to be read over a hatch.
func (c *Canvas) Label(cloth Box, st TextStyle, mark string, wordings ...string) bool {
	return c.words(cloth, st, White, mark, wordings)
}

func (c *Canvas) words(cloth Box, st TextStyle, ground Ink, mark string, wordings []string) bool {
	b, ok := c.Clip(cloth)
	if !ok {
		return false
	}
	pad := st.Size / 4
	if b.H < st.Size*5/4 { // a descender and the strokes of the edges
		return false
	}
	for _, s := range wordings {
		w := st.Say(s).Width(c.Pen.Style.Fonts)
		if room, ok := c.free(b, w+2*pad); ok {
			if ground != NoInk {
				within := b.Inset(MinLine) // clear of the strokes of the edges
				c.Pen.Rect(room.Center(w+2*pad, st.Size*3/2).Intersect(within), ground, Stroke{}, mark+" ground")
			}
			c.Pen.RichText(Box{room.X + pad, room.Y, room.W - 2*pad, room.H}, st.Say(s), Center, mark)
			return true
		}
	}
	return false
}

// free is the part of a box on paper, at least w wide, that words may stand
// on: all of it, if w in its middle meets no place to avoid, else the widest
// part between such places.
func (c *Canvas) free(b Box, w length.Length) (Box, bool) {
	if w > b.W {
		return b, false
	}
	mid := b.Center(w, b.H)
	clear := true
	best := Box{}
	left := b.X
	for _, x := range c.stops(b) {
		clear = clear && (x <= mid.X || x >= mid.Right())
		if x-left > best.W {
			best = Box{left, b.Y, x - left, b.H}
		}
		left = x
	}
	if clear {
		return b, true
	}
	return best, best.W >= w
}

// stops are the places to avoid within a box on paper, from left to right,
// and its right edge.
func (c *Canvas) stops(b Box) []length.Length {
	var out []length.Length
	for _, a := range c.Avoid {
		if x := c.X(a); x > b.X && x < b.Right() {
			i := len(out)
			for i > 0 && out[i-1] > x {
				i--
			}
			out = append(out[:i], append([]length.Length{x}, out[i:]...)...)
		}
	}
	return append(out, b.Right())
}
