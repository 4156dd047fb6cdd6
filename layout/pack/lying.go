package pack

import "slices"

// A lying is a size in one orientation.
type lying struct {
	size int
	w, h int64
}

// lyings lists the orientations in which sizes fit a width.
func lyings(sizes []size, width int64) []lying {
	var all []lying
	for i, s := range sizes {
		if s.w <= width {
			all = append(all, lying{i, s.w, s.h})
		}
		if s.turn && s.h <= width {
			all = append(all, lying{i, s.h, s.w})
		}
	}
	slices.SortStableFunc(all, func(a, b lying) int {
		if c := compare(b.h, a.h); c != 0 {
			return c
		}
		return compare(b.w, a.w)
	})
	return all
}
