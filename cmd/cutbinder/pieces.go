package main

import (
	"fmt"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) piecesCommand() *cli.Command {
	return &cli.Command{
		Name: "pieces", Usage: "explain every cut size: the sum it comes from", ArgsUsage: "PLAN",
		Flags:  append(paperFlags(), limitFlag(), jsonFlag()),
		Action: a.pieces,
	}
}

// The shape of "pieces --json". Counts leave the spares out; widths and heights
// are in inches, the width of a strip across the whole width is 0.
type (
	piecesOut struct {
		Plan   string     `json:"plan"`
		Places []placeOut `json:"places"`
		Totals []totalOut `json:"totals"`
		Count  int        `json:"count"`
		Spares int        `json:"spares"`
	}
	// placeOut is a block, or what pieces of no block are for.
	placeOut struct {
		Block  string         `json:"block,omitempty"`
		Name   string         `json:"name"`
		Make   int            `json:"make,omitempty"`
		Pieces []explainedOut `json:"pieces"`
	}
	explainedOut struct {
		Line     int        `json:"line"`
		Cut      string     `json:"cut"`
		W        float64    `json:"w_in"`
		H        float64    `json:"h_in"`
		Finished string     `json:"finished,omitempty"`
		Unit     string     `json:"unit,omitempty"`
		Method   string     `json:"method,omitempty"`
		For      string     `json:"for,omitempty"` // what the plan says of a block's pieces
		Role     string     `json:"role,omitempty"`
		Units    int        `json:"units,omitempty"`
		Count    int        `json:"count"`
		Spares   int        `json:"spares"`
		Sum      string     `json:"sum"`
		Terms    []termOut  `json:"terms"`
		Becomes  string     `json:"becomes,omitempty"`
		Joins    string     `json:"joins,omitempty"`
		Fabrics  []shareOut `json:"fabrics"`
	}
	termOut struct {
		Side  string  `json:"side"` // "both", "width" or "length"
		What  string  `json:"what"` // one of trade.Whats, or "rounding"
		Words string  `json:"words"`
		Times int     `json:"times"`
		Each  float64 `json:"each_in"`
	}
	shareOut struct {
		ID     string `json:"id"`
		Name   string `json:"name"`
		Count  int    `json:"count"`
		Spares int    `json:"spares"`
	}
	totalOut struct {
		ID     string `json:"id"`
		Name   string `json:"name"`
		Sizes  int    `json:"sizes"`
		Count  int    `json:"count"`
		Spares int    `json:"spares"`
	}
)

func (a *app) pieces(c *cli.Context) error {
	p, src, err := a.readPlan(c, 0)
	if err != nil {
		return err
	}
	q, err := a.bags(c, p, src)
	if err != nil {
		return err
	}
	out := explained(q)
	if c.Bool("json") {
		return a.printJSON(out)
	}
	a.piecesText(out)
	return nil
}

func explained(q *sheets.Quilt) piecesOut {
	out := piecesOut{Plan: q.Plan.Title, Places: []placeOut{}, Totals: []totalOut{}}
	var lists []cutting.List
	for i := range q.Fabrics {
		lists = append(lists, q.Fabrics[i].List)
		t := totalOf(&q.Fabrics[i].List)
		out.Totals = append(out.Totals, t)
		out.Count += t.Count
		out.Spares += t.Spares
	}
	v := say.For(q.Plan).InPlain()
	for _, e := range cutting.Explain(q.Plan, lists) {
		place := placeFor(q.Plan, e)
		if n := len(out.Places); n == 0 || out.Places[n-1].Block != place.Block || out.Places[n-1].Name != place.Name {
			out.Places = append(out.Places, place)
		}
		last := &out.Places[len(out.Places)-1]
		last.Pieces = append(last.Pieces, explainedRow(v, e))
	}
	return out
}

func totalOf(l *cutting.List) totalOut {
	t := totalOut{ID: l.Fabric.ID, Name: l.Fabric.Name, Sizes: len(l.Pieces)}
	for _, p := range l.Pieces {
		t.Count += p.Need - p.Spares()
		t.Spares += p.Spares()
	}
	return t
}

