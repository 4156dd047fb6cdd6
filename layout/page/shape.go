package page

import "cutbinder/layout/length"

// quarter is the cosines of 0, 7.5, 15 … 90 degrees in 1/65536.
var quarter = [...]length.Length{
	65536, 64975, 63303, 60547, 56756, 51993, 46341, 39896, 32768, 25080, 16962, 8554, 0,
}

// arc adds the points of a quarter circle around c; it turns from the
// direction given by turn (0 right, 1 down, 2 left, 3 up) clockwise to the
// next. Twelve edges leave a circle of radius r by r/467 at most; up to 4 mm
// six edges do, which leave it by r/117, less than 0.04 mm.
func arc(out []Point, c Point, r length.Length, turn int) []Point {
	n, step := len(quarter)-1, 1
	if r <= 4*length.MM {
		step = 2
	}
	for i := 0; i <= n; i += step {
		dx, dy := r*quarter[i]/65536, r*quarter[n-i]/65536
		for range turn {
			dx, dy = -dy, dx
		}
		out = append(out, Point{c.X + dx, c.Y + dy})
	}
	return out
}

// RoundBox is a rectangle with round corners, as a polygon.
func RoundBox(b Box, r length.Length) []Point {
	r = min(r, b.W/2, b.H/2)
	if r <= 0 {
		return []Point{{b.X, b.Y}, {b.Right(), b.Y}, {b.Right(), b.Bottom()}, {b.X, b.Bottom()}}
	}
	var out []Point
	out = arc(out, Point{b.Right() - r, b.Bottom() - r}, r, 0)
	out = arc(out, Point{b.X + r, b.Bottom() - r}, r, 1)
	out = arc(out, Point{b.X + r, b.Y + r}, r, 2)
	out = arc(out, Point{b.Right() - r, b.Y + r}, r, 3)
	return out
}

// Circle is a circle in the middle of a box, as a polygon.
func Circle(b Box) []Point {
	d := min(b.W, b.H)
	return RoundBox(b.Center(d, d), d/2)
}

// Badge draws a black box with round corners and white words in its middle. The
// wordings go from the fullest to the shortest; the last is set smaller if it
// must be.
func (p *Pen) Badge(b Box, st TextStyle, mark string, wordings ...string) {
	p.Polygon(RoundBox(b, p.Style.Round), Black, Stroke{}, mark)
	pad := min(b.W/12, p.Style.Gap)
	room := Box{b.X + pad, b.Y, b.W - 2*pad, b.H}
	if n := len(wordings); n > 0 {
		st = st.Fit(p.Style.Fonts, room.W, room.H, wordings[n-1])
	}
	p.Text(room, st.In(White), Center, mark, wordings...)
}

// Frame draws the outline of a box with round corners.
func (p *Pen) Frame(b Box, fill Ink, st Stroke, mark string) {
	p.Polygon(RoundBox(b, p.Style.Round), fill, st, mark)
}

// DiscSize is the diameter of a numbered disc.
func (s *Style) DiscSize() length.Length { return s.Number.Size * 3 / 2 }

// DiscWidth is how wide a disc with those words is.
func (s *Style) DiscWidth(words string) length.Length {
	d := s.DiscSize()
	return max(d, s.Number.Say(words).Width(s.Fonts)+d*2/5)
}

// Disc draws a black disc around a point with a number in it, widened for
// more than two figures.
func (p *Pen) Disc(at Point, mark, number string) Box {
	d := p.Style.DiscSize()
	w := p.Style.DiscWidth(number)
	b := Box{at.X - w/2, at.Y - d/2, w, d}
	p.Polygon(RoundBox(b, d/2), Black, Stroke{}, mark)
	p.Text(b, p.Style.Number, Center, mark, number)
	return b
}

// StripMark is the size of the square that a strip's number stands in.
func (s *Style) StripMark(number string) Box {
	h := s.Measure.Size * 5 / 4
	return Box{W: max(h, s.Measure.Say(number).Width(s.Fonts)+s.Measure.Size/3), H: h}
}

