package plan

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
)

// String prints the plan with everything that was filled in, a line a thing, for
// dumps and tests. Lengths are exact.
func (p *Plan) String() string {
	d := &dump{}
	d.line("plan %q by %q version %q date %q mark %q language %s", p.Title, p.By, p.Version, p.Date, p.Mark, p.Language)
	d.line("finished %v, units %v, seam %v, cut-step %v, %v, ruler %v, mat %v", p.Finished, p.Units, p.Seam, p.CutStep, p.Cutting, p.Ruler, p.Mat)
	d.line("allow spare %v, squaring %v, extra %v, step %v, retrue %d", p.Allow.Spare, p.Allow.Squaring, p.Allow.Extra, p.Allow.Step, p.Allow.Retrue)
	d.line("paper %s, hand %s, bags by %v, labels %q %d a bag, no gutter %v", p.Paper, p.Hand, p.BagBy, p.Labels.Stock, p.Labels.PerBag, p.Labels.NoGutter)
	if s := p.Labels.Sheet; s != nil {
		d.line("sheet %d x %d of %v x %v at %v, %v, step %v, %v", s.Columns, s.Rows, s.Width, s.Height, s.Left, s.Top, s.StepAcross, s.StepDown)
	}
	for _, f := range p.Fabrics {
		d.fabric(f)
	}
	for _, m := range p.Mixes {
		d.line("mix %s of %v", m.ID, m.Fabrics)
	}
	for _, b := range p.Blocks {
		d.line("block %s %q make %d finished %v", b.ID, b.Name, b.Make, b.Finished)
		d.drawing(b.Drawing)
		d.pieces(b.Pieces)
	}
	if len(p.Pieces) > 0 {
		d.line("pieces of no block")
		d.pieces(p.Pieces)
	}
	d.finish(p)
	for _, row := range p.Quilt {
		d.line("row %v", row)
	}
	for _, a := range p.Accept {
		d.line("accept %s: %s", a.ID, a.Why)
	}
	return d.String()
}

// String prints a percentage, "2.5%".
func (p Percent) String() string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%d.%02d", int(p)/100, int(p)%100), "0"), ".") + "%"
}

// String names what is known of a dye.
func (b Bleeds) String() string {
	return [...]string{"not stated", "unknown", "likely to bleed", "fast"}[b]
}

// String names a direction of seams as plans write it.
func (s SeamDir) String() string { return [...]string{"either", "across", "down"}[s] }

// String prints where pieces come from.
func (s Source) String() string {
	if s.Mix {
		return "mix " + s.ID
	}
	return s.ID
}

// A dump is a text in the making.
type dump struct{ strings.Builder }

// line adds a line.
func (d *dump) line(format string, args ...any) { fmt.Fprintf(d, format+"\n", args...) }

// fabric adds a fabric and what is there of it.
func (d *dump) fabric(f *Fabric) {
	flags := ""
	for _, flag := range []struct {
		name string
		on   bool
	}{{" one-way", f.OneWay}, {" prewash", f.Prewash}, {" flannel", f.Flannel}} {
		if flag.on {
			flags += flag.name
		}
	}
	d.line("fabric %s %q %s width %v, %v, step %v, shrink %v x %v, dye %v%s", f.ID, f.Name, f.Colour, f.Width, f.Cutting, f.Step, f.Shrink.Width, f.Shrink.Length, f.Bleeds, flags)
	if f.Done || len(f.DoneSizes) > 0 {
		d.line("  done %v %v", f.Done, f.DoneSizes)
	}
	for _, c := range f.Have {
		full := ""
		if c.FullWidth {
			full = " (full width)"
		}
		d.line("  have %q %v%s", c.Name, c.Size, full)
	}
}

// drawing adds a block's cells.
func (d *dump) drawing(w *Drawing) {
	if w == nil {
		return
	}
	d.line("  drawn in columns %v and rows %v", w.Columns, w.Rows)
	for _, c := range w.Cells {
		d.line("    %d,%d %d x %d %s %s turn %d from %v", c.Column, c.Row, c.Across, c.Down, c.Word, c.Unit, c.Turn, c.Sources)
	}
}

// pieces adds lines of pieces.
func (d *dump) pieces(pieces []*Piece) {
	for _, p := range pieces {
		size := "cut " + p.Cut.String()
		if p.Cut == (length.Size{}) {
			size = "finished " + p.Finished.String()
		}
		text := fmt.Sprintf("  %d %s", p.Count, p.Unit)
		if p.Unit == StripSet {
			text += fmt.Sprintf(" segment %v", p.Segment)
			for _, s := range p.Strips {
				text += fmt.Sprintf(", %v of %v", s.Finished, s.Source)
			}
		} else {
			text += fmt.Sprintf(" %s from %v", size, p.Sources)
		}
		for _, word := range []struct {
			on   bool
			text string
		}{{p.Method != "", " " + string(p.Method)}, {p.Trim, " trim"}, {p.Join, " join"}, {p.NoTurn, " not turned"}, {p.For != "", " for " + p.For}} {
			if word.on {
				text += word.text
			}
		}
		d.line("%s", text)
	}
}

// finish adds what stands between, round and behind the blocks.
func (d *dump) finish(p *Plan) {
	if s := p.Setting; s != nil {
		d.line("setting %d x %d of %v, sides %v, corners %v, alternate %v, generous %v", s.Across, s.Down, s.Block, s.Sides, s.Corners, orNone(s.Alternate), s.Generous)
	}
	if s := p.Sashing; s != nil {
		d.line("sashing %d x %d of %v, width %v from %v, frame %v, cornerstones %v", s.Across, s.Down, s.Block, s.Width, s.Source, s.Frame, orNone(s.Cornerstones))
	}
	for _, b := range p.Borders {
		d.line("%s width %v from %v, mitred %v, join %v, around %v", b.For, b.Width, b.Source, b.Mitred, b.Join, b.Around)
	}
	if b := p.Binding; b != nil {
		d.line("binding strip %v from %v, bias %v, straight joins %v, tail %v", b.Strip, b.Source, b.Bias, b.Straight, b.Tail)
	}
	if b := p.Backing; b != nil {
		d.line("backing from %v, overhang %v, seams %v", b.Source, b.Overhang, b.Seams)
	}
	if b := p.Batting; b != nil {
		d.line("batting overhang %v", b.Overhang)
	}
}

// orNone is a source that may be left out.
func orNone(s *Source) string {
	if s == nil {
		return "none"
	}
	return s.String()
}
