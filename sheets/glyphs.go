package sheets

import (
	"fmt"

	"cutbinder/fonts"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
)

// MissingGlyphs finds characters of the plan that no face of the set can draw,
// once each, at the first place they stand.
func (q *Quilt) MissingGlyphs(set fonts.Set) plan.Problems {
	var problems plan.Problems
	seen := map[rune]bool{}
	look := func(at plan.Pos, text string) {
		for _, r := range text {
			if r >= ' ' && !seen[r] && !page.CanSet(set, r) {
				seen[r] = true
				problems = append(problems, plan.Problem{At: at, ID: "glyph",
					What: fmt.Sprintf("no face can draw the character %q (U+%04X) in %q", r, r, text),
					Hint: "name a TrueType face that has it, with font: in the plan or --font"})
			}
		}
	}
	p := q.Plan
	for _, field := range [][2]string{{"plan", p.Title}, {"by", p.By}, {"version", p.Version}, {"date", p.Date}, {"note", p.Note}} {
		look(p.Place(field[0]), field[1])
	}
	for _, f := range p.Fabrics {
		look(f.Place("name"), f.Name)
		look(f.Place("note"), f.Note)
	}
	for _, m := range p.Mixes {
		look(m.At, m.ID)
	}
	for _, block := range p.Blocks {
		look(block.At, block.ID)
		look(block.Place("name"), block.Name)
		for _, piece := range block.Pieces {
			look(piece.Place("for"), piece.For)
		}
	}
	for _, piece := range p.Pieces {
		look(piece.Place("for"), piece.For)
	}
	problems.Sort()
	return problems
}
