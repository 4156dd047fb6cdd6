package scan

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"strings"

	"golang.org/x/image/webp"
)

// A picture is a photo in levels of grey, as it is stored, and how it is turned to
// be shown.
type picture struct {
	grey grey
	turn turn
}

// A format is how pictures of a kind are read.
type format struct {
	name   string
	config func(io.Reader) (image.Config, error)
	decode func(io.Reader) (image.Image, error)
}

var (
	formatJPEG = format{"JPEG", jpeg.DecodeConfig, jpeg.Decode}
	formatPNG  = format{"PNG", png.DecodeConfig, png.Decode}
	formatWebP = format{"WebP", webp.DecodeConfig, webp.Decode}
)

// decode reads a photo. Its size is looked up in its header before anything is
// decoded.
func decode(data []byte, o Options) (picture, error) {
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		return formatJPEG.picture(data, o, turnOf(exifOfJPEG(data)))
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		return formatPNG.picture(data, o, turnOf(exifOfPNG(data)))
	case len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP":
		return formatWebP.picture(data, o, turnOf(exifOfWebP(data)))
	case len(data) > 12 && string(data[4:8]) == "ftyp":
		return modern(data, o)
	}
	return picture{}, fmt.Errorf("found %s; expected a photo: a file of JPEG, PNG, WebP or HEIC", kind(data))
}

// kind names what a file that is no photo may be.
func kind(data []byte) string {
	for _, k := range []struct{ start, name string }{
		{"", "an empty file"}, {"%PDF", "a PDF file"}, {"GIF8", "a GIF picture"}, {"BM", "a BMP picture"},
		{"II*\x00", "a TIFF picture or a camera's raw file"}, {"MM\x00*", "a TIFF picture or a camera's raw file"},
		{"PK\x03\x04", "a ZIP archive"}, {"<", "a page or a drawing of text"},
	} {
		if k.start == "" && len(data) == 0 || k.start != "" && bytes.HasPrefix(data, []byte(k.start)) {
			return k.name
		}
	}
	return "something else"
}

// picture decodes a photo of this format.
func (f format) picture(data []byte, o Options, t turn) (picture, error) {
	c, err := f.config(bytes.NewReader(data))
	if err != nil {
		return picture{}, f.broken(err)
	}
	limit := o.MaxPixels
	if limit <= 0 {
		limit = DefaultMaxPixels
	}
	if c.Width <= 0 || c.Height <= 0 || c.Width > limit/c.Height {
		return picture{}, fmt.Errorf("the photo has %d x %d pixels; expected at most %d million pixels: save it smaller, half as wide will do", c.Width, c.Height, limit/1_000_000)
	}
	img, err := f.decode(bytes.NewReader(data))
	if err != nil {
		return picture{}, f.broken(err)
	}
	return picture{greyOf(img), t}, nil
}

func (f format) broken(err error) error {
	if text := err.Error(); strings.Contains(text, "EOF") || strings.Contains(text, "short Huffman data") {
		return fmt.Errorf("the %s file is cut short; was it copied whole?", f.name)
	}
	return fmt.Errorf("the %s file is damaged or of an unusual kind (%v); save it again as JPEG", f.name, err)
}

// greyOf is a picture in levels of grey, by the weights of ITU-R BT.601, on white
// where it can be seen through.
func greyOf(img image.Image) grey {
	b := img.Bounds()
	g := newGrey(b.Dx(), b.Dy())
	switch img := img.(type) {
	case *image.YCbCr:
		for y := range g.h {
			copy(g.row(y), img.Y[img.YOffset(b.Min.X, y+b.Min.Y):])
		}
	case *image.Gray:
		for y := range g.h {
			copy(g.row(y), img.Pix[img.PixOffset(b.Min.X, y+b.Min.Y):])
		}
	case image.RGBA64Image:
		for y := range g.h {
			to := g.row(y)
			for x := range to {
				c := img.RGBA64At(x+b.Min.X, y+b.Min.Y)
				luma := (299*uint32(c.R) + 587*uint32(c.G) + 114*uint32(c.B)) / 1000
				to[x] = uint8((luma + 0xFFFF - uint32(c.A)) >> 8)
			}
		}
	default:
		for y := range g.h {
			to := g.row(y)
			for x := range to {
				cr, cg, cb, ca := img.At(x+b.Min.X, y+b.Min.Y).RGBA()
				to[x] = uint8(((299*cr+587*cg+114*cb)/1000 + 0xFFFF - ca) >> 8)
			}
		}
	}
	return g
}
