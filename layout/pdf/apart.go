package pdf

import (
	"bytes"
	"fmt"
	"runtime"
	"strconv"
	"sync"
)

// An apart takes what the PDF library writes apart into its objects as it comes, and
// has the streams packed on other processors while the library writes on.
type apart struct {
	raw     []byte // of the object being written
	objects [][]byte
	codes   []square // those whose places are still to come
	err     error

	streams []*stream
	jobs    chan *stream
	workers sync.WaitGroup
	ended   sync.Once
}

// A stream is one that is to be packed: the index of its object, its body, which
// gives way to the packed one, and the codes whose places it keeps.
type stream struct {
	object int
	body   []byte
	codes  []square
}

// takeApart begins to take a file apart whose pages keep the places of codes.
func takeApart(codes []square) *apart {
	a := &apart{codes: codes, jobs: make(chan *stream, 64)}
	for range min(runtime.GOMAXPROCS(0), 4) {
		a.workers.Go(func() {
			var p packer
			for s := range a.jobs {
				s.body = p.stream(s.body, s.codes)
			}
		})
	}
	return a
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
	s := &stream{len(a.objects), body, a.codes[:n]}
	a.codes = a.codes[n:]
	a.streams = append(a.streams, s)
	a.jobs <- s
}

// end ends what works on the streams, when they are all packed.
func (a *apart) end() {
	a.ended.Do(func() { close(a.jobs) })
	a.workers.Wait()
}

// file waits for the streams and gives all objects.
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
	for _, s := range a.streams {
		a.objects[s.object] = s.body
	}
	return &file{objects: a.objects}, nil
}
