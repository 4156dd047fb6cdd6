package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"runtime"
	"sync"
)

// pack compresses the streams that are not compressed yet: pages, character maps
// and faces. Each is packed by itself, so several are at a time; the result does
// not depend on which is done first.
func (f *file) pack() {
	next := make(chan int)
	var done sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), 4) {
		done.Go(func() {
			var z *zlib.Writer
			for i := range next {
				f.objects[i], z = packStream(f.objects[i], z)
			}
		})
	}
	for i := range f.objects {
		if bytes.HasPrefix(f.objects[i], []byte("<<\n/Length")) {
			next <- i
		}
	}
	close(next)
	done.Wait()
}

// level is how hard streams are packed: one below the usual level packs the
// sample documents as small, in five sixths of the time.
const level = 5

// packStream compresses the data of a stream object whose dictionary holds its
// lengths, a line each. A compressor is taken along from one stream to the next,
// for making one costs more than a page.
func packStream(body []byte, z *zlib.Writer) ([]byte, *zlib.Writer) {
	dict, data, ok := bytes.Cut(body, []byte("/Length "))
	_, data, more := bytes.Cut(data, []byte("\n>>\nstream\n"))
	data, whole := bytes.CutSuffix(data, []byte("endstream\n"))
	if !ok || !more || !whole {
		return body, z
	}
	var packed bytes.Buffer
	if z == nil {
		z, _ = zlib.NewWriterLevel(&packed, level) // the level is a known one
	} else {
		z.Reset(&packed)
	}
	_, _ = z.Write(data) // a buffer takes everything
	_ = z.Close()
	var out bytes.Buffer
	fmt.Fprintf(&out, "%s/Filter /FlateDecode /Length %d >>\nstream\n", dict, packed.Len())
	out.Write(packed.Bytes())
	out.WriteString("\nendstream\n")
	return out.Bytes(), z
}
