package main

import (
	"fmt"

	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func journalFlag() cli.Flag {
	return &cli.StringFlag{Name: "journal", Usage: "look through the `FILE` of bags that scan has seen"}
}

// journalled compares the bags of a plan with those that a journal says were
// seen: which are still missing, and which labels no longer say what is in the
// bag.
func (a *app) journalled(c *cli.Context, q *sheets.Quilt) (plan.Problems, error) {
	name := c.String("journal")
	if name == "" {
		return nil, nil
	}
	codes, _, err := readJournal(name)
	if err != nil {
		return nil, err
	}
	var problems plan.Problems
	seen := map[int]bool{}
	for _, code := range codes {
		answer := q.Bags.Lookup(code)
		if answer.OK() {
			seen[answer.Bag.Number] = true
			continue
		}
		problems = append(problems, plan.Problem{At: plan.Pos{File: name}, Level: plan.Doubt, ID: "journal:" + code.String(),
			What: fmt.Sprintf("%s was seen, but it is of %s", code, answer.Problem), Hint: answer.Hint})
	}
	var missing []int
	for _, b := range q.Bags.Bags {
		if !seen[b.Number] {
			missing = append(missing, b.Number)
		}
	}
	if len(missing) > 0 {
		problems = append(problems, plan.Problem{At: plan.Pos{File: name}, Level: plan.Remark, ID: "journal-missing",
			What: fmt.Sprintf("%d of %d bags were seen; not yet: %s", len(seen), len(q.Bags.Bags), say.BagList(missing)),
			Hint: "scan their labels, or look for them before you sew"})
	}
	return problems, nil
}
