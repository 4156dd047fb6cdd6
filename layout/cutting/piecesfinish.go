package cutting

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// What pieces of no block are for, where the plan doesn't name it.
const (
	ForSides        = "side setting triangles"
	ForCorners      = "corner setting triangles"
	ForAlternate    = "setting squares"
	ForSashing      = "sashing"
	ForCornerstones = "cornerstones"
	ForBinding      = "binding"
	ForBacking      = "backing"
)

// setting takes in what fills an on-point setting.
func (b *builder) setting() {
	s := b.plan.Setting
	if s == nil {
		return
	}
	fill := trade.Fill(s.Across, s.Down)
	sew := sewing(b.plan, false)
	finished := length.Size{W: s.Block, H: s.Block}
	use := Use{At: s.At, Finished: finished}
	triangles := func(unit plan.Unit, r trade.Recipe, n int, from plan.Source, what string) {
		use := use
		use.Unit, use.For, use.Units = unit, what, n
		b.part(r.Parts[0], from, sizePlace(s.Node), r.Batches(n), use)
	}
	corners := s.Corners
	if corners.ID == "" {
		corners = s.Sides
	}
	triangles(plan.SideSetting, sew.SideSetting(s.Block, s.Generous), fill.Sides, s.Sides, ForSides)
	triangles(plan.CornerSetting, sew.CornerSetting(s.Block, s.Generous), fill.Corners, corners, ForCorners)
	if s.Alternate != nil {
		triangles(plan.Patch, sew.Patch(finished), fill.Between, *s.Alternate, ForAlternate)
	}
}

// sashing takes in the strips between the blocks and the squares where they cross.
func (b *builder) sashing() {
	s := b.plan.Sashing
	if s == nil {
		return
	}
	sashes := sewing(b.plan, false).Sashing(s.Across, s.Down, s.Block, s.Width, s.Frame, s.Cornerstones != nil)
	b.cut(s.Node, sashes.Upright, s.Source, ForSashing)
	b.cut(s.Node, sashes.Level, s.Source, ForSashing)
	if s.Cornerstones != nil {
		b.cut(s.Node, sashes.Cornerstones, *s.Cornerstones, ForCornerstones)
	}
}

// cut takes in pieces that stand alone.
func (b *builder) cut(n plan.Node, c trade.Cut, from plan.Source, what string) {
	b.add(b.cutDemand(n, c, from, what))
}

func (b *builder) cutDemand(n plan.Node, c trade.Cut, from plan.Source, what string) demand {
	finished := length.Size{W: c.Size.W - 2*b.plan.Seam, H: c.Size.H - 2*b.plan.Seam}
	return demand{at: sizePlace(n), source: from, size: c.Size, count: c.Count,
		use: Use{At: n.At, For: what, Unit: plan.Patch, Finished: finished, Units: c.Count, Sum: c.Sum}}
}

// borders takes in the borders. One that doesn't say what it goes round goes
// round what the borders outside it leave of the quilt.
func (b *builder) borders() {
	inside := b.plan.Finished
	around := make([]length.Size, len(b.plan.Borders))
	for i := len(b.plan.Borders) - 1; i >= 0; i-- {
		w := b.plan.Borders[i].Width
		inside = length.Size{W: inside.W - 2*w, H: inside.H - 2*w}
		around[i] = b.plan.Borders[i].Around
		if around[i] == (length.Size{}) {
			around[i] = inside
		}
	}
	for i, border := range b.plan.Borders {
		b.border(i+1, border, around[i])
	}
}

func (b *builder) border(number int, border *plan.Border, around length.Size) {
	if around.W <= 0 || around.H <= 0 {
		b.fault(border.At, fmt.Sprintf("border %d has nothing to go round", number),
			"give the quilt's finished size, or what the border goes round")
		return
	}
	name := border.For
	if name == "" {
		name = fmt.Sprintf("border %d", number)
	}
	sides, ends := sewing(b.plan, false).Border(around, border.Width, border.Mitred)
	s := b.cutDemand(border.Node, sides, border.Source, name+" sides")
	e := b.cutDemand(border.Node, ends, border.Source, name+" top and bottom")
	s.spareless, e.spareless = true, true
	if border.Mitred {
		// The seam allowance reaches past the mitres, so take the finished length.
		s.use.Finished.H = around.H + 2*border.Width
		e.use.Finished.W = around.W + 2*border.Width
	}
	if border.Join {
		b.join(&s)
		b.join(&e)
		oneRun(&s, &e, number, b.narrowest(border.Source))
	}
	b.add(s)
	b.add(e)
}

// oneRun joins the strips of two demands into one run where both are joined: the
// second takes what the run needs beyond the first, since what the first leaves
// of its last strip is used.
func oneRun(first, second *demand, number int, wof length.Length) {
	a, z := first.use.Joined, second.use.Joined
	if a == nil || z == nil {
		return
	}
	a.Run, z.Run = number, number
	total := a.Size.H*length.Length(a.Count) + z.Size.H*length.Length(z.Count)
	second.count = trade.Join(total, wof, a.Loss) - first.count
}

