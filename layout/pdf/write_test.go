package pdf_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/image/font/gofont/goregular"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
)

const in = length.Inch

// onePage is a document of one page drawn by a function.
func onePage(paper page.Paper, draw func(p *page.Pen)) page.Document {
	pen := page.NewPen(page.NewStyle(fonts.Default()), page.Box{W: paper.W, H: paper.H})
	draw(pen)
	return page.Document{Title: "Test", Lang: "en", Pages: []page.Page{{Paper: paper, Live: pen.Live, Label: "1", Items: pen.Items()}}}
}

// TestText reads back from the file every run of every page, in its order.
func TestText(t *testing.T) {
	doc := demoBook(page.A4).Document()
	p := written(t, doc)
	for i, dict := range p.pages() {
		var want []string
		for _, it := range doc.Pages[i].Items {
			if text, ok := it.(page.Text); ok {
				for _, r := range text.Runs {
					want = append(want, r.S)
				}
			}
		}
		if d := cmp.Diff(want, p.texts(dict)); d != "" {
			t.Errorf("page %d: (-want +got)\n%s", i+1, d)
		}
	}
}

// TestSameBytes writes the same document twice, from the start.
func TestSameBytes(t *testing.T) {
	var a, b bytes.Buffer
	for _, w := range []io.Writer{&a, &b} {
		if err := pdf.Write(w, demoBook(page.Letter).Document()); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two writings differ")
	}
	for _, s := range []string{"CreationDate", "ModDate", "(D:"} {
		if bytes.Contains(a.Bytes(), []byte(s)) {
			t.Errorf("the file holds a date: %s", s)
		}
	}
}

// TestPlaces draws one item of each kind and reads where it is on the paper, in
// points from the foot: 1 in is 72.
func TestPlaces(t *testing.T) {
	hair := page.Stroke{Width: page.MinLine, Ink: page.Black}
	box := page.Box{X: in, Y: 2 * in, W: 3 * in, H: in}
	tests := []struct {
		name string
		draw func(p *page.Pen)
		want string
	}{
		{"line", func(p *page.Pen) { p.HLine(in, in, 4*in, hair, "") }, "0.41 w\n[] 0.00 d\n0.00 G\nq\n72.00 720.00 m 360.00 720.00 l S\nQ\n"},
		{"10 cm", func(p *page.Pen) { p.HLine(0, 0, 10*length.CM, hair, "") }, "0.00 792.00 m 283.46 792.00 l S\n"},
		{"dashed", func(p *page.Pen) { p.HLine(in, in, in, hair.Broken(page.Dashed), "") }, "[2.99 1.99] 0.00 d\n"},
		{"outline", func(p *page.Pen) { p.Rect(box, page.NoInk, hair, "") }, "72.00 576.00 216.00 72.00 re S\n"},
		{"ground", func(p *page.Pen) { p.Rect(box, page.White, page.Stroke{}, "") }, "1.00 g\nq\n72.00 576.00 216.00 72.00 re f\n"},
		{"tint", func(p *page.Pen) { p.Rect(box, page.Mist, page.Stroke{}, "") }, "0.910 0.925 0.945 rg\n"},
		{"polygon", func(p *page.Pen) {
			p.Polygon([]page.Point{{X: in, Y: in}, {X: 2 * in, Y: in}, {X: in, Y: 2 * in}}, page.Black, page.Stroke{}, "")
		}, "72.00 720.00 m 144.00 720.00 l 72.00 648.00 l  f\n"},
		{"text", func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Body, page.Left, "", "x") }, "0.00 g\nBT\n72.00 720.00 TD\n/F1 10.001 Tf 0 Tc\n"},
		{"grey text", func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Help, page.Left, "", "x") }, "0.33 g\nBT\n"},
		{"coloured text", func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Body.In(0xFF800000), page.Left, "", "x") }, "0.502 0.000 0.000 rg\n[<"},
		{"code", func(p *page.Pen) { p.Code(page.Box{W: 11 * in, H: 11 * in}, 3, []bool{true, true}, 4, "") }, "q\n0 g\n72.0000 0 0 -72.0000 0.0000 792.0000 cm\n4 4 2 1 re\nf\nQ\n"},
		{"hatch", func(p *page.Pen) { p.Hatch(box, page.Leftover, page.Stroke{}, "") }, "0.47 G\nq\n"},
	}
	for _, tt := range tests {
		p := written(t, onePage(page.Letter, tt.draw))
		if got := p.follow(p.pages()[0], "/Contents"); !strings.Contains(got, tt.want) {
			t.Errorf("%s: %q does not hold %q", tt.name, got, tt.want)
		}
	}
}

