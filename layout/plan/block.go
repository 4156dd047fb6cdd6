package plan

import "cutbinder/layout/length"

// blockTable is one design.
var blockTable = table[Block]{"block", "One block design.", []field[Block]{
	listField("pieces", "The block's pieces; worked out where the block is drawn.", "[{finished: 3, each: 4, fabric: dusk}]", maxLines, &pieceTable, func(r *reader, b *Block, v value) { b.Pieces = append(b.Pieces, r.piece(v, b)) }),
	textField("name", "What the block is called.", "Lantern", func(b *Block) *string { return &b.Name }).by("its short name"),
	countField("make", "How many of this block.", "12", 1, maxPieces, func(b *Block) *int { return &b.Make }).by("how often it stands in quilt"),
	sizeField("finished", "The block's finished size; checked against its pieces where it can be.", "9", func(b *Block) *length.Size { return &b.Finished }),
	{lettersKey, func(r *reader, k Key, v value, b *Block) { b.letters = r.letters(k, v) }},
	sizeField("cell", "The finished size of one cell of the drawing.", "3", func(b *Block) *length.Size { return &b.cell }).by("the finished size shared out"),
	lengthsField("columns", "The finished widths of the drawing's columns, where they differ.", "[2, 4, 2]", func(b *Block) *[]length.Length { return &b.columns }),
	lengthsField("rows", "The finished heights of the drawing's rows, where they differ.", "[2, 4, 2]", func(b *Block) *[]length.Length { return &b.rows }),
	keysField("methods", "How the units of the drawing are made.", "{half-square: eight-at-a-time}", &methodsTable, func(r *reader, b *Block, v value) { methodsTable.read(r, v, &b.methods) }),
	flagField("trim", "The units of the drawing are cut oversize, to be trimmed after sewing.", "yes", func(b *Block) *bool { return &b.trim }),
	{Key{Name: "draw", Kind: KindCells, Doc: "The block as rows of cells, from the top.", Example: "[dusk wick/dusk, wick/dusk dusk]"}, readDrawing},
	keysField("claims", "What the writer believes of the block.", "{pieces: 13}", &blockClaims, func(r *reader, b *Block, v value) { b.Claims.Node, _ = blockClaims.read(r, v, &b.Claims) }),
}}

// addBlock reads one block.
func addBlock(r *reader, p *Plan, at pair) {
	b := &Block{ID: at.key}
	b.Node, _ = blockTable.read(r, at.val, b)
	if b.Name == "" {
		b.Name = b.ID
	}
	switch stated := b.Stated("pieces"); {
	case at.val.shape != mapping && at.val.shape != nothing:
	case !stated && !b.Stated("draw") && !r.misspelt(b.Node, "pieces", "draw"):
		r.fault(at.val.at, "write pieces: [{finished: 3, each: 4, fabric: dusk}], or draw: and rows of cells", "block %q has neither pieces nor draw; expected one of them", b.ID)
	case stated && len(b.Pieces) == 0:
		r.fault(b.Place("pieces"), "", "block %q has no pieces; expected at least one line of them", b.ID)
	}
	r.drawn(b)
	p.Blocks = append(p.Blocks, b)
}
