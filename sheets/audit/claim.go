package audit

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets/say"
)

// claims compares what the writer believes with what is worked out.
func (a *auditor) claims() {
	a.planPieces()
	for _, b := range a.plan.Blocks {
		a.blockPieces(b)
	}
	a.eachLine(func(b *plan.Block, piece *plan.Piece, id string) {
		a.lineNeed(b, piece, id)
		a.lineStrips(piece, id)
	})
	for i := range a.fabrics {
		a.fabricBuy(&a.fabrics[i])
		a.fabricStrips(&a.fabrics[i])
	}
}

// off says by how much a count is off.
func off(claimed, found int) string {
	if claimed > found {
		return fmt.Sprintf("%d too many", claimed-found)
	}
	return fmt.Sprintf("%d too few", found-claimed)
}

func (a *auditor) planPieces() {
	c := a.plan.Claims
	count, spares := 0, 0
	for _, e := range a.lines {
		count += e.Count
		spares += e.Spares
	}
	if c.Pieces == 0 || c.Pieces == count || c.Pieces == count+spares {
		return
	}
	with := ""
	if spares > 0 {
		with = fmt.Sprintf(", %d with the spares", count+spares)
	}
	a.find(plan.Fault, c.Place("pieces"), "claim-pieces", fmt.Sprintf("write pieces: %d, or see which line is %s", count, off(count, c.Pieces)),
		"the plan claims %d pieces; its lines come to %d%s: %s", c.Pieces, count, with, off(c.Pieces, count))
}

// patches is how many patches of cloth a sewn unit is made of.
func patches(piece *plan.Piece) int {
	switch piece.Unit {
	case plan.HalfSquare:
		return 2
	case plan.Geese:
		return 3
	case plan.Hourglass:
		return 4
	case plan.SquareInSquare:
		return 5
	case plan.StripSet:
		return len(piece.Strips)
	}
	return 1
}

// blockPieces checks the pieces of one block. Makers count units, the patches
// in them, or what is cut for a block: a claim that any of these bears out
// stands.
func (a *auditor) blockPieces(b *plan.Block) {
	c := b.Claims
	if c.Pieces == 0 {
		return
	}
	units, sewn, cut := 0, 0, 0
	for _, piece := range b.Pieces {
		units += piece.Count
		sewn += piece.Count * patches(piece)
		for _, e := range a.of(piece) {
			cut += e.Count
		}
	}
	if c.Pieces == units || c.Pieces == sewn || c.Pieces*b.Make == cut {
		return
	}
	ways := fmt.Sprintf("%d", units)
	if sewn != units {
		ways = fmt.Sprintf("%d units, which are %d patches when sewn", units, sewn)
	}
	a.find(plan.Fault, c.Place("pieces"), "claim-pieces:"+b.ID, "count the block's patches on the drawing, and see which line is off",
		"block %s claims %d pieces; its lines come to %s", b.ID, c.Pieces, ways)
}

// lineNeed checks how many a line needs in all: units, or what is cut for them.
func (a *auditor) lineNeed(b *plan.Block, piece *plan.Piece, id string) {
	c := piece.Claims
	if c.Need == 0 {
		return
	}
	n, how := piece.Count, ""
	if b != nil {
		n *= b.Make
		how = fmt.Sprintf(" (%d for each of %s)", piece.Count, plural(b.Make, "block", "blocks"))
	}
	right := []int{n}
	all, cut := 0, ""
	for _, e := range a.of(piece) {
		right = append(right, e.Count, e.Count+e.Spares)
		all += e.Count
	}
	if all != n && all > 0 {
		cut = fmt.Sprintf(", from %d cut pieces", all)
	}
	if slices.Contains(append(right, all), c.Need) {
		return
	}
	a.find(plan.Fault, c.Place("need"), "claim-need:"+id, fmt.Sprintf("write need: %d here, or mend the counts", n),
		"this line claims that %d are needed; it comes to %d%s%s: %s", c.Need, n, how, cut, off(c.Need, n))
}

