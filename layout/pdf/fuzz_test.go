package pdf_test

import (
	"io"
	"testing"

	"golang.org/x/image/font/gofont/goregular"

	"cutbinder/fonts"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
)

// FuzzDamagedFace embeds faces with a damaged byte or two. Writing ends in a
// file or an error, never in a panic.
func FuzzDamagedFace(f *testing.F) {
	f.Add(uint(5), byte(0xff), uint(300), byte(0))
	f.Add(uint(700), byte(1), uint(1300), byte(0x80))
	f.Fuzz(func(t *testing.T, at uint, a byte, at2 uint, b byte) {
		ttf := append([]byte(nil), goregular.TTF...)
		ttf[at%2000], ttf[at2%uint(len(ttf))] = a, b // the tables that say how to read the others come first
		face, err := fonts.Parse("damaged", ttf)
		if err != nil {
			return
		}
		doc := onePage(page.A4, func(p *page.Pen) {
			p.TextAt(page.Point{X: in, Y: in}, p.Style.Body, page.Left, "", "Quilt 3½ é ×")
		})
		for _, it := range doc.Pages[0].Items {
			for i := range it.(page.Text).Runs {
				it.(page.Text).Runs[i].Face = face
			}
		}
		_ = pdf.Write(io.Discard, doc)
	})
}
