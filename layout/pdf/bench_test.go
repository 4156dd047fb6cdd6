package pdf_test

import (
	"io"
	"testing"

	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
)

// fortyPages is a book of about forty pages: contents, fabric sheets, tables
// and labels, five times over.
func fortyPages() *page.Book {
	b := demoBook(page.Letter)
	for range 4 {
		for _, s := range demoBook(page.Letter).Sections() {
			b.Add(s)
		}
	}
	return b
}

func BenchmarkDocument(b *testing.B) {
	book := fortyPages()
	n := 0
	for b.Loop() {
		n = len(book.Document().Pages)
	}
	b.ReportMetric(float64(n), "pages")
}

func BenchmarkWrite(b *testing.B) {
	doc := fortyPages().Document()
	b.ReportMetric(float64(len(doc.Pages)), "pages")
	for b.Loop() {
		if err := pdf.Write(io.Discard, doc); err != nil {
			b.Fatal(err)
		}
	}
}
