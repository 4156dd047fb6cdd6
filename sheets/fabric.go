package sheets

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cores"
	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/say"
)

// fabricSections are the sheets of all fabrics that still are to be cut. Each is
// set in several ways to find the best, so several are set at once.
func (b *binder) fabricSections() []page.Section {
	var open []int
	for i := range b.q.Fabrics {
		if !b.q.Fabrics[i].AllDone() {
			open = append(open, i)
		}
	}
	sections := make([]page.Section, len(open))
	cores.Each(len(open), cores.All, func(i int) { sections[i] = b.fabricSection(open[i]) })
	return sections
}

// withTallies is the binder for one sheet: its tally is the same in most ways of
// setting the sheet, and takes as long to find as the rest.
func (b *binder) withTallies() *binder {
	own := *b
	own.tallies = map[bool][]page.Block{}
	return &own
}

// keptTally is the tally of the sheet that is being set.
func (b *binder) keptTally(f *cutting.Fabric) []page.Block {
	if _, ok := b.tallies[b.fitting.close]; !ok {
		b.tallies[b.fitting.close] = b.tally(f)
	}
	return b.tallies[b.fitting.close]
}

// fabricSheet is the sheet of one fabric at the binder's scale.
func (b *binder) fabricSheet(i int) page.Section {
	f := &b.q.Fabrics[i]
	section := page.Section{
		Head: fmt.Sprintf("Fabric %d of %d", i+1, len(b.q.Fabrics)), Name: "fabric " + f.Fabric.ID,
		Continued: fmt.Sprintf("Fabric %d of %d · %s", i+1, len(b.q.Fabrics), f.Fabric.Name),
		Bookmark:  f.Fabric.Name, Level: 1, Thumb: digits(i + 1), RightHand: true,
	}
	if i == b.firstSheet() {
		section.Blocks = append(section.Blocks, anchorBlock("part "+string(Fabrics), partTitles[Fabrics]))
	}
	top, steps := b.fabricTop(f)
	if b.fitting.apart && len(steps) > 0 {
		top = append(top, page.Break{})
	}
	section.Blocks = slices.Concat(section.Blocks, top, steps, b.keptTally(f))
	return section
}

// fabricTop is what stands on a sheet up to the tally, and apart from it the steps
// where there is one cloth and they stand below its picture.
func (b *binder) fabricTop(f *cutting.Fabric) (top, steps []page.Block) {
	top = append(b.fabricHead(f), b.missing(f)...)
	for c := 0; c < len(f.Cloths); c += b.alikeFrom(f, c) {
		picture, below := b.cloth(f, c)
		if top = append(top, picture...); len(f.Cloths) == 1 {
			return top, below
		}
		top = append(top, below...)
	}
	return top, nil
}

// anchorBlock marks the start of a part that several sections make up.
func anchorBlock(name, title string) page.Block {
	return page.Drawing{Draw: func(p *page.Pen, box page.Box) {
		p.Bookmark(page.Point{X: box.X, Y: box.Y}, name, title, 0)
	}}
}

// fabricHead is the fabric's name, what it is, and what it must measure.
func (b *binder) fabricHead(f *cutting.Fabric) []page.Block {
	s := b.style
	side := s.Body.Size * 10
	words := []page.Block{page.Para{Text: s.Title.Say(f.Fabric.Name), Mark: "title"}}
	if line := b.about(f); line != "" {
		words = append(words, page.Para{Text: s.Body.Say(line), Mark: "about"})
	}
	words = append(words, page.Gap{H: s.Space})
	if len(b.measured(f)) > 0 { // something is cut from it
		words = append(words, b.measureBox(f), page.Gap{H: s.Gap})
	}
	words = append(words, page.Para{Text: s.Help.Say(b.v.Proof(b.q.Plan, f)), Mark: "proof"})
	return []page.Block{page.Table{
		Columns: []page.Column{{Share: 1}, {Width: side}}, Pad: page.NoPad,
		Rows: []page.Row{{Cells: []page.Cell{
			{Blocks: words, Sit: page.Top},
			{W: side, H: side, Sit: page.Top, Draw: func(p *page.Pen, box page.Box) {
				p.Snippet(page.Box{X: box.Right() - side, Y: box.Y, W: side, H: side}, "tape a snippet here", "snippet")
			}},
		}}},
	}}
}

