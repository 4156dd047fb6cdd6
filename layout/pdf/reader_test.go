package pdf_test

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
)

// A parsed is a PDF file taken apart again by a reader that shares nothing with
// the writer: it follows the cross-reference table, checks that every object
// stands where it says, and unpacks streams.
type parsed struct {
	t       *testing.T
	objects map[int]string // body of each object, streams unpacked
	trailer string
}

// written writes a document and reads it back.
func written(t *testing.T, doc page.Document) *parsed {
	t.Helper()
	var buf bytes.Buffer
	if err := pdf.Write(&buf, doc); err != nil {
		t.Fatal(err)
	}
	return parse(t, buf.Bytes())
}

var (
	xrefStart  = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
	streamBody = regexp.MustCompile(`(?s)^(.*?)/Length (\d+)(.*?)stream\n`)
)

func parse(t *testing.T, file []byte) *parsed {
	t.Helper()
	p := &parsed{t: t, objects: map[int]string{}}
	m := xrefStart.FindSubmatch(file)
	if m == nil {
		t.Fatal("no startxref")
	}
	at, _ := strconv.Atoi(string(m[1]))
	table, trailer, _ := strings.Cut(string(file[at:]), "trailer\n")
	p.trailer = trailer
	lines := strings.Split(strings.TrimSuffix(table, "\n"), "\n")
	if lines[0] != "xref" || lines[1] != fmt.Sprintf("0 %d", len(lines)-2) {
		t.Fatalf("the cross-reference table starts %q", lines[:2])
	}
	for id, line := range lines[3:] {
		start, err := strconv.Atoi(line[:10])
		if err != nil || len(line) != 19 {
			t.Fatalf("cross-reference line %q", line)
		}
		body, ok := strings.CutPrefix(string(file[start:]), fmt.Sprintf("%d 0 obj\n", id+1))
		if !ok {
			t.Fatalf("object %d is not where the table says", id+1)
		}
		p.objects[id+1] = p.unpack(body)
	}
	return p
}

// unpack cuts an object off at its end and unpacks its stream.
func (p *parsed) unpack(body string) string {
	if i := strings.Index(body, "endobj"); !strings.Contains(body[:i], "stream\n") {
		return body[:i]
	}
	m := streamBody.FindStringSubmatch(body)
	n, _ := strconv.Atoi(m[2])
	data := body[len(m[0]):][:n]
	if !strings.HasPrefix(strings.TrimLeft(body[len(m[0])+n:], "\n"), "endstream\nendobj") {
		p.t.Fatalf("a stream is not as long as it says: %q", m[0])
	}
	if strings.Contains(m[0], "/FlateDecode") {
		z, err := zlib.NewReader(strings.NewReader(data))
		if err != nil {
			p.t.Fatal(err)
		}
		raw, err := io.ReadAll(z)
		if err != nil {
			p.t.Fatal(err)
		}
		data = string(raw)
	}
	return m[0] + data
}

var reference = regexp.MustCompile(`(\d+) 0 R`)

// follow returns the object a key of a dictionary refers to.
func (p *parsed) follow(dict, key string) string {
	_, rest, ok := strings.Cut(dict, key+" ")
	m := reference.FindStringSubmatch(rest)
	if !ok || m == nil {
		p.t.Fatalf("no %s in %q", key, dict)
	}
	id, _ := strconv.Atoi(m[1])
	return p.objects[id]
}

// pages are the page dictionaries in order.
func (p *parsed) pages() []string {
	_, kids, _ := strings.Cut(p.follow(p.follow(p.trailer, "/Root"), "/Pages"), "/Kids")
	kids, _, _ = strings.Cut(kids, "]")
	var out []string
	for _, m := range reference.FindAllStringSubmatch(kids, -1) {
		id, _ := strconv.Atoi(m[1])
		out = append(out, p.objects[id])
	}
	return out
}

var (
	fontName  = regexp.MustCompile(`/(F\d+) (\d+) 0 R`)
	mapping   = regexp.MustCompile(`<([0-9A-F]+)><[0-9A-F]+><([0-9A-F]+)>\n`)
	showText  = regexp.MustCompile(`(?s)BT\n.*?/(F\d+) ([\d.]+) Tf.*?\[(.*?)\] TJ\nET`)
	hexString = regexp.MustCompile(`<([0-9A-F]*)>`)
)

// texts is what a reader of the page's text gets, run by run: glyph numbers
// turned back to characters by the fonts' maps.
func (p *parsed) texts(pageDict string) []string {
	resources := p.follow(pageDict, "/Resources")
	unicode := map[string]map[string]rune{}
	for _, m := range fontName.FindAllStringSubmatch(resources, -1) {
		id, _ := strconv.Atoi(m[2])
		unicode[m[1]] = map[string]rune{}
		for _, g := range mapping.FindAllStringSubmatch(p.follow(p.objects[id], "/ToUnicode"), -1) {
			r, _ := strconv.ParseInt(g[2], 16, 32)
			unicode[m[1]][g[1]] = rune(r)
		}
	}
	var out []string
	for _, m := range showText.FindAllStringSubmatch(p.follow(pageDict, "/Contents"), -1) {
		s := ""
		for _, h := range hexString.FindAllStringSubmatch(m[3], -1) {
			for i := 0; i+4 <= len(h[1]); i += 4 {
				s += string(unicode[m[1]][h[1][i:i+4]])
			}
		}
		out = append(out, s)
	}
	return out
}