// StripNumber draws a white square with a number in it: a strip, where a disc is
// a cut.
func (p *Pen) StripNumber(b Box, mark, number string) {
	p.Rect(b, White, p.Style.Hair, mark)
	p.Text(b, p.Style.Measure, Center, mark, number)
}

// Ring draws a white disc with an outline around a point, with words in it: a
// letter that keys a size.
func (p *Pen) Ring(at Point, mark, words string) Box {
	d := p.Style.DiscSize()
	b := Box{at.X - d/2, at.Y - d/2, d, d}
	p.Polygon(Circle(b), White, p.Style.Hair, mark)
	p.Text(b, p.Style.Number.In(Black), Center, mark, words)
	return b
}

// TickBox draws an empty box to tick, in the middle of b's height at its left.
func (p *Pen) TickBox(b Box, mark string) Box {
	t := Box{b.X, b.Y + (b.H-p.Style.Tick)/2, p.Style.Tick, p.Style.Tick}
	p.Rect(t, White, p.Style.Hair, mark)
	return t
}

// Check draws a tick (✓), which the faces lack, in the middle of b: a polygon
// of two strokes, s high.
func (p *Pen) Check(b Box, s length.Length, mark string) {
	c := b.Center(s, s)
	at := func(x, y length.Length) Point { return Point{c.X + c.W*x/20, c.Y + c.H*y/20} }
	p.Polygon([]Point{at(1, 11), at(4, 9), at(8, 14), at(17, 1), at(19, 3), at(8, 19)}, Black, Stroke{}, mark)
}

// FillIn draws a line to write on in b, with words after it: the line lies
// where the baseline of a line of running text would be.
func (p *Pen) FillIn(b Box, after, mark string) {
	st := p.Style.Body
	y := b.MidY() + p.capHeight(st.Say("0").atoms(p.Style.Fonts))/2
	w := length.Length(0)
	if after != "" {
		w = min(st.Say(after).Width(p.Style.Fonts), b.W*2/3)
		p.Text(Box{b.Right() - w, b.Y, w, b.H}, st, Left, mark, after)
		w += p.Style.Gap
	}
	p.HLine(b.X, y, b.W-w, p.Style.Hair, mark)
}

// Snippet draws a dashed box to tape a piece of cloth into, with words in its
// middle.
func (p *Pen) Snippet(b Box, words, mark string) {
	p.Rect(b, NoInk, p.Style.Hair.With(Grey).Broken(Dashed), mark)
	pad := p.Style.Gap
	inner := b.Inset(pad)
	r := p.Style.Label.Say(words)
	h := HeightOf(p.Style, inner.W, Para{Text: r})
	p.Para(inner.Center(inner.W, min(h, inner.H)), r, Center, mark)
}

// Ruler draws a line exactly l long with end marks: a check of the print's
// scale. It hangs from the baseline of b's words, at its right end, with the
// words before it.
func (p *Pen) Ruler(b Box, l length.Length, words, mark string) {
	st, s := p.Style.Rule, p.Style
	y, h := b.MidY(), s.Label.Size/2
	x := b.Right() - l
	p.HLine(x, y, l, st, mark)
	p.VLine(x, y-h/2, h, st, mark)
	p.VLine(x+l, y-h/2, h, st, mark)
	if words != "" {
		p.Text(Box{b.X, b.Y, b.W - l - s.Gap*2, b.H}, s.Label, Right, mark, words)
	}
}

// Ground sets one line in the middle of a box on a white ground of its own, so
// that a hatch or a line under it does not cross it. It returns the ground,
// which is empty where nothing of the wordings fits.
func (p *Pen) Ground(b Box, st TextStyle, mark string, wordings ...string) Box {
	pad := st.Size / 3
	h := st.Size + pad
	s := st.Shorten(p.Style.Fonts, b.W-2*pad, wordings...)
	if s == "" || b.H < h {
		return Box{}
	}
	w := st.Say(s).Width(p.Style.Fonts)
	ground := b.Center(w+2*pad, h)
	p.Rect(ground, White, Stroke{}, mark+" ground")
	p.RichText(ground, st.Say(s), Center, mark)
	return ground
}
