package scan

import (
	"bytes"
	"encoding/binary"
	"image"
)

// A turn is how a stored picture is turned to be shown, as the standard Exif
// numbers it from 1 to 8: what is stored as the first row and column is shown as
// the top and left (1), top and right (2), bottom and right (3), bottom and left
// (4), left and top (5), right and top (6), right and bottom (7), left and bottom
// (8). 0 is not turned.
type turn int

// point is where a pixel of a stored picture of w by h pixels is shown.
func (t turn) point(p image.Point, w, h int) image.Point {
	right, bottom := w-1-p.X, h-1-p.Y
	switch t {
	case 2:
		return image.Pt(right, p.Y)
	case 3:
		return image.Pt(right, bottom)
	case 4:
		return image.Pt(p.X, bottom)
	case 5:
		return image.Pt(p.Y, p.X)
	case 6:
		return image.Pt(bottom, p.X)
	case 7:
		return image.Pt(bottom, right)
	case 8:
		return image.Pt(p.Y, right)
	}
	return p
}

// exifOfJPEG is the Exif data of a JPEG file: that of the first segment APP1 that
// begins so.
func exifOfJPEG(data []byte) []byte {
	for at := 2; at+4 <= len(data) && data[at] == 0xFF; {
		marker, n := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if marker == 0xDA || n < 2 || at+2+n > len(data) { // the picture begins
			return nil
		}
		if body := data[at+4 : at+2+n]; marker == 0xE1 && bytes.HasPrefix(body, []byte("Exif\x00\x00")) {
			return body[6:]
		}
		at += 2 + n
	}
	return nil
}

// exifOfPNG is the Exif data of a PNG file: its chunk eXIf.
func exifOfPNG(data []byte) []byte {
	for at := 8; at+12 <= len(data); {
		n := int(binary.BigEndian.Uint32(data[at:]))
		if n > len(data)-at-12 {
			return nil
		}
		if string(data[at+4:at+8]) == "eXIf" {
			return data[at+8 : at+8+n]
		}
		at += 12 + n
	}
	return nil
}

// exifOfWebP is the Exif data of a WebP file: its chunk EXIF, which some writers
// begin as JPEG does.
func exifOfWebP(data []byte) []byte {
	for at := 12; at+8 <= len(data); {
		n := int(binary.LittleEndian.Uint32(data[at+4:]))
		if n > len(data)-at-8 {
			return nil
		}
		if string(data[at:at+4]) == "EXIF" {
			return bytes.TrimPrefix(data[at+8:at+8+n], []byte("Exif\x00\x00"))
		}
		at += 8 + n + n%2
	}
	return nil
}

// turnOf is the orientation that Exif data states, the tag 0x0112 of its first
// directory, or 0.
func turnOf(exif []byte) turn {
	if len(exif) < 8 {
		return 0
	}
	var order binary.ByteOrder = binary.LittleEndian
	if exif[0] == 'M' {
		order = binary.BigEndian
	}
	at := int64(order.Uint32(exif[4:]))
	if at+2 > int64(len(exif)) {
		return 0
	}
	entries := exif[at+2:]
	for range order.Uint16(exif[at:]) {
		if len(entries) < 12 {
			return 0
		}
		if order.Uint16(entries) == 0x0112 {
			if v := turn(order.Uint16(entries[8:])); v <= 8 {
				return v
			}
			return 0
		}
		entries = entries[12:]
	}
	return 0
}
