// Package length holds exact lengths: it reads what makers write ("4 1/2",
// "6.5 cm", "1/2 yd") and prints the same, in inches or in metric.
//
// Start with Parse and ParseSize to read, and with System.Format to print.
package length

// A Length is a distance in units of 1/320 mm. An inch is 8128 units and 1/64
// inch is 127, so inch fractions down to 1/64 and tenths of a millimetre are
// whole numbers and sums never round. (1 in = 25.4 mm by definition.)
type Length int64

// The named lengths, in Length units.
const (
	MM   Length = 320
	CM   Length = 10 * MM
	M    Length = 1000 * MM
	Inch Length = 8128
	Foot Length = 12 * Inch
	Yard Length = 36 * Inch
	// Sixtyfourth is 1/64 inch, the finest inch fraction that is exact.
	Sixtyfourth Length = Inch / 64
)

// A System is a way of measuring: it decides how a bare number is read and how
// lengths are printed.
type System int

// The two systems.
const (
	Imperial System = iota // bare numbers are inches
	Metric                 // bare numbers are centimetres
)

// A Size is a rectangle's width (across the cloth, from selvage to selvage) and
// height (along the cloth's length).
type Size struct{ W, H Length }

// WOF stands, as a side of a Size, for a fabric's usable width. It is no length:
// replace it before computing.
const WOF Length = -1 << 63