// about is the line under the fabric's name.
func (b *binder) about(f *cutting.Fabric) string {
	var parts []string
	if len(f.Fabric.Have) > 0 {
		parts = append(parts, "have: "+b.v.Shelf(f.Fabric.Have))
	} else if f.Buy.Buy > 0 {
		parts = append(parts, "buy "+b.v.ToBuy(f.Buy.Buy)+" ("+b.v.Elsewhere(f.Buy.Buy)+")")
	}
	if f.Fabric.OneWay {
		parts = append(parts, "one-way print: turn no piece")
	}
	if bleedWord(f.Fabric.Bleeds) != "" {
		parts = append(parts, "test its dye first")
	}
	if f.Fabric.Prewash {
		parts = append(parts, "wash before cutting")
	}
	if sizes := b.doneWords(f); sizes != "" {
		parts = append(parts, "cut already, ticked in the picture: "+sizes)
	}
	return dotted(append(parts, f.Fabric.Note)...)
}

// cloth is one cloth's diagram, and its steps where they stand below it.
func (b *binder) cloth(f *cutting.Fabric, i int) (picture, below []page.Block) {
	s, c := b.style, &f.Cloths[i]
	if c.Unused() {
		return []page.Block{page.Gap{H: s.Space}, page.Para{Text: s.Help.Say("Not needed, it stays whole: " + b.v.Written(c.Name) + "."), Mark: "unused"}}, nil
	}
	d := b.newDiagram(f, i)
	windows := b.windows(f, i, d)
	if d.abreast && len(windows) == 1 {
		alone := *b
		alone.fitting.abreast = false
		return alone.cloth(f, i)
	}
	aside := b.clothWords(c)
	title := "Strips"
	if c.Root.Dir == cutting.Along {
		title = "Sections"
	}
	if len(f.Cloths) > 1 {
		title = b.v.Span(c, &f.Cloths[i+b.alikeFrom(f, i)-1])
	}
	heading := page.Heading{Text: fmt.Sprintf("%s, to scale 1:%d", title, d.scale), Aside: aside}
	pictures, note := b.pictures(d, windows, title), b.alikeNote(f, i)
	if last := len(pictures) - 1; b.besideLast(d, windows) {
		heading.Aside, heading.Shorter = dotted(aside, b.numberWords(c), handWords(b.v)), b.asideWords(c)
		row := b.beside(d.width(), pictures[last], b.steps(f, c))
		if body := b.book.Body(); page.HeightOf(b.style, body.W, append(note, heading, row)...) > body.H { // the heading would stand alone
			below := *b
			below.fitting.below = true
			return below.cloth(f, i)
		}
		pictures[last] = row
		return append([]page.Block{heading}, under(note, pictures)...), nil
	}
	list := b.steps(f, c)
	var steps page.Block = list
	if b.fitting.columns {
		list.Whole = true
		steps = page.Columns{N: 2, Gutter: b.style.Break, Blocks: []page.Block{list}}
	}
	return append([]page.Block{heading}, under(note, pictures)...),
		[]page.Block{page.Heading{Text: "Cut in this order", Aside: b.asideWords(c)[0], Shorter: b.asideWords(c)[1:]}, steps}
}

// besideLast says whether the steps stand beside a picture, or the last of several.
func (b *binder) besideLast(d *diagram, windows []page.Box) bool {
	if d.abreast {
		return len(windows)%2 == 1 && !b.fitting.below
	}
	return d.besideSteps() && (len(windows) == 1 || b.fitting.last)
}

// beside sets a narrow picture on the near side of its steps.
func (b *binder) beside(w length.Length, picture, steps page.Block) page.Block {
	t := page.Table{Columns: []page.Column{{Width: w}, {Share: 1}}, Pad: page.NoPad, Gutter: besideGutter(b.style)}
	cells := []page.Cell{{Blocks: []page.Block{picture}, Sit: page.Top}, {Blocks: []page.Block{steps}, Sit: page.Top}}
	if b.v.Left {
		slices.Reverse(t.Columns)
		slices.Reverse(cells)
	}
	t.Rows = []page.Row{{Cells: cells}}
	return t
}

