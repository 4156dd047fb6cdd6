package audit

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// quilt checks that blocks, sashing and borders add up to the quilt.
func (a *auditor) quilt() {
	p := a.plan
	made := 0
	for _, b := range p.Blocks {
		made += b.Make
	}
	switch s, g := p.Setting, p.Sashing; {
	case s != nil:
		n, how := s.Across*s.Down, fmt.Sprintf("%d x %d on point", s.Across, s.Down)
		if between := trade.Fill(s.Across, s.Down).Between; s.Alternate == nil && between > 0 {
			n, how = n+between, fmt.Sprintf("%s and %d between them", how, between)
		}
		a.blockCount(s.Place("on-point"), made, n, how)
		wide, high := trade.PointToPoint(s.Block, s.Across), trade.PointToPoint(s.Block, s.Down)
		// A centre on point is trimmed, and its sides are no even figures.
		a.centre(s.At, length.Size{W: wide, H: high}, length.Inch/4+2*s.Generous)
	case g != nil:
		a.blockCount(g.Place("blocks"), made, g.Across*g.Down, fmt.Sprintf("%d x %d", g.Across, g.Down))
		sashes := length.Length(-1)
		if g.Frame {
			sashes = 1
		}
		a.centre(g.At, length.Size{
			W: length.Length(g.Across)*g.Block.W + (length.Length(g.Across)+sashes)*g.Width,
			H: length.Length(g.Down)*g.Block.H + (length.Length(g.Down)+sashes)*g.Width}, 0)
	}
}

func (a *auditor) blockCount(at plan.Pos, made, want int, how string) {
	if made == 0 || made == want {
		return
	}
	a.find(plan.Doubt, at, "block-count", "mend the blocks' make, or the setting",
		"%s takes %s; the blocks' make comes to %d", how, plural(want, "block", "blocks"), made)
}

// centre checks what blocks and sashing come to against what the borders go
// round, and with them against the quilt's finished size.
func (a *auditor) centre(at plan.Pos, size length.Size, tolerance length.Length) {
	p := a.plan
	if len(p.Borders) > 0 && p.Borders[0].Stated("around") {
		if b := p.Borders[0]; !within(size, b.Around, tolerance) {
			a.find(plan.Doubt, b.Place("around"), "centre-size", "measure the centre before you cut the border",
				"the border goes round %s; the blocks inside come to %s", a.v.Size(b.Around), a.about(size, tolerance))
		}
		size = p.Borders[0].Around
	}
	for _, b := range p.Borders {
		size = length.Size{W: size.W + 2*b.Width, H: size.H + 2*b.Width}
	}
	if p.Stated("finished") && !within(size, p.Finished, tolerance) {
		with := ""
		if len(p.Borders) > 0 {
			with = " with the borders"
		}
		a.find(plan.Doubt, p.Place("finished"), "quilt-size", "binding, backing and borders are reckoned from finished: mend it, or the setting",
			"the quilt is said to finish %s; its blocks come to %s%s", a.v.Size(p.Finished), a.about(size, tolerance), with)
	}
}

// about is a size in words, rounded up where it isn't an even figure.
func (a *auditor) about(z length.Size, tolerance length.Length) string {
	if tolerance == 0 {
		return a.v.Size(z)
	}
	step := a.plan.CutStep
	up := func(l length.Length) length.Length { return (l + step - 1) / step * step }
	return "about " + a.v.Size(length.Size{W: up(z.W), H: up(z.H)})
}

func within(a, b length.Size, by length.Length) bool {
	return apart(a.W, b.W) <= by && apart(a.H, b.H) <= by
}

func apart(a, b length.Length) length.Length { return max(a-b, b-a) }
