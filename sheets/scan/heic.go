package scan

import (
	"bytes"
	"errors"
	"fmt"
	"image/jpeg"
	"io"
	"sync"

	"github.com/gen2brain/heic"
)

// formatHEIC is the format that phones write. Its decoder turns the picture as it
// is to be shown.
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

// modern reads a photo in one of the newer formats of phones: HEIC, or of others
// the JPEG picture that some phones keep inside.
func modern(data []byte, o Options) (picture, error) {
	switch string(data[8:12]) {
	case "qt  ", "isom", "mp41", "mp42", "M4V ":
		return picture{}, fmt.Errorf("found a film; expected a photo: a file of JPEG, PNG, WebP or HEIC")
	case "avif", "avis":
		if p, ok := preview(data, o); ok {
			return p, nil
		}
		return picture{}, fmt.Errorf("the photo is AVIF, which can't be read here: set the phone's camera to its most compatible format, or share or export the photo as JPEG")
	}
	p, err := formatHEIC.picture(data, o, 0)
	if err != nil {
		if p, ok := preview(data, o); ok {
			return p, nil
		}
	}
	return p, err
}

// usefulPreview is how many pixels the shorter side of a preview needs for a label
// to be read off it.
const usefulPreview = 600

// preview reads the largest JPEG picture that lies inside a file, where there is
// one of useful size.
func preview(data []byte, o Options) (picture, bool) {
	best, pixels := -1, 0
	rest, at := data, 0
	for range 64 {
		i := bytes.Index(rest, []byte("\xff\xd8\xff"))
		if i < 0 {
			break
		}
		at += i
		if c, err := jpeg.DecodeConfig(bytes.NewReader(data[at:])); err == nil && min(c.Width, c.Height) >= usefulPreview && c.Width*c.Height > pixels {
			best, pixels = at, c.Width*c.Height
		}
		at += 3
		rest = data[at:]
	}
	if best < 0 {
		return picture{}, false
	}
	p, err := formatJPEG.picture(data[best:], o, turnOf(exifOfJPEG(data[best:])))
	return p, err == nil
}
