package scan

import (
	"bytes"
	"errors"
	"fmt"
	"image/jpeg"
)

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
	p, err := picture{}, errNoHEIC
	if formatHEIC.decode != nil {
		p, err = formatHEIC.picture(data, o, 0)
	}
	if err != nil {
		if p, ok := preview(data, o); ok {
			return p, nil
		}
	}
	return p, err
}

// errNoHEIC is what a program built without the decoder says.
var errNoHEIC = errors.New("the photo is HEIC, which this build of the program can't read (one by make can): set the phone's camera to its most compatible format, or share or export the photo as JPEG")

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
