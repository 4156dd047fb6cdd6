package main

import (
	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

func (a *app) labelsCommand() *cli.Command {
	return &cli.Command{
		Name: "labels", Usage: "print the bag labels alone", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), outFlag(), fontFlag(),
			&cli.StringFlag{Name: "stock", Usage: "label sheet of this `SIZE`: \"2 5/8 x 1 in\"; plain"},
			&cli.BoolFlag{Name: "no-gutter", Usage: "the sheet's labels touch"},
			&cli.IntFlag{Name: "skip", Usage: "leave out the first `N` labels of a sheet already begun"},
			&cli.StringFlag{Name: "bags", Usage: "only these `BAGS`: 3,7-9"},
			&cli.IntFlag{Name: "per-bag", Usage: "print `N` labels for each bag"},
			&cli.BoolFlag{Name: "cards", Usage: "quarter pages to slip into the bags"},
			&cli.BoolFlag{Name: "fabrics", Usage: "a label for each fabric, with room for a snippet"},
			&cli.BoolFlag{Name: "outline", Usage: "the grid alone, to be held against a label sheet"},
			&cli.StringFlag{Name: "shift", Usage: "move everything by `X,Y` tenths of a millimetre, right and down"},
			&cli.StringFlag{Name: "stretch", Usage: "stretch everything by `X,Y` percent"}),
		Action: a.labels,
	}
}

func (a *app) labels(c *cli.Context) error {
	o, err := labelOptions(c)
	if err != nil {
		return err
	}
	p, src, err := a.readPlan(c, 0)
	if err != nil {
		return err
	}
	if c.IsSet("stock") || c.Bool("no-gutter") {
		if c.IsSet("stock") {
			p.Labels = plan.Labels{Node: p.Labels.Node, Stock: c.String("stock"), PerBag: p.Labels.PerBag}
		}
		p.Labels.NoGutter = c.Bool("no-gutter")
		if _, err := sheets.StockOf(p.Labels, p.Paper); err != nil {
			return usage("cutbinder stocks lists the sheets it knows", "%v", err)
		}
	}
	set, err := a.faces(c, p, src)
	if err != nil {
		return err
	}
	q, err := a.bags(c, p, src)
	if err != nil {
		return err
	}
	if o.Bags, err = bagNumbers(c, q); err != nil {
		return err
	}
	if o, err = q.LabelDefaults(o); err != nil {
		return fault("cutbinder stocks lists the sheets it knows", "%v", err)
	}
	if err := a.told(q.MissingGlyphs(set), src, nil); err != nil {
		return err
	}
	doc, err := sheets.Labels(q, o, page.NewStyle(set))
	if err != nil {
		return fault("cutbinder stocks lists the sheets it knows", "%v", err)
	}
	return a.writePDF(c, src, doc, "-labels.pdf")
}

func bagNumbers(c *cli.Context, q *sheets.Quilt) ([]int, error) {
	if !c.IsSet("bags") {
		return nil, nil
	}
	numbers, err := sheets.ParseBags(c.String("bags"), len(q.Bags.Bags))
	if err != nil {
		return nil, usage("--bags 3,7-9", "%v", err)
	}
	return numbers, nil
}

func labelOptions(c *cli.Context) (sheets.LabelOptions, error) {
	o := sheets.LabelOptions{Skip: c.Int("skip"), PerBag: c.Int("per-bag")}
	kinds := 0
	for _, k := range []struct {
		flag string
		kind sheets.LabelKind
	}{{"cards", sheets.BagCards}, {"fabrics", sheets.FabricLabels}, {"outline", sheets.LabelOutline}} {
		if c.Bool(k.flag) {
			o.Kind = k.kind
			kinds++
		}
	}
	if kinds > 1 {
		return o, usage("choose one of --cards, --fabrics, --outline", "%d kinds of labels are asked for at once", kinds)
	}
	var err error
	if o.Adjust, err = sheets.ParseAdjust(c.String("shift"), c.String("stretch")); err != nil {
		return o, usage(`--shift 5,-12 --stretch 0.3,0`, "%v", err)
	}
	return o, nil
}
