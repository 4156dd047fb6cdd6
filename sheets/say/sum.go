package say

import (
	"fmt"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// terms are the words for what a sum's terms stand for.
var terms = map[trade.What]string{
	trade.Stated:           "as the plan states it",
	trade.FullWidth:        "width of the fabric",
	trade.Finished:         "finished",
	trade.Seams:            "seam",
	trade.HalfFinished:     "half the finished side",
	trade.HalfSquareSeams:  "seams of a half-square",
	trade.EightSquareSeams: "seams of eight half-squares",
	trade.QuarterSeams:     "seams of a quarter-square",
	trade.FinishedDiagonal: "finished diagonal",
	trade.FourSquareSeams:  "seams of four half-squares",
	trade.HalfDiagonal:     "half the diagonal",
	trade.BlockDiagonal:    "block's diagonal",
	trade.Trimming:         "to trim",
	trade.Generous:         "to trim the setting",
	trade.Block:            "block",
	trade.SashWidth:        "sash",
	trade.Side:             "side it goes round",
	trade.BorderWidth:      "border",
	trade.MitreSeams:       "seams of two mitres",
	trade.BindingStrip:     "binding strip",
	trade.BiasSquare:       "square for bias strips",
	trade.QuiltSide:        "quilt's side",
	trade.Overhang:         "overhang",
	trade.Tail:             "to join the ends",
}

// Sum is how a cut size comes about: "3 finished + 2 × ¼ seam = 3½"; of a
// rectangle both ways.
func (v Voice) Sum(s trade.Sum) string {
	text := v.sum(s)
	if s.Along != nil {
		text += "; " + v.sum(*s.Along)
	}
	return text
}

func (v Voice) sum(s trade.Sum) string {
	parts, rounded := v.terms(s)
	text := strings.Join(parts, " + ")
	if len(s.Terms) == 0 {
		return ""
	}
	if len(s.Terms) == 1 && !many(s.Terms[0]) && rounded == 0 {
		return text
	}
	if rounded > 0 {
		text += ", rounded up"
	}
	return text + " = " + v.Len(s.Total())
}

// Joins is how the length of joined strips comes about, and what joins take: "each
// 58½ long: 58 side it goes round + 2 × ¼ seam; a join takes 1½". It is empty
// where nothing is joined.
func (v Voice) Joins(u cutting.Use) string {
	if u.Joined == nil || len(u.LongSum.Terms) == 0 {
		return ""
	}
	text := "each " + v.Len(u.Joined.Size.H) + " long: "
	if u.LongSum.Along != nil {
		text = "the whole of it: "
	}
	return text + v.Sum(u.LongSum) + "; a join takes " + v.Len(u.Joined.Loss)
}

// ShortSum is a sum for narrow places, for sizes that follow from a finished
// one: "3 + ⅞", "2 × 3 + 1¾". It is empty where a term is no even figure, such as
// a diagonal.
func (v Voice) ShortSum(s trade.Sum) string {
	text := v.shortSum(s)
	if s.Along != nil && text != "" {
		if along := v.shortSum(*s.Along); along != "" {
			return text + ", " + along
		}
	}
	return text
}

func (v Voice) shortSum(s trade.Sum) string {
	if len(s.Terms) < 2 {
		return ""
	}
	var parts []string
	terms, _ := v.folded(s)
	for _, t := range terms {
		text := v.Len(t.Each)
		if !v.round(t.Each) {
			return ""
		}
		if many(t) {
			text = fmt.Sprintf("%d %s %s", t.Times, v.Times(), text)
		}
		parts = append(parts, text)
	}
	return v.together(strings.Join(parts, " + "))
}

func many(t trade.Term) bool { return t.Times > 1 }

// terms is a sum's terms in words, and what rounding adds to them.
func (v Voice) terms(s trade.Sum) (parts []string, rounded length.Length) {
	terms, rounded := v.folded(s)
	for _, t := range terms {
		text := v.Len(t.Each) + " " + Term(t.What)
		if many(t) {
			text = fmt.Sprintf("%d %s %s", t.Times, v.Times(), text)
		}
		parts = append(parts, text)
	}
	return parts, rounded
}

// folded puts what rounding added into the one term with an odd figure, so that
// "about 0.854" becomes the trade's 7/8. Where several are odd, the rounding
// stays by itself.
func (v Voice) folded(s trade.Sum) (terms []trade.Term, rounded length.Length) {
	odd := -1
	for i, t := range s.Terms {
		if !v.round(t.Each) {
			if odd >= 0 {
				return s.Terms, s.Rounded
			}
			odd = i
		}
	}
	if odd < 0 || many(s.Terms[odd]) || !v.round(s.Terms[odd].Each+s.Rounded) {
		return s.Terms, s.Rounded
	}
	terms = append(terms, s.Terms...)
	terms[odd].Each += s.Rounded
	return terms, 0
}

// round says whether a length is one that rulers show.
func (v Voice) round(l length.Length) bool {
	if v.Units == length.Metric {
		return l%(length.MM/10) == 0
	}
	return l%(length.Inch/16) == 0
}

// Down is a length no longer than l that rulers show: of what is left over it is
// said how much there is at least.
func (v Voice) Down(l length.Length) length.Length {
	if v.Units == length.Metric {
		return l - l%length.MM
	}
	return l - l%(length.Inch/16)
}

// Term is the words for what a term of a sum stands for.
func Term(w trade.What) string { return terms[w] }

// Makes says what the pieces of a line become: "two half-squares from a pair". It goes after what
// they are, Part, and doesn't say that again.
func (v Voice) Makes(e cutting.Explained) string {
	switch e.Unit {
	case plan.HalfSquare:
		return map[plan.Method]string{
			plan.TwoAtATime: "two half-squares from a pair", plan.FourAtATime: "four half-squares from a pair",
			plan.EightAtATime: "eight half-squares from a pair", plan.StitchAndFlip: "one half-square from a pair",
		}[or(e.Method, plan.TwoAtATime)]
	case plan.Geese:
		if e.Method == plan.StitchAndFlip {
			return map[string]string{trade.Goose: "one from each", trade.Sky: "two to a goose, sewn corner to corner"}[e.Role]
		}
		return map[string]string{trade.Goose: "four from each, with four sky squares", trade.Sky: "four to a goose square"}[e.Role]
	case plan.Hourglass:
		return "two pairs sewn across each other"
	case plan.SquareInSquare:
		if e.Method == plan.StitchAndFlip && e.Role == trade.Corner {
			return "four to a centre, sewn corner to corner"
		}
		return map[string]string{trade.Centre: "one each", trade.Corner: strings.TrimPrefix(v.cutting(e.Into), ", ")}[e.Role]
	case plan.StripSet:
		return "for " + v.sets(e.Set, "cut across into")
	case plan.QuarterSquare, plan.SideSetting, plan.CornerSetting:
		return map[trade.Diagonal]string{trade.Once: "two triangles from each", trade.Twice: "four triangles from each"}[e.Into]
	}
	if j := e.Joined; j != nil {
		return v.joinedInto(e, j)
	}
	return strings.TrimPrefix(v.cutting(e.Into), ", ")
}

// joinedInto says what strips are joined into; a single panel isn't.
func (v Voice) joinedInto(e cutting.Explained, j *cutting.Joined) string {
	into := fmt.Sprintf("joined into %s %s", Count(j.Count), v.Size(j.Size))
	switch {
	case e.Bias:
		return "bias strips, " + into
	case e.For == cutting.ForBacking && e.Count == 1:
		return "the backing in one piece"
	case j.Halved:
		return into + ", one of them halved along its length"
	}
	return into
}

func or(m, usual plan.Method) plan.Method {
	if m == "" {
		return usual
	}
	return m
}

func (v Voice) cutting(d trade.Diagonal) string {
	switch d {
	case trade.Once:
		return ", cut corner to corner"
	case trade.Twice:
		return ", cut corner to corner both ways"
	}
	return ""
}
