package main

import (
	"fmt"

	"cutbinder/layout/length"
	"cutbinder/sheets"
	"cutbinder/sheets/changes"
	"cutbinder/sheets/say"

	"github.com/urfave/cli/v2"
)

func (a *app) changesCommand() *cli.Command {
	return &cli.Command{
		Name: "changes", Usage: "tell what differs between two versions of a plan", ArgsUsage: "OLD NEW",
		Flags:  append(paperFlags(), limitFlag(), fontFlag(), jsonFlag()),
		Action: a.changes,
	}
}

func (a *app) changes(c *cli.Context) error {
	if c.NArg() != 2 {
		return usage("cutbinder changes OLD NEW", "%d plans are named; expected two: the older and the newer", c.NArg())
	}
	old, err := a.version(c, c.Args().Get(0), sheets.Options{})
	if err != nil {
		return err
	}
	now, err := a.version(c, c.Args().Get(1), sheets.Options{})
	if err != nil {
		return err
	}
	found := changes.Compare(old, now)
	if c.Bool("json") {
		return a.printJSON(changesJSON(found))
	}
	v := say.For(now.Plan).InPlain()
	if found.None() {
		fmt.Fprintln(a.out, "nothing differs")
	}
	for i, m := range found.Words(v) {
		if i > 0 {
			fmt.Fprintln(a.out)
		}
		fmt.Fprintln(a.out, m.Head)
		for _, line := range m.Lines {
			fmt.Fprintf(a.out, "  %s\n", line)
		}
	}
	return nil
}

// version reads a version of a plan, works it out and sets its binder.
func (a *app) version(c *cli.Context, name string, o sheets.Options) (changes.Binder, error) {
	src, err := a.openPlan(name)
	if err != nil {
		return changes.Binder{}, err
	}
	p, err := a.planOf(c, src)
	if err != nil {
		return changes.Binder{}, err
	}
	if o.Fonts, err = a.faces(c, p, src); err != nil {
		return changes.Binder{}, err
	}
	q, err := a.quilt(c, p, src)
	if err != nil {
		return changes.Binder{}, err
	}
	if err := advise(c, q); err != nil {
		return changes.Binder{}, err
	}
	doc, problems := sheets.Binder(q, o)
	return changes.Binder{Quilt: q, Document: doc}, a.told(problems, src, nil)
}

// since prints what has changed since an older version, in place of the whole
// binder.
func (a *app) since(c *cli.Context, q *sheets.Quilt, src source, o sheets.Options) error {
	if len(o.Only) > 0 || c.Bool("each-way") {
		return usage("leave --only and --each-way out", "--since prints what has changed of the whole binder")
	}
	old, err := a.version(c, c.String("since"), o)
	if err != nil {
		return err
	}
	doc, problems := sheets.Binder(q, o)
	if err := a.told(problems, src, nil); err != nil {
		return err
	}
	now := changes.Binder{Quilt: q, Document: doc}
	found := changes.Compare(old, now)
	if found.None() {
		a.say("nothing differs from %s: nothing was written", c.String("since"))
		return nil
	}
	doc, problems = found.Document(now, o)
	if err := a.told(problems, src, nil); err != nil {
		return err
	}
	return a.writePDF(c, src, doc, "-changes.pdf")
}

// What "changes --json" prints. Lengths are in inches, whatever the plan's units.
type changesOut struct {
	Old     string         `json:"old_version"`
	New     string         `json:"new_version"`
	Same    bool           `json:"same"`
	Fabrics []fabricChange `json:"fabrics"`
	Bags    []bagChange    `json:"bags"`
	Print   printOut       `json:"print"`
	Keep    keepOut        `json:"keep"`
	TakeOut []int          `json:"take_out"`
}

type fabricChange struct {
	ID        string      `json:"id"`
	Kind      string      `json:"kind"`
	BuyBefore float64     `json:"buy_before_in"`
	Buy       float64     `json:"buy_in"`
	Cuts      []cutChange `json:"cuts"`
}

type cutChange struct {
	Cut     string `json:"cut"`
	Before  int    `json:"before"`
	Now     int    `json:"now"`
	Instead string `json:"instead_of,omitempty"`
}

type bagChange struct {
	Bag    int    `json:"bag"`
	Before int    `json:"before"`
	Kind   string `json:"kind"`
	Code   string `json:"code"`
}

type printOut struct {
	Pages  []int `json:"pages"`
	Labels []int `json:"labels"`
}

type keepOut struct {
	Pages  [][2]int `json:"pages"` // old number, new number
	Labels []int    `json:"labels"`
}

func changesJSON(c *changes.Changes) changesOut {
	out := changesOut{Old: c.Old.Plan.Version, New: c.New.Plan.Version, Same: c.None(), Fabrics: []fabricChange{}, Bags: []bagChange{},
		Print: printOut{Pages: []int{}, Labels: list(c.Labels)}, Keep: keepOut{Pages: [][2]int{}, Labels: list(c.Good)}, TakeOut: list(c.Out)}
	inches := func(l length.Length) float64 { return float64(l) / float64(length.Inch) }
	for _, f := range c.Fabrics {
		d := fabricChange{ID: f.ID, Kind: string(f.Kind), BuyBefore: inches(f.BuyBefore), Buy: inches(f.Buy), Cuts: []cutChange{}}
		for _, cut := range f.Cuts {
			one := cutChange{Cut: length.Imperial.FormatSize(cut.Size), Before: cut.Before, Now: cut.Now}
			if cut.Instead != (length.Size{}) {
				one.Instead = length.Imperial.FormatSize(cut.Instead)
			}
			d.Cuts = append(d.Cuts, one)
		}
		out.Fabrics = append(out.Fabrics, d)
	}
	for _, b := range c.Bags {
		one := bagChange{Bag: b.Number, Before: b.Before, Kind: string(b.Kind)}
		if b.New != nil {
			one.Code = b.New.Code.String()
		}
		out.Bags = append(out.Bags, one)
	}
	for _, p := range c.Pages {
		out.Print.Pages = append(out.Print.Pages, p.Number)
	}
	for _, k := range c.Kept {
		out.Keep.Pages = append(out.Keep.Pages, [2]int{k.Old, k.New})
	}
	return out
}

// list is numbers as JSON prints them: a list even where there are none.
func list(numbers []int) []int {
	if numbers == nil {
		return []int{}
	}
	return numbers
}
