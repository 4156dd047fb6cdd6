package plan

import (
	"strings"

	"cutbinder/layout/length"
)

// labelsTable is the label sheet.
var labelsTable = table[Labels]{"labels", "The sheet the bag labels are printed on.", []field[Labels]{
	{Key{Name: "stock", Kind: KindText, Doc: "The label's size as its pack states it, or plain for plain paper with cutting lines.", Example: "2 5/8 x 1 in", Default: "the paper's usual one"}, readStock},
	choiceField("gutter", "Whether there is a gap between labels, where two sheets share a size.", []option[bool]{{"none", true}, {"usual", false}}, func(l *Labels) *bool { return &l.NoGutter }).by("usual"),
	countField("per-bag", "How many labels each bag gets.", "2", 1, 20, func(l *Labels) *int { return &l.PerBag }).by("1"),
	countField("columns", "Columns of a sheet of one's own.", "3", 1, 50, func(l *Labels) *int { return &l.sheet().Columns }),
	countField("rows", "Its rows.", "7", 1, 50, func(l *Labels) *int { return &l.sheet().Rows }),
	lengthField("width", "The width of its labels.", "63.5 mm", limits{}, func(l *Labels) *length.Length { return &l.sheet().Width }),
	lengthField("height", "The height of its labels.", "38.1 mm", limits{}, func(l *Labels) *length.Length { return &l.sheet().Height }),
	lengthField("left", "From the paper's left edge to the first label.", "7.2 mm", limits{zero: true}, func(l *Labels) *length.Length { return &l.sheet().Left }),
	lengthField("top", "From the paper's top edge to the first label.", "15.1 mm", limits{zero: true}, func(l *Labels) *length.Length { return &l.sheet().Top }),
	lengthField("step-across", "From one label's left edge to the next one's.", "66 mm", limits{}, func(l *Labels) *length.Length { return &l.sheet().StepAcross }),
	lengthField("step-down", "From one label's top edge to the next one's.", "38.1 mm", limits{}, func(l *Labels) *length.Length { return &l.sheet().StepDown }),
}}

// sheetKeys are the eight numbers of a sheet of one's own.
var sheetKeys = []string{"columns", "rows", "width", "height", "left", "top", "step-across", "step-down"}

// sheet is the sheet of one's own, made where there is none yet.
func (l *Labels) sheet() *LabelSheet {
	if l.Sheet == nil {
		l.Sheet = &LabelSheet{}
	}
	return l.Sheet
}

// readStock reads a label's size, kept as it is written, or plain.
func readStock(r *reader, k Key, v value, l *Labels) {
	s, ok := r.text(k, v)
	if !ok {
		return
	}
	s = strings.Join(strings.Fields(s), " ")
	if strings.EqualFold(s, "plain") {
		s = "plain"
	} else if _, ok := r.size(k, v, false); !ok {
		return
	}
	l.Stock = s
}

// readLabels reads the label sheet and checks a sheet of one's own.
func readLabels(r *reader, p *Plan, v value) {
	p.Labels.Node, _ = labelsTable.read(r, v, &p.Labels)
	l := &p.Labels
	var missing []string
	for _, key := range sheetKeys {
		if !l.Stated(key) && !r.misspelt(l.Node, key) {
			missing = append(missing, key)
		}
	}
	switch {
	case len(missing) == len(sheetKeys):
	case len(missing) > 0:
		r.fault(l.At, "", "a label sheet of one's own takes eight numbers; missing are %s", strings.Join(missing, ", "))
	case l.Stated("stock"):
		r.fault(l.Place("stock"), "keep one of them", "labels: both a stock and a sheet of one's own are written")
	default:
		r.ownSheet = true
	}
}

// paperSizes are the papers' measures.
var paperSizes = map[Paper]length.Size{
	Letter: {W: 17 * in / 2, H: 11 * in},
	A4:     {W: 210 * mm, H: 297 * mm},
}

// sheetFits checks that a sheet of one's own lies on the plan's paper and that
// its labels don't overlap.
func (r *reader) sheetFits() {
	l, paper := &r.plan.Labels, paperSizes[r.plan.Paper]
	s := l.Sheet
	say := func(x length.Length) string { return r.plan.Units.Format(x, length.WithUnit) }
	right := s.Left + length.Length(s.Columns-1)*s.StepAcross + s.Width
	bottom := s.Top + length.Length(s.Rows-1)*s.StepDown + s.Height
	switch {
	case s.StepAcross < s.Width && s.Columns > 1:
		r.fault(l.Place("step-across"), "", "step-across: %s is less than a label's width of %s, so that labels overlap", say(s.StepAcross), say(s.Width))
	case right > paper.W:
		r.fault(l.Place("columns"), "", "labels: the columns reach to %s; %s paper is %s wide", say(right), r.plan.Paper, say(paper.W))
	}
	switch {
	case s.StepDown < s.Height && s.Rows > 1:
		r.fault(l.Place("step-down"), "", "step-down: %s is less than a label's height of %s, so that labels overlap", say(s.StepDown), say(s.Height))
	case bottom > paper.H:
		r.fault(l.Place("rows"), "", "labels: the rows reach to %s; %s paper is %s high", say(bottom), r.plan.Paper, say(paper.H))
	}
}
