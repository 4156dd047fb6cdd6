package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"cutbinder/layout/cutting"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

// The options that change paper, the same wherever they make sense.
func paperFlags() []cli.Flag {
	return []cli.Flag{
		&cli.StringFlag{Name: "paper", Usage: "print for this `PAPER`: letter or a4"},
		&cli.StringFlag{Name: "hand", Usage: "for the `HAND` that holds the cutter: right or left"},
	}
}

// usualLimit is the work a fabric may take where nothing is said. Scripts that
// test what is said and written, not how good a layout is, run with less.
var usualLimit = time.Second

func limitFlag() cli.Flag {
	return &cli.DurationFlag{Name: "limit", Value: usualLimit, Usage: "work a fabric may take, as the `TIME` one core needs for it; said here, all of it is used where that can still gain"}
}

func jsonFlag() cli.Flag {
	return &cli.BoolFlag{Name: "json", Usage: "print JSON"}
}

// source is a plan file as it was read.
type source struct {
	name   string
	text   []byte
	folder bool // text is the folder's files in a zip
}

// dir is the folder in which the files are that a plan names.
func (s source) dir() string {
	if s.folder {
		return s.name
	}
	return filepath.Dir(s.name)
}

// base is the name beside which the plan's papers are written, without an ending.
func (s source) base() string {
	if s.folder {
		return s.name
	}
	return strings.TrimSuffix(s.name, filepath.Ext(s.name))
}

// planFile reads the file of the one plan that a command names.
func (a *app) planFile(c *cli.Context, more int) (source, error) {
	if c.NArg() == 0 {
		return source{}, usage(fmt.Sprintf("cutbinder %s PLAN", c.Command.Name), "no plan is named")
	}
	if extra := c.Args().Slice()[1:]; len(extra) > more {
		return source{}, usage("a name with spaces in it wants quotes", "one plan is expected, also read: %s", strings.Join(extra, " "))
	}
	return a.openPlan(c.Args().First())
}

// readPlan reads the plan a command names and tells all its faults.
func (a *app) readPlan(c *cli.Context, more int) (*plan.Plan, source, error) {
	src, err := a.planFile(c, more)
	if err != nil {
		return nil, src, err
	}
	p, err := a.planOf(c, src)
	return p, src, err
}

// planOf reads a plan and puts the options of the command line over it.
func (a *app) planOf(c *cli.Context, src source) (*plan.Plan, error) {
	p, problems := plan.Read(src.name, src.text)
	if err := a.told(problems, src, nil); err != nil {
		return nil, err
	}
	return p, override(c, p)
}

// override puts the options of the command line over what the plan says.
func override(c *cli.Context, p *plan.Plan) error {
	switch s := strings.ToLower(c.String("paper")); s {
	case "":
	case string(plan.Letter), string(plan.A4):
		p.Paper = plan.Paper(s)
	default:
		return usage("--paper letter or --paper a4", "there is no paper %q", s)
	}
	switch s := strings.ToLower(c.String("hand")); s {
	case "":
	case string(plan.RightHand), string(plan.LeftHand):
		p.Hand = plan.Hand(s)
	default:
		return usage("--hand right or --hand left", "there is no hand %q", s)
	}
	return nil
}

// quilt works a plan out: pieces, cutting, bags. Faults found on the way are
// told like those of reading.
func (a *app) quilt(c *cli.Context, p *plan.Plan, src source) (*sheets.Quilt, error) {
	o := effort(c)
	line := newProgress(a.err)
	if line != nil {
		o.Done = line.fabric
	}
	q, problems, err := sheets.Work(c.Context, p, o)
	line.end()
	return q, a.told(problems, src, err)
}

// bags works out only what bags hold.
func (a *app) bags(c *cli.Context, p *plan.Plan, src source) (*sheets.Quilt, error) {
	q, problems, err := sheets.Sort(c.Context, p, effort(c))
	return q, a.told(problems, src, err)
}

// told tells what is wrong with a plan, and makes a failure of a fault.
func (a *app) told(problems plan.Problems, src source, err error) error {
	if len(problems) > 0 {
		problems.Render(a.painted(a.err), src.text)
	}
	switch {
	case problems.Faulty():
		return said
	case err != nil && !errors.Is(err, context.Canceled):
		return fault("", "%v", err)
	}
	return err
}

// effort is the work that --limit allows each fabric. Where it isn't said, a
// fabric that gains nothing by more work takes less than the usual.
func effort(c *cli.Context) cutting.Options {
	limit := c.Duration("limit")
	if !c.IsSet("limit") && usualLimit == time.Second {
		return cutting.Options{Cores: runtime.NumCPU()}
	}
	if limit <= 0 {
		limit = usualLimit
	}
	return cutting.Options{Effort: int64(limit.Seconds() * pack.EffortPerSecond), Cores: runtime.NumCPU()}
}

// load reads a plan and works it out.
func (a *app) load(c *cli.Context) (*sheets.Quilt, error) {
	p, src, err := a.readPlan(c, 0)
	if err != nil {
		return nil, err
	}
	return a.quilt(c, p, src)
}
