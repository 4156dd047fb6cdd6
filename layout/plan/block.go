package plan

import (
	"strings"

	"cutbinder/layout/length"
)

// blockTable is one design.
var blockTable = table[Block]{"block", "One block design.", []field[Block]{
	textField("name", "What the block is called.", "Lantern", func(b *Block) *string { return &b.Name }).by("its short name"),
	countField("make", "How many of this block.", "12", 1, maxPieces, func(b *Block) *int { return &b.Make }).by("how often it stands in quilt"),
	sizeField("finished", "The block's finished size; checked against its pieces where it can be.", "9", func(b *Block) *length.Size { return &b.Finished }),
	listField("pieces", "The block's pieces.", "[{finished: 3, each: 4, fabric: dusk}]", maxLines, &pieceTable, func(r *reader, b *Block, v value) { b.Pieces = append(b.Pieces, r.piece(v, b)) }).required(),
	keysField("claims", "What the writer believes of the block.", "{pieces: 13}", &blockClaims, func(r *reader, b *Block, v value) { b.Claims.Node, _ = blockClaims.read(r, v, &b.Claims) }),
}}

// addBlock reads one block.
func addBlock(r *reader, p *Plan, at pair) {
	b := &Block{ID: at.key}
	b.Node, _ = blockTable.read(r, at.val, b)
	if b.Name == "" {
		b.Name = b.ID
	}
	if _, stated := b.Keys["pieces"]; stated && len(b.Pieces) == 0 && at.val.shape == mapping {
		r.fault(b.Place("pieces"), "", "block %q has no pieces; expected at least one line of them", b.ID)
	}
	p.Blocks = append(p.Blocks, b)
}

// maxCells bounds the blocks of a quilt's rows.
const maxCells = 10_000

// readQuilt reads the quilt's rows: each a list of block names or a text of them
// with spaces between.
func readQuilt(r *reader, k Key, v value, p *Plan) {
	if v.shape != list {
		r.reject(k, v)
		return
	}
	cells := 0
	for _, row := range v.items {
		if row.shape != list && row.shape != text {
			r.fault(row.at, "", "quilt: found %s; expected a row of block names such as [A, B, A]", found(row))
			continue
		}
		items := row.items
		for _, word := range strings.Fields(row.text) {
			items = append(items, value{at: row.at, shape: text, text: word})
		}
		if cells += len(items); cells > maxCells {
			r.fault(row.at, "", "quilt: more than %d blocks are written", maxCells)
			return
		}
		p.Quilt = append(p.Quilt, r.row(items))
	}
}

// row reads one row of block names.
func (r *reader) row(items []value) (ids []string) {
	for _, item := range items {
		switch {
		case item.shape != text:
			r.fault(item.at, "", "quilt: found %s; expected the name of a block", found(item))
		case r.plan.Block(item.text) == nil:
			names := r.plan.blockIDs()
			if len(names) == 0 {
				names = []string{"blocks that the plan has none of"}
			}
			r.fault(item.at, meant(item.text, names), "block %q is not in this plan; expected one of %s", shorten(item.text), some(names))
		default:
			ids = append(ids, item.text)
		}
	}
	return ids
}
