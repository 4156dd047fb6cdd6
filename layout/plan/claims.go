package plan

import "cutbinder/layout/length"

// The keys that claims may have, by what they are about.
var (
	planClaims   = table[Claims]{"plan's claims", "What the writer believes of the plan.", []field[Claims]{claimPieces("All pieces to cut.")}}
	blockClaims  = table[Claims]{"block's claims", "What the writer believes of a block.", []field[Claims]{claimPieces("Pieces of one block.")}}
	fabricClaims = table[Claims]{"fabric's claims", "What the writer believes of a fabric.", []field[Claims]{
		lengthField("buy", "What to buy of it.", "1/2 yd", limits{}, func(c *Claims) *length.Length { return &c.Buy }),
		claimStrips("Strips to cut from it."),
	}}
	pieceClaims = table[Claims]{"piece's claims", "What the writer believes of a line of pieces.", []field[Claims]{
		countField("need", "How many are needed in all.", "48", 1, maxPieces, func(c *Claims) *int { return &c.Need }),
		claimStrips("Strips to cut for them."),
	}}
)

// claimPieces is a number of pieces.
func claimPieces(doc string) field[Claims] {
	return countField("pieces", doc, "312", 1, 10*maxPieces, func(c *Claims) *int { return &c.Pieces })
}

// claimStrips is a number of strips.
func claimStrips(doc string) field[Claims] {
	return countField("strips", doc, "6", 1, maxPieces, func(c *Claims) *int { return &c.Strips })
}
