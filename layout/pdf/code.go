package pdf

import (
	"strconv"

	"cutbinder/layout/page"
)

// A square code is hundreds of rectangles, and the PDF library takes a call, an
// object and a line of forty bytes for each. So where a code belongs only a
// placeholder is drawn, and the code is written there when the page is packed: as
// one path, in whole numbers of its own grid, so that no module is rounded
// otherwise than its neighbour.

// placeholder is what the library writes for the line type "dotted", which nothing
// else here asks for. Type stands in the stream in hexadecimal digits, so it cannot
// hold this.
var placeholder = []byte("[2 3] 11 d\n")

// A square is a code and the height of its page, from which PDF counts upwards.
type square struct {
	page.Code
	height float64
}

// code keeps a place for a code.
func (x *writer) code(c page.Code) {
	x.gp.SetLineType("dotted")
	x.codes = append(x.codes, square{c, x.height})
}

// operators appends what draws the code: the grid is made the unit of length, with
// y downwards (ISO 32000-1, 8.3.4), and all rectangles are filled at once.
func (s square) operators(to []byte) []byte {
	number := func(v float64) {
		to = strconv.AppendFloat(to, v, 'f', 4, 64)
		to = append(to, ' ')
	}
	to = append(to, "q\n0 g\n"...)
	unit := pt(s.Module)
	number(unit)
	to = append(to, "0 0 "...)
	number(-unit)
	number(pt(s.At.X))
	number(s.height - pt(s.At.Y))
	to = append(to, "cm\n"...)
	for _, b := range s.Runs() {
		for _, v := range [...]int64{int64(b.X - s.At.X), int64(b.Y - s.At.Y), int64(b.W), int64(b.H)} {
			to = strconv.AppendInt(to, v/int64(s.Module), 10)
			to = append(to, ' ')
		}
		to = append(to, "re\n"...)
	}
	return append(to, "f\nQ\n"...)
}
