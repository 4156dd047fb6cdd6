package changes

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/page"
	"cutbinder/sheets"
)

// A leaf is a page of a binder: which section it belongs to, how manieth of it,
// and what stands on it.
type leaf struct {
	section string
	number  int // in the binder, counted from 1
	body    string
}

// labelSection is the section of the label sheets, which aren't compared by page:
// labels are good or not one by one.
var labelSection = "part " + string(sheets.LabelPart)

// frame is what stands on every page round its own matter: headings and page
// numbers, that don't make a page wrong.
var frame = []string{"header", "header rule", "footer", "footer rule", "page number", "print check", "thumb index"}

// leaves are a binder's pages.
func leaves(doc page.Document) (all []leaf) {
	section := ""
	for i := range doc.Pages {
		var body strings.Builder
		for _, it := range doc.Pages[i].Items {
			switch it := it.(type) {
			case page.Anchor:
				if begins(it.Name) {
					section = it.Name
				}
				continue
			case page.Link:
				continue
			case page.Polygon:
				fmt.Fprint(&body, it.Points)
			}
			if !slices.Contains(frame, it.What()) {
				body.WriteString(it.String() + "\n")
			}
		}
		all = append(all, leaf{section, i + 1, body.String()})
	}
	return all
}

// begins says whether an anchor begins a section. That of the fabrics' part stands
// on the first fabric's sheet, which has one of its own.
func begins(anchor string) bool {
	part := strings.HasPrefix(anchor, "part ") && anchor != "part "+string(sheets.Fabrics)
	return part || strings.HasPrefix(anchor, "fabric ")
}

// pages compares the binders page by page within their sections. A page of the
// new binder that looks as one of the old does needs no printing, whatever its
// number.
func (c *Changes) pages(old, new page.Document) {
	type key struct{ section, body string }
	before := map[key][]leaf{}
	for _, l := range leaves(old) {
		k := key{l.section, l.body}
		before[k] = append(before[k], l)
	}
	kept := map[int]bool{}
	for _, l := range leaves(new) {
		if l.section == labelSection {
			continue
		}
		k := key{l.section, l.body}
		if same := before[k]; len(same) > 0 {
			c.Kept = append(c.Kept, Kept{same[0].number, l.number})
			kept[same[0].number] = true
			before[k] = same[1:]
			continue
		}
		c.Pages = append(c.Pages, Page{l.number, l.section})
	}
	for _, l := range leaves(old) {
		if l.section != labelSection && !kept[l.number] {
			c.Out = append(c.Out, l.number)
		}
	}
}
