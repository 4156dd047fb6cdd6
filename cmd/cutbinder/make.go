package main

import (
	"io"
	"path/filepath"
	"strings"

	"cutbinder/fonts"
	"cutbinder/layout/page"
	"cutbinder/layout/pdf"
	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

func (a *app) makeCommand() *cli.Command {
	return &cli.Command{
		Name: "make", Usage: "print the whole binder as one PDF", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), limitFlag(), outFlag(),
			&cli.StringFlag{Name: "only", Usage: "only these `PARTS`, with commas: " + strings.Join(sheets.PartNames(), ",")},
			&cli.BoolFlag{Name: "two-sided", Usage: "alternate the punching margin"},
			&cli.BoolFlag{Name: "large", Usage: "large print"},
			&cli.StringFlag{Name: "ink", Value: "full", Usage: "full, or light for little `INK`"}),
		Action: a.make,
	}
}

func outFlag() cli.Flag {
	return &cli.StringFlag{Name: "output", Aliases: []string{"o"}, Usage: "write to `FILE`; - is standard output"}
}

func (a *app) make(c *cli.Context) error {
	o, err := binderOptions(c)
	if err != nil {
		return err
	}
	q, err := a.load(c)
	if err != nil {
		return err
	}
	doc, problems := sheets.Binder(q, o)
	if len(problems) > 0 {
		problems.Render(a.err, nil)
		if problems.Faulty() {
			return said
		}
	}
	return a.writePDF(c, doc, ".pdf")
}

func binderOptions(c *cli.Context) (sheets.Options, error) {
	o := sheets.Options{Fonts: fonts.Default(), TwoSided: c.Bool("two-sided"), Large: c.Bool("large")}
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
func (a *app) writePDF(c *cli.Context, doc page.Document, ending string) error {
	name := c.String("output")
	if name == "" {
		in := c.Args().First()
		name = strings.TrimSuffix(in, filepath.Ext(in)) + ending
	}
	err := a.writeFile(name, func(w io.Writer) error { return pdf.Write(w, doc) })
	if err == nil && name != "-" {
		a.say("wrote %s: %s", name, counted(len(doc.Pages), "page", "pages"))
	}
	return err
}
