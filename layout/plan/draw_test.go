package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// drawings are blocks as they are drawn, and the lines of pieces that follow.
var drawings = []struct {
	block string
	want  []string
}{
	{"{make: 1, cell: 3, draw: [dusk wick, wick dusk]}", []string{"2 patch 3 dusk", "2 patch 3 wick"}},
	{"{make: 1, finished: 6, draw: [dusk wick, wick dusk]}", []string{"2 patch 3 dusk", "2 patch 3 wick"}},
	{"{make: 1, cell: 3, draw: [[dusk, night], [wick, dusk]]}", []string{"2 patch 3 dusk", "1 patch 3 mix night", "1 patch 3 wick"}},
	{`{make: 1, cell: 3, draw: [dusk/wick dusk\wick, wick/dusk wick\dusk]}`, []string{"4 half-square 3 dusk wick"}},
	{`{make: 1, cell: 3, draw: [dusk/dusk, dusk\dusk]}`, []string{"2 half-square 3 dusk dusk"}},
	{`{make: 1, cell: 3, draw: ['dusk/\wick <', 'dusk\/wick <']}`, []string{"2 geese 6 x 3 dusk wick"}},
	{`{make: 1, cell: 3, draw: [dusk>wick dusk<wick, ^ ^]}`, []string{"2 geese 6 x 3 dusk wick"}},
	{`{make: 1, cell: 3, draw: ['dusk/\wick < wick<>dusk', 'wick/\dusk < wick<>dusk']}`, []string{"1 geese 6 x 3 dusk wick", "2 square-in-square 3 wick dusk", "1 geese 6 x 3 wick dusk"}},
	{`{make: 1, cell: 3, draw: [dusk><wick wick><dusk]}`, []string{"2 hourglass 3 dusk wick"}},
	{`{make: 1, cell: 3, draw: [dusk><wick><ember wick><dusk><ember><dusk]}`, []string{"2 hourglass 3 dusk ember wick"}},
	{`{make: 1, cell: 3, draw: [dusk><dusk><wick><ember]}`, []string{"1 hourglass 3 dusk dusk wick ember"}},
	{"{make: 1, cell: 1, draw: [dusk < <, wick ember ^, wick < ^]}", nil},
	{"{make: 1, cell: 1, draw: [dusk < wick, ember < ^, ^ < ^]}", []string{"1 patch 2 x 1 dusk", "1 patch 3 x 1 wick", "1 patch 2 ember"}},
	{"{make: 1, columns: [2, 1 1/2], rows: [1, 4], draw: [dusk wick, wick dusk]}", []string{"1 patch 2 x 1 dusk", "1 patch 1 1/2 x 1 wick", "1 patch 4 x 2 wick", "1 patch 4 x 1 1/2 dusk"}},
	{"{make: 1, cell: 3, letters: {d: dusk, n: night}, draw: [d n/d]}", []string{"1 patch 3 dusk", "1 half-square 3 mix night dusk"}},
	{"{make: 1, cell: 3, methods: {half-square: eight-at-a-time}, trim: yes, draw: [dusk/wick]}", []string{"1 half-square 3 dusk wick eight-at-a-time trim"}},
	{"{make: 1, cell: 3 x 2, methods: {geese: stitch-and-flip}, draw: ['dusk/\\wick < <']}", []string{"1 geese 9 x 2 dusk wick stitch-and-flip"}},
}

// TestDrawings: one source of truth: what is drawn is what is cut, and where both
// are written the drawing's lines are still told.
func TestDrawings(t *testing.T) {
	for _, tt := range drawings {
		p, problems := Read("p", []byte(wholePlan("blocks: {A: "+tt.block+"}")))
		if tt.want == nil {
			if len(problems) == 0 {
				t.Errorf("%s: no fault", tt.block)
			}
			continue
		}
		if len(problems) > 0 {
			t.Errorf("%s: %v", tt.block, problems)
			continue
		}
		var got []string
		for _, line := range p.Blocks[0].Pieces {
			text := fmt.Sprintf("%d %s %s", line.Count, line.Unit, strings.TrimSuffix(p.Units.FormatSize(line.Finished), " in"))
			if line.Finished.W == line.Finished.H {
				text = fmt.Sprintf("%d %s %s", line.Count, line.Unit, p.Units.Format(line.Finished.W))
			}
			for _, s := range line.Sources {
				text += " " + s.String()
			}
			if line.Method != "" && line.Method != unitRules[line.Unit].methods[0] {
				text += " " + string(line.Method)
			}
			if line.Trim {
				text += " trim"
			}
			got = append(got, text)
		}
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.block, diff)
		}
	}
}

