package main

import (
	"cutbinder/layout/plan"

	"github.com/urfave/cli/v2"
)

func (a *app) schemaCommand() *cli.Command {
	return &cli.Command{
		Name: "schema", Usage: "print a JSON Schema of plans, for editors",
		Description: "Editors that know YAML take it to offer keys and choices while a plan is typed,\n" +
			"and to underline what doesn't fit. Name it in the plan's first line:\n\n" +
			"   # yaml-language-server: $schema=plan.schema.json\n\n" +
			"Example:\n   cutbinder schema > plan.schema.json",
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return usage("cutbinder schema > plan.schema.json", "nothing more is expected, also read: %s", c.Args().First())
			}
			_, err := a.out.Write(plan.Schema())
			return err
		},
	}
}
