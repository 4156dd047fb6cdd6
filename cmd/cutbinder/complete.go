package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/plan"
	"cutbinder/sheets"

	"github.com/urfave/cli/v2"
)

// completing is the word behind the program's name with which shells ask what may
// stand next. The words of the command line follow it, the one that is being typed
// last. Each answer is a line: what may stand there and, behind a tab, what it is.
// No answer, and the exit code 1, leave the shell to offer files.
const completing = "__complete"

// A proposal is one thing that may stand where a word is being typed.
type proposal struct{ text, about string }

// complete answers a shell, and says whether it could. Whatever is wrong, it says
// nothing of it.
func (a *app) complete(ctx context.Context, words []string) (any bool) {
	words = joinedFlags(words)
	if len(words) == 0 {
		words = []string{""}
	}
	typed := words[len(words)-1]
	for _, p := range a.proposals(ctx, words) {
		if strings.HasPrefix(p.text, typed) {
			fmt.Fprintf(a.out, "%s\t%s\n", p.text, p.about)
			any = true
		}
	}
	return any
}

// joinedFlags undoes what bash does to --fabric=dusk, which it hands over in three
// words.
func joinedFlags(words []string) (all []string) {
	for _, w := range words {
		if w != "=" {
			all = append(all, w)
		} else if len(all) > 0 && len(words) > 0 && words[len(words)-1] == "=" {
			all = append(all, "")
		}
	}
	return all
}

// proposals are what may stand in place of the last word, whatever it begins with.
func (a *app) proposals(ctx context.Context, words []string) (all []proposal) {
	commands := a.commands().Commands
	if len(words) == 1 {
		for _, c := range commands {
			if !c.Hidden {
				all = append(all, proposal{c.Name, c.Usage})
			}
		}
		return append(all, proposal{"--help", "what it does, by example"}, proposal{"--version", "which version it is"})
	}
	i := slices.IndexFunc(commands, func(c *cli.Command) bool { return c.HasName(words[0]) })
	if i < 0 {
		return nil
	}
	c, typed := commands[i], words[len(words)-1]
	if name, takes := flagBefore(c, words); takes {
		return a.values(ctx, name, typed, planAmong(c, words[:len(words)-2]))
	}
	if strings.HasPrefix(typed, "-") {
		return flagNames(c)
	}
	switch c.Name {
	case "completion":
		return proposed("", "bash", "fish", "zsh")
	case "scan":
		if name := planAmong(c, words[:len(words)-1]); name != "" {
			return a.codes(ctx, name)
		}
	}
	return nil
}

// flagBefore is the flag whose value is being typed.
func flagBefore(c *cli.Command, words []string) (name string, takes bool) {
	before := words[len(words)-2]
	name = strings.TrimLeft(before, "-")
	return name, strings.HasPrefix(before, "-") && takesValue(c, name)
}

// takesValue says whether a command's flag wants a value behind it.
func takesValue(c *cli.Command, name string) bool {
	_, takes := named(c.Flags)
	return takes[name]
}

// planAmong is the plan that words of a command line name; "" where none does.
func planAmong(c *cli.Command, words []string) string {
	for i := 1; i < len(words); i++ {
		switch w := words[i]; {
		case strings.HasPrefix(w, "-"):
			if takesValue(c, strings.TrimLeft(w, "-")) {
				i++
			}
		default:
			return w
		}
	}
	return ""
}

// flagNames are the flags of a command.
func flagNames(c *cli.Command) (all []proposal) {
	for _, f := range c.VisibleFlags() {
		about := ""
		if d, ok := f.(cli.DocGenerationFlag); ok {
			about = strings.ReplaceAll(d.GetUsage(), "`", "")
		}
		all = append(all, proposal{"--" + f.Names()[0], about})
	}
	return append(all, proposal{"--help", "what the command does, by example"})
}

// proposed are texts that need no words.
func proposed(before string, texts ...string) (all []proposal) {
	for _, t := range texts {
		all = append(all, proposal{before + t, ""})
	}
	return all
}

