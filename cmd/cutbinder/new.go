package main

import (
	_ "embed"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"
)

//go:embed new.yaml
var newPlan []byte

func (a *app) newCommand() *cli.Command {
	return &cli.Command{
		Name: "new", Usage: "write a plan to start from: text, or a workbook", ArgsUsage: "FILE",
		Description: "The plan is a small whole quilt; change it into yours.\n\n" +
			"A name that ends in .xlsx gives a workbook with drop-downs, any other a\n" +
			"commented text file. What is there already is never written over.\n\n" +
			"Example:\n   cutbinder new my-quilt.yaml\n   cutbinder new my-quilt.xlsx",
		Action: a.new,
	}
}

// new writes the starting plan; it never overwrites.
func (a *app) new(c *cli.Context) error {
	if c.NArg() != 1 {
		return usage("cutbinder new my-quilt.yaml", "one file name is expected, %d were read", c.NArg())
	}
	name := c.Args().First()
	text := newPlan
	if strings.EqualFold(filepath.Ext(name), ".xlsx") {
		var err error
		if text, err = a.asWorkbook(source{name: "new.yaml", text: newPlan}); err != nil {
			return err
		}
	}
	if err := createFile(name, text); err != nil {
		return err
	}
	a.say("wrote %s; now edit it, then: cutbinder make %s", name, name)
	return nil
}

// createFile writes a file that isn't there yet, whole or not at all.
func createFile(name string, text []byte) error {
	there := fault("choose another name", "%s is there already and stays as it is", name)
	if _, err := os.Lstat(name); err == nil {
		return there
	}
	tmp, err := createBeside(name)
	if err != nil {
		return cannotWrite(name, err)
	}
	defer os.Remove(tmp.Name())
	defer tmp.Close()
	_, err = tmp.Write(text)
	if err = errors.Join(err, tmp.Sync(), tmp.Close()); err != nil {
		return cannotWrite(name, err)
	}
	err = os.Link(tmp.Name(), name) // fails where the name has been taken meanwhile
	if err != nil && !errors.Is(err, fs.ErrExist) {
		err = os.Rename(tmp.Name(), name) // for disks without links
	}
	if errors.Is(err, fs.ErrExist) {
		return there
	}
	if err != nil {
		return cannotWrite(name, err)
	}
	return nil
}

// writeText gives what writeFile writes.
func writeText(text []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(text)
		return err
	}
}
