package sheets

import (
	"cutbinder/fonts"
	"cutbinder/layout/cutting"
)

// ScaleOf is the scale of a cloth's diagram.
func ScaleOf(q *Quilt, c *cutting.Cloth) int {
	return newBinder(q, Options{Fonts: fonts.Default()}).scaleOf(c)
}
