package main

import (
	"fmt"
	"slices"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/audit"

	"github.com/urfave/cli/v2"
)

func (a *app) checkCommand() *cli.Command {
	return &cli.Command{
		Name: "check", Usage: "audit the plan: every fault and every doubt", ArgsUsage: "PLAN",
		Flags:  append(paperFlags(), limitFlag(), jsonFlag()),
		Action: a.check,
	}
}

// A finding is one line of "check --json".
type finding struct {
	ID    string `json:"id"`
	Level string `json:"level"`
	File  string `json:"file"`
	Line  int    `json:"line"`
	Col   int    `json:"col"`
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
			out = append(out, finding{f.ID, f.Level.String(), f.At.File, f.At.Line, f.At.Col, f.What, f.Hint})
		}
		err = a.printJSON(out)
	} else {
		withIDs(problems).Render(a.out, src.text)
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
	found, err = audit.Audit(c.Context, p, q.Fabrics, asides(c))
	problems = append(problems, found...)
	problems.Sort()
	return problems, err
}

// asides is the work that questions beside the plan's own layout may take: a
// tenth of what --limit allows.
func asides(c *cli.Context) cutting.Options {
	o := effort(c)
	o.Effort = max(o.Effort/10, 1)
	return o
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
