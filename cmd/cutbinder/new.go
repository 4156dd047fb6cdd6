package main

import (
	_ "embed"
	"errors"
	"io/fs"
	"os"

	"github.com/urfave/cli/v2"
)

//go:embed new.yaml
var newPlan []byte

func (a *app) newCommand() *cli.Command {
	return &cli.Command{
		Name: "new", Usage: "write a short commented plan to start from", ArgsUsage: "FILE",
		Action: a.new,
	}
}

// new writes the starting plan; it never overwrites.
func (a *app) new(c *cli.Context) error {
	if c.NArg() != 1 {
		return usage("cutbinder new my-quilt.yaml", "one file name is expected, %d were read", c.NArg())
	}
	name := c.Args().First()
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fault("choose another name", "%s is there already and stays as it is", name)
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	_, err = f.Write(newPlan)
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(name)
		return cannotWrite(name, err)
	}
	a.say("wrote %s; now edit it, then: cutbinder make %s", name, name)
	return nil
}
