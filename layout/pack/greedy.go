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

// greedyStrips lays pieces out in strips, tallest first, on width by at most
// length, filling each strip with the tallest pieces that still fit; left is
// lowered by what was placed. With stack, columns hold as many rows of a piece
// as fit under the strip.
func greedyStrips(sizes []size, left []int, width, length int64, stack bool) node {
	all := lyings(sizes, width)
	root := node{dir: Across, size: -1}
	for {
		h := int64(0)
		for i := range sizes {
			if best := lowest(all, i); left[i] > 0 && best <= length-root.h {
				h = max(h, best)
			}
		}
		if h == 0 {
			return root
		}
		strip := greedyStrip(all, left, width, h, stack)
		root.parts = append(root.parts, strip)
		root.h += h
		root.w = max(root.w, strip.w)
	}
}

// lowest is the least height of a size over its orientations.
func lowest(all []lying, size int) int64 {
	h := int64(MaxLength) + 1
	for _, l := range all {
		if l.size == size {
			h = min(h, l.h)
		}
	}
	return h
}

// greedyStrip fills one strip.
func greedyStrip(all []lying, left []int, width, h int64, stack bool) node {
	strip := node{dir: Along, size: -1, h: h}
	for _, l := range all {
		if l.h > h {
			continue
		}
		rows := 1
		if stack {
			rows = int(h / l.h)
		}
		for left[l.size] > 0 && l.w <= width-strip.w {
			col := node{dir: Across, size: -1, w: l.w}
			for i := 0; i < rows && left[l.size] > 0; i++ {
				col.parts = append(col.parts, leafNode(l.size, l.w, l.h))
				col.h += l.h
				left[l.size]--
			}
			strip.parts = append(strip.parts, col)
			strip.w += l.w
		}
	}
	return strip
}
