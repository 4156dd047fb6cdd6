package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
)

// How hard streams are packed: one below the usual level packs the sample documents
// as small, in five sixths of the time; labels by the thousand are packed in half of
// that, a fifth larger.
const (
	usualLevel = 5
	quickLevel = 2
	manyCodes  = 500
)

// levelFor is how hard a document of so many codes is packed.
func levelFor(codes int) int {
	if codes > manyCodes {
		return quickLevel
	}
	return usualLevel
}

// A packer packs one stream after another. Its compressor and buffers are kept,
// for making a compressor costs more than a page.
type packer struct {
	z      *zlib.Writer
	packed bytes.Buffer
	draw   []byte // a code's operators
}

// newPacker makes a packer with its tables. Clearing them once, as each stream does,
// touches their memory in the cheapest way: to read it first costs two page faults for
// one.
func newPacker(level int) *packer {
	p := new(packer)
	p.z, _ = zlib.NewWriterLevel(&p.packed, level) // the level is a known one
	_, _ = p.z.Write(nil)                          // a buffer takes everything
	p.z.Reset(&p.packed)
	return p
}

// stream compresses the data of a stream object whose dictionary holds its lengths,
// a line each, with the codes in their places.
func (p *packer) stream(body []byte, codes []square) []byte {
	dict, data, ok := bytes.Cut(body, []byte("/Length "))
	_, data, more := bytes.Cut(data, []byte("\n>>\nstream\n"))
	data, whole := bytes.CutSuffix(data, []byte("endstream\n"))
	if !ok || !more || !whole {
		return body
	}
	p.packed.Reset()
	p.z.Reset(&p.packed)
	for _, c := range codes {
		before, after, _ := bytes.Cut(data, placeholder)
		p.draw = c.operators(p.draw[:0])
		_, _ = p.z.Write(before)
		_, _ = p.z.Write(p.draw)
		data = after
	}
	_, _ = p.z.Write(data)
	_ = p.z.Close()
	out := fmt.Appendf(make([]byte, 0, len(dict)+p.packed.Len()+64), "%s/Filter /FlateDecode /Length %d >>\nstream\n", dict, p.packed.Len())
	out = append(out, p.packed.Bytes()...)
	return append(out, "\nendstream\n"...)
}
