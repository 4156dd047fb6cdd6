package sheets

import (
	"fmt"
	"strconv"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// ParseAdjust reads how far a printer is off: the shift as "X,Y" in tenths of a
// millimetre, whole numbers, and the stretch as "X,Y" in percent with up to two
// decimals. An empty text adjusts nothing.
func ParseAdjust(shift, stretch string) (Adjust, error) {
	var a Adjust
	x, y, err := pair(shift, 1)
	if err != nil {
		return a, fmt.Errorf("shift %q: %w", shift, err)
	}
	a.ShiftX, a.ShiftY = length.Length(x)*length.MM/10, length.Length(y)*length.MM/10
	x, y, err = pair(stretch, 100)
	if err != nil {
		return a, fmt.Errorf("stretch %q: %w", stretch, err)
	}
	a.StretchX, a.StretchY = plan.Percent(x), plan.Percent(y)
	return a, a.check()
}

// pair reads "X,Y" as whole multiples of 1/parts.
func pair(text string, parts int) (x, y int, err error) {
	if text == "" {
		return 0, 0, nil
	}
	first, second, ok := strings.Cut(text, ",")
	if !ok {
		return 0, 0, fmt.Errorf("expected two numbers with a comma between")
	}
	if x, err = fixed(first, parts); err == nil {
		y, err = fixed(second, parts)
	}
	return x, y, err
}

func fixed(text string, parts int) (int, error) {
	n, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	scaled := n * float64(parts)
	if err != nil || !(scaled >= -1e6 && scaled <= 1e6) { // NaN is neither
		return 0, fmt.Errorf("%q is not a number that can be used", text)
	}
	whole := int(scaled + 0.5)
	if scaled < 0 {
		whole = int(scaled - 0.5)
	}
	if diff := scaled - float64(whole); diff > 1e-6 || diff < -1e-6 {
		return 0, fmt.Errorf("%q is finer than 1/%d", text, parts)
	}
	return whole, nil
}
