package sheets

import (
	"fmt"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// undone finds sizes that plans say are cut and that nothing is cut to.
func undone(p *plan.Plan, lists []cutting.List) (problems plan.Problems) {
	for _, l := range lists {
		for _, d := range l.Fabric.DoneSizes {
			found := false
			var sizes []string
			for _, piece := range l.Pieces {
				found = found || d.Is(piece.Size) || d.Is(piece.AsPlanned())
				sizes = append(sizes, p.Units.FormatSize(piece.Size))
			}
			if !found {
				problems = append(problems, plan.Problem{At: d.At, ID: "done:" + l.Fabric.ID, Hint: "write the cut size as the fabric's sheet has it",
					What: fmt.Sprintf("done: nothing is cut %s from %s; its cut sizes are %s", p.Units.FormatSize(d.Size), l.Fabric.ID, strings.Join(sizes, ", "))})
			}
		}
	}
	return problems
}

// BagDone says whether all that a bag holds is cut already.
func (q *Quilt) BagDone(number int) bool {
	for i := range q.Fabrics {
		f := &q.Fabrics[i]
		for _, p := range f.Pieces {
			for u := range p.Uses {
				if q.Bags.Of(f.Fabric.ID, p.ID, u) == number && !f.IsDone(p) {
					return false
				}
			}
		}
	}
	return true
}

// bagsLeft are the bags that something is still to be cut for; nil where that is
// all of them.
func (q *Quilt) bagsLeft() (left []int) {
	left = []int{}
	for n := 1; n <= len(q.Bags.Bags); n++ {
		if !q.BagDone(n) {
			left = append(left, n)
		}
	}
	if len(left) == len(q.Bags.Bags) {
		return nil
	}
	return left
}

// doneWords are a fabric's sizes that are cut already, where not all are.
func (b *binder) doneWords(f *cutting.Fabric) string {
	var sizes []string
	for _, p := range f.Pieces {
		if f.IsDone(p) {
			sizes = append(sizes, b.v.Size(p.Size))
		}
	}
	return say.Things(sizes)
}

// doneLines says of each line of a cloth's steps whether it frees only pieces that
// are cut already. A step's lines follow the one with its number.
func (b *binder) doneLines(f *cutting.Fabric, c *cutting.Cloth, lines []say.Line) []bool {
	out := make([]bool, len(lines))
	if b.doneWords(f) == "" {
		return out
	}
	done := map[string]bool{}
	for _, step := range c.Steps(b.q.Plan) {
		done[digits(step.First)] = f.Done(step)
	}
	now := false
	for i, line := range lines {
		if line.Label != "" {
			first := strings.FieldsFunc(line.Label, func(r rune) bool { return r < '0' || r > '9' })
			now = len(first) > 0 && done[first[0]]
		}
		out[i] = now
	}
	return out
}

// doneNote says what the binder leaves out because it is cut already; "" where
// nothing is.
func (b *binder) doneNote() string {
	var words []string
	for i := range b.q.Fabrics {
		f := &b.q.Fabrics[i]
		switch sizes := b.doneWords(f); {
		case f.AllDone():
			words = append(words, f.Fabric.Name)
		case sizes != "":
			words = append(words, f.Fabric.Name+" "+sizes)
		}
	}
	if len(words) == 0 {
		return ""
	}
	note := "Cut already, and left out here: " + strings.Join(words, "; ") + "."
	var bags []int
	for n := 1; n <= len(b.q.Bags.Bags); n++ {
		if b.q.BagDone(n) {
			bags = append(bags, n)
		}
	}
	if len(bags) > 0 {
		note += " There is no label for " + say.BagList(bags) + "; the command labels prints all."
	}
	return note
}

// cutAlready is the shopping list's line of fabrics that are cut or begun, and so
// at hand.
func (b *binder) cutAlready() []page.Block {
	var names []string
	for i := range b.q.Fabrics {
		if f := &b.q.Fabrics[i]; b.doneWords(f) != "" {
			names = append(names, f.Fabric.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []page.Block{page.Gap{H: b.style.Break}, page.Para{Text: b.style.Body.Say("Cut already, or begun: " + say.Things(names) + "."), Mark: "cut already"}}
}

// firstSheet is the first fabric that something is left to cut from.
func (b *binder) firstSheet() int {
	for i := range b.q.Fabrics {
		if !b.q.Fabrics[i].AllDone() {
			return i
		}
	}
	return 0
}
