package sheets

import (
	"fmt"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// A bagLabel draws one bag's label: the bag's number in a black badge, the block,
// what is in the bag, the square code and the typed one, and which plan it is of.
// The square code stands at the right; what is left of it is the area for words.
type bagLabel struct {
	*labeler
	bag    *bag.Bag
	square bag.Modules
	side   length.Length // of the square code
	voice  say.Voice
	card   bool // drawn as a card: there is room for more
}

// mark says what ink on the label stands for: "label 7 code".
func (b *bagLabel) mark(what string) string { return fmt.Sprintf("label %d %s", b.bag.Number, what) }

// small is the least type, 7 pt; sizes on labels are told in hundredths of it.
func (l *labeler) small(percent length.Length) page.TextStyle {
	st := l.style.Body.Sized(page.MinLabel * percent / 100)
	st.Lead = st.Size * 5 / 4
	return st
}

func (l *labeler) bold(percent length.Length) page.TextStyle { return l.small(percent).Heavy() }

func (l *labeler) typed(percent length.Length) page.TextStyle {
	st := l.small(percent)
	st.Weight = fonts.Mono
	return st
}

// capital is the height of a style's capitals.
func (l *labeler) capital(st page.TextStyle) length.Length {
	m := l.style.Fonts.Face(st.Weight).Metrics()
	return st.Size * length.Length(m.CapHeight) / length.Length(m.UnitsPerEm)
}

func (l *labeler) width(st page.TextStyle, s string) length.Length {
	return st.Say(s).Width(l.style.Fonts)
}

// hair is the distance between things on a label that must not touch.
const hair = length.MM / 2

// draw draws the label.
func (b *bagLabel) draw(p *page.Pen, at spot) {
	code := b.placeCode(at)
	p.Add(code)
	zone := code.Bounds()
	// Round letters and the stems of d and h reach a little above the capitals.
	above := at.safe.H / 100
	area := page.Box{X: at.safe.X, Y: at.safe.Y + above, W: zone.X - hair - at.safe.X, H: at.safe.H - above}
	below := b.typedBelow(p, at, code)
	if !below {
		area.H -= b.typedBeside(p, area)
	}
	b.words(p, area, below)
}

// codeSizes are the sizes of the typed code, largest first.
var codeSizes = []length.Length{150, 140, 130, 120, 115, 110, 105, 100}

// typedBelow sets the typed code under the square one, where there is room.
func (b *bagLabel) typedBelow(p *page.Pen, at spot, code page.Code) bool {
	zone := code.Bounds()
	text := b.bag.Code.String()
	for _, percent := range codeSizes {
		st := b.typed(percent)
		box := page.Box{X: zone.X, Y: zone.Bottom(), W: min(zone.Right(), at.safe.Right()) - zone.X, H: st.Lead}
		if ink := zone.Inset(code.Module * length.Length(code.Quiet)); b.width(st, text) <= ink.W {
			box.X, box.W = ink.X, ink.W
		}
		if b.width(st, text) <= box.W && box.Bottom() <= at.safe.Bottom() {
			p.Text(box, st, page.Center, b.mark("typed"), text)
			return true
		}
	}
	return false
}

// typedBeside sets the typed code along the foot of the area, and the plan's title
// after it where there is room, and returns the height that took.
func (b *bagLabel) typedBeside(p *page.Pen, area page.Box) length.Length {
	text := b.bag.Code.String()
	for _, percent := range codeSizes {
		st := b.typed(percent)
		w := b.width(st, text)
		if (w > area.W || percent > 115) && percent > 100 {
			continue
		}
		foot := page.Box{X: area.X, Y: area.Bottom() - st.Lead, W: area.W, H: st.Lead}
		p.Text(foot, st, page.Left, b.mark("typed"), text)
		rest := page.Box{X: foot.X + w + 3*hair, Y: foot.Y, W: foot.W - w - 3*hair, H: foot.H}
		b.title(p, rest, page.Right)
		return foot.H
	}
	return 0
}

// title sets the plan's title, as much of it as is worth the room: ten letters at
// least, or all of it.
func (b *bagLabel) title(p *page.Pen, box page.Box, al page.Align) {
	st := b.small(100).In(page.Grey)
	words := b.titleWords()
	if short := words[len(words)-1]; box.W < 15*length.MM && b.width(st, short) > box.W {
		return
	}
	p.Text(box, st, al, b.mark("title"), words...)
}

// words fills the area: the first arrangement that has room for what it is to hold
// is drawn. Arrangements are tried from the fullest and largest on; see attempts.
// The plan's title is set at the foot, unless it stands elsewhere.
func (b *bagLabel) words(p *page.Pen, area page.Box, titled bool) {
	frames := b.frames(area)
	for i := range frames {
		if !titled {
			frames[i].foot = page.Box{}
		}
	}
	for _, f := range frames {
		for try := range attempts(len(b.bag.Rows), area.H) {
			if lines, ok := b.compose(f, try); ok {
				b.drawFrame(p, f)
				b.drawLines(p, f, try, lines)
				return
			}
		}
	}
	// Not even the bare contents fit: the badge and the codes still tell the bag.
	b.drawFrame(p, frames[len(frames)-1])
}
