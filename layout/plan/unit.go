package plan

import (
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/length"
)

// A unitRule is what a unit's line must have.
type unitRule struct {
	methods []Method // the usual one first; none where there is one way only
	least   int      // sources, by role
	most    int
	roles   string // what the sources are, for messages
	square  bool   // its finished size is a square
	cut     bool   // its cut size may be stated instead
	trim    bool   // it may be cut oversize and trimmed
}

// unitRules are the units' rules.
var unitRules = map[Unit]unitRule{
	Patch:          {least: 1, most: 1, cut: true},
	HalfSquare:     {methods: []Method{TwoAtATime, FourAtATime, EightAtATime, StitchAndFlip}, least: 2, most: 2, roles: "its two triangles", square: true, trim: true},
	QuarterSquare:  {least: 1, most: 1, square: true, trim: true},
	Hourglass:      {methods: []Method{TwoAtATime}, least: 2, most: 4, roles: "its triangles", square: true, trim: true},
	Geese:          {methods: []Method{FourAtATime, StitchAndFlip}, least: 2, most: 2, roles: "goose and sky", trim: true},
	SquareInSquare: {methods: []Method{"", StitchAndFlip}, least: 2, most: 2, roles: "centre and corners", square: true, trim: true},
	SideSetting:    {least: 1, most: 1, square: true},
	CornerSetting:  {least: 1, most: 1, square: true},
	Strip:          {least: 1, most: 1, cut: true},
	StripSet:       {},
}

// unitOptions are the units by name, the usual one first.
func unitOptions() (all []option[Unit]) {
	for _, u := range []Unit{Patch, HalfSquare, QuarterSquare, Hourglass, Geese, SquareInSquare, SideSetting, CornerSetting, Strip, StripSet} {
		all = append(all, option[Unit]{string(u), u})
	}
	return all
}

// methodOptions are the methods by name.
func methodOptions() (all []option[Method]) {
	for _, m := range []Method{TwoAtATime, FourAtATime, EightAtATime, StitchAndFlip} {
		all = append(all, option[Method]{string(m), m})
	}
	return all
}

// sized checks that a line has the size its unit needs.
func (r *reader) sized(p *Piece, rule unitRule) {
	cut, finished := p.Stated("cut"), p.Stated("finished")
	switch {
	case p.Unit == StripSet:
		r.setSized(p)
	case cut && finished:
		r.fault(p.Place("cut"), "keep the one that you know", "the piece has both a finished and a cut size; expected one")
	case cut && !rule.cut:
		r.fault(p.Place("cut"), "write finished: and the finished size; the cut sizes follow from it", "unit %s takes no cut size", p.Unit)
	case !cut && !finished && (r.misspelt(p.Node, "finished") || rule.cut && r.misspelt(p.Node, "cut")):
	case !cut && !finished && rule.cut:
		r.fault(p.At, "write finished: or cut: and a size", "the piece has no size; expected finished or cut")
	case !cut && !finished:
		r.fault(p.At, "write finished: and a size", "the piece has no finished size, which unit %s needs", p.Unit)
	case finished && p.Finished != (length.Size{}):
		r.shaped(p, rule)
	}
	if p.Unit == Strip && (cut && p.Cut.W > 0 || finished && p.Finished.W > 0) {
		at := p.Place("cut")
		if finished {
			at = p.Place("finished")
		}
		r.fault(at, "write the strip's width alone, or leave unit out", "a strip goes across the whole width; expected one length such as 2 1/2")
	}
	for _, key := range []string{"strips", "segment"} {
		if p.Unit != StripSet && p.Stated(key) {
			r.fault(p.Place(key), "write unit: strip-set", "%s is for a strip set; this is a %s", key, p.Unit)
		}
	}
}

