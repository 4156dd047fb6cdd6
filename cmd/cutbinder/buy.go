package main

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"text/tabwriter"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) buyCommand() *cli.Command {
	return &cli.Command{
		Name: "buy", Usage: "print the shopping list", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), limitFlag(), jsonFlag(),
			&cli.BoolFlag{Name: "csv", Usage: "print a table for spreadsheets"}),
		Action: a.buy,
	}
}

// The shape of "buy --json".
type (
	shoppingOut struct {
		Plan      string         `json:"plan"`
		Mark      string         `json:"mark"`
		Fabrics   []buyRowOut    `json:"fabrics"`
		Finishing []finishingOut `json:"finishing,omitempty"`
		Batting   *sizeInchOut   `json:"batting,omitempty"`
	}
	buyRowOut struct {
		ID      string      `json:"id"`
		Name    string      `json:"name"`
		Buy     buyOut      `json:"buy"`
		Metric  string      `json:"also"`
		Used    float64     `json:"used_length_in"`
		Exact   float64     `json:"exact_in"`
		Width   float64     `json:"usable_width_in"`
		Have    []string    `json:"have,omitempty"`
		Enough  bool        `json:"enough"`
		Why     string      `json:"why"`
		WhatIf  []whatIfOut `json:"what_if,omitempty"`
		Lacking []lackOut   `json:"lacking,omitempty"`
		More    *moreOut    `json:"more,omitempty"`
		Helps   []string    `json:"helps,omitempty"`

		metres float64
	}
	// whatIfOut is a usable width at which the purchase changes.
	whatIfOut struct {
		Width float64 `json:"usable_width_in"`
		Fits  bool    `json:"fits"`
		Buy   buyOut  `json:"buy"`
	}
	lackOut struct {
		Cut    string  `json:"cut"`
		W      float64 `json:"w_in"`
		H      float64 `json:"h_in"`
		Count  int     `json:"count"`
		Spares int     `json:"spares"`
	}
	// moreOut is one more cut that holds what is lacking.
	moreOut struct {
		Length float64 `json:"length_in"`
		Width  float64 `json:"width_in"`
		Buy    buyOut  `json:"buy"`
	}
	finishingOut struct {
		What   string `json:"what"`
		Fabric string `json:"fabric"`
		Count  int    `json:"count"`
		Cut    string `json:"cut"`
	}
	sizeInchOut struct {
		W float64 `json:"w_in"`
		H float64 `json:"h_in"`
	}
)

func (a *app) buy(c *cli.Context) error {
	if c.Bool("json") && c.Bool("csv") {
		return usage("choose one", "--json and --csv can't both be printed")
	}
	q, err := a.load(c)
	if err != nil {
		return err
	}
	if err := advise(c, q); err != nil {
		return err
	}
	out := shopping(q)
	switch {
	case c.Bool("json"):
		return a.printJSON(out)
	case c.Bool("csv"):
		return a.buyCSV(out)
	}
	return a.buyText(q, out)
}

func (a *app) buyText(q *sheets.Quilt, out shoppingOut) error {
	v := say.For(q.Plan).InPlain()
	w := tabwriter.NewWriter(a.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "FABRIC\tBUY\t\tFROM")
	more := func(text string) { fmt.Fprintf(w, "\t\t\t%s\n", text) }
	for i, row := range out.Fabrics {
		f := &q.Fabrics[i]
		if len(row.Have) == 0 {
			fmt.Fprintf(w, "%s\t%s\t%s\t%s\n", row.Name, row.Buy.Text, row.Metric, row.Why)
			if what := v.WhatIf(f, q.WidthsOf(f)); what != "" {
				more(what)
			}
			continue
		}
		if row.Enough {
			fmt.Fprintf(w, "%s\ton the shelf, enough\t\t%s: %s\n", row.Name, v.Shelf(f.Fabric.Have), row.Why)
			continue
		}
		fmt.Fprintf(w, "%s\ton the shelf, too little\t\t%s: %s\n", row.Name, v.Shelf(f.Fabric.Have), row.Why)
		for _, text := range row.Helps {
			more(text)
		}
	}
	for _, f := range out.Finishing {
		fmt.Fprintf(w, "%s\t%s %s\t\tfrom %s, counted in its length\n", f.What, say.Count(f.Count), f.Cut, f.Fabric)
	}
	if size, ok := q.BattingSize(); ok {
		fmt.Fprintf(w, "batting\t%s %s\n", v.Size(size), v.Unit())
	}
	return w.Flush()
}

