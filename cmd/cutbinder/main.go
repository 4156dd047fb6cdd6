// Command cutbinder turns a quilt's cut plan into a binder: the cutting of each
// fabric, what to buy, and labels for the bags of pieces.
//
// This package is the only one that opens files, prints and exits.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"syscall"

	"cutbinder/layout/plan"

	"github.com/urfave/cli/v2"
)

// Version is what the program calls itself; releases set it when they link.
var Version = "dev"

// Exit codes, as the manual states them.
const (
	exitDone   = 0
	exitFault  = 1 // the plan or the code has a fault
	exitUsage  = 2 // the command was called wrongly
	exitBroken = 3 // the program itself broke
)

// An app is the program with what it reads and writes, so that tests can run it
// inside their own process.
type app struct {
	in       io.Reader
	out, err io.Writer
	read     []string // the files that were read, which aren't written over
	quiet    bool     // say nothing but what went wrong
}

func main() { os.Exit(start()) }

// start runs the program and gives its exit code.
func start() int {
	debug.SetGCPercent(700) // a run is short: memory is cheaper than collecting it
	debug.SetMemoryLimit(memory)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second interrupt ends at once what doesn't heed the first
	return (&app{in: os.Stdin, out: os.Stdout, err: os.Stderr}).run(ctx, os.Args)
}

// run carries out one command line and gives its exit code.
func (a *app) run(ctx context.Context, args []string) int {
	out := &sink{to: a.out}
	a.out = out
	if len(args) > 1 && args[1] == completing {
		any := false
		if err := a.guarded(func() error { any = a.complete(ctx, args[2:]); return nil }); err != nil || !any {
			return exitFault
		}
		return exitDone
	}
	err := a.guarded(func() error {
		app := a.commands()
		ordered, err := flagsFirst(app, asHelp(args))
		if err != nil {
			return err
		}
		return app.RunContext(ctx, ordered)
	})
	if out.err != nil && (err == nil || errors.Is(err, out.err)) {
		err = cannotWrite("standard output", out.err)
	}
	return a.complain(err)
}

// complain tells what went wrong, and gives the exit code for it.
func (a *app) complain(err error) int {
	var failed failure
	tell := func(format string, args ...any) { fmt.Fprintf(a.painted(a.err), "cutbinder: "+format+"\n", args...) }
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &failed):
		if failed.message != "" {
			tell("%s", failed)
		}
		return failed.code
	case errors.Is(err, context.Canceled):
		tell("stopped; nothing was written")
		return exitFault
	}
	tell("%v", err)
	return exitUsage
}

// say tells the person at the terminal what was done.
func (a *app) say(format string, args ...any) {
	if !a.quiet {
		fmt.Fprintf(a.err, "cutbinder: "+format+"\n", args...)
	}
}

// A failure ends the program with a code; an empty message says that all has
// been said.
type failure struct {
	code    int
	message string
	hint    string
}

func (f failure) Error() string {
	if f.hint == "" {
		return f.message
	}
	return f.message + "\nhint: " + f.hint
}

// usage is the failure of a command that was called wrongly.
func usage(hint, format string, args ...any) error {
	return failure{exitUsage, fmt.Sprintf(format, args...), hint}
}

// fault is the failure of a plan, a code or a file.
func fault(hint, format string, args ...any) error {
	return failure{exitFault, fmt.Sprintf(format, args...), hint}
}

// said is the failure after everything has been printed.
var said = failure{code: exitFault}

func (a *app) commands() *cli.App {
	cli.HelpPrinter = printHelp
	app := &cli.App{
		Name:            "cutbinder",
		Usage:           "from a quilt's cut plan to a printed binder and labelled bags",
		Description:     about,
		Version:         Version,
		HideHelpCommand: true,
		Reader:          a.in,
		Writer:          a.out,
		ErrWriter:       a.err,
		ExitErrHandler:  func(*cli.Context, error) {},
		OnUsageError:    func(c *cli.Context, err error, _ bool) error { return usage("cutbinder --help", "%v", err) },
		Action:          a.none,
		Commands: a.taught([]*cli.Command{
			a.newCommand(), a.convertCommand(), a.checkCommand(), a.piecesCommand(), a.buyCommand(), a.cutsCommand(), a.makeCommand(),
			a.labelsCommand(), a.pictureCommand(), a.changesCommand(), a.scanCommand(), a.stocksCommand(), a.schemaCommand(),
			a.completionCommand(), a.manCommand(),
		}),
	}
	for _, c := range app.Commands {
		c.HideHelpCommand = true
		c.OnUsageError = func(c *cli.Context, err error, _ bool) error {
			return usage("cutbinder "+c.Command.Name+" --help", "%v", err)
		}
	}
	return app
}

// none answers a call without a command, or with one that doesn't exist.
func (a *app) none(c *cli.Context) error {
	word := c.Args().First()
	switch ending := strings.ToLower(filepath.Ext(word)); {
	case word == "":
		return cli.ShowAppHelp(c)
	case slices.Contains(planEndings, ending):
		return usage(fmt.Sprintf("cutbinder check %s looks through the plan, cutbinder make %[1]s prints its binder", word), "there is no command before %s", word)
	}
	var names []string
	for _, known := range c.App.Commands {
		names = append(names, known.Name)
	}
	if near := plan.Nearest(word, names); near != "" {
		return usage("", "there is no command %q; did you mean %s?", word, near)
	}
	return usage("cutbinder --help lists the commands", "there is no command %q", word)
}

// asHelp makes "help" and "help make" of a command line into "--help" and
// "make --help", which people try as often.
func asHelp(args []string) []string {
	if len(args) < 2 || args[1] != "help" {
		return args
	}
	if len(args) == 2 {
		return []string{args[0], "--help"}
	}
	return []string{args[0], args[2], "--help"}
}
