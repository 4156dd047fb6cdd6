package main

import (
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

// flagsFirst puts a command's flags before its other arguments: people write
// "make quilt.yaml -o quilt.pdf", and the flag reader stops at the first word
// that isn't a flag. Words after "--" stay as they are.
func flagsFirst(app *cli.App, args []string) []string {
	if len(args) < 2 {
		return args
	}
	i := slices.IndexFunc(app.Commands, func(c *cli.Command) bool { return c.HasName(args[1]) })
	if i < 0 {
		return args
	}
	takes := valued(app.Commands[i].Flags)
	var flags, words []string
	rest := args[2:]
	for len(rest) > 0 {
		word := rest[0]
		rest = rest[1:]
		name, _, joined := strings.Cut(strings.TrimLeft(word, "-"), "=")
		switch {
		case word == "--":
			words, rest = append(words, rest...), nil
		case len(word) < 2 || word[0] != '-':
			words = append(words, word)
		case takes[name] && !joined && len(rest) > 0:
			flags, rest = append(flags, word, rest[0]), rest[1:]
		default:
			flags = append(flags, word)
		}
	}
	return slices.Concat(args[:2], flags, []string{"--"}, words)
}

// valued lists the names of the flags that take a value.
func valued(flags []cli.Flag) map[string]bool {
	takes := map[string]bool{}
	for _, f := range flags {
		if _, bare := f.(*cli.BoolFlag); bare {
			continue
		}
		for _, name := range f.Names() {
			takes[name] = true
		}
	}
	return takes
}
