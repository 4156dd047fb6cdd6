package sheets

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/sheets/bag"
)

// The square code on a label. Printers at home and cameras of phones set the
// limits: no module under 0.4 mm, better 0.5; 15 mm a side where the label has
// room, 28 mm at most, since more is no easier to read.
const (
	minModule   = 4 * length.MM / 10
	goodModule  = 5 * length.MM / 10
	smallSquare = 15 * length.MM
	largeSquare = 28 * length.MM
	// usualModules hold the code, bag, block and contents of nearly every bag.
	usualModules = 29
	// leastModules hold the code, bag, block and count of most.
	leastModules = 25
)

// maxModules is how many modules a side a square may have: good ones, or as many as
// bags usually need where the smallest allow that.
func maxModules(side length.Length) int {
	return max(int(side/goodModule), min(usualModules, int(side/minModule)))
}

// HoldsCode says why a stock's labels are too small for a square code beside the
// bag's number, block and contents, or gives nil.
func (s Stock) HoldsCode() error {
	quiet := 2 * length.Length(bag.Quiet)
	square := (leastModules + quiet) * minModule
	words := 15 * length.MM // "K7Q-07-F3X" in the smallest type
	if s.Height >= square && s.Width >= square+words+labelInset {
		return nil
	}
	return fmt.Errorf("labels of %s are too small for a square code: with its empty edge and modules of 0.4 mm it takes %s mm a side, and the words beside it %s mm; choose a larger label, or plain",
		s.Name, mmText(square), mmText(words))
}

// codeSide is the side of the square codes on all labels of the sheet, quiet zone
// not counted: more than a third of the width only where it would be too small.
func (l *labeler) codeSide() length.Length {
	w, h := l.stock.Width, l.stock.Height
	for i := range l.stock.Labels() {
		safe := l.spot(i).safe
		w, h = min(w, safe.W), min(h, safe.H)
	}
	side := min(largeSquare, max(w*37/100, smallSquare), h)
	// The quiet zone is on the label too, between its edges, and on labels that are
	// high enough the typed code below it.
	quiet := 2 * length.Length(bag.Quiet)
	zone := l.stock.Height
	if zone >= 30*length.MM {
		zone -= labelInset + l.typed(codeSizes[0]).Lead
	}
	return min(side, zone*usualModules/(usualModules+quiet))
}

// placeCode places a square in the right end of a label, at the top of what is
// safe, its quiet zone inside the label.
func (b *bagLabel) placeCode(at spot) page.Code {
	n, quiet := length.Length(b.square.Size), length.Length(bag.Quiet)
	c := page.Code{Mark: page.Mark(b.mark("code")), Quiet: bag.Quiet, Size: b.square.Size, Dark: b.square.Dark}
	inside := at.label.Inset(length.MM / 10) // of the line that the label is cut along
	c.Module = min(b.side/n, inside.H/(n+2*quiet))
	zone := (n + 2*quiet) * c.Module
	c.At.X = min(at.safe.Right()+quiet*c.Module, inside.Right()) - zone
	c.At.Y = min(max(at.safe.Y-quiet*c.Module, inside.Y), inside.Bottom()-zone)
	return c
}
