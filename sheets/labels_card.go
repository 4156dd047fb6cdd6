package sheets

import (
	"fmt"
	"strings"
	"unicode"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/bag"
	"cutbinder/sheets/say"
)

// cardInset is a card's margin beyond that of a label: there is room for it.
const cardInset = 3 * length.MM

// drawCard draws a bag's card: as a label, but the codes stand along its foot and
// the words have the whole width above them.
func (b *bagLabel) drawCard(p *page.Pen, at spot) {
	at.safe = at.safe.Inset(cardInset)
	code := b.placeCode(at)
	zone := code.Bounds()
	code.At.Y = min(at.safe.Bottom()+code.Module*bag.Quiet, at.label.Bottom()-length.MM/10) - zone.H
	p.Add(code)
	zone = code.Bounds()
	area, foot := at.safe.Top(zone.Y - hair - at.safe.Y)
	p.HLine(area.X, area.Bottom(), area.W, p.Style.Hair.With(page.Mid), b.mark("rule"))
	typed := b.typed(200)
	left := page.Box{X: foot.X, Y: foot.Bottom() - typed.Lead, W: zone.X - hair - foot.X, H: typed.Lead}
	for typed.Size > page.MinLabel && b.width(typed, b.bag.Code.String()) > left.W {
		typed = typed.Sized(typed.Size * 9 / 10)
	}
	p.Text(left, typed, page.Left, b.mark("typed"), b.bag.Code.String())
	b.title(p, left.Shift(0, -2*left.H), page.Left)
	area.H -= 2 * hair
	b.words(p, area, false)
}

// fabricLabels draws a label for each fabric: a box for a snippet, the fabric's
// name and number, and what to know before it is cut.
func (l *labeler) fabricLabels() []drawing {
	var draw []drawing
	for i := range l.q.Fabrics {
		label := fabricLabel{l, &l.q.Fabrics[i], i + 1}
		for range max(l.o.PerBag, 1) {
			draw = append(draw, label.draw)
		}
	}
	return draw
}

// A fabricLabel draws one fabric's label.
type fabricLabel struct {
	*labeler
	fabric *cutting.Fabric
	number int
}

func (f fabricLabel) mark(what string) string { return fmt.Sprintf("fabric %d %s", f.number, what) }

func (f fabricLabel) draw(p *page.Pen, at spot) {
	side := min(at.safe.H, at.safe.W*2/5)
	snippet, words := at.safe.Left(side)
	snippet.H = side
	p.Rect(snippet, page.NoInk, p.Style.Hair.With(page.Grey).Broken(page.Dashed), f.mark("snippet"))
	small := f.small(100)
	p.Text(snippet.Inset(hair), small.In(page.Grey), page.Center, f.mark("snippet"), "tape a snippet here", "snippet", "")
	words.X, words.W = words.X+5*hair, words.W-5*hair
	name := f.bold(100).Sized(min(max(at.safe.H/7, page.MinLabel), 6*length.MM))
	name.Lead = name.Size * 5 / 4
	lines := 1
	if at.safe.H > 24*length.MM {
		lines = 2
	}
	text := name.ShortenLines(f.style.Fonts, words.W, lines, oneLine(f.fabric.Fabric.Name))
	for lines > 1 && name.ShortenLines(f.style.Fonts, words.W, lines-1, text) == text {
		lines--
	}
	head := page.Box{X: words.X, Y: words.Y - (name.Lead-f.capital(name))/2, W: words.W, H: name.Lead * length.Length(lines)}
	p.Para(head, name.Say(text), page.Left, f.mark("name"))
	f.facts(p, page.Box{X: words.X, Y: head.Bottom(), W: words.W, H: at.safe.Bottom() - head.Bottom()})
}

// facts lists what to know of the fabric, as much of it as there is room for, and
// the plan's title last.
func (f fabricLabel) facts(p *page.Pen, box page.Box) {
	st := f.small(min(max(box.H/(page.MinLabel/12), 100), 143))
	v := say.For(f.q.Plan)
	fabric := f.fabric.Fabric
	facts := [][]string{{fmt.Sprintf("fabric %d of %d", f.number, len(f.q.Fabrics))}} // each from the fullest wording to the shortest
	if wide := v.With(fabric.Width) + " wide"; onBolt(fabric) {
		facts = append(facts, []string{wide + ", selvages off", wide})
	} else {
		facts = append(facts, []string{v.Shelf(fabric.Have)})
	}
	if fabric.OneWay {
		facts = append(facts, []string{"one-way print: turn no piece", "one-way print", "one-way"})
	}
	if fabric.Prewash {
		facts = append(facts, []string{"wash before cutting", "wash first"})
	}
	if note := oneLine(fabric.Note); note != "" {
		facts = append(facts, []string{note})
	}
	facts = append(facts, f.titleWords())
	for i, fact := range facts {
		line := page.Box{X: box.X, Y: box.Y + st.Lead*length.Length(i), W: box.W, H: st.Lead}
		if line.Bottom() > box.Bottom() {
			return
		}
		if i == len(facts)-1 {
			st = st.In(page.Grey)
		}
		p.Text(line, st, page.Left, f.mark("fact"), fact...)
	}
}

// oneLine is a name as it can stand in one line: without what breaks lines or
// can't be seen.
func oneLine(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}
