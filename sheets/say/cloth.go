package say

import (
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
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
	if v.Units == length.Metric {
		return v.With(up(l, length.MM))
	}
	return v.With(up(l, length.Inch/8))
}

func up(l, step length.Length) length.Length { return (l + step - 1) / step * step }

// BagList names bags: "bag 3", "bags 3, 7 and 12".
func BagList(numbers []int) string {
	var words []string
	for _, n := range numbers {
		words = append(words, fmt.Sprint(n))
	}
	return Plural(len(words), "bag ", "bags ") + Things(words)
}
