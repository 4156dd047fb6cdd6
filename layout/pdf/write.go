// Package pdf writes finished pages as a PDF file. It is the only package that
// knows the PDF library, and the only one that thinks in points and floating
// point: a page has nothing left to decide.
//
// The same document gives the same bytes: no date, no random number and no
// path goes into the file.
package pdf

import (
	"errors"
	"fmt"
	"io"

	"github.com/signintech/gopdf"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// pt is a length in points, 1/72 in.
func pt(l length.Length) float64 { return float64(l) * 72 / float64(length.Inch) }

// A writer draws pages with the PDF library, which keeps a current font,
// colour and line: everything an item needs is set each time.
type writer struct {
	gp      gopdf.GoPdf
	family  map[*fonts.Face]string
	anchors map[string]bool
	pageIDs []int   // the object number of each page
	size    float64 // the font size set last
	height  float64 // of the current page
	codes   []square
}

// Write writes the document to w. It fails where a character has no glyph, for
// the PDF library would leave it out in silence, and where a face cannot be
// embedded.
func Write(w io.Writer, doc page.Document) error {
	out, err := build(doc)
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}

// caught tells a panic as an error: the library, and what makes font files, trust
// the faces, and trip over damaged ones.
func caught(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("the pages cannot be written as PDF, likely for a damaged typeface: %v", r)
	}
}

// build makes the whole file.
func build(doc page.Document) (out []byte, err error) {
	defer caught(&err)
	if err := missing(doc.Pages); err != nil {
		return nil, err
	}
	x := &writer{family: map[*fonts.Face]string{}, anchors: map[string]bool{}}
	x.start(doc)
	if err := x.embed(doc.Pages); err != nil {
		return nil, err
	}
	a := takeApart(levelFor(codes(doc.Pages)))
	defer a.end() // also where the library breaks
	for i := range doc.Pages {
		if err := x.page(&doc.Pages[i]); err != nil {
			return nil, fmt.Errorf("page %s: %w", doc.Pages[i].Label, err)
		}
	}
	a.expect(x.codes, x.family)
	_, err = x.gp.WriteTo(a)
	f, broken := a.file()
	if err = errors.Join(err, broken); err != nil {
		return nil, err
	}
	return f.complete(doc, x.pageIDs), nil
}

// codes counts the square codes on pages.
func codes(pages []page.Page) (n int) {
	for i := range pages {
		for _, it := range pages[i].Items {
			if _, ok := it.(page.Code); ok {
				n++
			}
		}
	}
	return n
}

// missing reports the first character that no face has.
func missing(pages []page.Page) error {
	for i := range pages {
		for _, it := range pages[i].Items {
			t, ok := it.(page.Text)
			if !ok {
				continue
			}
			for _, run := range t.Runs {
				for _, r := range run.S {
					if !run.Face.Has(r) {
						return fmt.Errorf("page %s: read %q with character %q (U+%04X), which no typeface here has", pages[i].Label, t.Words(), r, r)
					}
				}
			}
		}
	}
	return nil
}

// start begins a file of the first page's size.
func (x *writer) start(doc page.Document) {
	size := page.Letter
	if len(doc.Pages) > 0 {
		size = doc.Pages[0].Paper
	}
	x.gp.Start(gopdf.Config{Unit: gopdf.UnitPT, PageSize: gopdf.Rect{W: pt(size.W), H: pt(size.H)}})
	x.gp.SetNoCompression() // see pack
	for i := range doc.Pages {
		for _, it := range doc.Pages[i].Items {
			if a, ok := it.(page.Anchor); ok && a.Name != "" {
				x.anchors[a.Name] = true
			}
		}
	}
}

// embed registers the faces in the order they are first used. The six letters
// and the plus sign before a name mark a face of which only the glyphs in use
// are embedded (ISO 32000-1, 9.6.4).
func (x *writer) embed(pages []page.Page) error {
	for i := range pages {
		for _, it := range pages[i].Items {
			t, ok := it.(page.Text)
			if !ok {
				continue
			}
			for _, run := range t.Runs {
				if x.family[run.Face] != "" {
					continue
				}
				name := fmt.Sprintf("CBFAC%c+%s", 'A'+len(x.family)%26, run.Face.Name())
				ttf, err := hollow(run.Face.TTF())
				if err == nil {
					err = x.gp.AddTTFFontData(name, ttf)
				}
				if err != nil {
					return fmt.Errorf("typeface %s cannot be embedded: %w", run.Face.Name(), err)
				}
				x.family[run.Face] = name
			}
		}
	}
	return nil
}

// page draws one page.
func (x *writer) page(p *page.Page) error {
	x.pageIDs = append(x.pageIDs, x.gp.GetNextObjectID())
	w, h := pt(p.Paper.W), pt(p.Paper.H)
	x.height = h
	x.gp.AddPageWithOption(gopdf.PageOption{PageSize: &gopdf.Rect{W: w, H: h}})
	x.gp.SetLineWidth(1) // an empty page needs a content stream too
	for _, it := range p.Items {
		if err := x.item(it); err != nil {
			return err
		}
	}
	return nil
}