// TestStateIsSet draws items of different looks one after another: none takes
// over the look of the one before.
func TestStateIsSet(t *testing.T) {
	alone := func(draw func(p *page.Pen)) string {
		p := written(t, onePage(page.Letter, draw))
		_, content, _ := strings.Cut(p.follow(p.pages()[0], "/Contents"), "stream\n")
		_, content, _ = strings.Cut(content, "w\n") // the width every page starts with
		return content
	}
	hair := page.Stroke{Width: page.MinLine, Ink: page.Black}
	draws := []func(p *page.Pen){
		func(p *page.Pen) { p.HLine(in, in, in, hair.Broken(page.Dotted).With(page.Mid), "") },
		func(p *page.Pen) { p.HLine(in, in, in, hair, "") },
		func(p *page.Pen) { p.Rect(page.Box{W: in, H: in}, page.Sand, hair, "") },
		func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Body, page.Left, "", "x") },
		func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Body.In(page.Sand), page.Left, "", "x") },
		func(p *page.Pen) { p.Code(page.Box{W: 11 * in, H: 11 * in}, 3, []bool{true, true}, 4, "") },
	}
	for i, a := range draws {
		for j, b := range draws {
			both := alone(func(p *page.Pen) { a(p); b(p) })
			if want := alone(a) + alone(b); both != want {
				t.Errorf("%d then %d: %q, want %q", i, j, both, want)
			}
		}
	}
}

// TestPageBoxes holds the papers' sizes in points, to a hundredth: 215.9 x
// 279.4 mm and 210 x 297 mm times 72 / 25.4.
func TestPageBoxes(t *testing.T) {
	for paper, want := range map[page.Paper]string{page.Letter: "[ 0 0 612.00 792.00 ]", page.A4: "[ 0 0 595.28 841.89 ]"} {
		p := written(t, onePage(paper, func(*page.Pen) {}))
		if got := p.pages()[0]; !strings.Contains(got, "/MediaBox "+want) {
			t.Errorf("%s: %s", paper.Name, got)
		}
	}
}

// TestCatalog asks for language, labels, print scaling and the facts.
func TestCatalog(t *testing.T) {
	doc := onePage(page.Letter, func(*page.Pen) {})
	doc.Title, doc.Author = "Nähen (1)\\", "\U0001F9F5"
	p := written(t, doc)
	root := p.follow(p.trailer, "/Root")
	for _, want := range []string{"/Lang <FEFF0065006E>", "/PageLabels << /Nums [0 << /S /D >>] >>", "/PrintScaling /None", "/DisplayDocTitle true"} {
		if !strings.Contains(root, want) {
			t.Errorf("the catalog lacks %s: %s", want, root)
		}
	}
	info := p.follow(p.trailer, "/Info")
	for _, want := range []string{"/Title <FEFF004E00E400680065006E0020002800310029005C>", "/Author <FEFFD83EDDF5>"} {
		if !strings.Contains(info, want) {
			t.Errorf("the facts lack %s: %s", want, info)
		}
	}
	doc.Pages[0].Label = "A-1"
	if root := written(t, doc); !strings.Contains(root.follow(root.trailer, "/Root"), "/Nums [0 << /P <FEFF0041002D0031> >> ]") {
		t.Errorf("label A-1: %s", root.follow(root.trailer, "/Root"))
	}
}

