package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strconv"
)

// The PDF library has no page labels, no language, no nested bookmarks and no
// say about print scaling, and it packs streams slowly. So what it writes is
// taken apart into its objects, completed, packed, and put together again.

// A file is the objects of a PDF file: objects[i] is the body of the object
// numbered i+1, what stands between "obj" and "endobj". Object 1 is the
// catalog.
type file struct{ objects [][]byte }

// ref is a reference to an object.
func ref(id int) string { return strconv.Itoa(id) + " 0 R" }

// reserve takes the next free object number.
func (f *file) reserve() int {
	f.objects = append(f.objects, nil)
	return len(f.objects)
}

// put writes the body of an object.
func (f *file) put(id int, body string) { f.objects[id-1] = []byte(body + "\n") }

// add writes an object of the next number and returns its reference.
func (f *file) add(body string) string {
	id := f.reserve()
	f.put(id, body)
	return ref(id)
}

// find is the number of the first object that starts so, 0 if none does.
func (f *file) find(start string) int {
	for i := range f.objects {
		if bytes.HasPrefix(f.objects[i], []byte(start)) {
			return i + 1
		}
	}
	return 0
}

// bytes puts the file together. Its ID is made from its content, so that it is
// the same each time.
func (f *file) bytes(info string) []byte {
	var b bytes.Buffer
	b.WriteString("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n") // four bytes over 127 say that the file is binary
	offsets := make([]int, len(f.objects))
	for i, body := range f.objects {
		offsets[i] = b.Len()
		fmt.Fprintf(&b, "%d 0 obj\n", i+1)
		b.Write(body)
		b.WriteString("endobj\n")
	}
	xref := b.Len()
	sum := sha256.Sum256(b.Bytes())
	fmt.Fprintf(&b, "xref\n0 %d\n0000000000 65535 f \n", len(f.objects)+1)
	for _, at := range offsets {
		fmt.Fprintf(&b, "%010d 00000 n \n", at)
	}
	fmt.Fprintf(&b, "trailer\n<< /Size %d /Root 1 0 R /Info %s /ID [<%x> <%x>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(f.objects)+1, info, sum[:16], sum[:16], xref)
	return b.Bytes()
}
