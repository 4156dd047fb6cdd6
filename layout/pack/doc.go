// Package pack decides how rectangles are cut from cloth with edge-to-edge cuts,
// and proves how good that is.
//
// It knows whole numbers only: callers choose the unit. Start with Solve; Check
// verifies any answer without trusting how it was found.
//
// # Strips
//
// A strip across the cloth of a height, and how many pieces of each size are cut
// from it, is a pattern. Which patterns to cut how often, so that all pieces are
// cut from the least sum of heights, is the master problem. Solved for parts of
// strips, too, by linear programming, it gives a lower bound; its patterns, far
// too many to list, are found as they are needed by a knapsack over the width
// for every height, at the prices (duals) that the master problem sets on the
// pieces: column generation (Gilmore & Gomory 1965). The linear programs are
// small and dense (program): primal and dual simplex with an explicit inverse.
// Where a piece may turn, only its narrowest side that fits under the height
// matters, so turning costs the pricing nothing.
//
// Floating point only proposes. The prices are rounded to whole numbers (quote),
// the knapsacks are summed in whole numbers, and where a pattern is still worth
// more than its height the prices are scaled down by the worst ratio (Farley
// 1990). So every bound, and every proof, holds in exact arithmetic. A bound is
// then lifted to the next length that is a sum of heights (reach).
//
// The proof is by branching (search): on the number of strips at least h high
// and, when these are whole, on the number of pieces of a size cut from strips
// at least h high. Such limits only shift prices by height, so pricing stays the
// same knapsack. That pieces which fit no lower strip need a whole number of
// strips is known from the start (needs). Plans come from diving: fixing
// patterns of the linear program's solution one by one, solving again after
// each; and from taking a few strips out of the best plan and solving their
// pieces anew as a small problem (polisher).
//
// Where the gap is small the end comes sooner over a list (closer). A pattern
// whose height exceeds its worth at proved prices by more than the gap between
// bound and plan is part of no plan of use (Baldacci, Christofides & Mingozzi
// 2008), and of those that remain only the maximal ones matter, as more may be cut
// than is asked for. They are often a few hundred, which are all listed; so cuts
// of rank one can be added (cutter), the same search goes on over the list, and
// its bounds are summed over every pattern in whole numbers as ever. First it is
// asked for a plan just above the bound, where the list is shortest, then for one
// twice as far above.
//
// # Stacks
//
// A column of a strip may hold several rows. The best column of a width under a
// height is a knapsack over the height, and a strip a knapsack of columns over
// the width; the master problem is the same, its heights now any sums of sides.
// The knapsacks don't see that two columns draw on the same pieces, so they
// bound the worth, and patterns are made from what is really left, column by
// column. Plans come from dives that are left to chance and kept from ways gone
// before, whose last pieces are cut by beam searches (plunger); also from beam
// searches over the pieces, of the whole
// problem (comber) and of a few strips' pieces at a time (polisher), from
// annealing, for few pieces, and from sequential value correction. What gains
// nothing sits rounds out (round).
//
// # Thrifty
//
// A plan of five stages is either strips, whose columns are each cut as a narrow
// cloth is in strips; or sections along the cloth, each cut in stacks. Of few
// pieces the shortest is found by dynamic programming over what comes from a
// section (slicer): for every choice of pieces and number of stages the boxes that
// they may need, of which those that waste more than a length allows are dropped.
// It is asked for lengths from the bound on, which rises as they are refuted.
//
// Of more pieces strips are taken out of the best plan of the simpler kinds, a few
// at a time, and their pieces cut anew in the same way (mender). And long pieces
// of one size or two are laid out on a narrow width (lane), and the rest of the
// width is cut as narrower cloth, over the whole length, which is found by
// halving, or only beside them. This takes up to half as much work again as
// stacks may take: these come first, as if they alone were asked for, so that
// thrifty is never worse.
//
// # Given cloths
//
// Several cloths, alike or not, are filled one after the other first; what fits
// one is asked of the search for one cloth, with its length as the goal. Then a
// few cloths at a time are cleared and filled again (exchange), each by a
// knapsack of strips over its length (filler), at prices that rise for what is
// left over; and with everything placed, one cloth is cleared for good and the
// others are to take what lay on it. At last what lies on a cloth moves to one
// that isn't needed, where it is easier to cut.
//
// That no more pieces can be placed, or no fewer cloths do, is proved by prices
// (room): of dual feasible functions for any kind of cutting, and for strips and
// stacks of column generation with a cloth's cutting as a column (cover).
//
// # Any plan
//
// Result.Any bounds the length of every cutting whatever its stages, by area, by
// dual feasible functions (Fekete & Schepers 2004), and by what can't lie side by
// side, whose heights add (boundWide).
//
// All work is counted, not timed: the same problem and effort give the same
// layout on any machine.
package pack
