//go:build nodynamic || linux

package scan

import (
	"errors"
	"io"
	"sync"

	"github.com/gen2brain/heic"
)

// formatHEIC is the format that phones write. Its decoder turns the picture as it
// is to be shown. Without the tag nodynamic it looks for a library of the system
// when the program starts, on some systems in places where anyone may have put
// one: there it is built in with the tag alone.
var formatHEIC = format{"HEIC", oneAtATime(heic.DecodeConfig), oneAtATime(heic.Decode)}

// decoding keeps the decoder, which isn't for use by several at once, to one.
var decoding sync.Mutex

// oneAtATime guards a use of the decoder, and makes an error of its breaking on
// damaged data.
func oneAtATime[T any](decode func(io.Reader) (T, error)) func(io.Reader) (T, error) {
	return func(r io.Reader) (value T, err error) {
		decoding.Lock()
		defer decoding.Unlock()
		defer func() {
			if broken := recover(); broken != nil {
				err = errors.New("the decoder gave up")
			}
		}()
		return decode(r)
	}
}
