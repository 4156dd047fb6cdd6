package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"cutbinder/layout/length"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) buyCommand() *cli.Command {
	return &cli.Command{
		Name: "buy", Usage: "print the shopping list", ArgsUsage: "PLAN",
		Flags:  append(paperFlags(), limitFlag(), jsonFlag()),
		Action: a.buy,
	}
}

// The shape of "buy --json".
type (
	shoppingOut struct {
		Plan    string       `json:"plan"`
		Mark    string       `json:"mark"`
		Fabrics []buyRowOut  `json:"fabrics"`
		Batting *sizeInchOut `json:"batting,omitempty"`
	}
	buyRowOut struct {
		ID     string   `json:"id"`
		Name   string   `json:"name"`
		Buy    buyOut   `json:"buy"`
		Metric string   `json:"also"`
		Used   float64  `json:"used_length_in"`
		Exact  float64  `json:"exact_in"`
		Width  float64  `json:"usable_width_in"`
		Have   []string `json:"have,omitempty"`
		Enough bool     `json:"enough"`
		Why    string   `json:"why"`
	}
	sizeInchOut struct {
		W float64 `json:"w_in"`
		H float64 `json:"h_in"`
	}
)

func (a *app) buy(c *cli.Context) error {
	q, err := a.load(c)
	if err != nil {
		return err
	}
	out := shopping(q)
	if c.Bool("json") {
		return a.printJSON(out)
	}
	w := tabwriter.NewWriter(a.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "FABRIC\tBUY\t\tFROM")
	for _, row := range out.Fabrics {
		if len(row.Have) > 0 {
			verdict := "on the shelf, enough"
			if !row.Enough {
				verdict = "on the shelf, too little"
			}
			fmt.Fprintf(w, "%s\t%s\t\t%s: %s\n", row.Name, verdict, strings.Join(row.Have, ", "), row.Why)
			continue
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s\n", row.Name, row.Buy.Text, row.Metric, row.Why)
	}
	if size, ok := q.BattingSize(); ok {
		v := say.For(q.Plan).InPlain()
		fmt.Fprintf(w, "batting\t%s %s\t\t\n", v.Size(size), v.Unit())
	}
	return w.Flush()
}

func shopping(q *sheets.Quilt) shoppingOut {
	v := say.For(q.Plan).InPlain()
	out := shoppingOut{Plan: q.Plan.Title, Mark: q.Bags.Mark, Fabrics: []buyRowOut{}}
	for i := range q.Fabrics {
		f := &q.Fabrics[i]
		row := buyRowOut{
			ID: f.Fabric.ID, Name: f.Fabric.Name, Buy: buyOut{v.ToBuy(f.Buy.Buy), f.Buy.Buy.Inches()},
			Used: f.Used.Inches(), Exact: rounded(f.Buy.Exact), Width: f.Fabric.Width.Inches(),
			Enough: f.Missing() == 0, Why: v.BuySum(q.Plan, f),
		}
		if f.Buy.Buy > 0 {
			row.Metric = v.Elsewhere(f.Buy.Buy)
		}
		for _, c := range f.Fabric.Have {
			row.Have = append(row.Have, c.Name)
			row.Why = v.Proof(q.Plan, f)
		}
		out.Fabrics = append(out.Fabrics, row)
	}
	if size, ok := q.BattingSize(); ok {
		out.Batting = &sizeInchOut{size.W.Inches(), size.H.Inches()}
	}
	return out
}

// rounded is a length in inches, rounded up to 1/64, where it comes from
// percentages and has no end of decimals.
func rounded(l length.Length) float64 {
	return ((l + length.Sixtyfourth - 1) / length.Sixtyfourth * length.Sixtyfourth).Inches()
}