// lineStrips checks the strips that a line takes by itself.
func (a *auditor) lineStrips(piece *plan.Piece, id string) {
	c := piece.Claims
	if c.Strips == 0 {
		return
	}
	least, most := 0, 0
	how := ""
	for _, e := range a.of(piece) {
		for _, s := range e.Shares {
			strips := s.Piece.StripsFor(s.Count, s.Fabric.Width)
			least += strips.Count
			most += s.Piece.StripsFor(s.Count+s.Spares, s.Fabric.Width).Count
			how = fmt.Sprintf(": (%d) %s to a strip at %s", strips.Each, a.v.Size(s.Piece.Size), a.v.With(s.Fabric.Width))
		}
	}
	switch {
	case least == 0 || c.Strips >= least && c.Strips <= most:
	case c.Strips < least:
		a.find(plan.Fault, c.Place("strips"), "claim-strips:"+id, fmt.Sprintf("write strips: %d", least),
			"this line claims %s; its pieces take %d%s", plural(c.Strips, "strip", "strips"), least, how)
	default:
		a.find(plan.Remark, c.Place("strips"), "claim-strips:"+id, fmt.Sprintf("write strips: %d", most),
			"this line claims %s; %d hold its pieces%s", plural(c.Strips, "strip", "strips"), most, how)
	}
}

func plural(n int, one, many string) string { return fmt.Sprintf("%d %s", n, say.Plural(n, one, many)) }

// fabricStrips checks the strips cut from a fabric, whether each size has its
// own or sizes share them.
func (a *auditor) fabricStrips(f *cutting.Fabric) {
	c := f.Fabric.Claims
	if c.Strips == 0 {
		return
	}
	_, apart := f.Apart()
	here := f.Strips()
	if c.Strips >= min(here, apart) && c.Strips <= max(here, apart) {
		return
	}
	var sizes []string
	for _, p := range f.Pieces {
		s := p.StripsFor(p.Need, f.Fabric.Width)
		sizes = append(sizes, fmt.Sprintf("(%d) %s take %d, %d to a strip", p.Need, a.v.Size(p.Size), s.Count, s.Each))
	}
	level := plan.Remark
	if c.Strips < min(here, apart) {
		level = plan.Doubt
		if len(f.Pieces) == 1 {
			level = plan.Fault
		}
	}
	a.find(level, c.Place("strips"), "claim-strips:"+f.Fabric.ID, fmt.Sprintf("write strips: %d, or measure whether the cloth is wider", here),
		"%s claims %s; at %s usable width it takes %d: %s", f.Fabric.Name, plural(c.Strips, "strip", "strips"),
		a.v.With(f.Fabric.Width), here, strings.Join(sizes, "; "))
}

// lean is what a used length asks for without padding or the shop's steps.
func (a *auditor) lean(f *plan.Fabric, used length.Length) length.Length {
	rules := cutting.Rules(a.plan, f)
	rules.Extra, rules.Step = 0, 0
	return trade.ToBuy(used, rules).Exact
}

// washedOnly is what a used length asks for where nothing is lost squaring.
func (a *auditor) washedOnly(f *plan.Fabric, used length.Length) length.Length {
	return trade.ToBuy(used, trade.Rules{Shrink: cutting.Rules(a.plan, f).Shrink}).Exact
}

