package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"sort"
	"strconv"
	"unicode/utf16"

	"cutbinder/layout/page"
)

// The PDF library has no page labels, no language, no nested bookmarks and no
// say about print scaling. They are put in by an incremental update
// (ISO 32000-1, 7.5.6): objects appended to the finished file, the catalog
// among them in a new version, with a cross-reference section of their own.

// An update is objects to append to a file.
type update struct {
	base    []byte // the file so far
	next    int    // the next free object number
	body    bytes.Buffer
	offsets map[int]int
}

// complete appends catalog, page labels, bookmarks and document information.
func (x *writer) complete(base []byte, doc page.Document) ([]byte, error) {
	u := &update{base: base, next: x.gp.GetNextObjectID(), offsets: map[int]int{}}
	catalog := "<< /Type /Catalog /Pages 2 0 R\n"
	if doc.Lang != "" {
		catalog += "/Lang " + text(doc.Lang) + "\n"
	}
	if len(doc.Pages) > 0 {
		catalog += "/PageLabels " + pageLabels(doc.Pages) + "\n"
	}
	if first := u.outline(bookmarks(doc.Pages), x.pageIDs); first != "" {
		catalog += "/Outlines " + first + " /PageMode /UseOutlines\n"
	}
	// Sheets are to scale: the viewer is asked to print them at 100 %.
	catalog += "/ViewerPreferences << /DisplayDocTitle true /PrintScaling /None >> >>"
	u.put(1, catalog)
	info := u.add("<< /Title " + text(doc.Title) + " /Author " + text(doc.Author) +
		" /Subject " + text(doc.Subject) + " /Creator " + text("cutbinder") + " >>")
	return u.bytes(info)
}

// put writes an object of a given number.
func (u *update) put(id int, object string) {
	u.offsets[id] = len(u.base) + u.body.Len()
	fmt.Fprintf(&u.body, "%d 0 obj\n%s\nendobj\n", id, object)
}

// reserve takes the next free object number.
func (u *update) reserve() int {
	u.next++
	return u.next - 1
}

// add writes an object of the next number and returns its reference.
func (u *update) add(object string) string {
	id := u.reserve()
	u.put(id, object)
	return ref(id)
}

// ref is a reference to an object.
func ref(id int) string { return strconv.Itoa(id) + " 0 R" }

// bytes is the file with the update: its objects, their places, and a trailer
// that leads back to the first cross-reference section. The file's ID is made
// from its content, so that it is the same each time.
func (u *update) bytes(info string) ([]byte, error) {
	prev, err := startXref(u.base)
	if err != nil {
		return nil, err
	}
	xref := len(u.base) + u.body.Len()
	ids := make([]int, 0, len(u.offsets))
	for id := range u.offsets {
		ids = append(ids, id)
	}
	sort.Ints(ids)
	u.body.WriteString("xref\n")
	for i := 0; i < len(ids); {
		j := i + 1
		for j < len(ids) && ids[j] == ids[j-1]+1 {
			j++
		}
		fmt.Fprintf(&u.body, "%d %d\n", ids[i], j-i)
		for _, id := range ids[i:j] {
			fmt.Fprintf(&u.body, "%010d 00000 n \n", u.offsets[id])
		}
		i = j
	}
	whole := append(u.base[:len(u.base):len(u.base)], u.body.Bytes()...)
	sum := sha256.Sum256(whole)
	fmt.Fprintf(&u.body, "trailer\n<< /Size %d /Root 1 0 R /Info %s /Prev %d /ID [<%x> <%x>] >>\nstartxref\n%d\n%%%%EOF\n",
		u.next, info, prev, sum[:16], sum[:16], xref)
	return append(u.base[:len(u.base):len(u.base)], u.body.Bytes()...), nil
}

// startXref reads where a file's last cross-reference section starts.
func startXref(file []byte) (int, error) {
	key := []byte("startxref\n")
	i := bytes.LastIndex(file, key)
	if i < 0 {
		return 0, fmt.Errorf("the PDF library wrote a file without cross-reference table")
	}
	line, _, _ := bytes.Cut(file[i+len(key):], []byte("\n"))
	return strconv.Atoi(string(line))
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
