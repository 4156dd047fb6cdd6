package plan

import (
	"fmt"

	"cutbinder/layout/length"
)

// borderTable is one border.
var borderTable = table[Border]{"border", "A border round what is inside it.", append([]field[Border]{
	lengthField("width", "Its finished width.", "5", limits{}, func(b *Border) *length.Length { return &b.Width }).required(),
	choiceField("corners", "How its corners are made.", []option[bool]{{"butted", false}, {"mitred", true}}, func(b *Border) *bool { return &b.Mitred }).by("butted"),
	flagField("join", "Joined from strips across the width; else each side is cut in one length.", "yes", func(b *Border) *bool { return &b.Join }),
	sizeField("around", "The finished size of what it goes round.", "44 x 56", func(b *Border) *length.Size { return &b.Around }).by("worked out from the quilt's"),
	textField("for", "Its name.", "inner border", func(b *Border) *string { return &b.For }).by("border and its number"),
}, fabricFields(func(b *Border) *Source { return &b.Source })...)}

// bindingTable is the binding.
var bindingTable = table[Binding]{"binding", "The binding of the quilt's edge.", append(fabricFields(func(b *Binding) *Source { return &b.Source }),
	lengthField("strip", "The cut width of its strips.", "2 1/2", limits{most: 20 * in}, func(b *Binding) *length.Length { return &b.Strip }).by("2 1/2 in, metric 6.5 cm"),
	flagField("bias", "Cut on the bias.", "yes", func(b *Binding) *bool { return &b.Bias }),
	choiceField("joins", "How its strips are joined.", []option[bool]{{"diagonal", false}, {"straight", true}}, func(b *Binding) *bool { return &b.Straight }).by("diagonal"),
	lengthField("tail", "Added to the quilt's edge for joining the ends.", "10", limits{zero: true}, func(b *Binding) *length.Length { return &b.Tail }).by("10 in, metric 25 cm"),
)}

// backingTable is the quilt's back.
var backingTable = table[Backing]{"backing", "The quilt's back.", append(fabricFields(func(b *Backing) *Source { return &b.Source }),
	lengthField("overhang", "How far it stands out on each side.", "4", limits{zero: true}, func(b *Backing) *length.Length { return &b.Overhang }).by("4 in, metric 10 cm"),
	choiceField("seams", "Which way its seams run.", []option[SeamDir]{{"either", SeamsEither}, {"across", SeamsAcross}, {"down", SeamsDown}}, func(b *Backing) *SeamDir { return &b.Seams }).by("either"),
)}

// battingTable is the layer in between.
var battingTable = table[Batting]{"batting", "The layer in between.", []field[Batting]{
	lengthField("overhang", "How far it stands out on each side.", "4", limits{zero: true}, func(b *Batting) *length.Length { return &b.Overhang }).by("4 in, metric 10 cm"),
}}

// addBorder reads one border.
func addBorder(r *reader, p *Plan, v value) {
	b := &Border{}
	n, ok := borderTable.read(r, v, b)
	b.Node = n
	if ok {
		r.oneSource(n, "the border")
	}
	if b.For == "" {
		b.For = fmt.Sprintf("border %d", len(p.Borders)+1)
	}
	p.Borders = append(p.Borders, b)
}

// readBinding reads the binding.
func readBinding(r *reader, p *Plan, v value) {
	b := &Binding{Strip: r.standard.strip, Tail: r.standard.tail}
	b.Node, _ = bindingTable.read(r, v, b)
	r.oneSource(b.Node, "the binding")
	p.Binding = b
}

// readBacking reads the backing.
func readBacking(r *reader, p *Plan, v value) {
	b := &Backing{Overhang: r.standard.overhang}
	b.Node, _ = backingTable.read(r, v, b)
	r.oneSource(b.Node, "the backing")
	p.Backing = b
}

// readBatting reads the batting.
func readBatting(r *reader, p *Plan, v value) {
	b := &Batting{Overhang: r.standard.overhang}
	b.Node, _ = battingTable.read(r, v, b)
	p.Batting = b
}
