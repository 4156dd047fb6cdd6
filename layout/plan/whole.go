package plan

import "cutbinder/layout/length"

// whole checks what only the whole plan shows, and fills in what follows from it.
func (r *reader) whole() {
	p := r.plan
	p.Ruler = upright(p.Ruler)
	p.Mat = upright(p.Mat)
	if p.Stated("fabrics") && len(p.Fabrics) == 0 && len(r.faults) == 0 {
		r.fault(p.Place("fabrics"), "", "fabrics: none is written; expected at least one such as dusk: {name: Dusk stripe}")
	}
	r.makes()
	r.total()
	r.something()
	r.finishedSize()
	r.bordersFit()
	if r.ownSheet && len(r.faults) == 0 {
		r.sheetFits()
	}
}

// upright puts a size's shorter side first.
func upright(z length.Size) length.Size { return length.Size{W: min(z.W, z.H), H: max(z.W, z.H)} }

// makes fills in how many blocks to make from the quilt's rows, where the block
// doesn't state it.
func (r *reader) makes() {
	times := map[string]int{}
	for _, row := range r.plan.Quilt {
		for _, set := range row {
			times[set.Block]++
		}
	}
	for _, b := range r.plan.Blocks {
		if b.Stated("make") || b.Keys == nil || r.misspelt(b.Node, "make") {
			continue
		}
		if b.Make = times[b.ID]; b.Make == 0 {
			r.fault(b.At, "write make: and how many", "block %q has no make; expected how many of this block", b.ID)
		}
	}
}

// total checks that the plan's pieces stay within the limit.
func (r *reader) total() {
	sum := 0
	add := func(pieces []*Piece, times int, key string) {
		for _, p := range pieces {
			if sum += times * p.Count; sum > maxPieces && sum-times*p.Count <= maxPieces {
				r.fault(p.Place(key), "", "the plan comes to %d pieces here; expected at most %d", sum, maxPieces)
			}
		}
	}
	for _, b := range r.plan.Blocks {
		add(b.Pieces, b.Make, "each")
	}
	add(r.plan.Pieces, 1, "need")
}

// something checks that there is anything to cut.
func (r *reader) something() {
	p := r.plan
	if len(p.Blocks)+len(p.Pieces)+len(p.Borders) > 0 || p.Setting != nil || p.Sashing != nil || p.Binding != nil || p.Backing != nil {
		return
	}
	for _, key := range []string{"blocks", "pieces", "borders", "setting", "sashing", "binding", "backing"} {
		if p.Stated(key) && len(r.faults) > 0 || r.misspelt(p.Node, key) {
			return
		}
	}
	r.fault(p.At, "write pieces: [{cut: 2 1/2, need: 40, fabric: dusk}], or blocks", "the plan has nothing to cut; expected pieces or blocks")
}

// finishedSize checks that the quilt's size is written where it is needed.
func (r *reader) finishedSize() {
	p := r.plan
	if p.Stated("finished") || r.misspelt(p.Node, "finished") {
		return
	}
	needs := func(at Pos, what string) {
		r.fault(at, "write finished: 54 x 66 at the top of the plan", "%s needs the quilt's finished size, which the plan does not state", what)
	}
	if p.Binding != nil {
		needs(p.Binding.At, "binding")
	}
	if p.Backing != nil {
		needs(p.Backing.At, "backing")
	}
	if p.Batting != nil {
		needs(p.Batting.At, "batting")
	}
	for _, b := range p.Borders {
		if !b.Stated("around") && !r.misspelt(b.Node, "around") {
			needs(b.At, "a border without around")
		}
	}
}

// bordersFit checks that borders leave something inside the quilt's finished size.
func (r *reader) bordersFit() {
	p := r.plan
	var sum length.Length
	for _, b := range p.Borders {
		sum += 2 * b.Width
		if p.Finished.W > 0 && !b.Stated("around") && sum >= min(p.Finished.W, p.Finished.H) {
			r.fault(b.Place("width"), "", "width: the borders take %s of the quilt's %s; nothing is left inside",
				p.Units.Format(sum, length.WithUnit), p.Units.FormatSize(p.Finished, length.WithUnit))
			return
		}
	}
}