// clothWords says how the cloth lies in the picture.
func (b *binder) clothWords(c *cutting.Cloth) string {
	left, right := c.Selvages()
	sides := "no selvages"
	switch {
	case left && right:
		sides = "selvages left and right"
	case left && b.v.Left:
		sides = "selvage right"
	case left:
		sides = "selvage left"
	}
	switch len(b.folds(c)) {
	case 0:
		return sides
	case 1:
		return sides + " · fold in the middle"
	}
	return sides + " · folded twice"
}

// handWords says so where the pictures and steps are mirrored.
func handWords(v say.Voice) string {
	if v.Left {
		return "mirrored for the left hand"
	}
	return ""
}

// asideWords say which cut frees what, and that all is mirrored where it is, from
// the fullest to the shortest.
func (b *binder) asideWords(c *cutting.Cloth) []string {
	numbers, hand := b.numberWords(c), handWords(b.v)
	first := strings.TrimSuffix(numbers, andSoOn)
	words := []string{dotted(numbers, hand), dotted(first, hand)}
	if hand != "" {
		words = append(words, hand, "mirrored")
	}
	return words
}

// andSoOn ends what is said of the first of several strips.
const andSoOn = ", and so on"

// numberWords says of the first numbered strip or section which cut frees it, and
// on which side of the cut it lies, so that nobody takes a number for that of the
// strip on its other side.
func (b *binder) numberWords(c *cutting.Cloth) string {
	parts := c.Root.Parts
	i := slices.IndexFunc(parts, func(s cutting.Section) bool { return s.Number > 0 })
	switch {
	case i < 0:
		return ""
	case c.Root.Dir == cutting.Along:
		return fmt.Sprintf("cut %d frees the section %s of it", parts[i].Number, b.v.Near())
	}
	words := fmt.Sprintf("cut %d frees strip %[1]d, above it", parts[i].Number)
	if slices.ContainsFunc(parts[i+1:], func(s cutting.Section) bool { return s.Number > 0 }) {
		words += andSoOn
	}
	return words
}

// steps is the numbered cutting steps.
func (b *binder) steps(f *cutting.Fabric, c *cutting.Cloth) page.List {
	s := b.style
	list := page.List{Center: true}
	lines := b.v.Steps(b.q.Plan, f, c)
	done := b.doneLines(f, c, lines)
	for i, line := range lines {
		body := s.Body
		if done[i] { // it stays, in grey, so that numbers go with the picture
			body = s.Help
		}
		if line.Label == "" && len(list.Items) > 0 {
			last := &list.Items[len(list.Items)-1]
			var block page.Block = page.Para{Text: body.Say(line.Text), Mark: "step"}
			if strings.HasSuffix(line.Text, ":") { // it stays with what it announces
				block = page.Keep{Blocks: []page.Block{block}, Next: true}
			}
			if line.Inner {
				block = page.Indent{Left: s.Body.Size, Blocks: []page.Block{block}}
			}
			last.Blocks = append(last.Blocks, block)
			continue
		}
		item := page.ListItem{Label: s.Bold.Say(line.Label), Text: body.Say(line.Text)}
		if line.Label == say.Check {
			item.Label, item.W = nil, s.Tick
			item.Draw = func(p *page.Pen, box page.Box) { p.Check(box, s.Tick, "check") }
		}
		list.Items = append(list.Items, item)
	}
	return list
}

// missing tells what finds no place.
func (b *binder) missing(f *cutting.Fabric) []page.Block {
	if f.Missing() == 0 {
		return nil
	}
	s := b.style
	blocks := []page.Block{page.Heading{Text: "Short", Aside: "these find no place on what is on the shelf"}}
	t := page.Table{Columns: []page.Column{{Share: 1}, {Share: 2}}}
	for i, n := range f.Short {
		if n > 0 {
			row := page.RichRow(s.Bold.Say(say.Count(n)+" "+b.v.Size(f.Pieces[i].Size)), s.Body.Say("for "+say.BagList(b.q.BagsOf(f, f.Pieces[i]))))
			row.Mark = "short " + f.Pieces[i].ID
			t.Rows = append(t.Rows, row)
		}
	}
	blocks = append(blocks, t)
	if short := b.q.Shortage(f); short != nil {
		blocks = append(blocks, page.Gap{H: s.Space}, page.Para{Text: s.Body.Say(say.Sentences(b.v.Remedies(f, short))), Mark: "remedies"})
	}
	return blocks
}
