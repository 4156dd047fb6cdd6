package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) makeCommand() *cli.Command {
	return &cli.Command{
		Name: "make", Usage: "print the whole binder as one PDF", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), limitFlag(), outFlag(), fontFlag(),
			&cli.StringFlag{Name: "only", Usage: "only these `PARTS`, with commas: " + strings.Join(sheets.PartNames(), ",")},
			&cli.StringFlag{Name: "since", Usage: "only what has changed since the plan `OLD`"},
			&cli.BoolFlag{Name: "watch", Usage: "write it again each time the plan is saved"},
			&cli.BoolFlag{Name: "two-sided", Usage: "alternate the punching margin"},
			&cli.BoolFlag{Name: "each-way", Usage: "every paper and hand, into the folder named with -o"},
			largeFlag(), inkFlag()),
		Action: func(c *cli.Context) error {
			if c.Bool("watch") {
				return a.watch(c, a.make)
			}
			return a.make(c)
		},
	}
}

func largeFlag() cli.Flag { return &cli.BoolFlag{Name: "large", Usage: "large print"} }

func inkFlag() cli.Flag {
	return &cli.StringFlag{Name: "ink", Value: "full", Usage: "full, or light for little `INK`"}
}

func outFlag() cli.Flag {
	return &cli.StringFlag{Name: "output", Aliases: []string{"o"}, Usage: "write to `FILE`; - is standard output"}
}

func (a *app) make(c *cli.Context) error {
	p, src, o, err := a.binderPlan(c)
	if err != nil {
		return err
	}
	q, err := a.quilt(c, p, src)
	if err != nil {
		return err
	}
	if err := advise(c, q); err != nil {
		return err
	}
	if c.IsSet("since") {
		return a.since(c, q, src, o)
	}
	if c.Bool("each-way") {
		if err := a.eachWay(c, q, src, o); err != nil {
			return err
		}
		a.tooLittle(q)
		return nil
	}
	doc, problems := sheets.Binder(q, o)
	if err := a.told(problems, src, nil); err != nil {
		return err
	}
	if err := a.writePDF(c, src, doc, ".pdf"); err != nil {
		return err
	}
	a.tooLittle(q)
	return nil
}

// tooLittle says whose shelves are too small: the binder tells what is missing, but
// nobody should cut before she has seen that page.
func (a *app) tooLittle(q *sheets.Quilt) {
	var names []string
	for i := range q.Fabrics {
		if q.Fabrics[i].Missing() > 0 {
			names = append(names, q.Fabrics[i].Fabric.Name)
		}
	}
	if len(names) > 0 {
		a.say("too little is on the shelf of %s; the shopping list tells what is missing", say.Things(names))
	}
}

// eachWay writes a binder for each paper and hand into a folder. The cutting is
// the same for all of them.
func (a *app) eachWay(c *cli.Context, q *sheets.Quilt, src source, o sheets.Options) error {
	folder := c.String("output")
	switch {
	case folder == "-":
		return usage("-o FOLDER", "--each-way writes four files, which standard output can't hold")
	case folder == "":
		folder = src.base()
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return cannotWrite(folder, err)
	}
	base := filepath.Base(src.base())
	for _, paper := range []plan.Paper{plan.Letter, plan.A4} {
		for _, hand := range []plan.Hand{plan.RightHand, plan.LeftHand} {
			p := *q.Plan
			if p.Paper != paper { // the plan's label sheet is for the plan's paper
				p.Labels = plan.Labels{Node: p.Labels.Node, PerBag: p.Labels.PerBag}
			}
			p.Paper, p.Hand = paper, hand
			way := *q
			way.Plan = &p
			doc, problems := sheets.Binder(&way, o)
			if err := a.told(problems, src, nil); err != nil {
				return err
			}
			if err := a.writeDocument(filepath.Join(folder, fmt.Sprintf("%s-%s-%s.pdf", base, paper, hand)), doc); err != nil {
				return err
			}
		}
	}
	return nil
}

// binderPlan reads the options of a binder and the plan it is printed from, with
// the faces that either names.
func (a *app) binderPlan(c *cli.Context) (p *plan.Plan, src source, o sheets.Options, err error) {
	if o, err = binderOptions(c); err == nil {
		p, src, err = a.readPlan(c, 0)
	}
	if err == nil {
		o.Fonts, err = a.faces(c, p, src)
	}
	return p, src, o, err
}

// binderOptions are the options that --two-sided, --large, --ink and --only ask for.
func binderOptions(c *cli.Context) (sheets.Options, error) {
	o := sheets.Options{TwoSided: c.Bool("two-sided"), Large: c.Bool("large")}
	switch ink := c.String("ink"); ink {
	case "full":
	case "light":
		o.LightInk = true
	default:
		return o, usage("--ink full or --ink light", "there is no ink %q", ink)
	}
	if !c.IsSet("only") {
		return o, nil
	}
	for _, name := range strings.Split(c.String("only"), ",") {
		part, ok := sheets.PartNamed(strings.TrimSpace(name))
		if !ok {
			return o, usage("the parts are "+strings.Join(sheets.PartNames(), ", "), "there is no part %q", name)
		}
		o.Only = append(o.Only, part)
	}
	return o, nil
}

// writePDF writes a document to the file named with -o, or beside the plan.
func (a *app) writePDF(c *cli.Context, src source, doc page.Document, ending string) error {
	name := c.String("output")
	if name == "" {
		name = src.base() + ending
	}
	return a.writeDocument(name, doc)
}

func (a *app) writeDocument(name string, doc page.Document) error {
	if n := len(doc.Pages); n > maxPages {
		return fault("print it in parts with --only, or part the plan", "the document has %d pages; expected at most %d", n, maxPages)
	}
	err := a.writeFile(name, func(w io.Writer) error { return pdf.Write(w, doc) })
	if err == nil && name != "-" {
		a.say("wrote %s: %s", name, counted(len(doc.Pages), "page", "pages"))
	}
	return err
}
