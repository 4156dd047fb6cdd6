package plan

import (
	"fmt"

	"cutbinder/layout/length"
)

// pieceTable is one line of pieces.
var pieceTable = table[Piece]{"piece", "One line of pieces: a patch, or a unit from which patches follow.", append([]field[Piece]{
	choiceField("unit", "What the pieces are sewn into.", unitOptions(), func(p *Piece) *Unit { return &p.Unit }).by("patch"),
	choiceField("method", "How the unit is made.", methodOptions(), func(p *Piece) *Method { return &p.Method }).by("the unit's usual one"),
	flagField("trim", "Cut oversize, to be trimmed after sewing.", "yes", func(p *Piece) *bool { return &p.Trim }),
	{Key{Name: "finished", Kind: KindSize, Doc: "The finished size; the seam is added.", Example: "3"}, func(r *reader, k Key, v value, p *Piece) { p.Finished = r.pieceSize(k, v, p) }},
	{Key{Name: "cut", Kind: KindSize, Doc: "The cut size, taken as it is.", Example: "3 1/2 x 6 1/2"}, func(r *reader, k Key, v value, p *Piece) { p.Cut = r.pieceSize(k, v, p) }},
	countField("each", "How many for each block; only in a block.", "4", 1, maxPieces, func(p *Piece) *int { return &p.Count }),
	countField("need", "How many in all; only outside blocks.", "40", 1, maxPieces, func(p *Piece) *int { return &p.Count }),
	{Key{Name: "fabrics", Kind: KindSources, Doc: "The fabrics or mixes of a unit's parts, in the unit's order.", Example: "[wick, nightprints]"}, readFabrics},
	textField("for", "What the pieces are for.", "side borders", func(p *Piece) *string { return &p.For }),
	flagField("join", "May be joined from strips.", "yes", func(p *Piece) *bool { return &p.Join }),
	{Key{Name: "turn", Kind: KindFlag, Doc: "Whether they may be turned on the cloth.", Example: "no", Default: "yes"}, readTurn},
	listField("strips", "The strips of a strip set, in sewing order.", "[{fabric: dusk, finished: 2}, {fabric: wick, finished: 2}]", maxStrips, &stripTable, addStrip),
	lengthField("segment", "The finished length cut off a strip set.", "2", limits{}, func(p *Piece) *length.Length { return &p.Segment }),
	keysField("claims", "What the writer believes of the line.", "{need: 48}", &pieceClaims, func(r *reader, p *Piece, v value) { p.Claims.Node, _ = pieceClaims.read(r, v, &p.Claims) }),
}, fabricFields(func(p *Piece) *Source { p.Sources = append(p.Sources, Source{}); return &p.Sources[len(p.Sources)-1] })...)}

// stripTable is one strip of a strip set.
var stripTable = table[SetStrip]{"strip", "One strip of a strip set.", append([]field[SetStrip]{
	lengthField("finished", "Its finished width.", "2", limits{}, func(s *SetStrip) *length.Length { return &s.Finished }).required(),
}, fabricFields(func(s *SetStrip) *Source { return &s.Source })...)}

// pieceSize reads a piece's size. One length is the width of a strip, for those
// lie across the cloth's whole width, and otherwise a square's side.
func (r *reader) pieceSize(k Key, v value, p *Piece) length.Size {
	z, _ := r.size(k, v, true)
	if p.Unit == Strip && z.W == z.H && z.W > 0 {
		z.W = length.WOF
	}
	return z
}

// readFabrics reads the sources of a unit's parts.
func readFabrics(r *reader, k Key, v value, p *Piece) {
	items, _ := r.several(k, v)
	for _, item := range items {
		if s, ok := r.source(Key{Name: k.Name, Kind: KindSource, Example: "dusk"}, item); ok {
			p.Sources = append(p.Sources, s)
		}
	}
}

// readTurn reads whether pieces may be turned.
func readTurn(r *reader, k Key, v value, p *Piece) {
	if b, ok := r.flag(k, v); ok {
		p.NoTurn = !b
	}
}

// addStrip reads a strip of a strip set.
func addStrip(r *reader, p *Piece, v value) {
	s := SetStrip{At: v.at}
	if n, ok := stripTable.read(r, v, &s); ok {
		r.oneSource(n, "a strip")
	}
	p.Strips = append(p.Strips, s)
}

// oneSource checks that just one of fabric and mix is written.
func (r *reader) oneSource(n Node, what string) {
	switch fabric, mix := n.Stated("fabric"), n.Stated("mix"); {
	case fabric && mix:
		r.fault(n.Place("mix"), "keep one of them", "%s has both fabric and mix; expected one", what)
	case !fabric && !mix && !r.misspelt(n, "fabric", "mix"):
		r.fault(n.At, "write fabric: and the fabric's name", "%s has no fabric", what)
	}
}

// piece reads a line of pieces, of block b or of none, and keeps in mind whether
// it is faulty.
func (r *reader) piece(v value, b *Block) *Piece {
	before := len(r.faults)
	p := r.line(v, b)
	if n := len(r.faults) - before; n > 0 {
		if r.unsound == nil {
			r.unsound = map[*Piece]bool{}
		}
		r.unsound[p] = true
		r.inLines += n
	}
	return p
}

// line reads a line of pieces and checks it.
func (r *reader) line(v value, b *Block) *Piece {
	p := &Piece{Unit: Patch}
	n, ok := pieceTable.read(r, v, p)
	p.Node = n
	if !ok {
		return p
	}
	r.numbered(p, b)
	if p.Stated("unit") && r.faultyAt(p.Place("unit")) {
		return p // what the unit asks for isn't known
	}
	rule := unitRules[p.Unit]
	r.sized(p, rule)
	r.sourced(p, rule)
	r.made(p, rule)
	if p.Join && (p.Unit != Patch || min(p.Cut.W, p.Finished.W) == length.WOF) {
		r.fault(p.Place("join"), "", "join is for patches with two lengths such as cut: 2 1/2 x 66")
	}
	return p
}

// numbered checks that a line says how many pieces it asks for.
func (r *reader) numbered(p *Piece, b *Block) {
	want, other, where, wrong := "need", "each", "outside blocks", "in a block"
	if b != nil {
		want, other, where, wrong = "each", "need", "in a block", "outside blocks"
	}
	switch {
	case p.Stated(other):
		r.fault(p.Place(other), fmt.Sprintf("write %s here", want), "%s is for pieces %s; expected %s", other, wrong, want)
	case !p.Stated(want) && !r.misspelt(p.Node, want):
		example := map[string]string{"need": "40", "each": "4"}[want]
		r.fault(p.At, "write "+want+": "+example, "the piece has no %s; expected how many pieces, for it stands %s", want, where)
	}
}
