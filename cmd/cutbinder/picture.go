package main

import (
	"io"
	"path/filepath"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/layout/png"
	"cutbinder/layout/svg"
	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

func (a *app) pictureCommand() *cli.Command {
	return &cli.Command{
		Name: "picture", Usage: "draw a fabric's cutting, a block, the quilt or a page as SVG or PNG", ArgsUsage: "PLAN",
		Flags: append(paperFlags(), limitFlag(), outFlag(), fontFlag(),
			&cli.StringFlag{Name: "fabric", Usage: "how the fabric of this `ID` is cut"},
			&cli.StringFlag{Name: "block", Usage: "the block of this `ID`"},
			&cli.BoolFlag{Name: "quilt", Usage: "the whole quilt"},
			&cli.IntFlag{Name: "page", Usage: "page `N` of the binder"},
			&cli.IntFlag{Name: "width", Value: 1600, Usage: "width of a PNG in `PIXELS`"},
			largeFlag(), inkFlag()),
		Action: a.picture,
	}
}

func (a *app) picture(c *cli.Context) error {
	format, err := pictureFormat(c)
	if err != nil {
		return err
	}
	p, src, o, err := a.binderPlan(c)
	if err != nil {
		return err
	}
	q, err := a.pictured(c, p, src)
	if err != nil {
		return err
	}
	if err := a.told(q.MissingGlyphs(o.Fonts), src, nil); err != nil {
		return err
	}
	pic, err := a.onePicture(c, q, src, o)
	if err != nil {
		return err
	}
	name := c.String("output")
	err = a.writeFile(name, func(w io.Writer) error {
		if format == "svg" {
			return svg.Write(w, &pic.Page, pic.Title)
		}
		return png.Write(w, &pic.Page, c.Int("width"))
	})
	if err == nil && name != "-" {
		a.say("wrote %s: %s", name, pic.Title)
	}
	return err
}

// pictured works out as much of the plan as the picture needs: no cutting for
// blocks and quilts.
func (a *app) pictured(c *cli.Context, p *plan.Plan, src source) (*sheets.Quilt, error) {
	if c.IsSet("block") || c.Bool("quilt") {
		return a.bags(c, p, src)
	}
	q, err := a.quilt(c, p, src)
	if err != nil {
		return nil, err
	}
	return q, advise(c, q)
}

// pictureFormat is what is written, by the ending of the file's name, once it is
// sure that one thing is asked for.
func pictureFormat(c *cli.Context) (string, error) {
	asked := 0
	for _, name := range []string{"fabric", "block", "quilt", "page"} {
		if c.IsSet(name) {
			asked++
		}
	}
	if asked != 1 {
		return "", usage("--fabric ID, --block ID, --quilt or --page N", "%d pictures are asked for; expected one", asked)
	}
	switch name := c.String("output"); strings.ToLower(filepath.Ext(name)) {
	case ".svg":
		return "svg", nil
	case ".png":
		if n := c.Int("width"); n < 1 || n > png.MaxSide {
			return "", usage("--width 1600", "width %d: expected 1 to %d pixels", n, png.MaxSide)
		}
		return "png", nil
	default:
		if name == "" {
			return "", usage("-o FILE.svg or -o FILE.png", "no file is named to write the picture to")
		}
		return "", usage("-o FILE.svg or -o FILE.png", "%q ends in neither .svg nor .png", name)
	}
}

// onePicture draws what is asked for.
func (a *app) onePicture(c *cli.Context, q *sheets.Quilt, src source, o sheets.Options) (*sheets.Picture, error) {
	switch {
	case c.IsSet("fabric"):
		if pic := sheets.FabricPicture(q, o, c.String("fabric")); pic != nil {
			return pic, nil
		}
		return nil, noFabric(q, c.String("fabric"))
	case c.IsSet("block"):
		id := c.String("block")
		if pic := sheets.BlockPicture(q, o, id); pic != nil {
			return pic, nil
		}
		if q.Plan.Block(id) == nil {
			var ids []string
			for _, b := range q.Plan.Blocks {
				ids = append(ids, b.ID)
			}
			return nil, usage(nearest(id, ids), "the plan has no block %q", id)
		}
		return nil, fault("draw it in the plan: draw: and rows of cells", "block %q is not drawn", id)
	case c.Bool("quilt"):
		pic, doubts := sheets.QuiltPicture(q, o)
		if pic == nil {
			doubts.Render(a.painted(a.err), src.text)
			return nil, fault("write quilt: and rows of blocks", "the plan does not lay the quilt out")
		}
		return pic, nil
	}
	pic, problems, err := sheets.PagePicture(q, o, c.Int("page"))
	if err != nil {
		return nil, usage("", "%v", err)
	}
	return pic, a.told(problems, src, nil)
}
