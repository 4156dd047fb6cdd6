package bag

import (
	"fmt"
	"image/color"
	"runtime"
	"slices"

	"cutbinder/layout/cores"

	"github.com/boombuler/barcode/qr"
)

// Modules is a square code (QR, ISO/IEC 18004) as plain data.
type Modules struct {
	Text string // what it says
	Size int    // modules a side, quiet zone not counted
	Dark []bool // Size*Size, row by row
}

// Quiet is the width in modules of the empty zone that a square code needs on
// every side.
const Quiet = 4

// MinModules is the side of the smallest square code there is.
const MinModules = 21

// dataBits is how many bits the versions 1 to 10 hold at the levels M and L, from
// the table of ISO/IEC 18004; version v has 17 + 4v modules a side. A code that
// needs more is too fine for a label.
var dataBits = map[qr.ErrorCorrectionLevel][10]int{
	qr.M: {128, 224, 352, 512, 688, 864, 992, 1232, 1456, 1728},
	qr.L: {152, 272, 440, 640, 864, 1088, 1248, 1552, 1856, 2192},
}

// modules is how many modules a side a text needs at a level, or 0 where version
// 10 is too small. Mode and count take 4 + 9 bits in alphanumeric mode, 11 a pair
// of characters and 6 for one over; 4 + 8 in byte mode, 8 a byte; version 10
// counts in 2 and 8 bits more.
func modules(text string, level qr.ErrorCorrectionLevel) int {
	n := len(text)
	bits, longer := 4+9+n/2*11+n%2*6, 2
	if !isAlphanumeric(text) {
		bits, longer = 4+8+8*n, 8
	}
	for i, room := range dataBits[level] {
		if i == 9 {
			bits += longer
		}
		if bits <= room {
			return 17 + 4*(i+1)
		}
	}
	return 0
}

// Says is what a bag's square code says where it may have so many modules a side:
// as much as fits of "K7Q-07-F3X BAG 7 BLOCK A LANTERN 48 OF 3 1/2 X 3 1/2", names
// shortened first, then sizes: "K7Q-07-F3X BAG 7 BLOCK A 48 SQ 3 1/2". Modules are
// as few as "K7Q-07-F3X BAG 7 BLOCK A 48 PCS" needs: the fewer they are, the larger
// and the sooner read; all is printed beside the code. It is "" where not even
// the code and the number fit, which take 21 modules.
func (s *Sorted) Says(b *Bag, maxModules int) string {
	text, _ := s.fit(b, maxModules)
	return text
}

// MaySay says whether a bag's square code may say a text, were there more room for it
// or less.
func (s *Sorted) MaySay(b *Bag, text string) bool {
	at := s.texts(b)
	return slices.ContainsFunc(brevities, func(br brevity) bool { return at(br) == text })
}

// fit finds the fullest text that fits, at level M, which mends 15 % of a code.
// Where a label has no room for what is essential at that level, L, which mends 7 %,
// is tried too, and then less is said.
func (s *Sorted) fit(b *Bag, maxModules int) (string, qr.ErrorCorrectionLevel) {
	at := s.texts(b)
	if n := modules(at(essential(b)), qr.M); n > 0 && n <= maxModules {
		for _, br := range brevities {
			if text := at(br); fits(text, qr.M, n) {
				return text, qr.M
			}
		}
	}
	for _, br := range brevities {
		text := at(br)
		for _, level := range []qr.ErrorCorrectionLevel{qr.M, qr.L} {
			if fits(text, level, maxModules) {
				return text, level
			}
		}
	}
	return "", qr.L
}

// fits says that a text needs no more than so many modules at a level.
func fits(text string, level qr.ErrorCorrectionLevel, most int) bool {
	n := modules(text, level)
	return n > 0 && n <= most
}

// Square makes the square code of a bag in at most maxModules modules a side.
func (s *Sorted) Square(b *Bag, maxModules int) (Modules, error) {
	text, level := s.fit(b, maxModules)
	if text == "" {
		return Modules{}, fmt.Errorf("bag %d: its square code needs %d modules a side, there is room for %d", b.Number, MinModules, maxModules)
	}
	mode := qr.AlphaNumeric
	if !isAlphanumeric(text) {
		mode = qr.Unicode
	}
	code, err := qr.Encode(text, level, mode)
	if err != nil {
		return Modules{}, fmt.Errorf("bag %d: %w", b.Number, err)
	}
	size := code.Bounds().Dx()
	m := Modules{Text: text, Size: size, Dark: make([]bool, size*size)}
	for i := range m.Dark {
		grey, _ := code.At(i%size, i/size).(color.Gray16)
		m.Dark[i] = grey == color.Black
	}
	return m, nil
}

// Squares makes the square codes of many bags, one for each number in order. The
// work is shared by the processors; the result does not depend on how.
func (s *Sorted) Squares(numbers []int, maxModules int) ([]Modules, error) {
	out := make([]Modules, len(numbers))
	errs := make([]error, len(numbers))
	// The encoder hands each module from one goroutine to another: a processor that
	// waits for one code has others to go on with.
	cores.Each(len(numbers), 4*runtime.GOMAXPROCS(0), func(i int) {
		if b := s.Bag(numbers[i]); b != nil {
			out[i], errs[i] = s.Square(b, maxModules)
		} else {
			errs[i] = fmt.Errorf("there is no bag %d", numbers[i])
		}
	})
	for _, err := range errs {
		if err != nil {
			return nil, err
		}
	}
	return out, nil
}
