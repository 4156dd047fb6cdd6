package pack

import "slices"

// A size is all pieces alike: those of items of equal sides and freedom to
// turn. Sides are whole multiples of the instance's unit. Of a size that may
// turn, w is the shorter side; a square never counts as turning.
type size struct {
	w, h  int64
	n     int
	turn  bool
	items []int // the items merged into it, in order
}

// sizesOf merges the items of a problem, largest first.
func sizesOf(items []Item) []size { return merged(items, false) }

// rankedSizes merges only neighbours: of given cloths the items before matter
// more than those after.
func rankedSizes(items []Item) []size { return merged(items, true) }

// merged merges items of equal sides and freedom to turn.
func merged(items []Item, neighbours bool) []size {
	type key struct {
		w, h int64
		turn bool
	}
	at := map[key]int{}
	var sizes []size
	for i, it := range items {
		if it.Count == 0 {
			continue
		}
		k := key{it.W, it.H, it.Turn && it.W != it.H}
		if k.turn && k.w > k.h {
			k.w, k.h = k.h, k.w
		}
		j, ok := at[k]
		if !ok || neighbours && j < len(sizes)-1 {
			j = len(sizes)
			at[k] = j
			sizes = append(sizes, size{w: k.w, h: k.h, turn: k.turn})
		}
		sizes[j].n += it.Count
		sizes[j].items = append(sizes[j].items, i)
	}
	slices.SortStableFunc(sizes, func(a, b size) int {
		if c := compare(b.h, a.h); c != 0 {
			return c
		}
		return compare(b.w, a.w)
	})
	return sizes
}

// counts gives how many pieces there are of each size.
func counts(sizes []size) []int {
	n := make([]int, len(sizes))
	for i, s := range sizes {
		n[i] = s.n
	}
	return n
}

// fits says whether a piece of the size fits a rectangle in some orientation
// that it allows.
func (s size) fits(w, h int64) bool {
	return s.w <= w && s.h <= h || s.turn && s.h <= w && s.w <= h
}

// compare orders two lengths.
func compare(a, b int64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// gcd is the greatest common divisor; gcd(0, b) is b.
func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
