package say

import (
	"fmt"
	"regexp"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// Cloth is what a cloth measures: "42 in wide, 18 in long".
func (v Voice) Cloth(c *cutting.Cloth) string {
	return fmt.Sprintf("%s wide, %s long", v.With(c.W), v.With(c.L))
}

// ToBuy is a length in the way shops of the plan's kind sell it: "3/8 yd".
func (v Voice) ToBuy(l length.Length) string {
	if l == 0 {
		return "nothing"
	}
	return v.Units.FormatCloth(l, v.figures()...)
}

// Elsewhere is the same length where shops sell the other way, rounded up to
// whole centimetres or eighths of a yard, so that it is never less.
func (v Voice) Elsewhere(l length.Length) string {
	if v.Units == length.Metric {
		return length.Imperial.FormatCloth(up(l, length.Yard/8), v.figures()...)
	}
	return length.Metric.FormatCloth(up(l, length.CM), v.figures()...)
}

// About is a length rounded up to what a ruler shows (1/8 in, 1 mm), with its
// unit: for sums that come to odd figures.
func (v Voice) About(l length.Length) string {
	return v.With(v.ruled(l))
}

// ruled is a length rounded up to what a ruler shows.
func (v Voice) ruled(l length.Length) length.Length {
	if v.Units == length.Metric {
		return up(l, length.MM)
	}
	return up(l, length.Inch/8)
}

// Least is how long a cloth must measure: rounded up to what a ruler shows, though
// never to more than there is on the shelf.
func (v Voice) Least(p *plan.Plan, c *cutting.Cloth) string {
	least := c.Least(p)
	if v.ruled(least) > c.L && !c.Bought {
		return v.With(least)
	}
	return v.About(least)
}

// Alike says that two cloths must measure the same.
func (v Voice) Alike(p *plan.Plan, a, b *cutting.Cloth) bool {
	return a.W == b.W && v.Least(p, a) == v.Least(p, b)
}

// Span names cloths from a first to a last: "fat quarter 2 of 3", "fat quarter
// 1–2 of 3", "half yard to 9 × 42".
func (v Voice) Span(first, last *cutting.Cloth) string {
	a, z := counted.FindStringSubmatch(first.Name), counted.FindStringSubmatch(last.Name)
	switch {
	case first == last:
		return v.Written(first.Name)
	case a != nil && z != nil && a[1] == z[1]:
		return fmt.Sprintf("%s %s–%s of %s", v.Written(a[1]), a[2], z[2], a[3])
	}
	return v.Written(first.Name) + " to " + v.Written(last.Name)
}

// counted is a name of a cloth that is one of several.
var counted = regexp.MustCompile(`^(.*) (\d+) of (\d+)$`)

func up(l, step length.Length) length.Length { return (l + step - 1) / step * step }

// BagList names bags: "bag 3", "bags 3, 7 and 12".
func BagList(numbers []int) string {
	var words []string
	for _, n := range numbers {
		words = append(words, fmt.Sprint(n))
	}
	return Plural(len(words), "bag ", "bags ") + Things(words)
}
