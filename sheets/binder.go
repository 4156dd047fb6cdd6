package sheets

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"cutbinder/fonts"
	"cutbinder/layout/cores"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// A Part is one part of the binder.
type Part string

// The parts, as --only names them.
const (
	Cover     Part = "cover"
	Shopping  Part = "shopping"
	Safety    Part = "safety"
	Order     Part = "order"
	Fabrics   Part = "fabrics"
	BagKey    Part = "bags"
	Blocks    Part = "blocks"
	LabelPart Part = "labels"
	Notes     Part = "notes"
)

// Parts are all parts, in the binder's order.
var Parts = []Part{Cover, Shopping, Safety, Order, Fabrics, BagKey, Blocks, LabelPart, Notes}

var partTitles = map[Part]string{
	Cover: "Cover", Shopping: "Shopping list", Safety: "Safety and dye test", Order: "Cutting order",
	Fabrics: "Fabrics", BagKey: "Bags", Blocks: "Blocks", LabelPart: "Bag labels", Notes: "Notes",
}

// Title is the part's heading.
func (p Part) Title() string { return partTitles[p] }

// Options is how a binder is set.
type Options struct {
	Only     []Part // all where empty
	TwoSided bool
	Large    bool
	LightInk bool
	Labels   LabelOptions
	Fonts    fonts.Set
}

// A binder is a binder being set.
type binder struct {
	q     *Quilt
	o     Options
	v     say.Voice
	style *page.Style
	book  *page.Book
	parts []Part
	scale int // the scale that most diagrams have

	fitting fitting               // of the fabric's sheet that is being set
	tallies map[bool][]page.Block // of that sheet, by whether it is set close
}

// Binder sets a quilt's binder. Problems are label sheets that don't exist or
// can't hold a code, and characters that no face has.
func Binder(q *Quilt, o Options) (page.Document, plan.Problems) {
	b := newBinder(q, o)
	problems := q.MissingGlyphs(o.Fonts)
	sections, found := make([][]page.Section, len(b.parts)), make([]plan.Problems, len(b.parts))
	cores.Each(len(b.parts), cores.All, func(i int) { sections[i], found[i] = b.sections(b.parts[i]) })
	for i := range b.parts {
		for _, s := range sections[i] {
			b.book.Add(s)
		}
		problems = append(problems, found[i]...)
	}
	if problems.Faulty() {
		return page.Document{}, problems
	}
	return b.book.Document(), problems
}

func newBinder(q *Quilt, o Options) *binder {
	b := &binder{q: q, o: o, v: say.For(q.Plan), parts: o.Only}
	if len(b.parts) == 0 {
		b.parts = q.parts()
	}
	b.book = NewBook(q, o)
	b.style = b.book.Style
	b.scale = b.commonScale()
	return b
}

// NewBook is an empty book that looks as a quilt's binder does.
func NewBook(q *Quilt, o Options) *page.Book {
	var options []page.Option
	if o.Large {
		options = append(options, page.Large)
	}
	if o.LightInk {
		options = append(options, page.OneColor)
	}
	p := q.Plan
	head, end := runningHead(p)
	book := page.NewBook(page.Setup{
		Paper: PaperOf(p), Style: page.NewStyle(o.Fonts, options...), TwoSided: o.TwoSided,
		Title: p.Title, Author: p.By, Subject: "cutting binder", Lang: p.Language,
		Head: head, HeadEnd: end, Foot: []string{q.Bags.Mark + " · cutbinder", q.Bags.Mark},
		PageOf: func(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) },
		Check:  "must be 1 in",
	})
	if p.Units == length.Metric {
		book.Check, book.CheckLen = "must be 2 cm", 2*length.CM
	}
	return book
}

// PaperOf is the paper a plan is printed on.
func PaperOf(p *plan.Plan) page.Paper {
	if p.Paper == plan.A4 {
		return page.A4
	}
	return page.Letter
}

// runningHead is what stands at the right of every header, and its end that stays
// however long the title is: which version this is.
func runningHead(p *plan.Plan) (wordings []string, end string) {
	if p.Version == "" {
		return []string{p.Title}, ""
	}
	end = " · " + shortVersion(p.Version)
	return []string{p.Title + " · version " + p.Version, p.Title + end}, end
}

// shortVersion is a version in few letters: "v2", or as it is where it starts with
// no figure.
func shortVersion(version string) string {
	if version[0] >= '0' && version[0] <= '9' {
		return "v" + version
	}
	return version
}

// sections are those of one part.
func (b *binder) sections(part Part) ([]page.Section, plan.Problems) {
	section := page.Section{Head: partTitles[part], Name: "part " + string(part), Bookmark: partTitles[part]}
	switch part {
	case Cover:
		section.Head = "Cutting binder"
		section.Blocks = b.cover()
	case Shopping:
		section.Blocks = b.shopping()
	case Safety:
		section.Blocks = b.safety()
	case Order:
		section.Blocks = b.order()
	case BagKey:
		section.Blocks = b.bagKey()
	case Blocks:
		section.Blocks = b.blocksPart()
	case Notes:
		section.Blocks = b.notes()
	case LabelPart:
		labels, problems := b.labelPages()
		section.Raw = labels
		if problems.Faulty() {
			return nil, problems
		}
	case Fabrics:
		return b.fabricSections(), nil
	}
	return []page.Section{section}, nil
}

// parts are a whole binder's parts: there are no pages of blocks where none is
// drawn.
func (q *Quilt) parts() []Part {
	if q.Drawn() {
		return Parts
	}
	return slices.DeleteFunc(slices.Clone(Parts), func(p Part) bool { return p == Blocks })
}

// PartNames are the parts' names, for people who choose some.
func PartNames() []string {
	var names []string
	for _, p := range Parts {
		names = append(names, string(p))
	}
	return names
}

// PartNamed finds a part by its name.
func PartNamed(name string) (Part, bool) {
	i := slices.Index(Parts, Part(strings.ToLower(name)))
	if i < 0 {
		return "", false
	}
	return Parts[i], true
}

func digits(n int) string { return strconv.Itoa(n) }

// dotted joins what isn't empty with a dot between.
func dotted(parts ...string) string {
	return strings.Join(slices.DeleteFunc(slices.Clone(parts), func(s string) bool { return s == "" }), " · ")
}
