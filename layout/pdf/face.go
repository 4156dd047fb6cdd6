package pdf

import (
	"fmt"
	"regexp"
	"strconv"
)

var (
	fontFile  = regexp.MustCompile(`/FontFile2 (\d+) 0 R`)
	fontName  = regexp.MustCompile(`/(?:FontName|BaseFont) /(\S+)`)
	cidWidths = regexp.MustCompile(`/W \[([^\n]*)\]\n`)
	cidGlyph  = regexp.MustCompile(`(\d+)\[\d+\]`)
)

// An embedded is what the library's objects have told of a face so far.
type embedded struct {
	file   int   // the index of its file's object
	glyphs []int // those in use
	listed bool  // that those are all of them
}

// face notes what an object tells of a face: which object its file is to be, or which
// glyphs are in use, which are those that the library lists widths of. Once both are
// known the file is made. That is before any page, so that it is made while pages
// are written.
func (a *apart) face(body []byte) {
	m := fontName.FindSubmatch(body)
	if m == nil {
		return
	}
	name := string(m[1])
	e := a.embedded[name]
	file, widths := fontFile.FindSubmatch(body), cidWidths.FindSubmatch(body)
	switch {
	case file != nil:
		id, _ := strconv.Atoi(string(file[1]))
		e.file = id - 1
	case widths != nil:
		for _, m := range cidGlyph.FindAllSubmatch(widths[1], -1) {
			g, _ := strconv.Atoi(string(m[1]))
			e.glyphs = append(e.glyphs, g)
		}
		e.listed = true
	default:
		return
	}
	a.embedded[name] = e
	if e.file > 0 && e.listed && a.faces[name] != nil {
		a.embed(name, e)
	}
}

// embed has the file of a face made and packed.
func (a *apart) embed(name string, e embedded) {
	face := a.faces[name]
	delete(a.faces, name)
	a.later(e.file, func(p *packer) ([]byte, error) {
		small, err := subset(face.TTF(), e.glyphs)
		if err != nil {
			return nil, fmt.Errorf("typeface %s cannot be embedded: %w", face.Name(), err)
		}
		return p.stream(fmt.Appendf(nil, "<<\n/Length1 %d\n/Length %d\n>>\nstream\n%sendstream\n", len(small), len(small), small), nil), nil
	})
}
