package audit

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// sizes looks for sizes that are easily taken for each other.
func (a *auditor) sizes() {
	for i := range a.fabrics {
		a.nearSizes(&a.fabrics[i])
	}
	a.eachLine(func(b *plan.Block, piece *plan.Piece, id string) {
		if piece.Unit == plan.Patch && piece.Cut.W > 0 && piece.Cut.H > 0 {
			a.mistaken(b, piece, id)
			a.belowRule(piece, id)
		}
	})
}

// confusable is how near two sizes are for hands to confuse them.
func (a *auditor) confusable() length.Length {
	if a.plan.Units == length.Metric {
		return 6 * length.MM
	}
	return length.Inch / 4
}

// nearSizes tells of sizes of one fabric that hands confuse.
func (a *auditor) nearSizes(f *cutting.Fabric) {
	for i, p := range f.Pieces {
		for _, q := range f.Pieces[i+1:] {
			if p.WOF != q.WOF || !alike(p.Size, q.Size, a.confusable()) {
				continue
			}
			level, hint := plan.Doubt, "bag them apart (bags: {by: [block, size]}), or cut both at the larger size and trim"
			if slices.Contains(a.plan.BagBy, plan.BySize) {
				level, hint = plan.Remark, "they are bagged apart; label a bag before the next size is cut, or cut both at the larger size and trim"
			}
			a.find(level, q.Uses[0].At, fmt.Sprintf("near:%s:%s:%s", f.Fabric.ID, a.key(p.Size), a.key(q.Size)), hint,
				"%s: (%d) %s and (%d) %s are within %s of each other and easily confused", f.Fabric.Name,
				p.Need, a.v.Size(p.Size), q.Need, a.v.Size(q.Size), a.v.With(a.confusable()))
		}
	}
}

// alike says that two sizes differ, but by no more than by each way.
func alike(p, q length.Size, by length.Length) bool {
	return p != q && within(upright(p), upright(q), by) && upright(p) != upright(q)
}

func upright(z length.Size) length.Size { return length.Size{W: min(z.W, z.H), H: max(z.W, z.H)} }

// key is a size for ids: in decimals, without spaces.
func (a *auditor) key(z length.Size) string {
	return a.decimals(z.W) + "x" + a.decimals(z.H)
}

func (a *auditor) decimals(l length.Length) string {
	unit := int64(length.Inch)
	if a.plan.Units == length.Metric {
		unit = int64(length.CM)
	}
	return decimal((1000*int64(l)+unit/2)/unit, 3)
}

// mistaken tells of a stated cut size that is another line's finished size:
// one of the two was probably meant the other way. Lines of a block are compared
// with those of that block, loose ones with all.
func (a *auditor) mistaken(b *plan.Block, piece *plan.Piece, id string) {
	told := false
	a.eachLine(func(c *plan.Block, other *plan.Piece, _ string) {
		if told || b != nil && b != c || other.Finished.W <= 0 || upright(other.Finished) != upright(piece.Cut) {
			return
		}
		told = true
		with := length.Size{W: piece.Cut.W + 2*a.plan.Seam, H: piece.Cut.H + 2*a.plan.Seam}
		a.find(plan.Doubt, piece.Place("cut"), "cut-finished:"+id, fmt.Sprintf("where it is the finished size write finished: %s, which is cut %s", a.v.Short(piece.Cut), a.v.Short(with)),
			"cut %s is a finished size on line %d: cut so, it finishes %s", a.v.Size(piece.Cut), other.Place("finished").Line,
			a.v.Size(length.Size{W: piece.Cut.W - 2*a.plan.Seam, H: piece.Cut.H - 2*a.plan.Seam}))
	})
}

// A rule is a cut size as the trade works it out.
type rule struct {
	what string
	says *regexp.Regexp // what a line says that means it
	cut  func(s trade.Sewing, finished length.Length) length.Length
	trim length.Length // cut larger by this, in units of trade.Sewing.Trim, where the unit is trimmed
}

