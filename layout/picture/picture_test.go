package picture

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"cutbinder/layout/plan"
)

const fabrics = "fabrics: {a: {}, b: {}, c: {one-way: true}}\nmixes: {m: [a, b, c]}\n"

func read(t *testing.T, text string) *plan.Plan {
	t.Helper()
	p, problems := plan.Read("p", []byte(text))
	if len(problems) > 0 {
		t.Fatalf("%v in\n%s", problems, text)
	}
	return p
}

// randomBlock is a block drawn at random: square cells of every unit, geese over
// two of them, rectangles.
func randomBlock(r *rand.Rand) string {
	name := func() string { return []string{"a", "b", "c", "m"}[r.Intn(4)] }
	w, h := 1+r.Intn(6), 1+r.Intn(6)
	grid := make([][]string, h)
	for y := range grid {
		grid[y] = make([]string, w)
	}
	span := func(x, y, across, down int) bool {
		if x+across > w || y+down > h {
			return false
		}
		for j := range down {
			for i := range across {
				if grid[y+j][x+i] != "" {
					return false
				}
			}
		}
		for j := range down {
			for i := range across {
				grid[y+j][x+i] = "<"
				if i == 0 {
					grid[y+j][x+i] = "^"
				}
			}
		}
		return true
	}
	for y := range h {
		for x := range w {
			if grid[y][x] != "" {
				continue
			}
			word := ""
			switch r.Intn(9) {
			case 0:
				if span(x, y, 1+r.Intn(3), 1+r.Intn(3)) {
					word = name()
				}
			case 1:
				if span(x, y, 2, 1) {
					word = name() + []string{`/\`, `\/`}[r.Intn(2)] + name()
				}
			case 2:
				if span(x, y, 1, 2) {
					word = name() + []string{">", "<"}[r.Intn(2)] + name()
				}
			case 3:
				word = name() + "/" + name()
			case 4:
				word = name() + `\` + name()
			case 5:
				word = name() + "><" + name()
			case 6:
				word = name() + "><" + name() + "><" + name()
			case 7:
				word = name() + "><" + name() + "><" + name() + "><" + name()
			case 8:
				word = name() + "<>" + name()
			}
			if word == "" {
				word = name()
			}
			grid[y][x] = word
		}
	}
	var rows []string
	for _, row := range grid {
		rows = append(rows, "'"+strings.Join(row, " ")+"'")
	}
	return fmt.Sprintf("{make: 1, cell: %d, draw: [%s]}", 1+r.Intn(4), strings.Join(rows, ", "))
}

// TestAreas: whatever is drawn, the patches fill the block, and the pieces that
// follow come to as much of every fabric as the picture shows. Turning a block
// changes nothing.
func TestAreas(t *testing.T) {
	for seed := range int64(400) {
		text := "plan: P\n" + fabrics + "blocks: {A: " + randomBlock(rand.New(rand.NewSource(seed))) + "}"
		p := read(t, text)
		b := p.Blocks[0]
		pic := Block(p, b)
		var sum int64
		bySource := map[string]int64{}
		for _, patch := range pic.Patches {
			sum += patch.Area()
			bySource[patch.Source.String()] += patch.Area()
			moved := patch
			moved.Points = turn(patch.Points, pic.W, pic.H, 1+int(seed%3))
			if moved.Area() != patch.Area() {
				t.Fatalf("turned, %v becomes %v", patch, moved)
			}
		}
		if want := 2 * int64(pic.W) * int64(pic.H); sum != want {
			t.Errorf("%s:\npatches come to %d, the block is %d", text, sum, want)
		}
		for s, twice := range areas(p, b.Pieces) {
			if bySource[s] != 4*twice {
				t.Errorf("%s:\n%s shows %d in the picture, the pieces come to %d", text, s, bySource[s], 4*twice)
			}
		}
		if len(Check(p)) > 0 {
			t.Errorf("%s:\n%v", text, Check(p))
		}
	}
}

// TestDrawnEqualsWritten: pieces written as they follow from the drawing agree
// with it; one more of any of them does not.
func TestDrawnEqualsWritten(t *testing.T) {
	for seed := range int64(100) {
		text := "plan: P\n" + fabrics + "blocks: {A: " + randomBlock(rand.New(rand.NewSource(seed))) + "}"
		p := read(t, text)
		b := p.Blocks[0]
		b.Keys["pieces"] = b.At
		if found := Check(p); len(found) > 0 {
			t.Fatalf("%s:\n%v", text, found)
		}
		line := *b.Pieces[int(seed)%len(b.Pieces)]
		line.Count++
		b.Pieces[int(seed)%len(b.Pieces)] = &line
		if found := Check(p); len(found) != 1 {
			t.Errorf("%s:\none more of a line gives %d doubts: %v", text, len(found), found)
		}
	}
}

// TestCheck: what is told where a plan draws one thing and says another.
func TestCheck(t *testing.T) {
	block := func(pieces string) string {
		return "blocks: {A: {make: 2, cell: 3, draw: [a b, b a/b], pieces: [" + pieces + "]}}"
	}
	tests := []struct{ plan, want string }{
		{block("{finished: 3, each: 1, fabric: a}, {cut: 3 1/2, each: 2, fabric: b}, {unit: half-square, finished: 3, each: 1, fabrics: [b, a]}"), ""},
		{block("{finished: 3, each: 1, fabric: a}, {cut: 3 1/2, each: 3, fabric: b}, {unit: half-square, finished: 3, each: 1, fabrics: [b, a]}"),
			`block "A" is drawn with (2) 3 finished from b; its pieces have (3)`},
		{block("{finished: 3, each: 1, fabric: a}, {cut: 3 1/2, each: 2, fabric: b}"),
			`block "A" is drawn with (1) half-square 3 finished from a, b; its pieces have (0)`},
		{block("{unit: strip-set, segment: 3, each: 1, strips: [{finished: 3, fabric: a}, {finished: 3, fabric: b}]}, {finished: 3, each: 1, fabric: b}, {unit: half-square, finished: 3, each: 1, fabrics: [b, a]}"), ""},
		{block("{unit: strip-set, segment: 3, each: 2, strips: [{finished: 3, fabric: a}, {finished: 3, fabric: b}]}, {unit: half-square, finished: 3, each: 1, fabrics: [b, a]}"),
			`the pieces of block "A" make more of a than its drawing shows: 22.50 square inches against 13.50 square inches`},
		{"blocks: {A: {make: 3, cell: 3, draw: [a]}}\nquilt: [A A, A A]", `block "A" is made 3 times; it stands in the quilt's rows 4 times`},
		{"finished: 6 x 7\nblocks: {A: {cell: 3, draw: [a]}}\nquilt: [A A, A A]", `finished: the plan says 6 x 7 in; the rows of blocks and the borders come to 6 x 6 in`},
		{"blocks: {A: {cell: 3, draw: [a]}}\nquilt: [A A, A]", `the row of blocks comes to 3 in; the first row to 6 in`},
		{"blocks: {A: {cell: 3, draw: [a]}, B: {cell: 2, draw: [a]}}\nquilt: [A B]", `block "B" is 2 in high; the row's first block is 3 in`},
		{"blocks: {A: {cell: 3, draw: [a]}}\nquilt: [A A]\nsashing: {blocks: 3 x 1, width: 1, fabric: a}", `the row has 2 blocks; the sashing goes between 3`},
		{"blocks: {A: {cell: 3, draw: [a]}}\nquilt: [A A]\nsetting: {on-point: 2 x 2, sides: a}", `the quilt has 1 rows of blocks; the setting has 2, or 3 with those in between`},
	}
	for _, tt := range tests {
		got := ""
		if found := Check(read(t, "plan: P\n"+fabrics+tt.plan)); len(found) > 0 {
			got = found[0].What
		}
		if got != tt.want {
			t.Errorf("%s:\ngot  %s\nwant %s", tt.plan, got, tt.want)
		}
	}
}

// TestCoarse: a quilt of very many cells is shown by its blocks alone.
func TestCoarse(t *testing.T) {
	row := strings.TrimSpace(strings.Repeat("a b ", 25))
	draw := strings.Repeat("'"+row+"', ", 49) + "'" + row + "'"
	text := "plan: P\n" + fabrics + "blocks: {A: {cell: 1, draw: [" + draw + "], pieces: [{finished: 50, each: 1, fabric: a}]}}\nquilt: [" + "%s]"
	for n, want := range map[int]int{4: 4 * 2500, 9: 9} {
		pic, _ := Quilt(read(t, fmt.Sprintf(text, strings.Repeat("A ", n))))
		if pic == nil || len(pic.Patches) != want {
			t.Errorf("%d blocks: want %d patches", n, want)
		}
	}
}

// TestQuilt: size, patches and area of whole quilts, worked out by hand. Half a
// block's diagonal of 6 is 6/√2 = 4.2426 in.
func TestQuilt(t *testing.T) {
	const a6 = "blocks: {A: {make: %d, cell: 3, draw: [a b, b a]}}\n"
	tests := []struct {
		name, plan string
		size       string // in inches
		patches    int
	}{
		{"rows", fmt.Sprintf(a6, 6) + "quilt: [A A A, A A> A]", "18 x 12", 24},
		{"turned oblong", "blocks: {A: {cell: 2 x 1, draw: [a b]}, B: {cell: 4, draw: [a]}}\nquilt: [B A> A>]", "6 x 4", 5},
		{"undrawn", "blocks: {A: {finished: 6, pieces: [{cut: 2, each: 1, fabric: a}]}}\nquilt: [A A]", "12 x 6", 2},
		{"sashing", fmt.Sprintf(a6, 6) + "sashing: {blocks: 3 x 2, width: 1, fabric: a}", "20 x 13", 24 + 4 + 1},
		{"frame, cornerstones", fmt.Sprintf(a6, 6) + "sashing: {blocks: 3 x 2, width: 1, fabric: a, frame: yes, cornerstones: b}", "22 x 15", 24 + 8 + 9 + 12},
		{"on point", fmt.Sprintf(a6, 6) + "setting: {on-point: 3 x 2, sides: a, alternate: b}", "25.46 x 16.97", 24 + 2 + 6 + 4},
		{"on point, rows between", "blocks: {A: {cell: 3, draw: [a b, b a]}, B: {cell: 6, draw: [a]}}\nquilt: [A A A, B B, A A A]\nsetting: {on-point: 3 x 2, sides: a}", "25.46 x 16.97", 24 + 2 + 6 + 4},
		{"borders", fmt.Sprintf(a6, 2) + "quilt: [A A]\nfinished: 20 x 14\nborders: [{width: 1, fabric: a}, {width: 3, fabric: b, corners: mitred}]", "20 x 14", 8 + 8},
	}
	for _, tt := range tests {
		pic, doubts := Quilt(read(t, "plan: P\n"+fabrics+tt.plan))
		if pic == nil {
			t.Errorf("%s: no picture: %v", tt.name, doubts)
			continue
		}
		size := strings.ReplaceAll(fmt.Sprintf("%.2f x %.2f", float64(pic.W)/2/8128, float64(pic.H)/2/8128), ".00", "")
		if size != tt.size || len(pic.Patches) != tt.patches {
			t.Errorf("%s: %s with %d patches, want %s with %d", tt.name, size, len(pic.Patches), tt.size, tt.patches)
		}
		var sum int64
		for _, patch := range pic.Patches {
			sum += patch.Area()
		}
		if want := 2 * int64(pic.W) * int64(pic.H); max(sum-want, want-sum) > want/1_000_000 {
			t.Errorf("%s: patches come to %d of %d", tt.name, sum, want)
		}
	}
}