// values are what may stand behind a flag. Lists go on behind their last comma.
func (a *app) values(ctx context.Context, flag, typed, name string) []proposal {
	before := typed[:strings.LastIndexAny(typed, ",")+1]
	switch flag {
	case "paper":
		return proposed("", string(plan.Letter), string(plan.A4))
	case "hand":
		return proposed("", string(plan.RightHand), string(plan.LeftHand))
	case "ink":
		return proposed("", "full", "light")
	case "only":
		return proposed(before, sheets.PartNames()...)
	case "bags":
		return a.bagsOf(ctx, name, typed[:strings.LastIndexAny(typed, ",-")+1])
	}
	p, _ := a.quietly(name)
	var all []proposal
	switch {
	case p == nil:
	case flag == "fabric":
		for _, f := range p.Fabrics {
			all = append(all, proposal{f.ID, f.Name})
		}
	case flag == "block":
		for _, b := range p.Blocks {
			all = append(all, proposal{b.ID, b.Name})
		}
	}
	return all
}

// quietly reads a plan without telling its faults; nil where it has any.
func (a *app) quietly(name string) (*plan.Plan, error) {
	if info, err := os.Stat(name); err != nil || !info.Mode().IsRegular() && !info.IsDir() {
		return nil, err
	}
	src, err := a.openPlan(name)
	if err != nil {
		return nil, err
	}
	p, _ := plan.Read(src.name, src.text)
	return p, nil
}

// sorted are a plan's bags; nil where it has a fault.
func (a *app) sorted(ctx context.Context, name string) *sheets.Quilt {
	p, _ := a.quietly(name)
	if p == nil {
		return nil
	}
	q, problems, err := sheets.Sort(ctx, p, cutting.Options{Effort: 1000, Cores: 1})
	if err != nil || problems.Faulty() {
		return nil
	}
	return q
}

// bagsOf are a plan's bags by number.
func (a *app) bagsOf(ctx context.Context, name, before string) (all []proposal) {
	if q := a.sorted(ctx, name); q != nil {
		for _, b := range q.Bags.Bags {
			all = append(all, proposal{fmt.Sprint(before, b.Number), b.Heading()})
		}
	}
	return all
}

// codes are the codes of a plan's bags.
func (a *app) codes(ctx context.Context, name string) (all []proposal) {
	if q := a.sorted(ctx, name); q != nil {
		for _, b := range q.Bags.Bags {
			all = append(all, proposal{b.Code.String(), fmt.Sprintf("bag %d, %s", b.Number, b.Heading())})
		}
	}
	return all
}

func (a *app) completionCommand() *cli.Command {
	return &cli.Command{
		Name: "completion", Usage: "print what makes a shell complete commands, options and the names in a plan", ArgsUsage: "bash|zsh|fish",
		Description: "Put this into the shell's start-up file:\n\n" +
			"   bash, ~/.bashrc:                    source <(cutbinder completion bash)\n" +
			"   zsh, ~/.zshrc:                      source <(cutbinder completion zsh)\n" +
			"   fish, ~/.config/fish/config.fish:   cutbinder completion fish | source\n\n" +
			"Then cutbinder cuts my-quilt.yaml --fabric <TAB> offers the plan's fabrics.",
		Action: a.completion,
	}
}

// completions are the scripts by shell.
var completions = map[string]string{
	"bash": `_cutbinder() {
    local line
    COMPREPLY=()
    while IFS= read -r line; do
        COMPREPLY+=("$(printf '%q' "${line%%$'\t'*}")")
    done < <("${COMP_WORDS[0]}" __complete "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -o default -F _cutbinder cutbinder
`,
	"zsh": `#compdef cutbinder
_cutbinder() {
    local -a texts abouts
    local line
    while IFS= read -r line; do
        texts+=("${line%%$'\t'*}")
        abouts+=("${line//$'\t'/  }")
    done < <("${words[1]}" __complete "${(@)words[2,CURRENT]}" 2>/dev/null)
    if (( ${#texts} )); then
        compadd -l -d abouts -a texts
    else
        _files
    fi
}
(( ${+functions[compdef]} )) || { autoload -Uz compinit && compinit }
compdef _cutbinder cutbinder
`,
	"fish": `function __cutbinder_complete
    set -l words (commandline -opc)
    $words[1] __complete $words[2..-1] (commandline -ct) 2>/dev/null
    or __fish_complete_path (commandline -ct)
end
complete -c cutbinder -f -a '(__cutbinder_complete)'
`,
}

func (a *app) completion(c *cli.Context) error {
	script, ok := completions[c.Args().First()]
	if !ok || c.NArg() != 1 {
		return usage("cutbinder completion bash, zsh or fish", "one shell is expected, read was %q", strings.Join(c.Args().Slice(), " "))
	}
	_, err := io.WriteString(a.out, script)
	return err
}
