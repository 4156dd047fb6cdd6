package pdf

import (
	"fmt"

	"cutbinder/layout/page"
)

// A bookmark is an entry of the viewer's outline.
type bookmark struct {
	title string
	page  int     // index
	top   float64 // from the page's foot, in points
	kids  []*bookmark
}

// bookmarks is the outline's tree: an anchor with a title is a child of the
// last one before it that is less deep.
func bookmarks(pages []page.Page) []*bookmark {
	root := &bookmark{}
	path := []*bookmark{root}
	for i := range pages {
		for _, it := range pages[i].Items {
			a, ok := it.(page.Anchor)
			if !ok || a.Title == "" {
				continue
			}
			b := &bookmark{title: a.Title, page: i, top: pt(pages[i].Paper.H - a.At.Y)}
			depth := min(max(a.Level, 0)+1, len(path))
			parent := path[depth-1]
			parent.kids = append(parent.kids, b)
			path = append(path[:depth], b)
		}
	}
	return root.kids
}

// outline writes the tree and returns a reference to its root, or "" where it
// is empty (ISO 32000-1, 12.3.3).
func (f *file) outline(marks []*bookmark, pageIDs []int) string {
	if len(marks) == 0 {
		return ""
	}
	root := f.find("<<\n\t/Type /Outlines") // the library's own, empty
	if root == 0 {
		root = f.reserve()
	}
	first, last := f.entries(marks, root, pageIDs)
	f.put(root, fmt.Sprintf("<< /Type /Outlines /First %s /Last %s /Count %d >>", ref(first), ref(last), len(marks)))
	return ref(root)
}

// entries writes siblings and what is below them, and returns the numbers of
// the first and the last. Entries start closed, so a count of children is
// negative.
func (f *file) entries(marks []*bookmark, parent int, pageIDs []int) (first, last int) {
	ids := make([]int, len(marks))
	for i := range marks {
		ids[i] = f.reserve()
	}
	for i, m := range marks {
		s := fmt.Sprintf("<< /Title %s /Parent %s /Dest [%s /XYZ null %.2f null]", text(m.title), ref(parent), ref(pageIDs[m.page]), m.top)
		if i > 0 {
			s += " /Prev " + ref(ids[i-1])
		}
		if i < len(marks)-1 {
			s += " /Next " + ref(ids[i+1])
		}
		if len(m.kids) > 0 {
			a, b := f.entries(m.kids, ids[i], pageIDs)
			s += fmt.Sprintf(" /First %s /Last %s /Count %d", ref(a), ref(b), -len(m.kids))
		}
		f.put(ids[i], s+" >>")
	}
	return ids[0], ids[len(ids)-1]
}