func shopping(q *sheets.Quilt) shoppingOut {
	v := say.For(q.Plan).InPlain()
	out := shoppingOut{Plan: q.Plan.Title, Mark: q.Bags.Mark, Fabrics: []buyRowOut{}}
	for i := range q.Fabrics {
		out.Fabrics = append(out.Fabrics, buyRow(q, &q.Fabrics[i], v))
	}
	for _, f := range q.Finishings() {
		out.Finishing = append(out.Finishing, finishingOut{f.What, f.Fabric.Fabric.Name, f.Count, v.Size(f.Size)})
	}
	if size, ok := q.BattingSize(); ok {
		out.Batting = &sizeInchOut{size.W.Inches(), size.H.Inches()}
	}
	return out
}

func buyRow(q *sheets.Quilt, f *cutting.Fabric, v say.Voice) buyRowOut {
	row := buyRowOut{
		ID: f.Fabric.ID, Name: f.Fabric.Name, Buy: asked(v, f.Buy.Buy), metres: metres(f.Buy.Buy),
		Used: f.Used.Inches(), Exact: rounded(f.Buy.Exact), Width: f.Fabric.Width.Inches(),
		Enough: f.Missing() == 0, Why: v.BuySum(q.Plan, f),
	}
	if f.Buy.Buy > 0 {
		row.Metric = v.Elsewhere(f.Buy.Buy)
	}
	for _, w := range say.Changes(f, q.WidthsOf(f)) {
		row.WhatIf = append(row.WhatIf, whatIfOut{w.Width.Inches(), w.Fits, asked(v, w.Buy.Buy)})
	}
	for _, c := range f.Fabric.Have {
		row.Have = append(row.Have, c.Name)
		row.Why = v.Proof(q.Plan, f)
	}
	short := q.Shortage(f)
	if short == nil {
		return row
	}
	row.Why, row.Helps = v.Lacking(f, short), v.Remedies(f, short)
	for _, l := range short.Lacks {
		size := f.Pieces[l.Piece].Size
		row.Lacking = append(row.Lacking, lackOut{v.Size(size), size.W.Inches(), size.H.Inches(), l.Count, l.Spares})
	}
	if short.More > 0 {
		row.More = &moreOut{rounded(short.More), f.Fabric.Width.Inches(), asked(v, short.Buy.Buy)}
	}
	return row
}

func asked(v say.Voice, l length.Length) buyOut { return buyOut{v.ToBuy(l), l.Inches()} }

// buyCSV prints a row a fabric, and one for the batting.
func (a *app) buyCSV(out shoppingOut) error {
	w := csv.NewWriter(a.out)
	w.Write([]string{"id", "fabric", "usable_width_in", "buy", "also", "buy_in", "buy_m", "used_length_in", "exact_in", "have", "enough", "more", "what_if", "why"})
	number := func(f float64) string {
		return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(f, 'f', 4, 64), "0"), ".")
	}
	for _, r := range out.Fabrics {
		more, enough := "", "yes"
		if !r.Enough {
			enough = "no"
		}
		if r.More != nil {
			more = r.More.Buy.Text
		}
		var what []string
		for _, x := range r.WhatIf {
			buy := x.Buy.Text
			if !x.Fits {
				buy = "too narrow"
			}
			what = append(what, fmt.Sprintf("%s in: %s", number(x.Width), buy))
		}
		w.Write([]string{r.ID, r.Name, number(r.Width), r.Buy.Text, r.Metric, number(r.Buy.In), number(r.metres), number(r.Used), number(r.Exact),
			strings.Join(r.Have, "; "), enough, more, strings.Join(what, "; "), r.Why})
	}
	if b := out.Batting; b != nil {
		w.Write([]string{"", "batting", number(b.W), "", "", number(b.H), "", "", "", "", "", "", "", ""})
	}
	w.Flush()
	return w.Error()
}

// metres is a length in metres, rounded up to whole millimetres.
func metres(l length.Length) float64 {
	return float64((l+length.MM-1)/length.MM) / 1000
}

// rounded is a length in inches, rounded up to 1/64, where it comes from
// percentages and has no end of decimals.
func rounded(l length.Length) float64 {
	return ((l + length.Sixtyfourth - 1) / length.Sixtyfourth * length.Sixtyfourth).Inches()
}
