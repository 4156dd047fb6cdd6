package sheets

import (
	"fmt"
	"strconv"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
)

// What stands beside a strip at the far edge of the cloth: its number in a square,
// and its height, to which the ruler is set. Cuts have discs, at the near edge.

// bar is how thick a selvage is drawn; marginRoom is how wide a measure beside
// the cloth may be, between the selvage and the holes or the thumb index.
const (
	bar        = length.MM * 9 / 10
	marginRoom = length.MM * 42 / 10
	farOff     = bar + length.MM/2 // from the cloth to what stands beside it
)

// A flank is how a strip's number and height stand beside it.
type flank int

const (
	noted   flank = iota // no room for the height: a note below the picture says it
	bare                 // the height alone
	stacked              // the number over the height
	abreast              // the number before the height
)

// flankOf is how a strip's number and height have room beside it, in the height
// that it has on paper.
func (d *diagram) flankOf(number int, words string, h length.Length) flank {
	st := d.b.style
	w, mark := st.Measure.Say(words).Width(st.Fonts), st.StripMark(strconv.Itoa(number))
	room := d.farRoom()
	switch {
	case w > room || h < st.Measure.Size+2*page.MinLine:
		return noted
	case mark.W+st.Gap+w <= room && h >= mark.H+2*page.MinLine:
		return abreast
	case mark.W <= room && h >= mark.H+st.Measure.Size+3*page.MinLine:
		return stacked
	}
	return bare
}

// farRoom is how much room there is beside the far edge, on whichever side of the
// paper that lies: up to the steps where they stand beside the picture.
func (d *diagram) farRoom() length.Length {
	room := max(d.width()-d.paperWidth(), 0)
	if d.abreast {
		return room
	}
	if d.besideSteps() {
		return room + max(marginRoom, besideGutter(d.b.style)-farOff-d.b.style.Gap)
	}
	return room + marginRoom
}

// flanksWidth is how far beyond the cloth the widest number and height side by
// side reach, of the strips that are high enough for them.
func (d *diagram) flanksWidth() length.Length {
	if d.c.Root.Dir != cutting.Across {
		return 0
	}
	st, most := d.b.style, length.Length(0)
	for _, s := range d.c.Root.Parts {
		mark := st.StripMark(strconv.Itoa(s.Number))
		if s.Number > 0 && s.H/length.Length(d.scale) >= mark.H+2*page.MinLine {
			most = max(most, farOff+mark.W+st.Gap+st.Measure.Say(d.b.v.Len(s.H)).Width(st.Fonts))
		}
	}
	return most
}

// besideGutter is the white between a picture and the steps beside it.
func besideGutter(s *page.Style) length.Length { return s.Break * 2 }

// measures writes the numbers and heights of the strips on the far side.
func (d *diagram) measures(c *page.Canvas) {
	if d.c.Root.Dir != cutting.Across {
		return
	}
	side := page.OnRight
	if d.b.v.Left {
		side = page.OnLeft
	}
	for _, s := range d.c.Root.Parts {
		if s.Number == 0 || s.Y >= c.Window.Bottom() || s.Y+s.H <= c.Window.Y {
			continue
		}
		if s.Y >= c.Window.Y && s.Y+s.H <= c.Window.Bottom() {
			c.Measure(side, s.Y, s.Y+s.H, farOff, "strip", "")
		}
		d.flank(c, s)
	}
}

// flank writes one strip's number and height beside what the window shows of it.
func (d *diagram) flank(c *page.Canvas, s cutting.Section) {
	b := c.Paper()
	top, bottom := max(c.Y(s.Y), b.Y), min(c.Y(s.Y+s.H), b.Bottom())
	number, words := strconv.Itoa(s.Number), d.b.v.Len(s.H)
	st := d.b.style
	w, mark := st.Measure.Say(words).Width(st.Fonts), st.StripMark(number)
	size := page.Box{W: w, H: st.Measure.Size}
	mid := (top + bottom) / 2
	apart := min(st.Gap/2, max(bottom-top-st.Measure.Size-mark.H-2*page.MinLine, page.MinLine))
	tall := st.Measure.Size + mark.H + apart
	switch d.flankOf(s.Number, words, bottom-top) {
	case bare:
		d.height(c, d.beyond(c, 0, mid-size.H/2, size), words)
	case stacked:
		c.Pen.StripNumber(d.beyond(c, 0, mid-tall/2, mark), "strip "+number, number)
		d.height(c, d.beyond(c, 0, mid+tall/2-size.H, size), words)
	case abreast:
		c.Pen.StripNumber(d.beyond(c, 0, mid-mark.H/2, mark), "strip "+number, number)
		d.height(c, d.beyond(c, mark.W+st.Gap, mid-size.H/2, size), words)
	}
}

func (d *diagram) height(c *page.Canvas, box page.Box, words string) {
	c.Pen.Text(box, d.b.style.Measure, page.Left, "strip", words)
}

// beyond is a box of some size beside the far edge, so far beyond it.
func (d *diagram) beyond(c *page.Canvas, off, y length.Length, size page.Box) page.Box {
	b := c.Paper()
	x := b.Right() + farOff + off
	if d.b.v.Left {
		x = b.X - farOff - off - size.W
	}
	return page.Box{X: x, Y: y, W: size.W, H: size.H}
}

// heightNotes says what the ruler is set to where there is no room for it beside
// the strip, once for strips alike that follow each other.
func (d *diagram) heightNotes() []key {
	if d.c.Root.Dir != cutting.Across {
		return nil
	}
	var notes []key
	parts := d.c.Root.Parts
	for i := 0; i < len(parts); {
		s, first := parts[i], parts[i].Number
		i++
		words := d.b.v.Len(s.H)
		if first == 0 || d.flankOf(first, words, s.H/length.Length(d.scale)-1) != noted {
			continue
		}
		for i < len(parts) && parts[i].H == s.H && parts[i].Number > 0 {
			i++
		}
		note := fmt.Sprintf("cut strip %d at %s", first, words)
		if last := parts[i-1].Number; last > first {
			note = fmt.Sprintf("cut strips %d–%d at %s", first, last, words)
		}
		notes = append(notes, key{note, []extent{{s.Y, parts[i-1].Y + parts[i-1].H}}})
	}
	return notes
}
