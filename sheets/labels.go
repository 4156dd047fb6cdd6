package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// A LabelKind is what is printed on label sheets.
type LabelKind int

// The kinds of labels.
const (
	BagLabels    LabelKind = iota // a label for each bag
	BagCards                      // a quarter of a page for each bag, to slip into it
	FabricLabels                  // a label for each fabric, with room for a snippet
	LabelOutline                  // the outlines alone: a test on plain paper, held to the light over a label sheet
)

// LabelOptions say how labels are printed.
type LabelOptions struct {
	Kind   LabelKind
	Stock  Stock // ignored for cards, which are cut from plain paper
	Skip   int   // labels of the first sheet that are gone already
	Bags   []int // only these bags; all of them where nil
	PerBag int   // labels a bag; 0 stands for 1
	Adjust Adjust
}

// An Adjust makes up for a printer that doesn't print where it should. What is
// at x is printed at x stretched, then shifted.
type Adjust struct {
	ShiftX, ShiftY     length.Length // to the right and downwards
	StretchX, StretchY plan.Percent  // 100 is 1 % wider or taller; negative: narrower
}

// The largest adjustments: a printer that is farther off has the wrong paper or
// "fit to page" set.
const (
	maxShift   = 5 * length.MM
	maxStretch = plan.Percent(200)
)

// check says what is wrong with an adjustment.
func (a Adjust) check() error {
	switch {
	case abs(a.ShiftX) > maxShift || abs(a.ShiftY) > maxShift:
		return fmt.Errorf("shift of %s mm: expected no more than 5 mm either way", mmPair(a.ShiftX, ", ", a.ShiftY))
	case max(a.StretchX, -a.StretchX, a.StretchY, -a.StretchY) > maxStretch:
		return fmt.Errorf("stretch: expected no more than 2 %% either way; is the page printed at 100 %%?")
	}
	return nil
}

// move is where a label must be printed to come out at its place. Labels move and
// keep their size, so that what is on them stays true.
func (a Adjust) move(b page.Box) page.Box {
	across := b.MidX() * length.Length(a.StretchX) / 10000
	down := b.MidY() * length.Length(a.StretchY) / 10000
	return b.Shift(a.ShiftX+across, a.ShiftY+down)
}

// ParseBags reads which bags are meant out of n: "3,7-9".
func ParseBags(text string, n int) ([]int, error) {
	var bags []int
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ' ' || r == ';' }) {
		first, last, isRange := strings.Cut(strings.ReplaceAll(part, "–", "-"), "-")
		if !isRange {
			last = first
		}
		a, errA := strconv.Atoi(first)
		b, errB := strconv.Atoi(last)
		switch {
		case errA != nil || errB != nil:
			return nil, fmt.Errorf("bags %q: expected numbers such as 3,7-9", shown(part))
		case a > b:
			return nil, fmt.Errorf("bags %q: expected the smaller number first", shown(part))
		case a < 1 || b > n:
			return nil, fmt.Errorf("bags %q: the plan has bags 1 to %d", shown(part), n)
		}
		for i := a; i <= b; i++ {
			bags = append(bags, i)
		}
	}
	if len(bags) == 0 {
		return nil, fmt.Errorf("bags %q: expected numbers such as 3,7-9", shown(text))
	}
	slices.Sort(bags)
	return slices.Compact(bags), nil
}

// Labels sets the plan's labels as a document of their own.
func Labels(q *Quilt, o LabelOptions, st *page.Style) (page.Document, error) {
	pages, err := LabelPages(q, o, st)
	if err != nil {
		return page.Document{}, err
	}
	book := page.NewBook(page.Setup{Paper: o.stock(q).Sheet(), Style: st, Title: q.Plan.Title, Author: q.Plan.By, Lang: q.Plan.Language})
	book.Add(page.Section{Raw: pages})
	return book.Document(), nil
}

