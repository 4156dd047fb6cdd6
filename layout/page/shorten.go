package page

import (
	"cutbinder/fonts"
	"cutbinder/layout/length"
)

// ellipsis stands for what was cut off.
const ellipsis = '…'

// Shorten is the first of the wordings (the fullest first) that fits on one
// line of width w; where none does, the last is cut and ends in "…". It is
// empty where not even "…" fits.
func (t TextStyle) Shorten(set fonts.Set, w length.Length, wordings ...string) string {
	for _, s := range wordings {
		if t.Say(s).Width(set) <= w {
			return s
		}
	}
	if len(wordings) == 0 {
		return ""
	}
	return t.cut(set, wordings[len(wordings)-1], func(s string) bool { return t.Say(s).Width(set) <= w })
}

// ShortenLines is Shorten for a room w wide and n lines high.
func (t TextStyle) ShortenLines(set fonts.Set, w length.Length, n int, wordings ...string) string {
	fits := func(s string) bool { return t.fitsLines(set, s, w, n) }
	for _, s := range wordings {
		if fits(s) {
			return s
		}
	}
	if len(wordings) == 0 {
		return ""
	}
	return t.cut(set, wordings[len(wordings)-1], fits)
}

// fitsLines reports whether text breaks into at most n lines, none of them
// wider than w.
func (t TextStyle) fitsLines(set fonts.Set, s string, w length.Length, n int) bool {
	ls := lines(t.Say(s).atoms(set), w)
	for _, l := range ls {
		if measure(l).up() > w {
			return false
		}
	}
	return len(ls) <= n
}

// Fit is the style at the largest size, up to its own and not under MinLabel,
// at which the words fit on one line into w x h. Widths grow with the size, so
// it is found by halving.
func (t TextStyle) Fit(set fonts.Set, w, h length.Length, words string) TextStyle {
	lo, hi := MinLabel, max(t.Size, MinLabel)
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if mid <= h && t.Sized(mid).Say(words).Width(set) <= w {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return t.Sized(lo)
}

// cut is the longest start of s that fits with "…" after it. Fitting is taken
// to be monotone: what is longer fits no better.
func (t TextStyle) cut(set fonts.Set, s string, fits func(string) bool) string {
	rs := []rune(s)
	with := func(n int) string {
		for n > 0 && (rs[n-1] == ' ' || rs[n-1] == ',') {
			n--
		}
		return string(rs[:n]) + string(ellipsis)
	}
	lo, hi := -1, len(rs)-1 // with(lo) fits, with(hi+1) does not
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if fits(with(mid)) {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	if lo < 0 {
		return ""
	}
	return with(lo)
}
