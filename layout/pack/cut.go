package pack

import (
	"cmp"
	"slices"
)

// A cut is a valid inequality of rank one (Gomory 1958, Chvátal 1973): where each
// of some sizes must be cut as often as is asked, the sum of these demands over
// part, rounded up, is a least number of the strips used, each counted as often as
// it holds such pieces, over part, rounded up.
type cut struct {
	sizes []int // ascending
	part  int
}

// times gives how often a cut counts a pattern.
func (c *cut) times(p *pattern) int {
	n, k := 0, 0
	for _, t := range p.cover {
		for k < len(c.sizes) && c.sizes[k] < t.size {
			k++
		}
		if k < len(c.sizes) && c.sizes[k] == t.size {
			n += t.n
		}
	}
	return (n + c.part - 1) / c.part
}

// A cutter finds cuts that a relaxed solution breaks.
type cutter struct {
	left []int
	use  []share
	held [][]int // pieces of each size in each pattern used
	best []broken
	work *meter
}

// A broken cut, and by how much.
type broken struct {
	cut
	by float64
}

// newCutter prepares to cut off a solution in patterns of a pool.
func newCutter(left []int, use []share, pool []pattern, work *meter) *cutter {
	c := &cutter{left: left, use: use, work: work, held: make([][]int, len(left))}
	for i := range left {
		c.held[i] = make([]int, len(use))
	}
	for s, u := range use {
		for _, t := range pool[u.pattern].cover {
			c.held[t.size][s] = t.n
		}
	}
	return c
}

const (
	mostCuts = 30   // added at a time
	mostPart = 4    // a cut is over no more
	leastCut = 0.02 // what is broken by less is no cut
)

// find tries every size, pair and triple of sizes, and gives the cuts broken
// most.
func (c *cutter) find() []cut {
	two, three := make([]int, len(c.use)), make([]int, len(c.use))
	for i := range c.left {
		c.try(c.held[i], i)
		for j := i + 1; j < len(c.left) && !c.work.stop(); j++ {
			c.plus(two, c.held[i], j)
			c.try(two, i, j)
			for k := j + 1; k < len(c.left); k++ {
				c.plus(three, two, k)
				c.try(three, i, j, k)
			}
		}
	}
	slices.SortStableFunc(c.best, func(a, b broken) int { return cmp.Compare(b.by, a.by) })
	var cuts []cut
	for _, b := range c.best[:min(len(c.best), mostCuts)] {
		cuts = append(cuts, b.cut)
	}
	return cuts
}

// plus adds the pieces of a size in each pattern used to counts.
func (c *cutter) plus(sum, n []int, size int) {
	for s, h := range c.held[size] {
		sum[s] = n[s] + h
	}
}

// try notes the cuts over some sizes, of which the patterns used hold n pieces,
// that are broken.
func (c *cutter) try(n []int, sizes ...int) {
	c.work.spend(3 * len(n))
	sum := 0
	for _, i := range sizes {
		sum += c.left[i]
	}
	for part := 2; part <= mostPart; part++ {
		if sum%part == 0 {
			continue
		}
		v := float64((sum + part - 1) / part)
		for s, u := range c.use {
			v -= u.n * float64((n[s]+part-1)/part)
		}
		if v > leastCut {
			c.best = append(c.best, broken{cut{slices.Clone(sizes), part}, v})
		}
	}
}

// limit is the cut as a row of the master problem.
func (c cut) limit(left []int) limit {
	n := 0
	for _, i := range c.sizes {
		n += left[i]
	}
	return limit{size: ofCut, n: (n + c.part - 1) / c.part, cut: &c}
}