// stock is the sheet that is printed on.
func (o LabelOptions) stock(q *Quilt) Stock {
	switch {
	case o.Kind == BagCards && o.Stock.Labels() > 0:
		return cards[o.Stock.Paper]
	case o.Kind == BagCards:
		return cards[paperOr(q.Plan.Paper)]
	case o.Stock.Labels() == 0:
		return usual(q.Plan.Paper)
	}
	return o.Stock
}

// LabelPages sets labels as pages that draw themselves on the whole sheet, for a
// section of a book on the stock's paper. The error says what the options ask for
// that can't be: a stock too small, a bag that isn't, more labels skipped than a
// sheet has.
func LabelPages(q *Quilt, o LabelOptions, st *page.Style) ([]func(*page.Pen), error) {
	l := &labeler{q: q, o: o, stock: o.stock(q), style: st}
	if err := l.check(); err != nil {
		return nil, err
	}
	var draw []drawing
	var err error
	switch o.Kind {
	case LabelOutline:
		return []func(*page.Pen){l.outlines}, nil
	case FabricLabels:
		draw = l.fabricLabels()
	case BagCards:
		draw, err = l.bagLabels((*bagLabel).drawCard)
	default:
		draw, err = l.bagLabels((*bagLabel).draw)
	}
	return l.sheets(draw), err
}

// A labeler sets the labels of one kind.
type labeler struct {
	q     *Quilt
	o     LabelOptions
	stock Stock
	style *page.Style
}

func (l *labeler) check() error {
	if err := l.o.Adjust.check(); err != nil {
		return err
	}
	if l.o.Kind == BagLabels {
		if err := l.stock.HoldsCode(); err != nil {
			return err
		}
	}
	if err := l.onPaper(); err != nil {
		return err
	}
	if n := l.stock.Labels(); l.o.Skip < 0 || l.o.Skip >= n {
		return fmt.Errorf("skip %d: a sheet has %d labels, expected 0 to %d", l.o.Skip, n, n-1)
	}
	if l.o.PerBag < 0 || l.o.PerBag > maxLabels {
		return fmt.Errorf("%d labels a bag: expected 1 to %d", l.o.PerBag, maxLabels)
	}
	for _, n := range l.o.Bags {
		if l.q.Bags.Bag(n) == nil {
			return fmt.Errorf("bag %d: the plan has bags 1 to %d", n, len(l.q.Bags.Bags))
		}
	}
	return l.fewEnough()
}

// MaxPages is the most pages a document may have.
const MaxPages = 2000

// fewEnough refuses more sheets than a document may have, before any code is made:
// codes take most of the time.
func (l *labeler) fewEnough() error {
	labels := max(l.o.PerBag, 1)
	switch l.o.Kind {
	case LabelOutline:
		return nil
	case FabricLabels:
		labels *= len(l.q.Fabrics)
	default:
		labels *= len(l.bags())
	}
	per := l.stock.Labels()
	if sheets := (l.o.Skip + labels + per - 1) / per; sheets > MaxPages {
		return fmt.Errorf("%d labels take %d sheets: expected at most %d; print them in parts, or on a sheet with more labels",
			labels, sheets, MaxPages)
	}
	return nil
}

// onPaper says whether the adjustment moves what is printed off the paper.
func (l *labeler) onPaper() error {
	sheet := l.stock.Sheet()
	for i := range l.stock.Labels() {
		if !(page.Box{W: sheet.W, H: sheet.H}).Contains(l.spot(i).safe) {
			return fmt.Errorf("label %d of the sheet is moved off the paper: shift or stretch by less", i+1)
		}
	}
	return nil
}

// A drawing draws what stands on one label.
type drawing func(p *page.Pen, at spot)

// A spot is where a label is printed: the label, and the part of it that is safe
// to print on.
type spot struct{ label, safe page.Box }

