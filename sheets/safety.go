package sheets

import (
	"slices"

	"cutbinder/layout/page"
	"cutbinder/layout/plan"
)

// The usual cautions, in our own words. They defer to the makers of the tools
// and to local rules, and promise nothing.
var bladeRules = []string{
	"Close the blade's guard after every cut, before the cutter leaves your hand.",
	"Cut away from your body, never toward it or across your arm.",
	"Stand at a firm table about as high as your hips; keep mat and floor clear of pins and cloth.",
	"Keep every finger well inside the ruler's edge, the little finger on the mat. A cut-resistant glove on the ruler hand helps; it doesn't replace looking.",
	"Change a blade that is dull or nicked: it needs force, and force slips. Stop using a cutter that wobbles and a mat that is warped or deeply scored.",
	"Change blades over the table, not over your lap, as the maker of the cutter describes. Let a falling cutter fall. Wear closed shoes.",
	"Put used blades into a lidded tin or between taped card, marked as blades, and dispose of them as your local rules ask.",
	"Keep cutter and blades locked away from children and pets.",
	"Don't cut when you are tired, hurried or watching something else.",
	"Have first-aid things within reach. For a cut that is deep, doesn't stop bleeding or leaves a finger numb, press on it and get emergency care at once.",
}

var ironRules = []string{
	"Stand the iron on a firm, level, heat-proof place with its cord out of reach of children, pets and feet, and unplug it when you leave.",
	"Mind the steam. Keep your other hand away from the plate and from cloth that was just pressed.",
	"Starch leaves residue that can smoke: air the room, and clean the plate cold and unplugged as its maker describes.",
}

var dyeSteps = []string{
	"Quick test: press a damp white cloth on the fabric for half a minute. Colour on the cloth: go on with the soak.",
	"Soak test: put a snip of 2 to 4 in (5 to 10 cm) into a clear glass of water as warm as you will wash the quilt, with the detergent you will use. Wait 30 minutes and look at the water against white paper.",
	"Lay the snip, not rinsed, on white paper or on the lightest fabric of the quilt. Let it dry there and look for a stain.",
	"Strong test, for a dark fabric that meets a white one: lay a wet snip of the dark on a wet snip of the white, on white paper, under a weight, overnight.",
	"Write what you saw into the dye test record. Any fabric can bleed; reds, purples, navy, teal, deep and hand-dyed colours most often do.",
}

var dyeOutcomes = [][2]string{
	{"water clear, paper clean", "use it; still wash the first time with a colour-catching sheet and like colours"},
	{"water tinted, paper clean", "wash the whole length on its own, then test again"},
	{"paper stained", "wash again and test again; if it still stains after two washes, leave it out of this quilt"},
}

const dyeLimits = "A test and a colour-catching sheet are help, not proof. Wash all the fabrics or none, wash like with like, and follow the care notes of the cloth and of the detergent. " +
	"Small pre-cut pieces fray and shrink in the wash: test a corner of them instead. " +
	"If a finished quilt bleeds, keep it wet, out of the dryer and away from the iron. Advice differs: some soak long and very hot with plenty of detergent, others use cold water only. Try either on a corner first, or ask a textile care professional."

const defers = "These are the usual cautions, not a course. What the makers of your tools, cloth and detergents say, and the rules where you work or teach, come first."

// safety is the page on blades, irons and dyes, in two columns: lines of half the
// width are easier to read, and all of it stands on one page. In large print each
// headed part stays whole.
func (b *binder) safety() []page.Block {
	s := b.style
	blades := []page.Block{page.Heading{Text: "Blades"}, rules(s, bladeRules)}
	pressing := []page.Block{
		page.Heading{Text: "Pressing"}, rules(s, ironRules),
		page.Gap{H: s.Space}, page.Para{Text: s.Help.Say(defers), Mark: "defers"},
	}
	dye := []page.Block{page.Heading{Text: "Does the dye bleed?", Aside: "test before you cut"}, numbered(s, dyeSteps)}
	seen := append([]page.Block{page.Heading{Text: "What the test says"}}, b.outcomes()...)
	seen = append(seen, page.Gap{H: s.Space}, page.Para{Text: s.Body.Say(dyeLimits), Mark: "dye limits"})
	record := []page.Block{page.Keep{Blocks: b.dyeRecord()}, page.Keep{Blocks: b.washNotes()}}
	if b.o.Large {
		return append([]page.Block{page.Keep{Blocks: blades}, page.Keep{Blocks: pressing}, page.Keep{Blocks: dye}, page.Keep{Blocks: seen}}, record...)
	}
	text := slices.Concat(blades, pressing, dye, seen)
	return append([]page.Block{page.Columns{N: 2, Gutter: s.Break * 3 / 2, Blocks: text}}, record...)
}