// The rules whose figures are pasted into plans, the more particular first.
var rules = []rule{
	{"eight half-squares", regexp.MustCompile(`(?i)(\b8|eight)[- ]at[- ]a[- ]time`),
		func(s trade.Sewing, f length.Length) length.Length { return s.HalfSquareEight(f).Parts[0].Size.W }, 2},
	{"four half-squares", regexp.MustCompile(`(?i)(\b4|four)[- ]at[- ]a[- ]time`),
		func(s trade.Sewing, f length.Length) length.Length { return s.HalfSquareFour(f).Parts[0].Size.W }, 2},
	{"a half-square", regexp.MustCompile(`(?i)\bhsts?\b|half[- ]square`),
		func(s trade.Sewing, f length.Length) length.Length { return s.HalfSquareTwo(f).Parts[0].Size.W }, 1},
	{"a quarter-square", regexp.MustCompile(`(?i)\bqsts?\b|quarter[- ]square|hourglass`),
		func(s trade.Sewing, f length.Length) length.Length { return s.QuarterSquare(f).Parts[0].Size.W }, 2},
	{"a square", nil, func(s trade.Sewing, f length.Length) length.Length { return f + 2*s.Seam }, 0},
}

// belowRule tells of a stated cut size that is a hair below what a rule gives:
// sums like 1 1/2 + 7/8 = 2 1/4 are copied from page to page. What a line is for
// says which rule is meant, and then any even finished size will do. Where it
// doesn't say, only the plan's own sizes are tried, and only for squares that
// would finish at an odd figure themselves.
func (a *auditor) belowRule(piece *plan.Piece, id string) {
	if piece.Cut.W != piece.Cut.H {
		return
	}
	for _, r := range rules {
		if r.says != nil && r.says.MatchString(piece.For) {
			if !a.asRule(r, piece.Cut.W) {
				a.short(r, piece, id, a.near(piece.Cut.W))
			}
			return
		}
	}
	if a.even(piece.Cut.W - 2*a.plan.Seam) {
		return
	}
	for _, r := range rules {
		if a.short(r, piece, id, a.squares()) {
			return
		}
	}
}

// short tells where a cut size is a hair below a rule for one of the finished
// sizes.
func (a *auditor) short(r rule, piece *plan.Piece, id string, finished []length.Length) bool {
	for _, f := range finished {
		want := r.cut(a.sewing(), f)
		if by := want - piece.Cut.W; by > 0 && by <= a.hair() {
			a.find(plan.Doubt, piece.Place("cut"), "rule:"+id, fmt.Sprintf("write cut: %s, or unit: and finished: %s, and the size follows", a.v.Len(want), a.v.Len(f)),
				"cut %s is %s short of the rule for %s that finish%s %s: %s", a.v.Len(piece.Cut.W), a.v.With(by), r.what, es(r), a.v.Len(f), a.v.With(want))
			return true
		}
	}
	return false
}

// es is the end of a verb that a rule is the subject of.
func es(r rule) string {
	if strings.HasPrefix(r.what, "a ") {
		return "es"
	}
	return ""
}

func (a *auditor) sewing() trade.Sewing {
	return trade.Sewing{Seam: a.plan.Seam, Step: a.plan.CutStep}
}

// asRule says that a cut size is what a rule gives: for an even finished size,
// or with the usual trimming for one in halves of an inch (centimetres).
func (a *auditor) asRule(r rule, cut length.Length) bool {
	trim := length.Length(trade.TrimInch)
	if a.plan.Units == length.Metric {
		trim = trade.TrimMetric
	}
	return slices.ContainsFunc(a.near(cut), func(f length.Length) bool {
		want := r.cut(a.sewing(), f)
		return want == cut || want+r.trim*trim == cut && f%(2*a.grain()) == 0
	})
}

// near are the even finished sizes that a cut one may be meant for.
func (a *auditor) near(cut length.Length) (sizes []length.Length) {
	for f := a.grain(); f < cut && len(sizes) < 400; f += a.grain() {
		sizes = append(sizes, f)
	}
	return sizes
}

// squares are the finished sizes of the plan's squares and square units.
func (a *auditor) squares() (sizes []length.Length) {
	a.eachLine(func(_ *plan.Block, piece *plan.Piece, _ string) {
		if f := piece.Finished; f.W == f.H && f.W > 0 && !slices.Contains(sizes, f.W) {
			sizes = append(sizes, f.W)
		}
	})
	return sizes
}

// even says that a finished size is one that most designs have: in halves of an
// inch, or whole centimetres.
func (a *auditor) even(l length.Length) bool { return l > 0 && l%(2*a.grain()) == 0 }

// grain is the finest step of finished sizes.
func (a *auditor) grain() length.Length {
	if a.plan.Units == length.Metric {
		return length.CM / 2
	}
	return length.Inch / 4
}
