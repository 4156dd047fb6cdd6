package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) cutsCommand() *cli.Command {
	return &cli.Command{
		Name: "cuts", Usage: "print the cutting steps of each fabric", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), limitFlag(), jsonFlag(),
			&cli.StringFlag{Name: "fabric", Usage: "only the fabric of this `ID`"}),
		Action: a.cuts,
	}
}

func (a *app) cuts(c *cli.Context) error {
	q, err := a.load(c)
	if err != nil {
		return err
	}
	fabrics, err := chosen(q, c.String("fabric"))
	if err != nil {
		return err
	}
	if c.Bool("json") {
		return a.printJSON(cutsJSON(q, fabrics))
	}
	v := say.For(q.Plan).InPlain()
	for i, f := range fabrics {
		if i > 0 {
			fmt.Fprintln(a.out)
		}
		a.cutText(q, f, v)
	}
	return nil
}

// chosen is all fabrics, or the one of the id.
func chosen(q *sheets.Quilt, id string) ([]*cutting.Fabric, error) {
	var all []*cutting.Fabric
	for i := range q.Fabrics {
		if f := &q.Fabrics[i]; id == "" || f.Fabric.ID == id {
			all = append(all, f)
		}
	}
	if len(all) == 0 && id != "" {
		return nil, noFabric(q, id)
	}
	return all, nil
}

// noFabric is the failure where nothing is cut from what is named as a fabric.
func noFabric(q *sheets.Quilt, id string) error {
	var ids []string
	for i := range q.Fabrics {
		ids = append(ids, q.Fabrics[i].Fabric.ID)
	}
	return usage(nearest(id, ids), "no pieces are cut from a fabric %q", id)
}

// nearest is the hint where a name isn't among those of the plan.
func nearest(name string, names []string) string {
	if near := plan.Nearest(name, names); near != "" {
		return fmt.Sprintf("did you mean %s?", near)
	}
	if len(names) > 20 {
		return ""
	}
	return "the plan has " + strings.Join(names, ", ")
}

func (a *app) cutText(q *sheets.Quilt, f *cutting.Fabric, v say.Voice) {
	fmt.Fprintf(a.out, "%s\n", f.Fabric.Name)
	for _, piece := range f.Pieces {
		fmt.Fprintf(a.out, "  %s %s: %s\n", say.Count(piece.Need), v.Size(piece.Size), say.BagList(q.BagsOf(f, piece)))
	}
	for i := range f.Cloths {
		cloth := &f.Cloths[i]
		fmt.Fprintf(a.out, "  %s, %s\n", cloth.Name, v.Cloth(cloth))
		for _, line := range v.Steps(q.Plan, f, cloth) {
			indent := ""
			if line.Inner {
				indent = "  "
			}
			fmt.Fprintf(a.out, "  %5s  %s%s\n", line.Label, indent, line.Text)
		}
	}
	for i, n := range f.Short {
		if n > 0 {
			fmt.Fprintf(a.out, "  short: %s %s find no place\n", say.Count(n), v.Size(f.Pieces[i].Size))
		}
	}
	fmt.Fprintf(a.out, "  %s\n", v.Proof(q.Plan, f))
}

func (a *app) printJSON(value any) error {
	enc := json.NewEncoder(a.out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", " ")
	return enc.Encode(value)
}
