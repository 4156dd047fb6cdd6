package main

import (
	"context"
	"flag"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the commands' output into README.md")

// console is a block of README.md that shows commands and what they print.
var console = regexp.MustCompile("(?s)```console\n(.*?)```")

// What README.md shows of a command is what the command prints. Commands about
// my-quilt are run one after the other in a folder of their own, as a reader does.
func TestReadme(t *testing.T) {
	root, own := "../..", t.TempDir()
	t.Chdir(root)
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	root, err = os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	got := console.ReplaceAllStringFunc(string(text), func(block string) string {
		var out strings.Builder
		for line := range strings.Lines(console.FindStringSubmatch(block)[1]) {
			if command, ok := strings.CutPrefix(line, "$ cutbinder "); ok {
				n++
				out.WriteString(line)
				t.Chdir(map[bool]string{true: own, false: root}[strings.Contains(command, "my-quilt")])
				a := &app{in: strings.NewReader(""), out: &out, err: &out}
				a.run(context.Background(), append([]string{"cutbinder"}, words(command)...))
			}
		}
		return "```console\n" + out.String() + "```"
	})
	if n == 0 {
		t.Fatal("README.md shows no command")
	}
	t.Chdir(root)
	if *update {
		if err := os.WriteFile("README.md", []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if diff := cmp.Diff(string(text), got); diff != "" && !*update {
		t.Errorf("README.md (-shown +printed), go test ./cmd/cutbinder -run Readme -update rewrites it:\n%s", diff)
	}
}

// words parts a command line as a shell does, quotes respected.
func words(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
			continue
		}
		out = append(out, strings.Fields(part)...)
	}
	return out
}
