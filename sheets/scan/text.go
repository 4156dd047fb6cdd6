package scan

import (
	"math"
	"slices"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode/decoder"
)

// hints say that bytes are UTF-8, as labels write them.
var hints = map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_CHARACTER_SET: "UTF-8"}

// doubts are the parts of a code's modules, the most doubtful ones, that are taken
// for unknown in turn (Forney 1966, generalized minimum distance): half of what a
// code can mend goes to errors nobody knows of, and all of it to known gaps.
var doubts = [...]float64{0, 0.01, 0.02, 0.035, 0.05, 0.075, 0.1, 0.14, 0.18}

// spare is how many checks stay over where doubtful bytes are worked out rather
// than read, so that chance passes for a code once in 2^24 times at most.
const spare = 3

// text reads a grid's text, mending what the code's level allows; ok is false where
// more is wrong.
func (g *grid) text() (text string, ok bool) {
	defer func() {
		if recover() != nil { // the decoder's own fault, on a grid that is no code
			text, ok = "", false
		}
	}()
	c, ok := g.codewords(nil)
	if !ok {
		return "", false
	}
	sure := make([]float64, 0, len(g.soft))
	for _, v := range g.soft {
		sure = append(sure, math.Abs(v))
	}
	slices.Sort(sure)
	tried := -1
	for _, part := range doubts {
		limit := sure[int(part*float64(len(sure)))]
		bytes, n := c.bytes, 0
		var gaps []byte
		if part > 0 {
			gaps, n = g.gaps(c, limit)
		}
		if n == tried {
			continue
		}
		tried = n
		if text, ok := c.mended(bytes, gaps); ok {
			return text, true
		}
	}
	return "", false
}

// A coded is the bytes of a code as they stand in its modules.
type coded struct {
	bytes   []byte
	version *decoder.Version
	level   decoder.ErrorCorrectionLevel
}

// codewords reads a grid's bytes; those modules that are in flip are read as the
// opposite.
func (g *grid) codewords(flip func(i int) bool) (c coded, ok bool) {
	bits, err := gozxing.NewSquareBitMatrix(g.n)
	if err != nil {
		return c, false
	}
	for i, v := range g.soft {
		if (v < 0) != (flip != nil && flip(i)) {
			bits.Set(i%g.n, i/g.n)
		}
	}
	parser, err := decoder.NewBitMatrixParser(bits)
	if err != nil {
		return c, false
	}
	version, err := parser.ReadVersion()
	if err != nil {
		return c, false
	}
	format, err := parser.ReadFormatInformation()
	if err != nil {
		return c, false
	}
	bytes, err := parser.ReadCodewords()
	return coded{bytes, version, format.GetErrorCorrectionLevel()}, err == nil
}

// gaps marks the bytes that have a module in them less sure than a limit: those
// that change when these modules do.
func (g *grid) gaps(c coded, limit float64) (marked []byte, n int) {
	other, ok := g.codewords(func(i int) bool { return math.Abs(g.soft[i]) < limit && !g.fixed(i%g.n, i/g.n) })
	if !ok {
		return nil, 0
	}
	marked = make([]byte, len(c.bytes))
	for i, b := range c.bytes {
		if other.bytes[i] != b {
			marked[i] = 1
			n++
		}
	}
	return marked, n
}

// fixed says whether a module belongs to what is read before the bytes: the format
// beside the finders and, from version 7 on, the version.
func (g *grid) fixed(x, y int) bool {
	far := g.n - 9
	if y == 8 && (x <= 8 || x > far) || x == 8 && (y <= 8 || y > far) {
		return true
	}
	return g.n >= 45 && (x < 6 && y >= g.n-11 || y < 6 && x >= g.n-11)
}

// mended is the text of bytes after each block has been put right; gaps marks the
// doubtful ones, or is nil.
func (c coded) mended(bytes, gaps []byte) (string, bool) {
	blocks, err := decoder.DataBlock_GetDataBlocks(bytes, c.version, c.level)
	if err != nil {
		return "", false
	}
	var doubtful []*decoder.DataBlock
	least := 0
	if gaps != nil {
		if doubtful, err = decoder.DataBlock_GetDataBlocks(gaps, c.version, c.level); err != nil {
			return "", false
		}
		least = spare
	}
	var data []byte
	for i, b := range blocks {
		words, n := slices.Clone(b.GetCodewords()), b.GetNumDataCodewords()
		var at []int
		if gaps != nil {
			for k, gap := range doubtful[i].GetCodewords() {
				if gap != 0 {
					at = append(at, k)
				}
			}
		}
		if !mend(words, len(words)-n, at, least) {
			return "", false
		}
		data = append(data, words[:n]...)
	}
	result, err := decoder.DecodedBitStreamParser_Decode(data, c.version, c.level, hints)
	if err != nil {
		return "", false
	}
	return result.GetText(), true
}
