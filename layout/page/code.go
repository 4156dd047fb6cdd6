package page

import "cutbinder/layout/length"

// A Code is a square two-dimensional code. Its box holds the quiet zone too,
// Quiet modules wide on each side, which must stay empty.
type Code struct {
	Mark
	// At is the top left corner of the quiet zone.
	At Point
	// Module is the side of one module. It is a whole length, so that all
	// modules are the same size.
	Module length.Length
	Quiet  int
	// Size is the number of modules a side, without the quiet zone; Dark has
	// Size*Size values, row by row.
	Size int
	Dark []bool
}

// Bounds is the code with its quiet zone.
func (c Code) Bounds() Box {
	side := c.Module * length.Length(c.Size+2*c.Quiet)
	return Box{c.At.X, c.At.Y, side, side}
}

// dark reports whether a module is dark; outside the code none is.
func (c Code) dark(x, y int) bool {
	i := y*c.Size + x
	return x >= 0 && y >= 0 && x < c.Size && y < c.Size && i < len(c.Dark) && c.Dark[i]
}

// Runs is the dark modules as few rectangles: neighbours in a row are merged,
// and then equal runs in rows below each other. They cover each dark module
// once and no light one.
func (c Code) Runs() []Box {
	var out []Box
	above := make([]int, c.Size) // at a run's start: the number of its box, counted from 1
	row := make([]int, c.Size)
	for y := range c.Size {
		clear(row)
		for x := 0; x < c.Size; x++ {
			if !c.dark(x, y) {
				continue
			}
			x0 := x
			for c.dark(x+1, y) {
				x++
			}
			run := c.run(x0, x, y)
			if k := above[x0]; k > 0 && out[k-1].W == run.W {
				out[k-1].H += c.Module
				row[x0] = k
				continue
			}
			out = append(out, run)
			row[x0] = len(out)
		}
		above, row = row, above
	}
	return out
}

// run is the rectangle over the modules x0 to x1 of row y.
func (c Code) run(x0, x1, y int) Box {
	at := func(i int) length.Length { return c.Module * length.Length(i+c.Quiet) }
	return Box{c.At.X + at(x0), c.At.Y + at(y), c.Module * length.Length(x1-x0+1), c.Module}
}
