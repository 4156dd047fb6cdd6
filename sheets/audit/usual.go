package audit

import (
	"fmt"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/sheets/say"
)

// unusual tells of figures that can be cut to but that hardly anybody means: a
// unit or a point is missing, or one size was written for another.
func (a *auditor) unusual() {
	for _, f := range a.plan.Fabrics {
		a.unusualWidth(f)
		a.unusualCloth(f)
	}
	a.eachLine(func(_ *plan.Block, piece *plan.Piece, id string) { a.allSeam(piece, id) })
	a.thinBinding()
	a.largeQuilt()
	for _, p := range []struct {
		key   string
		share plan.Percent
		gives string
	}{{"extra", a.plan.Allow.Extra, "is bought beside what is needed"}, {"spare", a.plan.Allow.Spare, "of every size is cut to spare"}} {
		if p.share > mostPadding {
			a.find(plan.Doubt, a.plan.Allow.Place(p.key), p.key, "5 to 10 % is usual",
				"%s: %s: more than half as much again %s", p.key, say.Percent(p.share), p.gives)
		}
	}
}

// What is usual: cloth that is sold is 35 to 120 in wide, backings being the
// widest, and lengths of it are seldom less than 20 in between the selvages; beds
// take quilts of up to about 130 in. Padding of more than half is a slip.
const (
	leastWidth  = 20 * length.Inch
	boltWidth   = 35 * length.Inch
	mostWidth   = 120 * length.Inch
	mostQuilt   = 130 * length.Inch
	mostPadding = plan.Percent(5000)
)

// unusualWidth tells of a usable width that no cloth has.
func (a *auditor) unusualWidth(f *plan.Fabric) {
	if !f.Stated("width") || f.Width >= leastWidth && f.Width <= mostWidth {
		return
	}
	hint := "measure it between the selvages; accept it where the cloth has it"
	if meant := a.widthsMeant(f.Width); len(meant) > 0 {
		hint = "did you mean " + strings.Join(meant, " or ") + "?"
	}
	than := "wider than cloth is sold"
	if f.Width <= mostWidth {
		than = "narrower than cloth is sold"
	}
	a.find(plan.Doubt, f.Place("width"), "usual-width:"+f.ID, hint, "%s: a usable width of %s is %s", f.Name, a.v.With(f.Width), than)
}

// unusualCloth tells of a cloth read as a cut of the full width that is a quarter
// wider than its fabric: it may as well be a strip along the cloth.
func (a *auditor) unusualCloth(f *plan.Fabric) {
	for _, c := range f.Have {
		if !c.Turned || c.W <= f.Width+f.Width/4 {
			continue
		}
		a.find(plan.Doubt, c.At, "usual-cloth:"+f.ID, fmt.Sprintf("where it is a strip along the cloth write {width: %s, length: %s}; where all of it is so wide write width: %[2]s", a.v.Len(c.H), a.v.Len(c.W)),
			"%s: %s is read as %s wide and %s long, though the fabric is %s wide", f.Name, a.v.Written(c.Name), a.v.With(c.W), a.v.With(c.H), a.v.With(f.Width))
	}
}

// widthsMeant are a width's figure with other units, where those are what bolts
// have.
func (a *auditor) widthsMeant(l length.Length) (meant []string) {
	own, units := length.Inch, []string{"yd", "m", "cm"}
	if a.plan.Units == length.Metric {
		own, units = length.CM, []string{"in", "m"}
	}
	as := map[string]length.Length{"in": length.Inch, "cm": length.CM, "yd": length.Yard, "m": length.M}
	for _, unit := range units {
		w := l * as[unit] / own
		if w < boltWidth || w > mostWidth {
			continue
		}
		text := a.v.Len(l) + " " + unit
		if unit == "in" {
			text += ", or " + a.v.Len((w+length.CM/2)/length.CM*length.CM)
		}
		meant = append(meant, text)
	}
	return meant
}

// allSeam tells of a patch of which sewing leaves nothing.
func (a *auditor) allSeam(piece *plan.Piece, id string) {
	least, seams := piece.Cut.H, 2*a.plan.Seam
	if piece.Cut.W > 0 {
		least = min(least, piece.Cut.W)
	}
	if !piece.Stated("cut") || least <= 0 || least > seams {
		return
	}
	a.find(plan.Doubt, piece.Place("cut"), "all-seam:"+id, "where it is the finished size write finished: "+a.v.Short(piece.Cut),
		"cut %s: its two seams take %s, so that nothing is left of it when sewn", a.v.Size(piece.Cut), a.v.With(seams))
}

// thinBinding tells of a binding that doesn't go round the edge: its two seams and
// as much again on the back, and a little for the turn.
func (a *auditor) thinBinding() {
	b := a.plan.Binding
	if b == nil || b.Strip >= 4*a.plan.Seam+a.hair() {
		return
	}
	a.find(plan.Doubt, place(b.Node, "strip"), "binding-strip", "a binding of one layer takes four seams and a little, a folded one six and a little",
		"the binding's strips of %s don't reach round the edge: four seams come to %s", a.v.With(b.Strip), a.v.With(4*a.plan.Seam))
}

// largeQuilt tells of a finished size that was probably meant in a smaller unit.
func (a *auditor) largeQuilt() {
	z := a.plan.Finished
	if max(z.W, z.H) <= mostQuilt {
		return
	}
	smaller, unit := max(z.W, z.H)/length.Inch*length.CM, "cm"
	if a.plan.Units == length.Metric {
		smaller, unit = max(z.W, z.H)/10, "mm"
	}
	hint := "accept it where the quilt is so large"
	if smaller <= mostQuilt {
		hint = fmt.Sprintf("did you mean %s %s?", a.v.Size(z), unit)
	}
	a.find(plan.Doubt, a.plan.Place("finished"), "quilt-large", hint, "the quilt is said to finish %s: more than any bed takes", a.plan.Units.FormatSize(z, length.WithUnit))
}