// shaped checks a finished size's proportions.
func (r *reader) shaped(p *Piece, rule unitRule) {
	at, z := p.Place("finished"), p.Finished
	say := r.plan.Units.FormatSize(z)
	switch {
	case z.W == length.WOF && p.Unit != Strip && p.Unit != Patch:
		r.fault(at, "", "finished: WOF means nothing for unit %s; expected a size such as 3", p.Unit)
	case rule.square && z.W != z.H:
		r.fault(at, "", "finished: found %s; unit %s is square, expected one length such as 3", say, p.Unit)
	case p.Unit == Geese && z.W != 2*z.H && (p.Method == "" || p.Method == FourAtATime):
		hint := "with method: stitch-and-flip other shapes can be made"
		if z.W == z.H {
			hint = "write the width and the height of one goose"
		}
		r.fault(at, hint, "finished: found %s; geese made four at a time are twice as wide as high, expected %s",
			say, r.plan.Units.FormatSize(length.Size{W: z.W, H: z.W / 2}))
	case p.Unit == Geese && z.W < 2*z.H:
		r.fault(at, "", "finished: found %s; a goose is at least twice as wide as high, expected such as %s",
			say, r.plan.Units.FormatSize(length.Size{W: 2 * z.H, H: z.H}))
	}
}

// setSized checks what a strip set needs in place of a size.
func (r *reader) setSized(p *Piece) {
	for _, key := range []string{"cut", "finished", "fabric", "mix", "fabrics"} {
		if p.Stated(key) {
			r.fault(p.Place(key), "its sizes and fabrics stand in strips, and segment is what is cut off", "a strip set takes no %s", key)
		}
	}
	switch {
	case p.Stated("strips"):
		if len(p.Strips) < 2 {
			r.fault(p.Place("strips"), "", "the strip set has %d strips; expected two or more", len(p.Strips))
		}
	case !r.misspelt(p.Node, "strips"):
		r.fault(p.At, "write strips: [{fabric: dusk, finished: 2}, {fabric: wick, finished: 2}]", "the strip set has no strips")
	}
	if !p.Stated("segment") && !r.misspelt(p.Node, "segment") {
		r.fault(p.At, "write segment: 2", "the strip set has no segment; expected the finished length that is cut off it")
	}
}

// sourced checks that a line has as many sources as its unit has roles. One
// source for a unit of several goes for all of them.
func (r *reader) sourced(p *Piece, rule unitRule) {
	if p.Unit == StripSet {
		return
	}
	var stated []string
	for _, key := range []string{"fabric", "mix", "fabrics"} {
		if p.Stated(key) {
			stated = append(stated, key)
		}
	}
	switch n := len(p.Sources); {
	case len(stated) == 0 && r.misspelt(p.Node, "fabric", "mix", "fabrics"):
	case len(stated) == 0:
		r.fault(p.At, "write fabric: and the fabric's name", "the piece has no fabric")
	case len(stated) > 1:
		r.fault(p.Place(stated[1]), "keep one of them", "the piece has both %s; expected one", strings.Join(stated, " and "))
	case n == 1:
		for len(p.Sources) < rule.least {
			p.Sources = append(p.Sources, p.Sources[0])
		}
	case n > rule.most && r.misspelt(p.Node, "unit"):
	case n > rule.most && rule.most == 1:
		r.fault(p.Place(stated[0]), "to cut from any of several, make a mix of them", "fabrics: %d are written; unit %s takes one", n, p.Unit)
	case n > 0 && (n < rule.least || n > rule.most):
		want := fmt.Sprint(rule.least)
		if rule.most > rule.least {
			want = fmt.Sprintf("%d to %d", rule.least, rule.most)
		}
		r.fault(p.Place(stated[0]), "", "fabrics: %d are written; unit %s takes %s: %s", n, p.Unit, want, rule.roles)
	}
}

// made checks a line's method and trimming, and gives it the usual method.
func (r *reader) made(p *Piece, rule unitRule) {
	switch {
	case p.Method == "" && len(rule.methods) > 0:
		p.Method = rule.methods[0]
	case p.Method != "" && len(rule.methods) == 0:
		r.fault(p.Place("method"), "leave it out", "unit %s takes no method; it is made in one way", p.Unit)
	case p.Method != "" && !slices.Contains(rule.methods, p.Method):
		r.fault(p.Place("method"), "", "unit %s is not made %s; expected one of %s", p.Unit, p.Method, methodNames(rule.methods))
	}
	if p.Trim && !rule.trim {
		r.fault(p.Place("trim"), "leave it out", "unit %s is not trimmed after sewing", p.Unit)
	}
}

// methodNames lists the methods that can be written.
func methodNames(methods []Method) string {
	var names []string
	for _, m := range methods {
		if m != "" {
			names = append(names, string(m))
		}
	}
	return strings.Join(names, ", ")
}
