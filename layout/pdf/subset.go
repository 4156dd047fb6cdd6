package pdf

import (
	"bytes"
	"encoding/binary"
	"fmt"
)

// The PDF library embeds the glyphs in use and the parts they are made of, but
// not the parts of those parts: an ế made of ê and an accent would lose its e.
// So the font files are made here, and the library is given faces without outlines.
// Glyphs keep their numbers, for the pages name them by number; tables end at the
// last glyph in use.

// outlines are the tables a TrueType face needs to be drawn from
// (ISO 32000-1, 9.9), in the order of their tags.
var outlines = []string{"cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "prep"}

// An sfnt is the tables of a TrueType file by their tags.
type sfnt map[string][]byte

// readSfnt finds the tables of a file.
func readSfnt(ttf []byte) (sfnt, error) {
	s := sfnt{}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		entry := ttf[12+16*i:]
		at, n := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		s[string(entry[:4])] = ttf[at : at+n]
	}
	if len(s["head"]) < 54 || len(s["maxp"]) < 6 || len(s["hhea"]) < 36 {
		return nil, fmt.Errorf("its head, hhea or maxp table is too short")
	}
	return s, nil
}

// offsets is where each glyph starts in the glyf table, and where the last one
// ends (OpenType specification, "loca").
func (s sfnt) offsets() ([]int, error) {
	n := int(binary.BigEndian.Uint16(s["maxp"][4:])) + 1
	long := binary.BigEndian.Uint16(s["head"][50:]) != 0
	out := make([]int, n)
	for i := range out {
		switch {
		case long && 4*i+4 <= len(s["loca"]):
			out[i] = int(binary.BigEndian.Uint32(s["loca"][4*i:]))
		case !long && 2*i+2 <= len(s["loca"]):
			out[i] = 2 * int(binary.BigEndian.Uint16(s["loca"][2*i:]))
		default:
			return nil, fmt.Errorf("its loca table is too short")
		}
		if out[i] > len(s["glyf"]) || i > 0 && out[i] < out[i-1] {
			return nil, fmt.Errorf("its loca table leads out of the glyphs")
		}
	}
	return out, nil
}

// The flags of a part of a composite glyph (OpenType specification, "glyf").
const (
	wordArguments = 1 << 0
	oneScale      = 1 << 3
	moreParts     = 1 << 5
	twoScales     = 1 << 6
	fourScales    = 1 << 7
)

// parts are the glyphs a composite glyph is made of, none for a simple one.
func parts(glyph []byte) []int {
	if len(glyph) < 10 || int16(binary.BigEndian.Uint16(glyph)) >= 0 {
		return nil
	}
	var out []int
	for at := 10; at+4 <= len(glyph); {
		flags := binary.BigEndian.Uint16(glyph[at:])
		out = append(out, int(binary.BigEndian.Uint16(glyph[at+2:])))
		if flags&moreParts == 0 {
			break
		}
		at += 6
		if flags&wordArguments != 0 {
			at += 2
		}
		switch {
		case flags&oneScale != 0:
			at += 2
		case flags&twoScales != 0:
			at += 4
		case flags&fourScales != 0:
			at += 8
		}
	}
	return out
}

// subset is a TrueType file with the outlines of the glyphs in use, of the parts
// they are made of, and of glyph 0, which stands for missing ones.
func subset(ttf []byte, used []int) ([]byte, error) {
	s, err := readSfnt(ttf)
	if err != nil {
		return nil, err
	}
	at, err := s.offsets()
	if err != nil {
		return nil, err
	}
	keep := make([]bool, len(at)-1)
	last := 0
	for open := append([]int{0}, used...); len(open) > 0; {
		g := open[len(open)-1]
		open = open[:len(open)-1]
		if g < len(keep) && !keep[g] {
			keep[g], last = true, max(last, g)
			open = append(open, parts(s["glyf"][at[g]:at[g+1]])...)
		}
	}
	out := sfnt{"cvt ": s["cvt "], "fpgm": s["fpgm"], "prep": s["prep"]}
	var glyf []byte
	loca := make([]byte, 0, 4*(last+2))
	for g := range last + 1 {
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		if keep[g] {
			glyf = append(glyf, s["glyf"][at[g]:at[g+1]]...)
			glyf = append(glyf, make([]byte, -len(glyf)&3)...)
		}
	}
	out["glyf"], out["loca"] = glyf, binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	out.shorten(s, last+1)
	return out.file(outlines), nil
}

// hollow is a TrueType file without outlines and hints, with what the library needs
// to find, measure and name glyphs: packing the rest would be work for nothing.
func hollow(ttf []byte) ([]byte, error) {
	s, err := readSfnt(ttf)
	if err != nil {
		return nil, err
	}
	glyphs := int(binary.BigEndian.Uint16(s["maxp"][4:]))
	s["head"] = bytes.Clone(s["head"])
	binary.BigEndian.PutUint16(s["head"][50:], 0) // offsets are short
	s["glyf"], s["loca"] = nil, make([]byte, 2*(glyphs+1))
	return s.file([]string{"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"}), nil
}

// shorten takes over the tables that count glyphs, cut to n glyphs, and says in
// the head that offsets are long.
func (s sfnt) shorten(from sfnt, n int) {
	for _, tag := range []string{"head", "hhea", "maxp"} {
		s[tag] = bytes.Clone(from[tag])
	}
	binary.BigEndian.PutUint16(s["head"][50:], 1)
	binary.BigEndian.PutUint16(s["maxp"][4:], uint16(n))
	full := int(binary.BigEndian.Uint16(from["hhea"][34:])) // glyphs with an advance of their own
	size := 4*full + 2*max(n-full, 0)
	if n < full {
		size = 4 * n
		binary.BigEndian.PutUint16(s["hhea"][34:], uint16(n))
	}
	s["hmtx"] = from["hmtx"][:min(size, len(from["hmtx"]))]
}

// file puts the tables of those tags together, those that are there
// (OpenType specification, "Table Directory").
func (s sfnt) file(wanted []string) []byte {
	var tags []string
	for _, tag := range wanted {
		if len(s[tag]) > 0 || tag == "glyf" {
			tags = append(tags, tag)
		}
	}
	binary.BigEndian.PutUint32(s["head"][8:], 0) // the sum of the whole, filled in last
	n, steps := len(tags), 0
	for 2<<steps <= n {
		steps++
	}
	head := []byte{0, 1, 0, 0}
	for _, v := range []int{n, 16 << steps, steps, 16 * (n - 1<<steps)} {
		head = binary.BigEndian.AppendUint16(head, uint16(v))
	}
	var body []byte
	headAt := 0
	for _, tag := range tags {
		at := 12 + 16*n + len(body)
		if tag == "head" {
			headAt = at
		}
		head = append(head, tag...)
		for _, v := range []uint32{sum(s[tag]), uint32(at), uint32(len(s[tag]))} {
			head = binary.BigEndian.AppendUint32(head, v)
		}
		body = append(body, s[tag]...)
		body = append(body, make([]byte, -len(body)&3)...)
	}
	out := append(head, body...)
	binary.BigEndian.PutUint32(out[headAt+8:], 0xB1B0AFBA-sum(out))
	return out
}

// sum is the checksum of a table: its 32-bit words added up.
func sum(table []byte) uint32 {
	var total uint32
	for ; len(table) >= 4; table = table[4:] {
		total += binary.BigEndian.Uint32(table)
	}
	var rest [4]byte
	copy(rest[:], table)
	return total + binary.BigEndian.Uint32(rest[:])
}