// placeFor is where the pieces go.
func placeFor(p *plan.Plan, e cutting.Explained) placeOut {
	if b := p.Block(e.Block); b != nil && e.Block != "" {
		return placeOut{Block: b.ID, Name: b.Name, Make: b.Make}
	}
	if e.For == "" {
		return placeOut{Name: "loose pieces"}
	}
	return placeOut{Name: e.For}
}

func explainedRow(v say.Voice, e cutting.Explained) explainedOut {
	row := explainedOut{
		Line: e.At.Line, Cut: v.Size(e.Size), H: e.Size.H.Inches(), Role: e.Role, For: e.Note, Method: string(e.Method),
		Units: e.Units, Count: e.Count, Spares: e.Spares, Sum: v.Sum(e.CutSum), Becomes: v.Makes(e), Joins: v.Joins(e.Use),
	}
	if e.Size.W != length.WOF {
		row.W = e.Size.W.Inches()
	}
	if e.Finished.W > 0 {
		row.Finished = v.Size(e.Finished)
	}
	if e.Unit != plan.Patch {
		row.Unit = string(e.Unit)
	}
	side := "both"
	if e.CutSum.Along != nil {
		side = "width"
		row.Terms = termRows(*e.CutSum.Along, "length")
	} else if e.Size.W == length.WOF {
		side = "length"
	}
	row.Terms = append(termRows(e.CutSum, side), row.Terms...)
	for _, s := range e.Shares {
		row.Fabrics = append(row.Fabrics, shareOut{s.Fabric.ID, s.Fabric.Name, s.Count, s.Spares})
	}
	return row
}

func termRows(s trade.Sum, side string) (rows []termOut) {
	for _, t := range s.Terms {
		rows = append(rows, termOut{side, string(t.What), say.Term(t.What), max(t.Times, 1), t.Each.Inches()})
	}
	if s.Rounded != 0 {
		rows = append(rows, termOut{side, "rounding", "rounded up", 1, s.Rounded.Inches()})
	}
	return rows
}

func (a *app) piecesText(out piecesOut) {
	for _, p := range out.Places {
		head := p.Name
		if p.Block != "" {
			head = strings.TrimSuffix(p.Block+" "+p.Name, " "+p.Block)
			head += fmt.Sprintf(": make %d", p.Make)
		}
		fmt.Fprintln(a.out, head)
		for _, r := range p.Pieces {
			fmt.Fprintf(a.out, "  %s %s%s\n", say.Count(r.Count), r.Cut, tail(r))
			fmt.Fprintf(a.out, "      %s\n", r.Sum)
			if r.Joins != "" {
				fmt.Fprintf(a.out, "      %s\n", r.Joins)
			}
			fmt.Fprintf(a.out, "      %s\n", fabricsOf(r))
		}
		fmt.Fprintln(a.out)
	}
	for _, t := range out.Totals {
		fmt.Fprintf(a.out, "%s: %s of %s%s\n", t.Name, counted(t.Count, "piece", "pieces"), counted(t.Sizes, "size", "sizes"), spares(t.Spares))
	}
	fmt.Fprintf(a.out, "in all: %s%s\n", counted(out.Count, "piece", "pieces"), spares(out.Spares))
}

// tail is what a row's pieces are for.
func tail(r explainedOut) string {
	text := ""
	for _, word := range []string{say.Part(plan.Unit(r.Unit), r.Role), say.Noted(r.For)} {
		if word != "" {
			text += " " + word
		}
	}
	if r.Becomes != "" {
		text += ": " + r.Becomes
	}
	return text
}

// fabricsOf names the fabrics, with their counts where there are several.
func fabricsOf(r explainedOut) string {
	var names []string
	var counts []int
	for _, f := range r.Fabrics {
		names, counts = append(names, f.Name), append(counts, f.Count)
	}
	return "from " + strings.Join(say.Voice{Plain: true}.Counted(names, counts), ", ") + spares(r.Spares)
}

func spares(n int) string {
	if n == 0 {
		return ""
	}
	return " and " + say.Spares(n)
}
