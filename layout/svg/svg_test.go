package svg

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"cutbinder/fonts"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

const mm = length.MM

// sample is a page with an item of every kind.
func sample() *page.Page {
	st := page.NewStyle(fonts.Default())
	p := page.NewPen(st, page.Box{W: 100 * mm, H: 60 * mm})
	p.Text(page.Box{X: 5 * mm, Y: 5 * mm, W: 80 * mm, H: 6 * mm}, st.Bold, page.Left, "words", "(2) 3½ < 4 & “more”")
	p.Line(page.Point{X: 5 * mm, Y: 20 * mm}, page.Point{X: 25 * mm, Y: 20 * mm}, st.Hair.Broken(page.Dashed), "line")
	p.Rect(page.Box{X: 5 * mm, Y: 25 * mm, W: 10 * mm, H: 10 * mm}, page.Mist, st.Rule, "rect")
	p.Hatch(page.Box{X: 20 * mm, Y: 25 * mm, W: 10 * mm, H: 10 * mm}, page.Waste, st.Hair, "hatch")
	p.Polygon([]page.Point{{X: 40 * mm, Y: 25 * mm}, {X: 50 * mm, Y: 35 * mm}, {X: 40 * mm, Y: 35 * mm}}, page.Black, page.Stroke{}, "triangle")
	p.Code(page.Box{X: 60 * mm, Y: 20 * mm, W: 20 * mm, H: 20 * mm}, 2, []bool{true, false, false, true}, 4, "code")
	p.Link(page.Box{W: mm, H: mm}, "nowhere")
	p.Bookmark(page.Point{}, "here", "Here", 0)
	return &page.Page{Paper: page.Paper{Name: "sample", W: 100 * mm, H: 60 * mm}, Items: p.Items()}
}

func write(t *testing.T, p *page.Page) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p, "A sample"); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestFile asks the file: is it XML, is every glyph that is used there, once, do
// the words stand in it, are the sizes as they should be.
func TestFile(t *testing.T) {
	text := write(t, sample())
	count := map[string]int{}
	ids := map[string]bool{}
	used := map[string]bool{}
	words := ""
	dec := xml.NewDecoder(strings.NewReader(text))
	inside := ""
	for {
		token, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.CharData:
			if inside == "desc" {
				words += string(e)
			}
		case xml.EndElement:
			inside = ""
		case xml.StartElement:
			inside = e.Name.Local
			count[inside]++
			for _, a := range e.Attr {
				switch a.Name.Local {
				case "id":
					if ids[a.Value] {
						t.Errorf("id %s stands there twice", a.Value)
					}
					ids[a.Value] = true
				case "href":
					used[strings.TrimPrefix(a.Value, "#")] = true
				}
			}
		}
	}
	for id := range used {
		if !ids[id] {
			t.Errorf("glyph %s is used and not there", id)
		}
	}
	if words != "(2) 3½ < 4 & “more”" {
		t.Errorf("the description holds %q", words)
	}
	// paper, a ground with its outline, and a hatch's outline
	if count["rect"] != 4 || count["text"] != 0 || count["title"] != 1 {
		t.Errorf("elements: %v", count)
	}
	for _, want := range []string{
		`width="100mm" height="60mm" viewBox="0 0 32000 19200"`,
		`<rect x="1600" y="8000" width="3200" height="3200" fill="#e8ecf1"/>`,
		`<path d="M12800 8000L16000 11200L12800 11200Z" fill="#000000"/>`,
		`stroke-dasharray="338 225"`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
}

// TestSame: the same page gives the same bytes, and ids of its own.
func TestSame(t *testing.T) {
	a, b := sample(), sample()
	if write(t, a) != write(t, b) {
		t.Error("the same page gives other bytes")
	}
	b.Items = b.Items[:1]
	if prefixOf(a) == prefixOf(b) {
		t.Error("two pages have the same ids")
	}
}

func TestDecimal(t *testing.T) {
	for _, tt := range []struct {
		a, b int64
		want string
	}{{0, 7, "0"}, {7, 7, "1"}, {-3, 2, "-1.5"}, {1, 3, "0.333333333"}, {-1, 64, "-0.015625"}, {2_000_000_000_001, 1_000_000_000_000, "2"}} {
		if got := decimal(tt.a, tt.b); got != tt.want {
			t.Errorf("%d/%d is %q, want %q", tt.a, tt.b, got, tt.want)
		}
	}
}
