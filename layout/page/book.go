package page

import (
	"strconv"

	"cutbinder/layout/cores"
	"cutbinder/layout/length"
)

// A Setup is what all pages of a book share.
type Setup struct {
	Paper Paper
	Style *Style
	// TwoSided binds left-hand pages on their right.
	TwoSided bool

	Title, Author, Subject, Lang string

	// Head stands right in the header, in wordings from the fullest to the
	// shortest; Foot left in the footer.
	Head, Foot []string
	// HeadEnd is the end of Head's last wording that stays where that is cut.
	HeadEnd string
	// PageOf words the page number: "page 9 of 24".
	PageOf func(n, of int) string
	// Check words the print check in the footer ("must be 1 in"), a line of
	// CheckLen, or of 1 in where that is 0.
	Check    string
	CheckLen length.Length
}

// A Section is a part of a book: it starts a page.
type Section struct {
	// Head is its heading in the header; Continued, where it is set, that of its
	// pages after the first.
	Head, Continued string
	// Name is the anchor at its top; Bookmark, if set, shows it in the outline,
	// Level deep.
	Name, Bookmark string
	Level          int
	// Thumb is what its thumb index shows, if it has one.
	Thumb string
	// RightHand starts the section on a right-hand page in a two-sided book.
	RightHand bool
	// Blocks are its content. Build makes them where they name pages; it may be
	// called several times.
	Blocks []Block
	Build  func(at *Refs) []Block
	// Raw are pages that draw themselves on the whole paper, without header
	// and footer; they come after the blocks, and several are drawn at once.
	Raw []func(p *Pen)
}

// Refs knows the pages that anchors stand on. While pages are still being
// flowed it answers "00", and whoever asked is laid out again later.
type Refs struct {
	pages map[string]string
	asked bool
}

// Page is the number of the page on which the anchor stands, "00" while that is
// not known, "–" for an anchor that does not exist.
func (r *Refs) Page(name string) string {
	if r == nil {
		return "00"
	}
	r.asked = true
	if r.pages == nil {
		return "00"
	}
	if n, ok := r.pages[name]; ok {
		return n
	}
	return "–"
}

// A Book is sections on their way to pages.
type Book struct {
	Setup
	sections []Section
}

// NewBook is an empty book.
func NewBook(s Setup) *Book { return &Book{Setup: s} }

// Add puts a section at the end.
func (b *Book) Add(s Section) { b.sections = append(b.sections, s) }

// Sections are the book's sections so far.
func (b *Book) Sections() []Section { return b.sections }

// Extent is how many pages a section's blocks take, and how much of the last
// one's height is used. The section isn't added, and nothing is drawn.
func (b *Book) Extent(s Section) (pages int, last length.Length) {
	f := &flow{dry: true, page: func() (*Pen, Box) {
		pages++
		return &Pen{Style: b.Style}, b.body(false)
	}}
	f.fill(b.slabs(&s, &Refs{}))
	return pages, f.y
}

// slabs are those of a section's blocks.
func (b *Book) slabs(s *Section, refs *Refs) []slab {
	blocks := s.Blocks
	if s.Build != nil {
		blocks = append(blocks[:len(blocks):len(blocks)], s.Build(refs)...)
	}
	body := b.body(false)
	return slabsOf(&setting{style: b.Style, tall: body.H}, body.W, blocks)
}

// A leaf is a page being made, and the section it belongs to; section is -1
// for a blank page before a right-hand start. more is set on a section's pages
// after the first.
type leaf struct {
	pen       *Pen
	section   int
	raw, more bool
}

// A bound is a section that was laid out, and what that rested on.
type bound struct {
	leaves []leaf
	asked  bool
	start  int
}

// Document flows all sections, numbers the pages and finishes them. Page
// references are settled by laying out again what asked for numbers, until
// they stay; three rounds are enough unless a number's width moves a page back
// and forth, and then the last round stands.
func (b *Book) Document() Document {
	done := make([]bound, len(b.sections))
	var pages map[string]string
	var leaves []leaf
	for range 4 {
		leaves = b.round(done, pages)
		found := anchors(leaves)
		if !anyAsked(done) || same(found, pages) {
			break
		}
		pages = found
	}
	doc := Document{Title: b.Title, Author: b.Author, Subject: b.Subject, Lang: b.Lang}
	for i := range leaves {
		doc.Pages = append(doc.Pages, b.finish(leaves, i))
	}
	return doc
}

// round lays out the sections that asked for page numbers or whose start has
// moved between left and right, and keeps the others. Several are laid out at
// once, as if each started on the side it did before; the few that don't are laid
// out again.
func (b *Book) round(done []bound, pages map[string]string) []leaf {
	lay := func(i, start int) {
		refs := &Refs{pages: pages}
		done[i] = bound{leaves: b.lay(i, &b.sections[i], start, refs), start: start, asked: refs.asked}
	}
	cores.Each(len(done), cores.All, func(i int) {
		if d := &done[i]; d.leaves == nil || d.asked {
			lay(i, d.start)
		}
	})
	var all []leaf
	for i := range b.sections {
		s := &b.sections[i]
		if s.RightHand && b.TwoSided && len(all)%2 == 1 {
			all = append(all, leaf{pen: b.pen(len(all)), section: -1})
		}
		if b.TwoSided && done[i].start%2 != len(all)%2 {
			lay(i, len(all))
		}
		all = append(all, done[i].leaves...)
	}
	return all
}

// lay flows one section; start is the index of its first page.
func (b *Book) lay(index int, s *Section, start int, refs *Refs) []leaf {
	var out []leaf
	add := func(raw bool) *Pen {
		p := b.pen(start + len(out))
		p.refs = refs
		out = append(out, leaf{pen: p, section: index, raw: raw, more: len(out) > 0})
		return p
	}
	f := &flow{page: func() (*Pen, Box) {
		p := add(false)
		return p, b.body(p.LeftHand)
	}}
	f.fill(b.slabs(s, refs))
	raw := len(out)
	for range s.Raw {
		p := add(true)
		p.Live = Box{0, 0, b.Paper.W, b.Paper.H}
		p.refs = &Refs{pages: refs.pages} // several are drawn at once
	}
	cores.Each(len(s.Raw), cores.All, func(i int) { s.Raw[i](out[raw+i].pen) })
	for i := range s.Raw {
		refs.asked = refs.asked || out[raw+i].pen.refs.asked
	}
	if len(out) > 0 && (s.Name != "" || s.Bookmark != "") {
		p := out[0].pen
		a := Anchor{At: Point{p.Live.X, p.Live.Y}, Name: s.Name, Title: s.Bookmark, Level: s.Level}
		p.items = append([]Item{a}, p.items...)
	}
	return out
}

// pen is a pen for the page of that index.
func (b *Book) pen(i int) *Pen {
	p := &Pen{Style: b.Style, LeftHand: b.TwoSided && i%2 == 1}
	p.Live = b.live(p.LeftHand)
	return p
}

// anchors is the page number of each anchor; the first of a name counts.
func anchors(leaves []leaf) map[string]string {
	out := map[string]string{}
	for i := range leaves {
		for _, it := range leaves[i].pen.items {
			if a, ok := it.(Anchor); ok && a.Name != "" && out[a.Name] == "" {
				out[a.Name] = strconv.Itoa(i + 1)
			}
		}
	}
	return out
}

func anyAsked(done []bound) bool {
	for i := range done {
		if done[i].asked {
			return true
		}
	}
	return false
}

func same(a, b map[string]string) bool {
	if len(a) != len(b) {
		return false
	}
	for k, v := range a {
		if b[k] != v {
			return false
		}
	}
	return true
}
