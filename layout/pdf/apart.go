package pdf

import (
	"bytes"
	"fmt"
	"runtime"
	"strconv"
	"sync"

	"cutbinder/fonts"
)

// An apart takes what the PDF library writes apart into its objects as it comes, and
// has the streams packed on other processors while the library writes on.
type apart struct {
	raw      []byte // of the object being written
	objects  [][]byte
	codes    []square               // those whose places are still to come
	faces    map[string]*fonts.Face // those whose files are still to be made, by their names
	embedded map[string]embedded
	err      error

	made    []*made
	jobs    chan func(*packer)
	workers sync.WaitGroup
	ended   sync.Once
}

// A made is the body of an object that is made while the library writes, and its index.
type made struct {
	object int
	body   []byte
	err    error
}

// takeApart begins to take a file apart, packed at a level: what packs it is made while
// pages are drawn.
func takeApart(level int) *apart {
	a := &apart{faces: map[string]*fonts.Face{}, embedded: map[string]embedded{}, jobs: make(chan func(*packer), 64)}
	for range min(runtime.GOMAXPROCS(0), 4) {
		a.workers.Go(func() {
			p := newPacker(level)
			for job := range a.jobs {
				job(p)
			}
		})
	}
	return a
}

// expect says what is to come: the codes that pages keep places for, and the faces they
// are set in.
func (a *apart) expect(codes []square, family map[*fonts.Face]string) {
	a.codes = codes
	for face, name := range family {
		a.faces[name] = face
	}
}

// later has the body of an object made.
func (a *apart) later(object int, make func(*packer) ([]byte, error)) {
	m := &made{object: object}
	a.made = append(a.made, m)
	a.jobs <- func(p *packer) {
		defer caught(&m.err)
		m.body, m.err = make(p)
	}
}

// objectEnd is what the library writes after each object, in a call of its own.
const objectEnd = "endobj\n\n"

// Write takes a part of the file.
func (a *apart) Write(b []byte) (int, error) {
	if string(b) == objectEnd {
		a.object()
	} else {
		a.raw = append(a.raw, b...)
	}
	return len(b), a.err
}

// object takes the object that has come to its end. The file's head stands before
// the first.
func (a *apart) object() {
	head := strconv.Itoa(len(a.objects)+1) + " 0 obj\n"
	if len(a.objects) == 0 {
		a.raw = a.raw[max(0, bytes.Index(a.raw, []byte(head))):]
	}
	body, ok := bytes.CutPrefix(a.raw, []byte(head))
	if !ok && a.err == nil {
		a.err = fmt.Errorf("the PDF library wrote object %d in a form not known here", len(a.objects)+1)
	}
	a.raw = nil
	if bytes.HasPrefix(body, []byte("<<\n/Length ")) {
		a.pack(body)
	} else {
		a.face(body)
	}
	a.objects = append(a.objects, body)
}

// pack has a stream packed. Pages were drawn in the order of their objects, and so
// codes belong to placeholders in their order.
func (a *apart) pack(body []byte) {
	n := 0
	if len(a.codes) > 0 {
		n = bytes.Count(body, placeholder)
	}
	if n > len(a.codes) {
		if a.err == nil {
			a.err = fmt.Errorf("the PDF library wrote a place for a code that there is none for, in object %d", len(a.objects)+1)
		}
		return
	}
	codes := a.codes[:n]
	a.codes = a.codes[n:]
	a.later(len(a.objects), func(p *packer) ([]byte, error) { return p.stream(body, codes), nil })
}

// end ends what makes bodies, when they are all made.
func (a *apart) end() {
	a.ended.Do(func() { close(a.jobs) })
	a.workers.Wait()
}

// file waits for what is made and gives all objects.
func (a *apart) file() (*file, error) {
	a.end()
	switch {
	case a.err != nil:
		return nil, a.err
	case len(a.codes) > 0:
		return nil, fmt.Errorf("the PDF library left out the places of %d codes", len(a.codes))
	case !bytes.HasPrefix(a.raw, []byte("xref\n0 "+strconv.Itoa(len(a.objects)+1)+"\n")):
		return nil, fmt.Errorf("the PDF library wrote a file without cross-reference table")
	}
	for name := range a.faces {
		return nil, fmt.Errorf("the PDF library wrote typeface %s in a form not known here", name)
	}
	for _, m := range a.made {
		if m.err != nil {
			return nil, m.err
		}
		a.objects[m.object] = m.body
	}
	return &file{objects: a.objects}, nil
}