// TestOutline walks the bookmarks: nested as their levels say, each leading to
// its page.
func TestOutline(t *testing.T) {
	marks := []struct {
		title string
		level int
	}{{"a", 0}, {"a1", 1}, {"a2", 1}, {"b", 0}, {"b1", 5}, {"c", -3}}
	doc := page.Document{}
	for i, m := range marks {
		one := onePage(page.Letter, func(p *page.Pen) { p.Bookmark(page.Point{X: in, Y: in}, m.title, m.title, m.level) })
		one.Pages[0].Label = strconv.Itoa(i + 1)
		doc.Pages = append(doc.Pages, one.Pages...)
	}
	p := written(t, doc)
	ids := map[string]string{}
	for i, dict := range p.pages() {
		for id, body := range p.objects {
			if body == dict && strings.Contains(p.objects[2], fmt.Sprintf("%d 0 R", id)) {
				ids[fmt.Sprintf("%d 0 R", id)] = strconv.Itoa(i + 1)
			}
		}
	}
	var got []string
	var walk func(dict, indent string)
	walk = func(dict, indent string) {
		for kid := p.follow(dict, "/First"); ; kid = p.follow(kid, "/Next") {
			_, dest, _ := strings.Cut(kid, "/Dest [")
			dest, _, _ = strings.Cut(dest, " /XYZ null 720.00 null]")
			got = append(got, fmt.Sprintf("%s%s on %s", indent, strings.Fields(kid)[2], ids[dest]))
			if strings.Contains(kid, "/First") {
				walk(kid, indent+"  ")
			}
			if !strings.Contains(kid, "/Next") {
				return
			}
		}
	}
	walk(p.follow(p.follow(p.trailer, "/Root"), "/Outlines"), "")
	want := []string{
		"<FEFF0061> on 1", "  <FEFF00610031> on 2", "  <FEFF00610032> on 3",
		"<FEFF0062> on 4", "  <FEFF00620031> on 5", "<FEFF0063> on 6",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// TestLinks leads a box to the place an anchor names, and leaves out a link to
// nowhere.
func TestLinks(t *testing.T) {
	doc := onePage(page.Letter, func(p *page.Pen) {
		p.TextAt(page.Point{X: in, Y: in}, p.Style.Title, page.Left, "", "x")
		p.Link(page.Box{X: in, Y: in, W: in, H: in}, "there")
		p.Link(page.Box{X: in, Y: in, W: in, H: in}, "nowhere")
		p.Anchor(page.Point{X: in, Y: 3 * in}, "there")
	})
	p := written(t, doc)
	var links []string
	for _, body := range p.objects {
		if strings.Contains(body, "/Subtype /Link") {
			links = append(links, body)
		}
	}
	if len(links) != 1 || !strings.Contains(links[0], "/Rect [72.00 720.00 144.00 648.00]") || !strings.Contains(links[0], "/XYZ 0 576.00 null]") {
		t.Errorf("links %q", links)
	}
}

// TestErrors tells what cannot be written.
func TestErrors(t *testing.T) {
	words := func(s string) page.Document {
		return onePage(page.Letter, func(p *page.Pen) {
			p.TextAt(page.Point{X: in, Y: in}, p.Style.Body, page.Left, "", s)
		})
	}
	damaged := append([]byte(nil), goregular.TTF...)
	names := binary.BigEndian.Uint32(damaged[bytes.Index(damaged, []byte("name"))+8:])
	copy(damaged[names+2:], []byte{0, 0}) // the table of names is said to be empty
	outlines := append([]byte(nil), goregular.TTF...)
	copy(outlines[binary.BigEndian.Uint32(outlines[bytes.Index(outlines, []byte("loca"))+8:])+20:], []byte{0xFF, 0xFF})
	tests := []struct {
		name string
		doc  page.Document
		want string
	}{
		{"damaged outlines", withFace(t, words("x"), outlines), "typeface mine cannot be embedded: its loca table"},
		{"no glyph", words("sew 縫"), `page 1: read "sew 縫" with character '縫' (U+7E2B), which no typeface here has`},
		{"damaged face", withFace(t, words("x"), damaged), "typeface"},
	}
	for _, tt := range tests {
		if err := pdf.Write(io.Discard, tt.doc); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want … %s", tt.name, err, tt.want)
		}
	}
}

// withFace puts another face into every run of a document.
func withFace(t *testing.T, doc page.Document, ttf []byte) page.Document {
	t.Helper()
	face, err := fonts.Parse("mine", ttf)
	if err != nil {
		t.Fatal(err)
	}
	for _, it := range doc.Pages[0].Items {
		for i := range it.(page.Text).Runs {
			it.(page.Text).Runs[i].Face = face
		}
	}
	return doc
}

// TestEmpty writes a document without pages, one with an empty page, and one with an
// empty text, whose face has no glyph in use.
func TestEmpty(t *testing.T) {
	noWords := onePage(page.A4, func(p *page.Pen) { p.TextAt(page.Point{X: in, Y: in}, p.Style.Body, page.Left, "", "x") })
	noWords.Pages[0].Items[0].(page.Text).Runs[0].S = ""
	for _, doc := range []page.Document{{}, onePage(page.A4, func(*page.Pen) {}), noWords} {
		if got := len(written(t, doc).pages()); got != len(doc.Pages) {
			t.Errorf("%d pages, want %d", got, len(doc.Pages))
		}
	}
}
