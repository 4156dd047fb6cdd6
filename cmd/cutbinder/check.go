package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/audit"

	"github.com/urfave/cli/v2"
)

func (a *app) checkCommand() *cli.Command {
	return &cli.Command{
		Name: "check", Usage: "audit the plan: every fault and every doubt", ArgsUsage: "PLAN",
		Flags:  append(paperFlags(), limitFlag(), fontFlag(), jsonFlag(), journalFlag()),
		Action: a.check,
	}
}

// A finding is one entry of "check --json". Of a workbook, Cell is the place, Line
// its row and Col its column.
type finding struct {
	ID    string `json:"id"`
	Level string `json:"level"`
	File  string `json:"file"`
	Line  int    `json:"line"`
	Col   int    `json:"col"`
	Cell  string `json:"cell,omitempty"`
	What  string `json:"what"`
	Hint  string `json:"hint"`
}

func (a *app) check(c *cli.Context) error {
	src, err := a.planFile(c, 0)
	if err != nil {
		return err
	}
	problems, err := a.audit(c, src)
	if err != nil {
		return err
	}
	if c.Bool("json") {
		out := []finding{}
		for _, f := range problems {
			out = append(out, finding{f.ID, f.Level.String(), f.At.File, f.At.Line, f.At.Col, f.At.Cell, f.What, f.Hint})
		}
		err = a.printJSON(out)
	} else {
		withIDs(problems).Render(a.painted(a.out), src.text)
		fmt.Fprintln(a.out, verdict(problems))
	}
	if err == nil && problems.Faulty() {
		return said
	}
	return err
}

// audit reads a plan and looks through it: the faults of reading it, or what
// working it out shows.
func (a *app) audit(c *cli.Context, src source) (plan.Problems, error) {
	p, problems := plan.Read(src.name, src.text)
	if problems.Faulty() {
		if sound := plan.Sound(src.name, src.text); sound != nil {
			_, found := cutting.Pieces(sound)
			problems = append(problems, found...)
			problems.Sort()
		}
		return problems, nil
	}
	if err := override(c, p); err != nil {
		return nil, err
	}
	q, found, err := sheets.Work(c.Context, p, effort(c))
	problems = append(problems, found...)
	if err != nil || problems.Faulty() {
		return problems, err
	}
	found, err = audit.Audit(c.Context, p, q.Fabrics, asides(c, auditPart))
	problems = append(problems, found...)
	if err != nil {
		return nil, err
	}
	found, err = a.unprintable(c, q, src)
	problems = append(problems, found...)
	if err == nil {
		found, err = a.journalled(c, q)
		problems = append(problems, found...)
	}
	problems.Sort()
	return problems, err
}

// unprintable is what keeps a binder from being printed though its plan can be
// cut: a label sheet that isn't known or holds no code, a character that no face
// has, a face that can't be read.
func (a *app) unprintable(c *cli.Context, q *sheets.Quilt, src source) (plan.Problems, error) {
	set, err := a.faces(c, q.Plan, src)
	var failed failure
	switch own := c.String("font") == "" && q.Plan.Font != ""; {
	case own && errors.As(err, &failed):
		at := q.Plan.Place("font")
		return plan.Problems{{At: at, ID: "font", What: strings.TrimPrefix(failed.message, at.String()+": "), Hint: failed.hint}}, nil
	case err != nil:
		return nil, err
	}
	problems := q.MissingGlyphs(set)
	_, found := q.LabelSheets(nil, sheets.Options{Fonts: set})
	return append(problems, found...), nil
}

// The work that a fabric may take in questions beside the plan's own layout, as
// parts of what --limit allows. What is found wrong must be so, advice may be
// the better for more.
const (
	auditPart  = 10
	advicePart = 20
)

// asides is one part of so many of the work that --limit allows, or of a
// second's.
func asides(c *cli.Context, parts int64) cutting.Options {
	o := effort(c)
	if o.Effort == 0 {
		o.Effort = pack.EffortPerSecond
	}
	o.Effort = max(o.Effort/parts, 1)
	return o
}

// advise works out a quilt's advice. Nobody cuts by what is found of other
// widths; what is short is said as check says it.
func advise(c *cli.Context, q *sheets.Quilt) error {
	widths := asides(c, advicePart)
	widths.Brief = true
	return q.Advise(c.Context, asides(c, auditPart), widths)
}

// withIDs puts the id under each doubt and note, by which a plan accepts it.
func withIDs(problems plan.Problems) plan.Problems {
	shown := slices.Clone(problems)
	for i := range shown {
		if p := &shown[i]; p.Level != plan.Fault && p.ID != "" && p.Hint != "" {
			p.Hint += "\n  id: " + p.ID
		}
	}
	return shown
}

// verdict counts what was found.
func verdict(problems plan.Problems) string {
	var n [3]int
	for _, p := range problems {
		n[p.Level]++
	}
	if len(problems) == 0 {
		return "nothing to mend"
	}
	text := fmt.Sprintf("%s, %s, %s", counted(n[plan.Fault], "fault", "faults"),
		counted(n[plan.Doubt], "doubt", "doubts"), counted(n[plan.Remark], "note", "notes"))
	if n[plan.Doubt] > 0 {
		text += "\na doubt that is all right is accepted by its id: write accept: {ID: why} in the plan"
	}
	return text
}