func rules(s *page.Style, texts []string) page.Block {
	var list page.List
	for _, t := range texts {
		list.Items = append(list.Items, page.ListItem{Label: s.Body.Say("–"), Text: s.Body.Say(t)})
	}
	return list
}

func numbered(s *page.Style, texts []string) page.Block {
	var list page.List
	for i, t := range texts {
		list.Items = append(list.Items, page.ListItem{Label: s.Bold.Say(digits(i + 1)), Text: s.Body.Say(t)})
	}
	return list
}

// outcomes says what to do on each outcome of the test.
func (b *binder) outcomes() []page.Block {
	s := b.style
	var blocks []page.Block
	for i, o := range dyeOutcomes {
		if i > 0 {
			blocks = append(blocks, page.Gap{H: s.Gap / 2})
		}
		blocks = append(blocks, page.Para{Text: page.Rich{s.Bold.Span(o[0] + ": "), s.Body.Span(o[1])}, Mark: "dye outcome"})
	}
	return blocks
}

// dyeRecord is the table to fill in: a row for every fabric whose dye isn't
// known to hold, and a few empty ones.
func (b *binder) dyeRecord() []page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{Share: 4}, {Share: 2}, {Share: 2}, {Share: 2}, {Share: 2}, {Share: 3}}, Rules: page.Grid}
	t.Head = []page.Row{page.TextRow(s.Label, "fabric", "said of it", "date", "water", "paper", "what I did")}
	for _, f := range b.q.Plan.Fabrics {
		if word := bleedWord(f.Bleeds); word != "" {
			row := page.RichRow(s.Body.Say(f.Name), s.Body.Say(word), nil, nil, nil, nil)
			row.Mark = "dye record " + f.ID
			t.Rows = append(t.Rows, row)
		}
	}
	for range 2 { // for what else turns out to want a test
		t.Rows = append(t.Rows, page.Row{Cells: make([]page.Cell, 6)})
	}
	for i := range t.Rows {
		t.Rows[i].Cells[5].H = s.Body.Lead * 3 / 2 // room to write
	}
	return []page.Block{page.Heading{Text: "Dye test record", Aside: "a row for each fabric that wants one"}, t}
}

// bleedWord is what the record says of a fabric, or "" where it needs no test.
func bleedWord(k plan.Bleeds) string {
	switch k {
	case plan.BleedsLikely:
		return "likely"
	case plan.BleedsUnknown:
		return "not known"
	}
	return ""
}

// washNotes says what to wash before cutting, and what that takes.
func (b *binder) washNotes() []page.Block {
	s := b.style
	t := page.Table{Columns: []page.Column{{}, {Share: 1}}, Rules: page.Lined}
	for _, f := range b.q.Plan.Fabrics {
		if f.Prewash {
			row := page.RichRow(s.Bold.Say(f.Name), s.Body.Say(
				"wash before cutting; "+b.v.Percent(f.Shrink.Length)+" of its length and "+b.v.Percent(f.Shrink.Width)+
					" of its width may be lost, and the shopping list allows for the length. Press, then measure the width again."))
			row.Mark = "wash " + f.ID
			t.Rows = append(t.Rows, row)
			if s.Bold.Say(f.Name).Width(s.Fonts) > b.book.Body().W*2/5 { // a long name leaves room for what is said of it
				t.Columns = []page.Column{{Share: 2}, {Share: 3}}
			}
		}
	}
	if len(t.Rows) == 0 {
		return []page.Block{page.Heading{Text: "Washing"}, page.Para{Text: s.Body.Say(
			"This plan washes no fabric before cutting. If you wash one, wash them all, buy more for the shrinkage, and measure again."), Mark: "washing"}}
	}
	blocks := []page.Block{page.Heading{Text: "Wash before cutting"}, t}
	if len(t.Rows) < len(b.q.Plan.Fabrics) {
		blocks = append(blocks, page.Gap{H: s.Space}, page.Para{Text: s.Body.Say(
			"This plan leaves the other fabrics unwashed. Washed and unwashed cloth shrink apart once the quilt is washed: if in doubt, wash all or none."), Mark: "washing"})
	}
	return blocks
}