// TestDrawnPlaces: a fault is told at its cell, however the rows are written.
func TestDrawnPlaces(t *testing.T) {
	tests := []struct{ plan, want string }{
		{"blocks:\n  A:\n    make: 1\n    cell: 3\n    draw:\n      - dusk wick\n      - dusk dsk\n", `p:7:14: fabric or mix "dsk" is not in this plan; expected one of dusk, wick, ember, night`},
		{"blocks:\n  A:\n    make: 1\n    cell: 3\n    draw: |\n      dusk wick\n      dusk dsk\n", `p:7:12: fabric or mix "dsk" is not in this plan; expected one of dusk, wick, ember, night`},
		{"blocks:\n  A:\n    make: 1\n    cell: 3\n    draw: ['dusk wick', 'dusk dusk/dsk']\n", `p:5:36: fabric or mix "dsk" is not in this plan; expected one of dusk, wick, ember, night`},
		{"blocks:\n  A:\n    make: 1\n    cell: 3\n    draw: [[dusk, wick], [dusk, dsk]]\n", `p:5:33: fabric or mix "dsk" is not in this plan; expected one of dusk, wick, ember, night`},
		{"blocks: {A: {make: 1, cell: 3, draw: [dusk wick, dusk]}}", `p:1:50: the row has 1 cells; the first row has 2`},
		{"blocks: {A: {make: 1, cell: 3, draw: [dusk wick, < dusk]}}", `p:1:50: < stands for more of the cell at the left, and none is there`},
		{"blocks: {A: {make: 1, cell: 3, draw: [^ wick]}}", `p:1:39: ^ stands for more of the cell above, and none is there`},
		{"blocks: {A: {make: 1, cell: 3, draw: [dusk <, ^ wick]}}", "p:1:39: the cell dusk and the < and ^ that belong to it do not fill a rectangle"},
		{"blocks: {A: {make: 1, cell: 3, draw: [dusk/wick <]}}", `p:1:39: the cell dusk/wick is 6 x 3 in; a half-square is square`},
		{"blocks: {A: {make: 1, cell: 3, draw: ['dusk/\\wick']}}", `p:1:40: the cell dusk/\wick is 3 x 3 in; a goose is at least twice as wide as it is high`},
		{"blocks: {A: {make: 1, cell: 3, draw: ['dusk/\\wick < <']}}", `p:1:40: the cell dusk/\wick is 9 x 3 in; geese made four at a time are twice as wide as high`},
		{"blocks: {A: {make: 1, cell: 3, draw: [dusk/wick/ember]}}", `p:1:39: found dusk/wick/ember in the drawing; expected a fabric such as dusk, or two with a sign between: dusk/wick, dusk\wick, dusk/\wick, dusk><wick, dusk<>wick`},
		{"blocks: {A: {make: 1, finished: 10, draw: [dusk wick ember]}}", `p:1:43: 10 in does not part into 3 columns`},
		{"blocks: {A: {make: 1, finished: 9, cell: 3, draw: [dusk wick, wick dusk]}}", `p:1:33: finished: found 9 x 9 in; the block's drawing comes to 6 x 6 in`},
		{"blocks: {A: {make: 1, draw: [dusk wick]}}", `p:1:29: the drawing of the block has no size; expected cell or finished`},
		{"blocks: {A: {make: 1, cell: 3, columns: [1, 2, 3], draw: [dusk wick]}}", `p:1:41: columns: 3 are written; the drawing has 2`},
		{"letters: {a/b: dusk}", `p:1:11: letters: the name "a/b" holds a space or a sign of drawings; expected letters and digits`},
		{"blocks: {A: {make: 1, cell: 3, pieces: [{cut: 2, each: 1, fabric: dusk}]}}", `p:1:29: cell is for a block that is drawn; block "A" has no draw`},
		{"blocks: {A: {cell: 3, draw: [dusk]}}\nquilt: [A A>, A>> B<]", `p:2:19: block "B" is not in this plan; expected one of A`},
	}
	for _, tt := range tests {
		_, problems := Read("p", []byte(wholePlan(tt.plan)))
		if got := problems.Error(); got != tt.want {
			t.Errorf("%s:\ngot  %s\nwant %s", tt.plan, got, tt.want)
		}
	}
}

// TestTurnedBlocks: marks behind a block's name turn it.
func TestTurnedBlocks(t *testing.T) {
	p := mustRead(t, wholePlan("blocks: {A: {cell: 3, draw: [dusk]}, B: {cell: 3, draw: [wick]}}\nquilt: |\n  A A> B>>\n  A< B A<<"))
	if got, want := fmt.Sprint(p.Quilt), "[[A A> B>>] [A< B A>>]]"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if a, b := p.Block("A").Make, p.Block("B").Make; a != 4 || b != 2 {
		t.Errorf("make is %d and %d, want 4 and 2", a, b)
	}
}
