package plan

import (
	"cmp"
	"fmt"
	"slices"
)

// A Pos is a place in a plan: a file, and a line and column counted from 1, or a
// spreadsheet's cell. Of a cell, Line is its row and Col its column.
type Pos struct {
	File      string
	Line, Col int
	Cell      string // "Fabrics!C4", for spreadsheets
	Sheet     int    // of a cell: its sheet's number, counted from 1
}

// right is the place n characters to the right; a cell is one place.
func (p Pos) right(n int) Pos {
	if p.Cell == "" {
		p.Col += n
	}
	return p
}

// below is the place on the next line; a cell is one place.
func (p Pos) below() Pos {
	if p.Cell == "" {
		p.Line++
	}
	return p
}

// stands says where something else stands, within a message: "line 3", "Fabrics!A4".
func (p Pos) stands() string {
	if p.Cell != "" {
		return "in " + p.Cell
	}
	return fmt.Sprintf("on line %d", p.Line)
}

// String gives the place as file:line:col.
func (p Pos) String() string {
	switch {
	case p.Cell != "":
		return fmt.Sprintf("%s:%s", p.File, p.Cell)
	case p.Line == 0:
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// A Level says how serious a problem is.
type Level int

// The levels, most serious first.
const (
	Fault  Level = iota // nothing is written before it is mended
	Doubt               // probably wrong; the plan may accept it by its id
	Remark              // worth knowing
)

// String names the level as makers read it.
func (l Level) String() string { return [...]string{"fault", "doubt", "note"}[l] }

// A Problem is one thing a maker should know about the plan.
type Problem struct {
	At    Pos
	Level Level
	ID    string // stable, "claim-buy:dusk"; for faults of reading "" is allowed
	What  string // what is wrong: what was read and what was expected, with figures
	Hint  string // what to do
}

// Problems is a list of problems; as an error it holds at least one fault.
type Problems []Problem

// Error gives every problem, one a line.
func (ps Problems) Error() string {
	s := ""
	for i, p := range ps {
		if i > 0 {
			s += "\n"
		}
		s += p.At.String() + ": " + p.What
	}
	return s
}

// Sort puts problems in order of place, then level, then wording.
func (ps Problems) Sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.At.Sheet, b.At.Sheet), cmp.Compare(a.At.File, b.At.File), cmp.Compare(a.At.Line, b.At.Line),
			cmp.Compare(a.At.Col, b.At.Col), cmp.Compare(a.Level, b.Level), cmp.Compare(a.What, b.What))
	})
}

// Faulty says whether any of them is a fault.
func (ps Problems) Faulty() bool {
	return slices.ContainsFunc(ps, func(p Problem) bool { return p.Level == Fault })
}
