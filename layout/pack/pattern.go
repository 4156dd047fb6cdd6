package pack

import (
	"encoding/binary"
	"slices"
)

// A pattern is a strip of a height and what is cut from it.
type pattern struct {
	h     int
	cols  []column
	cover []take  // pieces by size, ascending
	row   []int32 // the cover once more, as a column of the master problem
	val   []float64
}

// A take is n pieces of one size.
type take struct{ size, n int }

// A column is a part of a strip, n times, w wide: rows of one piece each, lowest
// row first.
type column struct {
	n, w int
	rows []take // size is an index of the instance's lies
}

// key tells patterns apart.
func (p *pattern) key() string {
	b := binary.AppendUvarint(nil, uint64(p.h))
	for _, t := range p.cover {
		b = binary.AppendUvarint(b, uint64(t.size))
		b = binary.AppendUvarint(b, uint64(t.n))
	}
	return string(b)
}

// sumUp fills in the cover from the columns.
func (p *pattern) sumUp(in *instance) {
	p.cover = p.cover[:0]
	for _, c := range p.cols {
		for _, r := range c.rows {
			p.count(in.lies[r.size].size, c.n*r.n)
		}
	}
	slices.SortFunc(p.cover, func(a, b take) int { return a.size - b.size })
}

// finish joins equal columns and takes the pattern's height and cover.
func (p pattern) finish(in *instance) pattern {
	p.cols = merge(p.cols)
	for _, c := range p.cols {
		h := 0
		for _, r := range c.rows {
			h += r.n * in.lies[r.size].h
		}
		p.h = max(p.h, h)
	}
	p.sumUp(in)
	return p
}

// count adds n pieces of a size to the cover.
func (p *pattern) count(size, n int) {
	for i := range p.cover {
		if p.cover[i].size == size {
			p.cover[i].n += n
			return
		}
	}
	p.cover = append(p.cover, take{size, n})
}

// proper says whether the pattern cuts no more than what is left.
func (p *pattern) proper(left []int) bool {
	for _, t := range p.cover {
		if t.n > left[t.size] {
			return false
		}
	}
	return true
}

// times is how often the pattern can be cut from what is left.
func (p *pattern) times(left []int) int {
	n := MaxPieces
	for _, t := range p.cover {
		n = min(n, left[t.size]/t.n)
	}
	return n
}

// worth is the sum of the prices of the pieces cut.
func (p *pattern) worth(q *quote) (sum int64) {
	for _, t := range p.cover {
		sum += int64(t.n) * q.size(t.size, p.h)
	}
	return sum
}

// node makes the strip of the pattern, with no more pieces than are left, which
// it lowers.
func (p *pattern) node(in *instance, left []int) node {
	strip := node{dir: Along, size: -1}
	for _, c := range p.cols {
		for range c.n {
			col := node{dir: Across, size: -1}
			for _, r := range c.rows {
				l := in.lies[r.size]
				for n := 0; n < r.n && left[l.size] > 0; n++ {
					left[l.size]--
					col.parts = append(col.parts, leafNode(l.size, l.rw, l.rh))
				}
			}
			if len(col.parts) > 0 {
				strip.parts = append(strip.parts, across(col.parts))
			}
		}
	}
	return along(strip.parts)
}
