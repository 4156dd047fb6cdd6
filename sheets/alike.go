package sheets

import (
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/sheets/say"
)

// alikeFrom is how many cloths of a fabric, from the i-th on, are cut like that one:
// they share a picture and its steps. It is 1 at least.
func (b *binder) alikeFrom(f *cutting.Fabric, i int) int {
	n := 1
	for i+n < len(f.Cloths) && b.cutAlike(f, &f.Cloths[i], &f.Cloths[i+n]) {
		n++
	}
	return n
}

// cutAlike says whether the same pieces lie at the same places of two cloths of a
// size, and the steps that cut them say the same.
func (b *binder) cutAlike(f *cutting.Fabric, c, d *cutting.Cloth) bool {
	if c.Unused() || d.Unused() || c.W != d.W || c.L != d.L || c.Bought != d.Bought {
		return false
	}
	return slices.EqualFunc(c.Placed, d.Placed, func(p, q cutting.Placed) bool {
		return p.Piece == q.Piece && p.X == q.X && p.Y == q.Y && p.W == q.W && p.H == q.H
	}) && slices.Equal(b.v.Steps(b.q.Plan, f, c), b.v.Steps(b.q.Plan, f, d))
}

// alikeNote says over a picture how many cloths it is of, where it is of several.
func (b *binder) alikeNote(f *cutting.Fabric, i int) []page.Block {
	n := b.alikeFrom(f, i)
	if n == 1 {
		return nil
	}
	words := "Cut each of these " + say.Count(n) + " like this."
	return []page.Block{page.Para{Text: b.style.Body.Say(words), Mark: "alike"}, page.Gap{H: b.style.Gap}}
}

// under sets pictures under a note that stays with the first of them.
func under(note, pictures []page.Block) []page.Block {
	if note == nil {
		return pictures
	}
	first := page.Keep{Blocks: append(slices.Clone(note), pictures[0])}
	return append([]page.Block{first}, pictures[1:]...)
}
