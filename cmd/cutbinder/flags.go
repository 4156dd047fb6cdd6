package main

import (
	"slices"
	"strings"

	"cutbinder/layout/plan"

	"github.com/urfave/cli/v2"
)

// flagsFirst puts a command's flags before its other arguments: people write
// "make quilt.yaml -o quilt.pdf", and the flag reader stops at the first word
// that isn't a flag. Words after "--" stay as they are. A flag that the command
// doesn't have is an error.
func flagsFirst(app *cli.App, args []string) ([]string, error) {
	if len(args) < 2 {
		return args, nil
	}
	i := slices.IndexFunc(app.Commands, func(c *cli.Command) bool { return c.HasName(args[1]) })
	if i < 0 {
		if isFlag(args[1]) && !has([]string{"help", "h", "version", "v"}, args[1]) {
			return nil, noOption(args[1], "cutbinder", []string{"help", "version"})
		}
		return args, nil
	}
	command := app.Commands[i]
	names, takes := named(command.Flags)
	var flags, words []string
	rest := args[2:]
	for len(rest) > 0 {
		word := rest[0]
		rest = rest[1:]
		name, joined := bare(word)
		switch {
		case word == "--":
			words, rest = append(words, rest...), nil
		case !isFlag(word):
			words = append(words, word)
		case !has(names, word):
			return nil, noOption(word, "cutbinder "+command.Name, names)
		case takes[name] && !joined && len(rest) == 0:
			return nil, usage("cutbinder "+command.Name+" --help", "option %s wants a value behind it", word)
		case takes[name] && !joined:
			flags, rest = append(flags, word, rest[0]), rest[1:]
		default:
			flags = append(flags, word)
		}
	}
	return slices.Concat(args[:2], flags, []string{"--"}, words), nil
}

func isFlag(word string) bool { return len(word) > 1 && word[0] == '-' }

// bare is a flag's name, and whether its value is joined to it with =.
func bare(word string) (name string, joined bool) {
	name, _, joined = strings.Cut(strings.TrimLeft(word, "-"), "=")
	return name, joined
}

// has says that a word is one of the flags of these names.
func has(names []string, word string) bool {
	name, _ := bare(word)
	return slices.Contains(names, name)
}

// noOption is the failure of an option that isn't, on one line.
func noOption(word, command string, names []string) error {
	name, _ := bare(word)
	option := word[:len(word)-len(strings.TrimLeft(word, "-"))] + name
	if near := plan.Nearest(name, names); near != "" {
		return usage("", "there is no option %s; did you mean --%s?", option, near)
	}
	return usage("", "there is no option %s; %s --help lists those there are", option, command)
}

// named lists the names of flags, help's among them, and which of them take a
// value.
func named(flags []cli.Flag) (names []string, takes map[string]bool) {
	names, takes = []string{"help", "h"}, map[string]bool{}
	for _, f := range flags {
		_, bare := f.(*cli.BoolFlag)
		for _, name := range f.Names() {
			names = append(names, name)
			takes[name] = !bare
		}
	}
	return names, takes
}
