package sheets

import (
	"fmt"
	"slices"
	"strconv"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// head and foot are the room above and below the cloth on paper: for the scale
// across it, and for the scale bar, the fold's name and the key.
func (d *diagram) head() length.Length { return d.b.style.Label.Lead * 3 / 2 }

func (d *diagram) foot(window page.Box) length.Length {
	return d.under() + d.b.style.Label.Lead*length.Length(1+d.keyLines(window))
}

// under is from the cloth to the scale bar: room for the fold's name and the numbers
// of lengthwise cuts, or for what the last cut's number hangs over.
func (d *diagram) under() length.Length {
	st := d.b.style
	if len(d.folded) == 0 && d.c.Root.Dir == cutting.Across {
		return st.Gap + st.DiscSize()/2
	}
	return st.Gap + st.DiscSize()
}

// draw draws one window of the cloth in a box; next says where it goes on, if it
// does.
func (d *diagram) draw(p *page.Pen, box page.Box, window page.Box, next string) {
	c := d.canvas(p, page.Point{X: box.X, Y: box.Y + d.head()}, window)
	c.At.X = d.left(p, box, c.Paper().W)
	st := d.b.style
	d.ticks(c)
	if sq := (page.Box{X: 0, Y: -d.c.Square, W: d.c.W, H: d.c.Square}); d.c.Square > 0 {
		c.Hatch(sq, page.Trimmed, st.Hair, "squaring")
	}
	d.pieces(c, d.c.Root)
	if rest := d.end() - d.c.Root.H; rest > 0 {
		d.reserve(c, page.Box{X: 0, Y: d.c.Root.H, W: d.c.W, H: rest})
	}
	d.selvages(c)
	for _, x := range d.folded {
		c.Line(page.Point{X: x, Y: window.Y}, page.Point{X: x, Y: window.Bottom()}, st.Hair.Broken(page.Dashed), "fold")
	}
	d.numbers(c)
	d.measures(c)
	d.below(c, box, next)
}

// left is where the cloth's left edge lies: at the left of the box or, mirrored,
// so that its right edge lies at the right of it.
func (d *diagram) left(p *page.Pen, box page.Box, w length.Length) length.Length {
	if d.b.v.Left {
		return box.Right() - w
	}
	return box.X
}

// ticks draws the scale across the cloth.
func (d *diagram) ticks(c *page.Canvas) {
	step, every := length.Inch, 6
	if d.b.v.Units == length.Metric {
		step, every = 5*length.CM, 2
	}
	c.Ticks(page.OnTop, step, every, "across", func(at length.Length) string {
		if at == 0 {
			return ""
		}
		return d.b.v.Len(at)
	})
}

// reserve is what is left of a bought cloth when all is cut.
func (d *diagram) reserve(c *page.Canvas, box page.Box) {
	all := d.leftLong()
	c.Hatch(box, page.Leftover, d.b.style.Hair, "leftover")
	d.leftoverSize(c, box, "keep about ", length.Size{W: d.c.W, H: d.b.v.Down(all)}, all <= box.H)
}

// selvages draws the woven edges: both of a full width, one of a fat quarter,
// none where the cloth is a scrap.
func (d *diagram) selvages(c *page.Canvas) {
	b := c.Paper()
	left, right := d.c.Selvages()
	if d.b.v.Left {
		left, right = right, left
	}
	if left {
		c.Pen.Rect(page.Box{X: b.X - bar, Y: b.Y, W: bar, H: b.H}, page.Black, page.Stroke{}, "selvage")
	}
	if right {
		c.Pen.Rect(page.Box{X: b.Right(), Y: b.Y, W: bar, H: b.H}, page.Black, page.Stroke{}, "selvage")
	}
}

// numbers draws the numbers of the cuts: of strips on the near side, each at the
// cut that frees it; of lengthwise cuts below the cloth's end.
func (d *diagram) numbers(c *page.Canvas) {
	root := d.c.Root
	marks := d.marks(c, root)
	if c.Window.Y == -d.c.Square {
		marks = append([]cutMark{{1, c.Y(0)}}, marks...)
	}
	d.column(c, marks, d.nearX(c))
	if root.Dir != cutting.Along {
		return
	}
	if c.Window.Bottom() >= root.H {
		d.row(c, root)
	}
	for _, s := range root.Parts {
		if len(s.Parts) > 0 && s.Parts[0].Number > 0 {
			d.inside(c, s)
		}
	}
}

// row draws the numbers of lengthwise cuts, from the last back. Where sections are
// narrower than a disc only every few get one, as in a column.
func (d *diagram) row(c *page.Canvas, root cutting.Section) {
	st := d.b.style
	last, near := c.X(root.X+root.W), length.Length(0)
	for _, s := range slices.Backward(root.Parts) {
		x := c.X(s.X + s.W)
		if s.Number == 0 || max(x-last, last-x) < near {
			continue
		}
		d.disc(c, x, c.Y(root.H)+st.DiscSize()/2+bar, s.Number)
		last, near = x, max(st.DiscSize(), st.DiscWidth(strconv.Itoa(s.Number)))
	}
}

// A cutMark is the number of a cut across the cloth, and where it lies on paper.
type cutMark struct {
	number int
	y      length.Length
}

// marks lists the cuts across the cloth that the window shows.
func (d *diagram) marks(c *page.Canvas, root cutting.Section) []cutMark {
	var marks []cutMark
	if root.Dir != cutting.Across {
		return nil
	}
	for _, s := range root.Parts {
		if end := s.Y + s.H; s.Number > 0 && end > c.Window.Y && end <= c.Window.Bottom() {
			marks = append(marks, cutMark{s.Number, c.Y(end)})
		}
	}
	return marks
}

// nearX is the middle of the discs beside the near edge.
func (d *diagram) nearX(c *page.Canvas) length.Length {
	off := bar + d.b.style.DiscSize()/2
	if d.b.v.Left {
		return c.Paper().Right() + off
	}
	return c.Paper().X - off
}

// column draws numbers down one side, from the last up. Where strips are lower
// than a disc only every few get one: the others lie between.
func (d *diagram) column(c *page.Canvas, marks []cutMark, x length.Length) {
	size := d.b.style.DiscSize()
	for i := len(marks) - 1; i >= 0; i-- {
		last := marks[i]
		for i > 0 && last.y-marks[i-1].y < size {
			i--
		}
		d.disc(c, x, last.y, last.number)
	}
}

// inside numbers the strips of a lengthwise section in their own corners.
func (d *diagram) inside(c *page.Canvas, s cutting.Section) {
	size := d.b.style.DiscSize()
	for _, strip := range s.Parts {
		b, ok := c.Clip(page.Box{X: strip.X, Y: strip.Y, W: strip.W, H: strip.H})
		if !ok || strip.Number == 0 || b.H < size || b.W < 2*size || !d.cornerFree(c, strip) {
			continue
		}
		number := strconv.Itoa(strip.Number)
		mark := d.b.style.StripMark(number)
		x := b.X + bar
		if d.b.v.Left {
			x = b.Right() - bar - mark.W
		}
		c.Pen.StripNumber(page.Box{X: x, Y: b.Bottom() - mark.H - bar, W: mark.W, H: mark.H}, "strip "+number, number)
	}
}

// cornerFree says whether a disc in a strip's far near corner leaves alone what is
// written in the middle of the piece or leftover there.
func (d *diagram) cornerFree(c *page.Canvas, s cutting.Section) bool {
	for len(s.Parts) > 0 {
		if s.Dir == cutting.Along {
			s = s.Parts[0]
		} else {
			s = s.Parts[len(s.Parts)-1]
		}
	}
	b, ok := c.Clip(page.Box{X: s.X, Y: s.Y, W: s.W, H: s.H})
	if !ok {
		return true
	}
	st := d.b.style
	words := d.b.v.Size(length.Size{W: s.W, H: s.H})
	if s.Leftover() {
		words = "keep " + words
	}
	room := 2 * (st.DiscSize() + bar)
	return b.H >= room+st.Body.Lead || b.W >= room+st.Body.Say(words).Width(st.Fonts)
}

// discRoom is the room for discs beside the cloth, before the holes or the thumb
// index.
const discRoom = 5 * length.MM

// disc draws the number of a cut, moved toward the cloth where the margin is too
// narrow for it.
func (d *diagram) disc(c *page.Canvas, x, y length.Length, number int) {
	words, b := strconv.Itoa(number), c.Paper()
	if w := d.b.style.DiscWidth(words); w > d.b.style.DiscSize() {
		half := (w + 1) / 2
		x = min(max(x, b.X-discRoom+half), b.Right()+discRoom-half)
	}
	c.Pen.Disc(page.Point{X: x, Y: y}, "cut "+words, words)
}

// discs is where the widest disc reaches into the cloth where its number has
// more figures than the margin holds; nothing where it doesn't.
func (d *diagram) discs() []length.Length {
	most := 1
	for _, s := range d.c.Root.Parts {
		most = max(most, s.Number)
	}
	st := d.b.style
	w := st.DiscWidth(strconv.Itoa(most))
	if w <= st.DiscSize() {
		return nil
	}
	in := max(w-discRoom, bar) * length.Length(d.scale)
	var places []length.Length
	for i := range discLines { // so close that no letter stands between them
		places = append(places, in*length.Length(i+1)/discLines)
	}
	return places
}

// discLines is how many places are kept clear where a disc reaches in.
const discLines = 4

// below draws what stands under the cloth: the scale bar, the fold's name, what
// the letters stand for, and where it goes on.
func (d *diagram) below(c *page.Canvas, box page.Box, next string) {
	st, b := d.b.style, c.Paper()
	y := b.Bottom() + d.under()
	drawn := d.scaleBar(c, page.Point{X: box.X, Y: y})
	if n := len(d.folded); n > 0 {
		room := page.Box{X: c.X(d.folded[n/2]) - st.Label.Size*3, Y: b.Bottom() + st.Gap/2, W: st.Label.Size * 6, H: st.Label.Lead}
		c.Pen.Text(room, st.Label, page.Center, "fold name", "fold")
	}
	if !d.abreast || next == "" { // where the cloth goes on matters more
		drawn = drawn.Union(d.shapes(c.Pen, page.Box{X: drawn.Right() + st.Gap*2, Y: y, W: box.Right() - drawn.Right() - st.Gap*2, H: st.Label.Lead}))
	}
	d.aside(c.Pen, page.Box{X: drawn.Right() + st.Gap*2, Y: y, W: box.Right() - drawn.Right() - st.Gap*2, H: st.Label.Lead}, next)
	if key := d.keyText(c.Window); len(key) > 0 {
		c.Pen.Para(page.Box{X: box.X, Y: y + st.Label.Lead, W: box.W, H: st.Label.Lead}, key, page.Left, "key")
	}
}

// scaleBar draws the scale bar, and the arrow of the grain beside it. It returns what
// they fill.
func (d *diagram) scaleBar(c *page.Canvas, at page.Point) page.Box {
	unit, words := 6*length.Inch, "6 in of cloth"
	if d.b.v.Units == length.Metric {
		unit, words = 10*length.CM, "10 cm of cloth"
	}
	drawn := c.ScaleBar(at, unit, fmt.Sprintf("%s, 1:%d", words, d.scale))
	return drawn.Union(d.grain(c.Pen, page.Point{X: drawn.Right() + d.b.style.Gap*2, Y: at.Y}))
}

// grain draws the arrow of the lengthwise grain, which runs as the selvages do,
// with one head where the print is one-way. It returns what it fills.
func (d *diagram) grain(p *page.Pen, at page.Point) page.Box {
	st := d.b.style
	h, head := st.Label.Size*3/2, st.Label.Size/4
	x, top := at.X+head, at.Y+(st.Label.Lead-h)/2
	tip := func(y, dy length.Length) {
		p.Polygon([]page.Point{{X: x, Y: y}, {X: x + head, Y: y + dy}, {X: x - head, Y: y + dy}}, page.Black, page.Stroke{}, "grain")
	}
	p.VLine(x, top+head, h-2*head, st.Rule, "grain")
	tip(top, head*2)
	words := "grain"
	if d.f.Fabric.OneWay {
		words = "grain and print"
	} else {
		tip(top+h, -head*2)
	}
	text := page.Box{X: x + head + st.Gap/2, Y: at.Y, W: st.Label.Say(words).Width(st.Fonts), H: st.Label.Lead}
	p.Text(text, st.Label, page.Left, "grain words", words)
	return text
}

// shapes says what the two shapes of numbers stand for, where there is room for
// it. It returns what it fills.
func (d *diagram) shapes(p *page.Pen, room page.Box) page.Box {
	st := d.b.style
	h := st.Label.Size
	drawn := page.Box{X: room.X, Y: room.Y}
	cut, strip := st.Label.Say("cut").Width(st.Fonts), st.Label.Say("strip").Width(st.Fonts)
	if 2*h+2*st.Gap+cut+strip > room.W {
		return drawn
	}
	put := func(words string, w length.Length) page.Box {
		at := page.Box{X: drawn.Right(), Y: room.Y + (room.H-h)/2, W: h, H: h}
		text := page.Box{X: at.Right() + st.Gap/2, Y: room.Y, W: w, H: room.H}
		p.Text(text, st.Label, page.Left, "key of shapes", words)
		drawn.W = text.Right() + st.Gap - drawn.X
		return at
	}
	p.Polygon(page.Circle(put("cut", cut)), page.Black, page.Stroke{}, "key of cuts")
	p.Rect(put("strip", strip), page.White, st.Hair, "key of strips")
	drawn.W -= st.Gap
	return drawn
}

// hatches says what hatching means, from the fullest to the shortest.
var hatches = []string{"fine: squared off · wide: left over · crossed: waste", "fine: trim · wide: left over · crossed: waste", "wide hatching: left over"}

// goesOn is what a picture that isn't whole says at the least.
const goesOn = "continued"

// aside says right of the scale bar where the cloth goes on, or what hatching
// means where there is room for it.
func (d *diagram) aside(p *page.Pen, room page.Box, next string) {
	st := d.b.style.Label
	wordings := hatches
	if d.hatch { // said below
		wordings = nil
	}
	if next != "" {
		wordings = []string{goesOn + " in " + next, goesOn}
	}
	for _, w := range wordings {
		if st.Say(w).Width(d.b.style.Fonts) <= room.W {
			p.Text(room, st, page.Right, "aside", w)
			return
		}
	}
}

// keyText is what the letters in the pieces of a window stand for, and what hatching means where
// there is no room for that beside the scale bar.
func (d *diagram) keyText(window page.Box) (text page.Rich) {
	st := d.b.style.Label
	var keys []string
	for _, k := range d.keys {
		if k.shownIn(window) {
			keys = append(keys, k.words)
		}
	}
	if len(keys) > 0 {
		text = st.In(page.Black).Say(dotted(keys...))
	}
	if d.hatch && len(text) > 0 {
		text = append(text, st.Span("\n"))
	}
	if d.hatch {
		text = append(text, st.Span(st.Shorten(d.b.style.Fonts, d.width(), hatches...)))
	}
	return text
}

// paperWidth is how wide the cloth is on paper.
func (d *diagram) paperWidth() length.Length {
	return d.canvas(nil, page.Point{}, d.whole()).Paper().W
}

// keyLines is how many lines the key below a window takes.
func (d *diagram) keyLines(window page.Box) int {
	key := d.keyText(window)
	if len(key) == 0 {
		return 0
	}
	st := d.b.style.Label
	h := page.HeightOf(d.b.style, d.width(), page.Para{Text: key})
	return int((h + st.Lead - 1) / st.Lead)
}
