package sheets

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// near is how far the size that is written may be from the one that is known:
// packs round theirs, and sources of one sheet differ by as much.
const near = 4 * length.MM / 10

// StockOf is the label sheet that a plan asks for, on the paper given.
func StockOf(l plan.Labels, paper plan.Paper) (Stock, error) {
	if l.Sheet != nil {
		return OwnStock(*l.Sheet, paper)
	}
	return FindStock(l.Stock, l.NoGutter, paper)
}

// FindStock is the label sheet of a size, as its pack states it: "2 5/8 x 1 in",
// "63.5 x 38.1 mm", "63,5 x 38,1", in either order; "plain" is plain paper with
// cutting lines, and "" the paper's usual sheet, of a size that holds everything.
// A size without a unit is read in inches, millimetres and centimetres, whichever
// a sheet has. noGutter picks between two sheets of a size. The error names the
// nearest sizes that are known, or the other paper where that has the size.
func FindStock(text string, noGutter bool, paper plan.Paper) (Stock, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "":
		return usual(paper), nil
	case "plain":
		return plains[paperOr(paper)], nil
	}
	sizes := stockSizes(text)
	if len(sizes) == 0 {
		return Stock{}, fmt.Errorf("label stock %q is not a size; expected what the pack of sheets says, such as %s, or plain", shown(text), usual(paper).Name)
	}
	here, there := matches(sizes, paperOr(paper), noGutter), matches(sizes, otherPaper(paper), noGutter)
	switch {
	case len(here) > 0:
		return here[0], nil
	case noGutter && len(matches(sizes, paperOr(paper), false)) > 0:
		return Stock{}, fmt.Errorf("label stock %q without a gutter is not known on %s paper; with one it is", shown(text), paperOr(paper))
	case len(there) > 0:
		return Stock{}, fmt.Errorf("label stock %q comes on %s paper, and the paper is %s; choose the paper that the labels are on", shown(text), otherPaper(paper), paperOr(paper))
	}
	return Stock{}, fmt.Errorf("label stock %q is not known on %s paper; the nearest are %s; state the sheet's eight numbers, or plain", shown(text), paperOr(paper), nearest(sizes, paper))
}

func paperOr(p plan.Paper) plan.Paper {
	if p == plan.A4 {
		return p
	}
	return plan.Letter
}

func otherPaper(p plan.Paper) plan.Paper {
	if p == plan.A4 {
		return plan.Letter
	}
	return plan.A4
}

// usual is a paper's sheet where none is asked for: common, and with room for all
// that a label may say.
func usual(p plan.Paper) Stock {
	name := "4 x 2 in"
	if p == plan.A4 {
		name = "99.1 x 38.1 mm"
	}
	return stocks[slices.IndexFunc(stocks, func(s Stock) bool { return s.Name == name })]
}

// stockSizes are the sizes that a text may mean: one where it states a unit.
func stockSizes(text string) []length.Size {
	var sizes []length.Size
	add := func(text string, bare length.System) {
		z, err := length.ParseSize(text, bare)
		if err == nil && z.W > 0 && z.H > 0 && !slices.Contains(sizes, z) {
			sizes = append(sizes, z)
		}
	}
	add(text, length.Imperial)
	add(text, length.Metric)
	if n := len(sizes); n == 2 { // no unit was written
		add(text+" mm", length.Metric)
	}
	return sizes
}

// matches are a paper's sheets of one of the sizes, the best first: as written
// before turned, near before far, with a gutter before without.
func matches(sizes []length.Size, paper plan.Paper, noGutter bool) []Stock {
	var found []Stock
	for _, s := range stocks {
		if s.Paper == paper && (!noGutter || s.Gapless()) && off(s, sizes) <= near {
			found = append(found, s)
		}
	}
	slices.SortStableFunc(found, func(a, b Stock) int { return cmp.Compare(off(a, sizes), off(b, sizes)) })
	return found
}

// off is how far a sheet's labels are from the nearest of the sizes, in the side
// that differs more. A turned size counts as a hair farther.
func off(s Stock, sizes []length.Size) length.Length {
	least := length.Length(1 << 60)
	for _, z := range sizes {
		least = min(least, max(abs(z.W-s.Width), abs(z.H-s.Height)), max(abs(z.H-s.Width), abs(z.W-s.Height))+1)
	}
	return least
}

func abs(l length.Length) length.Length { return max(l, -l) }

// nearest names the three sheets of a paper that are nearest to the sizes.
func nearest(sizes []length.Size, paper plan.Paper) string {
	all := slices.DeleteFunc(slices.Clone(stocks), func(s Stock) bool { return s.Paper != paperOr(paper) })
	slices.SortStableFunc(all, func(a, b Stock) int { return cmp.Compare(off(a, sizes), off(b, sizes)) })
	return all[0].Name + ", " + all[1].Name + " and " + all[2].Name
}

// shown is what was read, short enough for a message.
func shown(text string) string {
	r := []rune(strings.TrimSpace(text))
	if len(r) > 40 {
		return string(r[:39]) + "…"
	}
	return string(r)
}

// maxLabels is more than any sheet has that a label with a code can be on.
const maxLabels = 500

// OwnStock is a sheet by its eight numbers, on the paper given.
func OwnStock(l plan.LabelSheet, paper plan.Paper) (Stock, error) {
	s := Stock{Paper: paperOr(paper), LabelSheet: l}
	s.Name = mmPair(l.Width, " x ", l.Height) + " mm"
	if s.Columns == 1 && s.StepAcross == 0 {
		s.StepAcross = s.Width
	}
	if s.Rows == 1 && s.StepDown == 0 {
		s.StepDown = s.Height
	}
	what := ""
	switch {
	case s.Columns < 1 || s.Rows < 1 || s.Columns > maxLabels || s.Rows > maxLabels || s.Labels() > maxLabels:
		what = fmt.Sprintf("has %d columns and %d rows; expected 1 to %d labels", s.Columns, s.Rows, maxLabels)
	case s.Width <= 0 || s.Height <= 0 || s.Width > length.M || s.Height > length.M:
		what = "has labels of " + s.Name + "; expected a width and a height"
	case s.Left < 0 || s.Top < 0:
		what = fmt.Sprintf("begins at %s mm; expected left and top on the paper", mmPair(s.Left, ", ", s.Top))
	case s.Columns > 1 && s.StepAcross < s.Width || s.Rows > 1 && s.StepDown < s.Height:
		what = fmt.Sprintf("steps %s mm from label to label; expected no less than the label, %s", mmPair(s.StepAcross, ", ", s.StepDown), s.Name)
	case s.StepAcross > length.M || s.StepDown > length.M || !s.fits():
		what = fmt.Sprintf("reaches beyond %s paper, which is %s mm", s.Paper, mmPair(s.Sheet().W, " x ", s.Sheet().H))
	}
	if what != "" {
		return Stock{}, fmt.Errorf("label sheet %s", what)
	}
	return s, nil
}

// fits says whether the last label is on the paper, but for what sources of one
// sheet differ by.
func (s Stock) fits() bool {
	last := s.Label(s.Labels() - 1)
	return last.Right() <= s.Sheet().W+near && last.Bottom() <= s.Sheet().H+near
}
