package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"
)

// A lesson is what a command's help teaches beside its options.
type lesson struct{ about, examples string }

// lessons are the lessons of the commands that bring none of their own.
var lessons = map[string]lesson{
	"check": {"Tells every fault and every doubt of a plan, each with its place and what to do.\nDoubts that stand can be accepted in the plan, under accept.",
		"cutbinder check my-quilt.yaml\ncutbinder check my-quilt.xlsx --json"},
	"pieces": {"Explains every cut size by the sum that it comes from.", "cutbinder pieces my-quilt.yaml"},
	"buy":    {"Works out how each fabric is cut and tells what that takes from the shop, at\nother widths too, and what the shelf lacks.", "cutbinder buy my-quilt.yaml\ncutbinder buy my-quilt.yaml --csv > shopping.csv"},
	"cuts":   {"The same steps as in the binder, as text.", "cutbinder cuts my-quilt.yaml --fabric dusk"},
	"make": {"Writes the binder beside the plan, or where -o says. With --watch it is written\nagain each time the plan is saved.",
		"cutbinder make my-quilt.yaml\ncutbinder make my-quilt.yaml --only cover,labels --paper a4 -o part.pdf\ncutbinder make my-quilt.yaml --watch"},
	"labels": {"Bags are numbered as in the binder. --outline prints the label sheet's grid, to be\nheld against a sheet; --shift and --stretch mend what the printer does to it.",
		"cutbinder labels my-quilt.yaml --stock \"2 5/8 x 1 in\" --skip 7\ncutbinder labels my-quilt.yaml --bags 3,7-9"},
	"picture": {"", "cutbinder picture my-quilt.yaml --fabric dusk -o dusk.svg"},
	"scan":    {"", "cutbinder scan my-quilt.yaml K7Q-07-F3X"},
	"stocks":  {"Measures are those the packs state. A sheet that isn't among them can be written\ninto the plan by its eight numbers, under labels.", "cutbinder stocks"},
}

// taught gives commands their lessons, and the options that all of them have.
func (a *app) taught(commands []*cli.Command) []*cli.Command {
	for _, c := range commands {
		c.Flags = append(c.Flags, &cli.BoolFlag{Name: "quiet", Aliases: []string{"q"}, Usage: "say nothing but what went wrong", Destination: &a.quiet})
		l := lessons[c.Name]
		if c.Description == "" {
			c.Description = l.about
		}
		if l.examples != "" && !strings.Contains(c.Description, "Example") {
			c.Description = strings.TrimLeft(c.Description+"\n\nExample:\n   "+strings.ReplaceAll(l.examples, "\n", "\n   "), "\n")
		}
	}
	return commands
}

// about is what cutbinder --help begins with.
const about = `cutbinder takes a quilt's cut plan and prints a binder: how each fabric is cut,
what to buy, and labels for the bags of pieces with codes to scan.

A plan is a text file (YAML), a workbook (.xlsx), a folder of .csv files or a plain
cut list (.csv). To begin:

   cutbinder new my-quilt.yaml     write a plan to start from, and change it
   cutbinder check my-quilt.yaml   is it sound?
   cutbinder make my-quilt.yaml    print the binder, my-quilt.pdf

cutbinder make --help and so on tell more of each command.`

// helpWidth is how long lines of help may be: as long as the terminal's, or 80.
func helpWidth() int {
	if n, err := strconv.Atoi(os.Getenv("COLUMNS")); err == nil && n > 0 {
		return max(n, 40)
	}
	return max(cmp.Or(terminalWidth(os.Stdout), 80), 40)
}

// A helpPage is a command's help in the making.
type helpPage struct {
	strings.Builder
	width int
}

// printHelp prints the help of the program or of a command.
func printHelp(w io.Writer, _ string, data any) {
	p := &helpPage{width: min(helpWidth(), 100)}
	switch of := data.(type) {
	case *cli.App:
		p.text(about)
		p.heading("Commands")
		var names, uses []string
		for _, c := range of.VisibleCommands() {
			names, uses = append(names, c.Name), append(uses, c.Usage)
		}
		p.list(names, uses)
		p.heading("Options")
		p.list([]string{"--help", "--version"}, []string{"print this, or behind a command what it does", "print the version"})
	case *cli.Command:
		p.text(strings.TrimSpace("cutbinder " + of.Name + " " + of.ArgsUsage))
		p.WriteString("\n")
		p.text(strings.ToUpper(of.Usage[:1]) + of.Usage[1:] + ".\n\n" + of.Description)
		p.heading("Options")
		names, uses := optionsOf(of)
		p.list(names, uses)
	}
	io.WriteString(w, p.String())
}

// optionsOf are a command's options, each with its value and what it does.
func optionsOf(c *cli.Command) (names, uses []string) {
	for _, f := range c.VisibleFlags() {
		name := ""
		for i, n := range f.Names() {
			if i > 0 {
				name += ", "
			}
			name += strings.Repeat("-", min(len(n), 2)) + n
		}
		use := ""
		if d, ok := f.(cli.DocGenerationFlag); ok {
			use = d.GetUsage()
			if _, value, quoted := strings.Cut(use, "`"); quoted {
				value, _, _ = strings.Cut(value, "`")
				name += " " + value
			}
			if v := d.GetDefaultText(); d.TakesValue() && v != "" && v != `""` && v != "0" {
				use += " (default " + strings.Trim(v, `"`) + ")"
			}
		}
		names, uses = append(names, name), append(uses, strings.ReplaceAll(use, "`", ""))
	}
	return names, uses
}

func (p *helpPage) heading(text string) { p.WriteString("\n" + text + ":\n") }

// text prints paragraphs; lines that are indented stay as they are.
func (p *helpPage) text(text string) {
	for i, par := range paragraphs(text) {
		if i > 0 {
			p.WriteString("\n")
		}
		for _, line := range par {
			for _, part := range folded(line, p.width) {
				p.WriteString(part + "\n")
			}
		}
	}
}

// list prints terms and what they mean in two columns.
func (p *helpPage) list(terms, texts []string) {
	const gap, most = 2, 30
	column := 0
	for _, t := range terms {
		column = max(column, min(len(t), most))
	}
	for i, t := range terms {
		for j, part := range folded(texts[i], p.width-column-2*gap) {
			switch {
			case j == 0 && len(t) > column:
				fmt.Fprintf(p, "  %s\n  %-*s  ", t, column, "")
			case j == 0:
				fmt.Fprintf(p, "  %-*s  ", column, t)
			default:
				fmt.Fprintf(p, "  %-*s  ", column, "")
			}
			p.WriteString(part + "\n")
		}
	}
}

// paragraphs parts a text at its empty lines. A paragraph is one line, but for
// lines that are indented, which stay lines of their own.
func paragraphs(text string) (all [][]string) {
	for _, par := range strings.Split(strings.TrimSpace(text), "\n\n") {
		var lines []string
		for line := range strings.Lines(par) {
			line = strings.TrimRight(line, "\n")
			if last := len(lines) - 1; last >= 0 && !strings.HasPrefix(line, " ") && !strings.HasPrefix(lines[last], " ") {
				lines[last] += " " + line
			} else {
				lines = append(lines, line)
			}
		}
		all = append(all, lines)
	}
	return all
}

// folded breaks a text at spaces into lines of a width; words are never broken,
// and neither is a line that is indented.
func folded(text string, width int) (lines []string) {
	if strings.HasPrefix(text, " ") {
		return []string{text}
	}
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && len([]rune(line))+1+len([]rune(word)) > max(width, 20) {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
