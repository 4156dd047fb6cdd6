package main

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"cutbinder/layout/plan"
	"cutbinder/layout/workbook"

	"github.com/urfave/cli/v2"
)

func (a *app) convertCommand() *cli.Command {
	return &cli.Command{
		Name: "convert", Usage: "turn a plan into text, a workbook or a folder of .csv files", ArgsUsage: "PLAN TO",
		Description: "The ending of TO says what it becomes: .yaml, .xlsx, or none for a folder of\n" +
			".csv files; - prints text. The plan is the same in every form; remarks (#) of\n" +
			"a text file stay behind. What is there already stays, but for --force.\n\n" +
			"Example:\n   cutbinder convert my-quilt.yaml my-quilt.xlsx\n   cutbinder convert cut-list.csv my-quilt.yaml",
		Flags:  []cli.Flag{&cli.BoolFlag{Name: "force", Aliases: []string{"f"}, Usage: "write over a file that is there"}},
		Action: a.convert,
	}
}

func (a *app) convert(c *cli.Context) error {
	if c.NArg() != 2 {
		return usage("cutbinder convert my-quilt.yaml my-quilt.xlsx", "two names are expected, %d were read", c.NArg())
	}
	src, err := a.openPlan(c.Args().First())
	if err != nil {
		return err
	}
	to := c.Args().Get(1)
	switch ext := strings.ToLower(filepath.Ext(to)); {
	case ext == ".yaml" || ext == ".yml" || to == "-":
		err = a.convertTo(c, to, src, a.asYAML)
	case ext == ".xlsx":
		err = a.convertTo(c, to, src, a.asWorkbook)
	case ext == "" || strings.HasSuffix(to, string(filepath.Separator)):
		err = a.asFolder(to, src)
	default:
		return usage("name a .yaml or .xlsx file, or a folder for .csv files", "a plan can't be kept as %s", ext)
	}
	if err != nil || to == "-" {
		return err
	}
	a.say("wrote %s", to)
	if n := plan.Remarks(src.name, src.text); n > 0 {
		a.say("%s of %s stay behind", counted(n, "line of remarks", "lines of remarks"), src.name)
	}
	return nil
}

// convertTo writes one file of another form.
func (a *app) convertTo(c *cli.Context, to string, src source, as func(source) ([]byte, error)) error {
	text, err := as(src)
	if err != nil {
		return err
	}
	if to == "-" || c.Bool("force") {
		return a.writeFile(to, writeText(text))
	}
	return createFile(to, text)
}

// asYAML is a plan as text.
func (a *app) asYAML(src source) ([]byte, error) {
	text, problems := plan.YAML(src.name, src.text)
	return text, a.told(problems, src, nil)
}

// asWorkbook is a plan as a workbook.
func (a *app) asWorkbook(src source) ([]byte, error) {
	sheets, problems := plan.Sheets(src.name, src.text)
	if err := a.told(problems, src, nil); err != nil {
		return nil, err
	}
	text, err := workbook.Write(sheets)
	if err != nil {
		return nil, fault("", "%v", err)
	}
	return text, nil
}

// asFolder writes a plan as a folder of comma-separated files: into one of another
// name, which takes its own once all files are there.
func (a *app) asFolder(to string, src source) error {
	sheets, problems := plan.Sheets(src.name, src.text)
	if err := a.told(problems, src, nil); err != nil {
		return err
	}
	to = filepath.Clean(to)
	if files, err := os.ReadDir(to); err == nil && len(files) > 0 || err != nil && !errors.Is(err, os.ErrNotExist) {
		return fault("choose another name", "%s is there already and stays as it is", to)
	}
	tmp, err := os.MkdirTemp(filepath.Dir(to), ".cutbinder-")
	if err != nil {
		return cannotWrite(to, err)
	}
	defer os.RemoveAll(tmp)
	for _, s := range sheets {
		name := filepath.Join(tmp, strings.ToLower(s.Name)+".csv")
		if err := createFile(name, workbook.WriteCSV(s)); err != nil {
			return err
		}
	}
	os.Remove(to) // an empty folder, or nothing
	if err = errors.Join(os.Chmod(tmp, 0o755), os.Rename(tmp, to)); err != nil {
		return cannotWrite(to, err)
	}
	return nil
}