// binding takes in the binding: strips across the width, or a square for bias.
func (b *builder) binding() {
	bind := b.plan.Binding
	if bind == nil {
		return
	}
	if b.plan.Finished.W <= 0 || b.plan.Finished.H <= 0 {
		b.fault(bind.At, "the binding can't be reckoned: the quilt's finished size isn't stated", "write finished: WIDTH x LENGTH")
		return
	}
	run := trade.BindingRun(b.plan.Finished, bind.Tail)
	use := Use{At: bind.At, For: ForBinding, Unit: plan.Patch, Bias: bind.Bias,
		Joined: &Joined{Size: length.Size{W: bind.Strip, H: run}, Count: 1},
		LongSum: trade.Sum{Terms: []trade.Term{
			{What: trade.QuiltSide, Times: 2, Each: b.plan.Finished.W}, {What: trade.QuiltSide, Times: 2, Each: b.plan.Finished.H},
			{What: trade.Tail, Times: 1, Each: bind.Tail}}}}
	d := demand{at: sizePlace(bind.Node), source: bind.Source, late: true, spareless: true, use: use}
	wof := b.narrowest(bind.Source)
	if bind.Bias {
		n, side := trade.BiasSquares(run, bind.Strip, b.plan.Seam, b.plan.CutStep, wof)
		d.count, d.size = n, length.Size{W: side, H: side}
		d.use.Sum = trade.Sum{Terms: []trade.Term{{What: trade.BiasSquare, Times: 1, Each: side}}}
		d.use.Joined.Loss = bind.Strip
	} else {
		loss := trade.JoinLoss(bind.Strip, b.plan.Seam, bind.Straight)
		d.count = trade.Join(run, wof, loss)
		d.setAcross(bind.Strip, trade.Sum{Terms: []trade.Term{{What: trade.BindingStrip, Times: 1, Each: bind.Strip}}})
		d.use.Joined.Loss = loss
	}
	d.use.Units = max(d.count, 0)
	if d.count <= 0 && wof > 0 {
		u := b.plan.Units
		b.fault(d.at, fmt.Sprintf("binding strips cut %s can't be had from fabric %s wide",
			u.Format(bind.Strip, length.WithUnit), u.Format(wof, length.WithUnit)), "take narrower strips or wider cloth")
		return
	}
	b.add(d)
}

// backing takes in the backing's panels, full widths along the cloth, with the
// seams the way that takes less cloth. Where both take the same they run down the
// quilt, as they do on a one-way fabric, which then stands upright.
func (b *builder) backing() {
	back := b.plan.Backing
	if back == nil {
		return
	}
	if b.plan.Finished.W <= 0 || b.plan.Finished.H <= 0 {
		b.fault(back.At, "the backing can't be reckoned: the quilt's finished size isn't stated", "write finished: WIDTH x LENGTH")
		return
	}
	allowance := length.Length(trade.BackingSeamInch)
	if b.plan.Units == length.Metric {
		allowance = trade.BackingSeamMetric
	}
	wof := b.narrowest(back.Source)
	down, across := trade.Backing(b.plan.Finished, back.Overhang, wof, allowance)
	panels, isDown := across, false
	if back.Seams == plan.SeamsDown || back.Seams == plan.SeamsEither && (down.Cloth() <= across.Cloth() || !b.turns(back.Source)) {
		panels, isDown = down, true
	}
	if panels.Count == 0 && wof > 0 {
		b.fault(back.At, fmt.Sprintf("a backing can't be made from fabric %s wide", b.plan.Units.Format(wof, length.WithUnit)), "take wider cloth")
		return
	}
	size := trade.WithOverhang(b.plan.Finished, back.Overhang)
	wide, long := overhung(b.plan.Finished.W, back.Overhang), overhung(b.plan.Finished.H, back.Overhang)
	whole := wide
	whole.Along = &long
	d := demand{at: sizePlace(back.Node), source: back.Source, spareless: true, count: panels.Count,
		use: Use{At: back.At, For: ForBacking, Unit: plan.Patch, Units: panels.Count,
			Joined: &Joined{Size: size, Count: 1, Loss: 2 * allowance, Halved: panels.Halved, Down: isDown, Seams: panels.Seams}, LongSum: whole}}
	if isDown {
		wide = long
	}
	d.setAcross(panels.Length, wide)
	b.add(d)
}

// overhung is the sum of a side of the quilt and what stands over at both ends.
func overhung(side, by length.Length) trade.Sum {
	return trade.Sum{Terms: []trade.Term{{What: trade.QuiltSide, Times: 1, Each: side}, {What: trade.Overhang, Times: 2, Each: by}}}
}
