package pdf

import (
	"bytes"
	"fmt"
	"strconv"
	"unicode/utf16"

	"cutbinder/layout/page"
)

// complete puts in what viewers are told about the document: catalog, page
// labels, bookmarks, and the facts about it.
func (f *file) complete(doc page.Document, pageIDs []int) []byte {
	catalog := "<< /Type /Catalog /Pages 2 0 R\n"
	if doc.Lang != "" {
		catalog += "/Lang " + text(doc.Lang) + "\n"
	}
	if len(doc.Pages) > 0 {
		catalog += "/PageLabels " + pageLabels(doc.Pages) + "\n"
	}
	if root := f.outline(bookmarks(doc.Pages), pageIDs); root != "" {
		catalog += "/Outlines " + root + " /PageMode /UseOutlines\n"
	}
	// Drawings are to scale: the viewer is asked to print at 100 %.
	f.put(1, catalog+"/ViewerPreferences << /DisplayDocTitle true /PrintScaling /None >> >>")
	return f.bytes(f.add(facts(doc)))
}

// facts is the document information dictionary (ISO 32000-1, 14.3.3), without
// dates.
func facts(doc page.Document) string {
	s := "<< /Title " + text(doc.Title)
	if doc.Author != "" {
		s += " /Author " + text(doc.Author)
	}
	if doc.Subject != "" {
		s += " /Subject " + text(doc.Subject)
	}
	return s + " /Creator " + text("cutbinder") + " >>"
}

// text is a text string in UTF-16, as hexadecimal (ISO 32000-1, 7.9.2.2).
func text(s string) string {
	var b bytes.Buffer
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}

// pageLabels is the number tree that names the pages as they are numbered on
// paper (ISO 32000-1, 12.4.2). Where they are simply counted, one entry is
// enough.
func pageLabels(pages []page.Page) string {
	counted := true
	for i := range pages {
		counted = counted && pages[i].Label == strconv.Itoa(i+1)
	}
	if counted {
		return "<< /Nums [0 << /S /D >>] >>"
	}
	var b bytes.Buffer
	b.WriteString("<< /Nums [")
	for i := range pages {
		fmt.Fprintf(&b, "%d << /P %s >> ", i, text(pages[i].Label))
	}
	b.WriteString("] >>")
	return b.String()
}
