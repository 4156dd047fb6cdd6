package plan

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestRender(t *testing.T) {
	const src = "plan: A\nfabrics: {dusk: {}}\n\tby: ガラス x\nlong: " // the last line goes on below
	long := src + strings.Repeat("-", 200) + "x" + strings.Repeat("+", 50) + "\x1b[31m"
	at := func(line, col int) Pos { return Pos{File: "p.yaml", Line: line, Col: col} }
	for _, c := range []struct {
		p    Problem
		want string
	}{
		{Problem{At: at(1, 7), What: "wrong"}, "p.yaml:1:7: wrong\n  plan: A\n        ^\n"},
		{Problem{At: at(2, 11), What: "wrong", Hint: "write it"}, "p.yaml:2:11: wrong\n  fabrics: {dusk: {}}\n            ^\n  hint: write it\n"},
		{Problem{At: at(2, 1), Level: Doubt, What: "odd"}, "p.yaml:2:1: doubt: odd\n  fabrics: {dusk: {}}\n  ^\n"},
		{Problem{At: at(3, 10), What: "wrong"}, "p.yaml:3:10: wrong\n   by: ガラス x\n              ^\n"},
		{Problem{At: at(4, 207), What: "wrong"}, "p.yaml:4:207: wrong\n  ..." + strings.Repeat("-", 50) + "x" + strings.Repeat("+", 49) + "...\n  " + strings.Repeat(" ", 53) + "^\n"},
		{Problem{At: at(4, 1), What: "wrong"}, "p.yaml:4:1: wrong\n  long: " + strings.Repeat("-", 94) + "...\n  ^\n"},
		{Problem{At: at(9, 1), What: "beyond"}, "p.yaml:9:1: beyond\n"},
		{Problem{At: Pos{File: "p.csv", Cell: "Fabrics!C4"}, What: "wrong"}, "p.csv:Fabrics!C4: wrong\n"},
		{Problem{At: Pos{File: "p.yaml"}, What: "wrong"}, "p.yaml: wrong\n"},
	} {
		var got strings.Builder
		if err := (Problems{c.p}).Render(&got, []byte(long)); err != nil {
			t.Error(err)
		}
		if diff := cmp.Diff(c.want, got.String()); diff != "" {
			t.Errorf("%v (-want +got):\n%s", c.p.At, diff)
		}
	}
	var two strings.Builder
	ps := Problems{{At: at(2, 1), What: "b"}, {At: at(1, 1), What: "a"}}
	ps.Sort()
	if err := ps.Render(&two, nil); err != nil || two.String() != "p.yaml:1:1: a\n\np.yaml:2:1: b\n" {
		t.Errorf("got %q, %v", two.String(), err)
	}
	if got := ps.Error(); got != "p.yaml:1:1: a\np.yaml:2:1: b" {
		t.Errorf("got %q", got)
	}
}

// TestRenderHidesEscapes: what is in the file must not steer the terminal.
func TestRenderHidesEscapes(t *testing.T) {
	var got strings.Builder
	ps := Problems{{At: Pos{File: "p", Line: 1, Col: 6}, What: "wrong"}}
	if err := ps.Render(&got, []byte("a: \x1b[2J\x07b")); err != nil || strings.ContainsAny(got.String(), "\x1b\x07") {
		t.Errorf("got %q, %v", got.String(), err)
	}
}
