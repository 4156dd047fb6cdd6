// Package say puts cutting into words a beginner can follow: lengths, steps,
// sums, and how good a layout is.
//
// Make a Voice for a plan, then ask it for Steps, Sum, Proof and the like.
package say

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A Voice is a way of speaking: in inches or centimetres, to the right or the
// left hand, in plain characters (½ as 1/2, for terminals and files) or in type.
type Voice struct {
	Units length.System
	Left  bool
	Plain bool
}

// For is the voice of a plan's binder.
func For(p *plan.Plan) Voice {
	return Voice{Units: p.Units, Left: p.Hand == plan.LeftHand}
}

// InPlain is the same voice in plain characters.
func (v Voice) InPlain() Voice {
	v.Plain = true
	return v
}

// Len is a length without its unit: "3½".
func (v Voice) Len(l length.Length) string {
	return v.Units.Format(l, v.figures()...)
}

// figures is how figures are set.
func (v Voice) figures() []length.Style {
	if v.Plain {
		return nil
	}
	return []length.Style{length.Typeset}
}

// Unit is the unit that Len leaves out.
func (v Voice) Unit() string {
	if v.Units == length.Metric {
		return "cm"
	}
	return "in"
}

// With is a length with its unit: "3½ in".
func (v Voice) With(l length.Length) string { return v.together(v.Len(l) + " " + v.Unit()) }

// together keeps what is set in type on one line: "3½ × 6½" never breaks.
func (v Voice) together(text string) string {
	if v.Plain {
		return text
	}
	return strings.ReplaceAll(text, " ", "\u00a0")
}

// Times is the sign between two sides.
func (v Voice) Times() string {
	if v.Plain {
		return "x"
	}
	return "×"
}

// Size is a size, always with both sides: "3½ × 3½".
func (v Voice) Size(s length.Size) string {
	return v.together(v.Units.FormatSize(s, v.figures()...))
}

// Short is a size, with one side where it is a square: "3½", "2 × 2¼".
func (v Voice) Short(s length.Size) string {
	if s.W == s.H {
		return v.Len(s.W)
	}
	return v.Size(s)
}

// Near is the side the cutting starts from, Far the other.
func (v Voice) Near() string {
	if v.Left {
		return "right"
	}
	return "left"
}

// Count is a count in brackets, so that "(2) 6½" is never read as 26½.
func Count(n int) string { return fmt.Sprintf("(%d)", n) }

// Plural is a word in the number that n asks for.
func Plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// times is how often, in words while it's few.
func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return number(n) + " times"
}

var numbers = strings.Fields("no one two three four five six seven eight nine ten eleven twelve")

func number(n int) string {
	if n < len(numbers) {
		return numbers[n]
	}
	return fmt.Sprint(n)
}

// Shelf names the cloths at hand, equal ones counted: "half yard, 2 × fat
// quarter".
func (v Voice) Shelf(cloths []plan.Cloth) string {
	var names, out []string
	for _, c := range cloths {
		names = append(names, v.Written(nth.ReplaceAllString(c.Name, "")))
	}
	for i, name := range names {
		if slices.Contains(names[:i], name) {
			continue
		}
		n := 0
		for _, other := range names {
			if other == name {
				n++
			}
		}
		if n > 1 {
			name = v.together(fmt.Sprintf("%d %s ", n, v.Times())) + name
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

// nth is what tells cloths that are counted apart: "fat quarter 2 of 3".
var nth = regexp.MustCompile(` \d+ of \d+$`)

// Written is a name of a cloth as the plan writes it, its fractions and signs set
// in type.
func (v Voice) Written(name string) string {
	if v.Plain {
		return name
	}
	name = sign.ReplaceAllString(name, "${1}\u00a0×\u00a0${2}")
	return fraction.ReplaceAllStringFunc(name, func(f string) string {
		l, err := length.Parse(f, length.Imperial)
		if err != nil {
			return f
		}
		return length.Imperial.Format(l, length.Typeset)
	})
}

// sign is what stands between the sides of a size that is written: "9 x 42".
var sign = regexp.MustCompile(`(\d|WOF) ?[xX×] ?(\d)`)

var fraction = regexp.MustCompile(`(\d+[ -])?\d+/\d+`)

// Percent is a percentage: "5 %", "2.5 %".
func Percent(p plan.Percent) string {
	return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%d.%02d", p/100, p%100), "0"), ".") + " %"
}

// Percent is a percentage that stays on one line in type.
func (v Voice) Percent(p plan.Percent) string { return v.together(Percent(p)) }

// Things joins words with commas and a last "and".
func Things(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
