package main

import (
	"fmt"
	"text/tabwriter"

	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

func (a *app) stocksCommand() *cli.Command {
	return &cli.Command{Name: "stocks", Usage: "list the label sheets it knows", Action: a.stocks}
}

func (a *app) stocks(c *cli.Context) error {
	if c.NArg() > 0 {
		return usage("cutbinder stocks", "nothing more is expected, also read: %s", c.Args().First())
	}
	w := tabwriter.NewWriter(a.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "PAPER\tLABEL\tMM\tA SHEET\tFIRST LEFT, TOP MM\tSTEP ACROSS, DOWN MM\tGUTTER")
	for _, s := range sheets.Stocks() {
		fmt.Fprintln(w, s.Row())
	}
	return w.Flush()
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