// fabricBuy checks what the writer says to buy.
func (a *auditor) fabricBuy(f *cutting.Fabric) {
	c := f.Fabric.Claims
	if c.Buy == 0 || len(f.Fabric.Have) > 0 || f.Buy.Used == 0 {
		return
	}
	id, at := "claim-buy:"+f.Fabric.ID, c.Place("buy")
	exact := a.lean(f.Fabric, f.Buy.Used)
	claim := a.claimed(c.Buy)
	switch spare := c.Buy - exact; {
	case spare < 0:
		a.claimShort(f, c.Buy, exact, claim)
	case spare < a.hair() || c.Buy-f.Buy.Used <= a.usualSquaring():
		a.find(plan.Doubt, at, id, "ask for "+a.v.ToBuy(a.nextStep(f, c.Buy))+", or cut with care: nothing may go wrong",
			"%s: %s is tight: %s are cut from it, which leaves %s for crooked ends", f.Fabric.Name, claim, a.v.With(f.Buy.Used), a.v.With(c.Buy-f.Buy.Used))
	case c.Buy < f.Buy.Exact:
		a.find(plan.Remark, at, id, "write buy: "+a.v.ToBuy(f.Buy.Buy)+", or lower extra",
			"%s: %s holds the pieces, but not the padding of %s that the plan asks for", f.Fabric.Name, claim, say.Percent(a.plan.Allow.Extra))
	case c.Buy >= f.Buy.Buy+length.Yard/2:
		a.find(plan.Remark, at, id, "write buy: "+a.v.ToBuy(f.Buy.Buy)+" where a margin isn't wanted",
			"%s: %s is generous: %s do, %s less", f.Fabric.Name, claim, a.v.ToBuy(f.Buy.Buy), a.v.With(c.Buy-f.Buy.Buy))
	}
	a.nested(f, exact, claim)
}

// claimed is a claimed length as shops sell it, and what it measures.
func (a *auditor) claimed(l length.Length) string {
	if a.plan.Units == length.Imperial && l%length.Sixtyfourth != 0 && l%length.MM == 0 {
		return length.Metric.FormatCloth(l)
	}
	text, inches := a.v.ToBuy(l), a.v.With(l)
	if text == inches || a.plan.Units == length.Metric {
		return text
	}
	return text + " (" + inches + ")"
}

// nextStep is a length with one step of the shop's more.
func (a *auditor) nextStep(f *cutting.Fabric, l length.Length) length.Length {
	rules := cutting.Rules(a.plan, f.Fabric)
	rules.Squaring, rules.Shrink, rules.Extra = 0, 0, 0
	return trade.ToBuy(l+1, rules).Buy
}

// claimShort tells that a claimed length is too little, and how sure that is.
func (a *auditor) claimShort(f *cutting.Fabric, claim, exact length.Length, text string) {
	level, sure := plan.Fault, "no cutting of any kind takes less"
	switch {
	case a.washedOnly(f.Fabric, f.Buy.Used) <= claim:
		level, sure = plan.Doubt, "it leaves "+a.v.With(claim-a.washedOnly(f.Fabric, f.Buy.Used))+" for straightening the ends"
	case a.lean(f.Fabric, f.Any) > claim:
		if f.Any < f.Used {
			sure = "no cutting of any kind takes less than " + a.v.With(f.Any)
		}
	case a.lean(f.Fabric, f.Bound) > claim:
		sure = "cut " + say.Kind(f.Fabric.Cutting) + ", they can't come from less than " + a.v.With(f.Bound)
	default:
		level, sure = plan.Doubt, "the best cutting found takes that much; whether less would do isn't proved"
	}
	takes := a.v.With(f.Buy.Used)
	if exact > f.Buy.Used {
		with := ", with squaring "
		if f.Fabric.Prewash {
			with = ", with squaring and shrinkage "
		}
		takes += with + a.v.About(exact)
	}
	a.find(level, f.Fabric.Claims.Place("buy"), "claim-buy:"+f.Fabric.ID, "write buy: "+a.v.ToBuy(f.Buy.Buy),
		"%s: %s is %s short: the pieces take %s; %s", f.Fabric.Name, text, a.v.About(exact-claim), takes, sure)
}

// nested tells that a claim holds only where small pieces come from the ends of
// strips for larger ones.
func (a *auditor) nested(f *cutting.Fabric, exact length.Length, claim string) {
	apart, _ := f.Apart()
	buy := f.Fabric.Claims.Buy
	if apart == 0 || buy < exact || buy >= a.lean(f.Fabric, apart) {
		return
	}
	a.find(plan.Remark, f.Fabric.Claims.Place("buy"), "nest:"+f.Fabric.ID, "cut as the fabric's sheet shows, largest first",
		"%s: %s does only where sizes share strips: as worked out the pieces take %s; with strips of its own for each size they would take %s",
		f.Fabric.Name, claim, a.v.With(f.Buy.Used), a.v.With(apart))
}
