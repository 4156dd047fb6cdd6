// Command cutbench measures the cutting of strips on stored instances: how long
// the layouts are, what is proved of them, and how long that takes. Every
// layout is checked, and may be written out for another checker.
package main

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"cutbinder/layout/pack"

	"github.com/urfave/cli/v2"
)

func main() {
	app := &cli.App{
		Name:      "cutbench",
		Usage:     "measure the cutting of strips on stored instances",
		ArgsUsage: "FILES…",
		Flags: []cli.Flag{
			&cli.BoolFlag{Name: "turn", Usage: "pieces may be turned by a quarter"},
			&cli.StringFlag{Name: "kind", Value: "strips", Usage: "strips, stacks or thrifty"},
			&cli.DurationFlag{Name: "limit", Value: time.Second, Usage: "work for each instance, as time of one core"},
			&cli.StringFlag{Name: "out", Usage: "write INSTANCE.placed.csv to this folder"},
			&cli.BoolFlag{Name: "summary", Usage: "compare with known.csv beside the instances, in place of the table"},
		},
		Action: run,
	}
	if err := app.Run(os.Args); err != nil {
		fmt.Fprintln(os.Stderr, "cutbench:", err)
		os.Exit(1)
	}
}

// run solves the instances named by the arguments.
func run(c *cli.Context) error {
	kind, err := kindOf(c.String("kind"))
	if err != nil {
		return err
	}
	limit := c.Duration("limit")
	if limit <= 0 {
		return fmt.Errorf("--limit %v, want a time above nought such as 1s", limit)
	}
	if c.NArg() == 0 {
		return errors.New("no instance files, want some such as testdata/cutting/syn_*.csv")
	}
	var rows []row
	if !c.Bool("summary") {
		fmt.Println("instance,kind,turn,width,pieces,lower_bound,length,proved,seconds")
	}
	for _, file := range c.Args().Slice() {
		if filepath.Base(file) == knownFile {
			continue
		}
		r, err := measure(file, kind, c.Bool("turn"), limit, c.String("out"))
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if rows = append(rows, r); !c.Bool("summary") {
			fmt.Println(r)
		}
	}
	if c.Bool("summary") {
		return summarize(rows, filepath.Dir(c.Args().First()))
	}
	return nil
}

// kindOf reads a kind's name.
func kindOf(name string) (pack.Kind, error) {
	for k := pack.Strips; k <= pack.Thrifty; k++ {
		if k.String() == name {
			return k, nil
		}
	}
	return 0, fmt.Errorf("--kind %s, want strips, stacks or thrifty", name)
}

// A row is what was measured of one instance.
type row struct {
	name    string
	kind    pack.Kind
	turn    bool
	width   int64
	pieces  int
	bound   int64
	length  int64
	proved  bool
	seconds float64
}

// String gives the row as a line of the table.
func (r row) String() string {
	return fmt.Sprintf("%s,%v,%v,%d,%d,%d,%d,%v,%.3f", r.name, r.kind, r.turn, r.width, r.pieces, r.bound, r.length, r.proved, r.seconds)
}

// measure solves one instance and checks the layout.
func measure(file string, kind pack.Kind, turn bool, limit time.Duration, out string) (row, error) {
	in, err := read(file, turn)
	if err != nil {
		return row{}, err
	}
	p := pack.Problem{
		Kind: kind, Items: in.items, Width: in.width,
		Effort: max(1, int64(limit.Seconds()*pack.EffortPerSecond)),
	}
	start := cpuTime()
	res, err := pack.Solve(context.Background(), p)
	if err != nil {
		return row{}, err
	}
	r := row{in.name, kind, turn, in.width, in.pieces(), res.Bound, res.Used, res.Proved, (cpuTime() - start).Seconds()}
	if err := pack.Check(p, res); err != nil {
		return row{}, fmt.Errorf("layout is wrong: %w", err)
	}
	if out != "" {
		err = writePlaced(filepath.Join(out, in.name+".placed.csv"), &res.Cloths[0])
	}
	return r, err
}

// writePlaced writes where the pieces lie, a line for each.
func writePlaced(file string, root *pack.Section) error {
	if err := os.MkdirAll(filepath.Dir(file), 0o777); err != nil {
		return err
	}
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	w := csv.NewWriter(f)
	err = w.Write([]string{"x", "y", "w", "h"})
	placed(root, func(s *pack.Section) {
		var line []string
		for _, v := range []int64{s.X, s.Y, s.W, s.H} {
			line = append(line, strconv.FormatInt(v, 10))
		}
		err = errors.Join(err, w.Write(line))
	})
	w.Flush()
	return errors.Join(err, w.Error(), f.Close())
}

// placed calls f with every piece.
func placed(s *pack.Section, f func(*pack.Section)) {
	if s.Dir == pack.None && s.Item >= 0 {
		f(s)
	}
	for i := range s.Parts {
		placed(&s.Parts[i], f)
	}
}
