// Package audit looks for what is wrong in a plan that can be worked out: what
// the writer claimed and the figures don't bear out, blocks that can't come out
// at their size, cloth without an inch to spare, sizes that hands confuse.
//
// Audit goes through a plan that is laid out. A finding has a level: a fault is
// a promise of the plan that can't be kept, a doubt is something to look at that
// may be right after all, a note is worth knowing. Its id ("claim-buy:dusk")
// stays the same while what it is about does, so that a plan can accept it.
// Whatever is found, the pieces can still be cut and the binder printed.
package audit

import (
	"context"
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/picture"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// Audit looks through a plan and its fabrics as they are laid out, in the
// plan's order. The findings are in order of their place. Some of them are found
// by laying a fabric out once more, narrower or shorter: o says how much work
// that may be, and ctx's end is the only error.
func Audit(ctx context.Context, p *plan.Plan, fabrics []cutting.Fabric, o cutting.Options) (plan.Problems, error) {
	a := &auditor{ctx: ctx, plan: p, fabrics: fabrics, o: o, v: say.For(p).InPlain()}
	var lists []cutting.List
	for i := range fabrics {
		lists = append(lists, fabrics[i].List)
	}
	a.lines = cutting.Explain(p, lists)
	a.claims()
	a.blocks()
	a.quilt()
	a.unusual()
	a.problems = append(a.problems, picture.Check(p)...)
	a.sizes()
	a.prints()
	a.uses()
	for _, look := range []func() error{a.shelves, a.cloths, a.widths} {
		if err := look(); err != nil {
			return nil, err
		}
	}
	a.accepted()
	a.problems.Sort()
	return a.problems, nil
}

// An auditor is a plan under audit.
type auditor struct {
	ctx      context.Context
	plan     *plan.Plan
	fabrics  []cutting.Fabric
	lines    []cutting.Explained
	o        cutting.Options
	v        say.Voice
	problems plan.Problems
}

// find notes a finding.
func (a *auditor) find(level plan.Level, at plan.Pos, id, hint, what string, args ...any) {
	a.problems = append(a.problems, plan.Problem{At: at, Level: level, ID: id, What: fmt.Sprintf(what, args...), Hint: hint})
}

// accepted takes out the doubts and notes that the plan accepts, and tells which
// of its accepted ones no longer stand. A fault can't be accepted.
func (a *auditor) accepted() {
	reasons := map[string]bool{}
	for _, acc := range a.plan.Accept {
		reasons[acc.ID] = true
	}
	seen := map[string]plan.Level{}
	var left plan.Problems
	for _, p := range a.problems {
		seen[p.ID] = min(p.Level, level(seen, p))
		if p.Level == plan.Fault || !reasons[p.ID] {
			left = append(left, p)
		}
	}
	a.problems = left
	for _, acc := range a.plan.Accept {
		switch found, ok := seen[acc.ID]; {
		case !ok:
			a.find(plan.Remark, acc.At, "accept:"+acc.ID, "take it out, or see whether its name has changed",
				"%s is accepted, but there is no such finding any more", acc.ID)
		case found == plan.Fault:
			a.find(plan.Remark, acc.At, "accept:"+acc.ID, "mend it, or take the claim out",
				"%s is a fault: only doubts and notes can be accepted", acc.ID)
		}
	}
}

func level(seen map[string]plan.Level, p plan.Problem) plan.Level {
	if l, ok := seen[p.ID]; ok {
		return l
	}
	return p.Level
}

// lineID names a line of pieces for ids: "A.2" is block A's second, "pieces.1"
// the first of no block.
func lineID(block string, i int) string {
	if block == "" {
		block = "pieces"
	}
	return fmt.Sprintf("%s.%d", block, i+1)
}

// eachLine goes through all lines of pieces; block is nil for those of none.
func (a *auditor) eachLine(look func(block *plan.Block, piece *plan.Piece, id string)) {
	for _, b := range a.plan.Blocks {
		for i, piece := range b.Pieces {
			look(b, piece, lineID(b.ID, i))
		}
	}
	for i, piece := range a.plan.Pieces {
		look(nil, piece, lineID("", i))
	}
}

// of is what a line of pieces came to, one entry a cut size.
func (a *auditor) of(piece *plan.Piece) (cuts []cutting.Explained) {
	for _, e := range a.lines {
		if e.At == piece.At {
			cuts = append(cuts, e)
		}
	}
	return cuts
}

// hair is the least that counts when cloth is cut: an eighth of an inch, in a
// metric plan 3 mm.
func (a *auditor) hair() length.Length {
	if a.plan.Units == length.Metric {
		return 3 * length.MM
	}
	return length.Inch / 8
}

// usualSquaring is what straightening the ends takes in common practice.
func (a *auditor) usualSquaring() length.Length {
	if a.plan.Units == length.Metric {
		return 15 * length.MM
	}
	return length.Inch / 2
}
