package main

import (
	"fmt"
	"strings"

	"cutbinder/layout/plan"

	"github.com/urfave/cli/v2"
)

func (a *app) manCommand() *cli.Command {
	return &cli.Command{
		Name: "man", Usage: "print the manual page",
		Description: "Example:\n   cutbinder man | man -l -\n   cutbinder man > /usr/local/share/man/man1/cutbinder.1",
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return usage("cutbinder man", "nothing more is expected, also read: %s", c.Args().First())
			}
			_, err := fmt.Fprint(a.out, manual(c.App))
			return err
		},
	}
}

// A page is a manual page in the making, in the man macros.
type manPage struct{ strings.Builder }

// manual is the manual page: every command with its options and examples, the
// exit codes, and the limits.
func manual(app *cli.App) string {
	p := &manPage{}
	p.line(`.TH CUTBINDER 1 "" "cutbinder %s" "User Commands"`, roff(app.Version))
	p.section("NAME", "cutbinder \\- "+roff(app.Usage))
	p.section("SYNOPSIS", `.B cutbinder`+"\n.I command\n[\n.I options\n]\n.I plan")
	p.section("DESCRIPTION", "")
	p.prose(about)
	p.section("COMMANDS", "")
	for _, c := range app.Commands {
		if !c.Hidden {
			p.command(c)
		}
	}
	p.section("EXIT STATUS", "")
	for _, e := range []struct{ code, what string }{
		{"0", "done"}, {"1", "the plan or the code has a fault, or a file can't be read or written"},
		{"2", "the command was called wrongly"}, {"3", "the program itself broke; please report what it says"},
	} {
		p.item(e.code, e.what)
	}
	p.section("ENVIRONMENT", "")
	p.item("NO_COLOR", "set to anything, messages have no colours")
	p.item("COLUMNS", "how long lines of help may be")
	p.section("LIMITS", "")
	for _, l := range append(plan.Limits(), plan.Limit{What: "pages of a document", Most: fmt.Sprint(maxPages)}) {
		p.item(l.What, "at most "+l.Most)
	}
	return p.String()
}

// roff keeps a text's signs from being read as commands.
func roff(s string) string {
	s = strings.NewReplacer(`\`, `\e`, "-", `\-`, "…", "...", "½", "1/2").Replace(s)
	if strings.HasPrefix(s, ".") || strings.HasPrefix(s, "'") {
		s = `\&` + s
	}
	return s
}

func (p *manPage) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

func (p *manPage) section(name, text string) {
	p.line(`.SH "%s"`, name)
	if text != "" {
		p.line("%s", text)
	}
}

// item is a term and what it means.
func (p *manPage) item(term, text string) {
	p.line(".TP\n.B %s\n%s", roff(term), roff(text))
}

// prose sets paragraphs; lines that are indented stay as they are.
func (p *manPage) prose(text string) {
	for i, par := range paragraphs(text) {
		if i > 0 {
			p.line(".PP")
		}
		for _, line := range par {
			if inner := strings.TrimSpace(line); inner != line {
				p.line(".RS\n.nf\n%s\n.fi\n.RE", roff(inner))
			} else {
				p.line("%s", roff(line))
			}
		}
	}
}

// command is one command with its options.
func (p *manPage) command(c *cli.Command) {
	p.line(`.SS "cutbinder %s %s"`, roff(c.Name), roff(c.ArgsUsage))
	p.line("%s.", roff(strings.ToUpper(c.Usage[:1])+c.Usage[1:]))
	if c.Description != "" {
		p.line(".PP")
		p.prose(c.Description)
	}
	names, uses := optionsOf(c)
	for i, name := range names {
		p.item(name, uses[i])
	}
}
