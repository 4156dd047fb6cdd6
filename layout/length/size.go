package length

import (
	"regexp"
	"strings"
)

// sizeSign stands between the two sides of a size.
var sizeSign = regexp.MustCompile(`(?i) *(?:[x×]| by ) *`)

// ParseSize reads a size: one length for a square, or two with "x", "×" or "by"
// between them, the width across the cloth first. A side may be "WOF" in any
// case; both may not. A unit that only one side has goes for both, so that
// "2 5/8 x 1 in" is in inches in a metric plan too. The error is an *Error.
func ParseSize(s string, bare System) (Size, error) {
	if len(s) > 2*maxText {
		return Size{}, wrongSize(s, "is not a size", bare)
	}
	sides := sizeSign.Split(strings.TrimSpace(s), -1)
	switch len(sides) {
	case 1:
		if isWOF(s) {
			return Size{}, wrongSize(s, "is one side only", bare)
		}
		l, _, err := parse(s, bare.unit(), bare)
		if err != nil {
			return Size{}, wrongSize(s, err.Why, bare)
		}
		return Size{l, l}, nil
	case 2:
		return twoSides(s, sides[0], sides[1], bare)
	}
	return Size{}, wrongSize(s, "has more than two sides", bare)
}

// twoSides reads a size's sides, each with the other's unit where it has none.
func twoSides(s, first, second string, bare System) (Size, error) {
	if isWOF(first) && isWOF(second) {
		return Size{}, wrongSize(s, "has the usable width for both sides", bare)
	}
	w, uw, err := side(first, bare.unit(), bare)
	if err != nil {
		return Size{}, wrongSize(s, err.Why, bare)
	}
	h, uh, err := side(second, bare.unit(), bare)
	if err != nil {
		return Size{}, wrongSize(s, err.Why, bare)
	}
	if uw == 0 && uh > 0 {
		w, _, err = side(first, uh, bare)
	}
	if uh == 0 && uw > 0 {
		h, _, err = side(second, uw, bare)
	}
	if err != nil {
		return Size{}, wrongSize(s, err.Why, bare)
	}
	return Size{w, h}, nil
}

// side reads one side of a size, which may be WOF.
func side(s string, unit Length, bare System) (l, last Length, err *Error) {
	if isWOF(s) {
		return WOF, 0, nil
	}
	return parse(s, unit, bare)
}

// isWOF says whether a side is the fabric's usable width.
func isWOF(s string) bool { return strings.EqualFold(strings.TrimSpace(s), "WOF") }

// wrongSize makes an Error about a size.
func wrongSize(s, why string, bare System) *Error {
	expect := "expected a size such as 3 1/2 x 6 1/2, or one length for a square"
	if bare == Metric {
		expect = "expected a size such as 6.5 x 12, or one length for a square"
	}
	if why == "is not a length" {
		why = "is not a size"
	}
	return &Error{shorten(s), why, expect}
}