// The insets: what is printed keeps 2 mm from a label's edge, since sheets shift by
// that much in a printer, and 5 mm from the paper's, which a printer may not reach.
const (
	labelInset = 2 * length.MM
	paperInset = 5 * length.MM
)

// spot is the place of the sheet's label i. The insets are those of the label
// where it is on the paper; the adjustment moves all of it.
func (l *labeler) spot(i int) spot {
	sheet, label := l.stock.Sheet(), l.stock.Label(i)
	safe := label.Inset(labelInset).Intersect(page.Box{W: sheet.W, H: sheet.H}.Inset(paperInset))
	moved := l.o.Adjust.move(label)
	return spot{moved, safe.Shift(moved.X-label.X, moved.Y-label.Y)}
}

// sheets puts labels onto sheets, from the first that isn't skipped.
func (l *labeler) sheets(draw []drawing) []func(*page.Pen) {
	var pages []func(*page.Pen)
	for skip := l.o.Skip; len(draw) > 0; skip = 0 {
		n := min(l.stock.Labels()-skip, len(draw))
		labels, at := draw[:n], skip
		pages = append(pages, func(p *page.Pen) {
			l.cuttingLines(p)
			for i, label := range labels {
				label(p, l.spot(at+i))
			}
		})
		draw = draw[n:]
	}
	return pages
}

// bags are the numbers of the bags that labels are printed for, in order.
func (l *labeler) bags() []int {
	numbers := l.o.Bags
	if numbers == nil {
		for i := range l.q.Bags.Bags {
			numbers = append(numbers, i+1)
		}
	}
	return numbers
}

// bagLabels draws each bag's label, as often as it is wanted.
func (l *labeler) bagLabels(how func(*bagLabel, *page.Pen, spot)) ([]drawing, error) {
	numbers := l.bags()
	side := l.codeSide()
	squares, err := l.q.Bags.Squares(numbers, maxModules(side))
	if err != nil {
		return nil, err
	}
	var draw []drawing
	for i, n := range numbers {
		label := &bagLabel{labeler: l, bag: l.q.Bags.Bag(n), square: squares[i], side: side, card: l.o.Kind == BagCards, voice: say.For(l.q.Plan)}
		for range max(l.o.PerBag, 1) {
			draw = append(draw, func(p *page.Pen, at spot) { how(label, p, at) })
		}
	}
	return draw, nil
}

// cuttingLines draws where plain paper is cut apart: once for labels that touch.
func (l *labeler) cuttingLines(p *page.Pen) {
	if !l.stock.Plain {
		return
	}
	st := p.Style.Hair.With(page.Mid).Broken(page.Dashed)
	first, last := l.o.Adjust.move(l.stock.Label(0)), l.o.Adjust.move(l.stock.Label(l.stock.Labels()-1))
	for c := range l.stock.Columns + 1 {
		x := first.X + (last.Right()-first.X)*length.Length(c)/length.Length(l.stock.Columns)
		p.VLine(x, first.Y, last.Bottom()-first.Y, st, "cut here")
	}
	for r := range l.stock.Rows + 1 {
		y := first.Y + (last.Bottom()-first.Y)*length.Length(r)/length.Length(l.stock.Rows)
		p.HLine(first.X, y, last.Right()-first.X, st, "cut here")
	}
}

// outlines draws every label's outline and number: printed on plain paper and held
// to the light over a label sheet, it shows how far a printer is off.
func (l *labeler) outlines(p *page.Pen) {
	half := p.Style.Hair.Width
	paper := page.Box{W: l.stock.Sheet().W, H: l.stock.Sheet().H}.Inset(half)
	for i := range l.stock.Labels() {
		mark := fmt.Sprint("outline ", i+1)
		at := l.spot(i)
		p.Rect(at.label.Intersect(paper), page.NoInk, p.Style.Hair, mark)
		p.Text(at.safe, p.Style.Label, page.Center, mark, fmt.Sprint(i+1))
	}
}
