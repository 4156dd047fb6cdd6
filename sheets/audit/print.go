package audit

import (
	"fmt"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
)

// prints warns of edges that stretch and of prints that a method turns.
func (a *auditor) prints() {
	a.eachLine(func(_ *plan.Block, piece *plan.Piece, id string) {
		cuts := a.of(piece)
		for _, e := range cuts {
			if e.Bias {
				a.find(plan.Remark, place(piece.Node, "method"), "bias:"+id, "starch before cutting and don't pull; or take method: two-at-a-time",
					"%s units made %s have all their edges on the bias: they stretch", piece.Unit, piece.Method)
				break
			}
		}
		for _, e := range cuts {
			for _, s := range e.Shares {
				if s.Fabric.OneWay && e.Turned {
					a.turned(place(piece.Node, "method", "join"), s.Fabric, id, how(e))
				}
			}
		}
	})
	a.finishings()
}

// finishings does the same for what stands in no line of pieces.
func (a *auditor) finishings() {
	var lines []plan.Pos
	a.eachLine(func(_ *plan.Block, piece *plan.Piece, _ string) { lines = append(lines, piece.At) })
	for _, e := range a.lines {
		if slices.Contains(lines, e.At) || !e.Turned {
			continue
		}
		for _, s := range e.Shares {
			if s.Fabric.OneWay {
				a.turned(e.At, s.Fabric, e.For, how(e))
			}
		}
	}
}

// how says in what way a print is turned.
func how(e cutting.Explained) string {
	switch {
	case e.Joined != nil:
		return "strips across the width, joined into longer pieces, have it lying on its side"
	case e.Method != "":
		return fmt.Sprintf("in %s made %s it runs several ways", e.Unit, e.Method)
	case e.For != "":
		return fmt.Sprintf("in the %s it runs several ways", e.For)
	}
	return fmt.Sprintf("in %s it runs several ways", e.Unit)
}

// turned warns of a one-way print that doesn't stand upright everywhere.
func (a *auditor) turned(at plan.Pos, f *plan.Fabric, id, how string) {
	id = "one-way:" + f.ID + ":" + id
	if slices.ContainsFunc(a.problems, func(p plan.Problem) bool { return p.ID == id }) {
		return
	}
	a.find(plan.Doubt, at, id, "take another fabric or method here, or accept it where the print may run several ways",
		"%s is a one-way print, and %s", f.Name, how)
}

// place is where a key stands, or the line it would stand on.
func place(n plan.Node, keys ...string) plan.Pos {
	for _, k := range keys {
		if n.Stated(k) {
			return n.Place(k)
		}
	}
	return n.At
}
