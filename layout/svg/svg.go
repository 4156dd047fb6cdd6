// Package svg writes a finished page as an SVG file, from the same items that the
// PDF is written from.
//
// Type is drawn as the outlines of its glyphs, so that it looks the same
// everywhere, whatever faces a viewer has; the words stand in the file's
// description, for those who listen to it. Coordinates are whole length units.
package svg

import (
	"bufio"
	"crypto/sha256"
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// A writer writes one page.
type writer struct {
	*bufio.Writer
	prefix string // of ids, so that several files can stand in one web page
	glyphs map[glyph]string
	order  []glyph
	faces  []*fonts.Face
}

// A glyph is a character of a face, which is told by its place among the faces.
type glyph struct {
	face int
	r    rune
}

// Write writes a page to w. The title names what it shows. Links and bookmarks
// are left out: there is nothing to lead to.
func Write(w io.Writer, p *page.Page, title string) error {
	x := &writer{Writer: bufio.NewWriter(w), glyphs: map[glyph]string{}}
	x.prefix = prefixOf(p)
	x.collect(p)
	x.head(p, title)
	for _, it := range p.Items {
		x.item(it)
	}
	fmt.Fprintln(x, "</svg>")
	return x.Flush()
}

// prefixOf is made from what is on the page.
func prefixOf(p *page.Page) string {
	h := sha256.New()
	for _, it := range p.Items {
		io.WriteString(h, it.String())
	}
	return fmt.Sprintf("c%x", h.Sum(nil)[:4])
}

// collect gives each glyph in use an id, in the order of use.
func (x *writer) collect(p *page.Page) {
	for _, it := range p.Items {
		t, ok := it.(page.Text)
		if !ok {
			continue
		}
		for _, run := range t.Runs {
			for _, r := range run.S {
				g := glyph{x.face(run.Face), r}
				if x.glyphs[g] == "" && len(run.Face.Outline(r)) > 0 {
					x.glyphs[g] = fmt.Sprintf("%s-%d", x.prefix, len(x.order))
					x.order = append(x.order, g)
				}
			}
		}
	}
}

// face is a face's place among those in use.
func (x *writer) face(f *fonts.Face) int {
	for i, g := range x.faces {
		if f == g {
			return i
		}
	}
	x.faces = append(x.faces, f)
	return len(x.faces) - 1
}

// head begins the file: its size, what it shows, its words, its glyphs, and white
// paper.
func (x *writer) head(p *page.Page, title string) {
	fmt.Fprintf(x, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %d %d" role="img" aria-labelledby="%[5]s-title %[5]s-words" stroke-miterlimit="10">`+"\n",
		decimal(int64(p.Paper.W), int64(length.MM)), decimal(int64(p.Paper.H), int64(length.MM)), p.Paper.W, p.Paper.H, x.prefix)
	fmt.Fprintf(x, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-words\">%s</desc>\n", x.prefix, escape(title), x.prefix, escape(words(p)))
	if len(x.order) > 0 {
		fmt.Fprintln(x, "<defs>")
		for _, g := range x.order {
			fmt.Fprintf(x, "<path id=\"%s\" d=\"%s\"/>\n", x.glyphs[g], path(x.faces[g.face].Outline(g.r)))
		}
		fmt.Fprintln(x, "</defs>")
	}
	fmt.Fprintf(x, "<rect width=\"%d\" height=\"%d\" fill=\"#ffffff\"/>\n", p.Paper.W, p.Paper.H)
}

// words are the page's lines of type, in the order they are drawn.
func words(p *page.Page) string {
	var lines []string
	for _, it := range p.Items {
		if t, ok := it.(page.Text); ok {
			lines = append(lines, t.Words())
		}
	}
	return strings.Join(lines, "\n")
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a builder takes everything
	return b.String()
}

// path is an outline in font units.
func path(outline []fonts.Segment) string {
	var b strings.Builder
	for i, s := range outline {
		if s.Kind == fonts.MoveTo && i > 0 {
			b.WriteByte('Z')
		}
		b.WriteByte("MLQC"[s.Kind])
		for k := range max(1, int(s.Kind)) {
			if k > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(decimal(int64(s.Points[k][0]), 64) + " " + decimal(int64(s.Points[k][1]), 64))
		}
	}
	b.WriteByte('Z')
	return b.String()
}

// decimal is a/b with up to nine decimals.
func decimal(a, b int64) string {
	sign := ""
	if a < 0 {
		sign, a = "-", -a
	}
	whole, rest := a/b, a%b
	if rest == 0 {
		if whole == 0 {
			return "0"
		}
		return fmt.Sprintf("%s%d", sign, whole)
	}
	billionths := (rest*1_000_000_000 + b/2) / b
	whole, billionths = whole+billionths/1_000_000_000, billionths%1_000_000_000
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%s%d.%09d", sign, whole, billionths), "0"), ".")
}
