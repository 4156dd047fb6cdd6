package trade

import (
	"fmt"
	"strings"
	"testing"

	"cutbinder/layout/length"
)

// in and cm read lengths as makers write them.
func in(s string) length.Length { return must(length.Parse(s, length.Imperial)) }
func cm(s string) length.Length { return must(length.Parse(s, length.Metric)) }

func sized(s string) length.Size { return must(length.ParseSize(s, length.Imperial)) }

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// The sewings that the figures are for.
var (
	quarter  = Sewing{Seam: in("1/4"), Step: in("1/8")}
	trimmed  = Sewing{Seam: in("1/4"), Step: in("1/8"), Trim: TrimInch}
	scant    = Sewing{Seam: in("3/16"), Step: in("1/16")}
	metric   = Sewing{Seam: cm("0.75"), Step: length.MM}
	metric6  = Sewing{Seam: cm("0.6"), Step: length.MM}
	metric7  = Sewing{Seam: cm("0.7"), Step: length.MM}
	metric64 = Sewing{Seam: cm("0.635"), Step: length.MM}
	oversize = Sewing{Seam: cm("0.75"), Step: length.MM, Trim: TrimMetric}
	noStep   = Sewing{Seam: in("1/4")}
)

// show prints a recipe: what a batch makes, and its parts.
func show(u length.System, r Recipe) string {
	parts := []string{fmt.Sprint(r.Makes)}
	for _, p := range r.Parts {
		s := fmt.Sprintf("%d of %s", p.PerBatch, u.FormatSize(p.Size))
		if p.Role != "" {
			s += " " + p.Role
		}
		if p.Diagonal != Whole {
			s += fmt.Sprintf(" into %d", p.Diagonal.Triangles())
		}
		parts = append(parts, s)
	}
	if r.Bias {
		parts = append(parts, "bias")
	}
	return strings.Join(parts, ", ")
}

func TestRecipes(t *testing.T) {
	imperial, centimetres := length.Imperial, length.Metric
	tests := []struct {
		name string
		u    length.System
		got  Recipe
		want string
	}{
		// finished + 2s
		{"patch 1", imperial, quarter.Patch(sized("1")), "1, 1 of 1 1/2 x 1 1/2"},
		{"patch 3 x 6", imperial, quarter.Patch(sized("3 x 6")), "1, 1 of 3 1/2 x 6 1/2"},
		{"patch 12", imperial, quarter.Patch(sized("12")), "1, 1 of 12 1/2 x 12 1/2"},
		{"patch keeps sixteenths", imperial, quarter.Patch(sized("3 1/16")), "1, 1 of 3 9/16 x 3 9/16"},
		{"patch scant", imperial, scant.Patch(sized("3")), "1, 1 of 3 3/8 x 3 3/8"},
		{"patch metric", centimetres, metric.Patch(length.Size{W: cm("10"), H: cm("5")}), "1, 1 of 11.5 x 6.5"},
		{"patch metric 0.635", centimetres, metric64.Patch(length.Size{W: cm("10"), H: cm("10")}), "1, 1 of 11.27 x 11.27"},

		// finished + 0.854
		{"two 1", imperial, quarter.HalfSquareTwo(in("1")), "2, 1 of 1 7/8 x 1 7/8, 1 of 1 7/8 x 1 7/8"},
		{"two 2", imperial, quarter.HalfSquareTwo(in("2")), "2, 1 of 2 7/8 x 2 7/8, 1 of 2 7/8 x 2 7/8"},
		{"two 3", imperial, quarter.HalfSquareTwo(in("3")), "2, 1 of 3 7/8 x 3 7/8, 1 of 3 7/8 x 3 7/8"},
		{"two 10", imperial, quarter.HalfSquareTwo(in("10")), "2, 1 of 10 7/8 x 10 7/8, 1 of 10 7/8 x 10 7/8"},
		{"two 12", imperial, quarter.HalfSquareTwo(in("12")), "2, 1 of 12 7/8 x 12 7/8, 1 of 12 7/8 x 12 7/8"},
		{"two scant: 0.640", imperial, scant.HalfSquareTwo(in("3")), "2, 1 of 3 11/16 x 3 11/16, 1 of 3 11/16 x 3 11/16"},
		{"two metric: +2.56", centimetres, metric.HalfSquareTwo(cm("5")), "2, 1 of 7.6 x 7.6, 1 of 7.6 x 7.6"},
		{"two 6 mm: +2.05", centimetres, metric6.HalfSquareTwo(cm("5")), "2, 1 of 7.1 x 7.1, 1 of 7.1 x 7.1"},
		{"two 7 mm: +2.39", centimetres, metric7.HalfSquareTwo(cm("5")), "2, 1 of 7.4 x 7.4, 1 of 7.4 x 7.4"},
		{"two 6.35 mm: +2.168", centimetres, metric64.HalfSquareTwo(cm("5")), "2, 1 of 7.2 x 7.2, 1 of 7.2 x 7.2"},
		{"two trimmed 1", imperial, trimmed.HalfSquareTwo(in("1")), "2, 1 of 2 x 2, 1 of 2 x 2"},
		{"two trimmed 3", imperial, trimmed.HalfSquareTwo(in("3")), "2, 1 of 4 x 4, 1 of 4 x 4"},
		{"two trimmed 12", imperial, trimmed.HalfSquareTwo(in("12")), "2, 1 of 13 x 13, 1 of 13 x 13"},
		{"two trimmed metric: +3.06", centimetres, oversize.HalfSquareTwo(cm("5")), "2, 1 of 8.1 x 8.1, 1 of 8.1 x 8.1"},

		// 1.414 finished + 1.207
		{"four 1", imperial, quarter.HalfSquareFour(in("1")), "4, 1 of 2 5/8 x 2 5/8, 1 of 2 5/8 x 2 5/8, bias"},
		{"four 2", imperial, quarter.HalfSquareFour(in("2")), "4, 1 of 4 1/8 x 4 1/8, 1 of 4 1/8 x 4 1/8, bias"},
		{"four 3", imperial, quarter.HalfSquareFour(in("3")), "4, 1 of 5 1/2 x 5 1/2, 1 of 5 1/2 x 5 1/2, bias"},
		{"four 4", imperial, quarter.HalfSquareFour(in("4")), "4, 1 of 6 7/8 x 6 7/8, 1 of 6 7/8 x 6 7/8, bias"},
		{"four 5", imperial, quarter.HalfSquareFour(in("5")), "4, 1 of 8 3/8 x 8 3/8, 1 of 8 3/8 x 8 3/8, bias"},
		{"four 6", imperial, quarter.HalfSquareFour(in("6")), "4, 1 of 9 3/4 x 9 3/4, 1 of 9 3/4 x 9 3/4, bias"},
		{"four 8", imperial, quarter.HalfSquareFour(in("8")), "4, 1 of 12 5/8 x 12 5/8, 1 of 12 5/8 x 12 5/8, bias"},
		{"four 10", imperial, quarter.HalfSquareFour(in("10")), "4, 1 of 15 3/8 x 15 3/8, 1 of 15 3/8 x 15 3/8, bias"},
		{"four 12", imperial, quarter.HalfSquareFour(in("12")), "4, 1 of 18 1/4 x 18 1/4, 1 of 18 1/4 x 18 1/4, bias"},
		{"four metric: 7.071 + 3.621", centimetres, metric.HalfSquareFour(cm("5")), "4, 1 of 10.7 x 10.7, 1 of 10.7 x 10.7, bias"},
		{"four trimmed 3: 4.243 + 1.207 + 0.177", imperial, trimmed.HalfSquareFour(in("3")), "4, 1 of 5 3/4 x 5 3/4, 1 of 5 3/4 x 5 3/4, bias"},

		// 2 finished + 1.707
		{"eight 1", imperial, quarter.HalfSquareEight(in("1")), "8, 1 of 3 3/4 x 3 3/4, 1 of 3 3/4 x 3 3/4"},
		{"eight 2", imperial, quarter.HalfSquareEight(in("2")), "8, 1 of 5 3/4 x 5 3/4, 1 of 5 3/4 x 5 3/4"},
		{"eight 3", imperial, quarter.HalfSquareEight(in("3")), "8, 1 of 7 3/4 x 7 3/4, 1 of 7 3/4 x 7 3/4"},
		{"eight 6", imperial, quarter.HalfSquareEight(in("6")), "8, 1 of 13 3/4 x 13 3/4, 1 of 13 3/4 x 13 3/4"},
		{"eight 12", imperial, quarter.HalfSquareEight(in("12")), "8, 1 of 25 3/4 x 25 3/4, 1 of 25 3/4 x 25 3/4"},
		{"eight trimmed 3", imperial, trimmed.HalfSquareEight(in("3")), "8, 1 of 8 x 8, 1 of 8 x 8"},
		{"eight metric: 10 + 5.121", centimetres, metric.HalfSquareEight(cm("5")), "8, 1 of 15.2 x 15.2, 1 of 15.2 x 15.2"},

		{"flip", imperial, quarter.HalfSquareFlip(in("3")), "1, 1 of 3 1/2 x 3 1/2, 1 of 3 1/2 x 3 1/2"},
		{"flip trimmed", imperial, trimmed.HalfSquareFlip(in("3")), "1, 1 of 3 5/8 x 3 5/8, 1 of 3 5/8 x 3 5/8"},
		{"flip metric", centimetres, metric.HalfSquareFlip(cm("5")), "1, 1 of 6.5 x 6.5, 1 of 6.5 x 6.5"},

		// finished + 1.207
		{"quarter-square 1", imperial, quarter.QuarterSquare(in("1")), "4, 1 of 2 1/4 x 2 1/4 into 4"},
		{"quarter-square 3", imperial, quarter.QuarterSquare(in("3")), "4, 1 of 4 1/4 x 4 1/4 into 4"},
		{"quarter-square 4", imperial, quarter.QuarterSquare(in("4")), "4, 1 of 5 1/4 x 5 1/4 into 4"},
		{"quarter-square 12", imperial, quarter.QuarterSquare(in("12")), "4, 1 of 13 1/4 x 13 1/4 into 4"},
		{"quarter-square metric: +3.62", centimetres, metric.QuarterSquare(cm("10")), "4, 1 of 13.7 x 13.7 into 4"},
		{"quarter-square 6 mm: +2.90", centimetres, metric6.QuarterSquare(cm("10")), "4, 1 of 12.9 x 12.9 into 4"},
		{"quarter-square 7 mm: +3.38", centimetres, metric7.QuarterSquare(cm("10")), "4, 1 of 13.4 x 13.4 into 4"},
		{"quarter-square 6.35 mm: +3.07", centimetres, metric64.QuarterSquare(cm("10")), "4, 1 of 13.1 x 13.1 into 4"},

		{"hourglass of two", imperial, quarter.Hourglass(in("4"), 2), "2, 1 of 5 1/4 x 5 1/4, 1 of 5 1/4 x 5 1/4"},
		{"hourglass of three", imperial, quarter.Hourglass(in("4"), 3), "4, 2 of 5 1/4 x 5 1/4, 1 of 5 1/4 x 5 1/4, 1 of 5 1/4 x 5 1/4"},
		{"hourglass of four", imperial, quarter.Hourglass(in("3"), 4), "4, 1 of 4 1/4 x 4 1/4, 1 of 4 1/4 x 4 1/4, 1 of 4 1/4 x 4 1/4, 1 of 4 1/4 x 4 1/4"},
		{"hourglass trimmed", imperial, trimmed.Hourglass(in("3"), 2), "2, 1 of 4 1/2 x 4 1/2, 1 of 4 1/2 x 4 1/2"},
		{"hourglass metric", centimetres, metric.Hourglass(cm("10"), 2), "2, 1 of 13.7 x 13.7, 1 of 13.7 x 13.7"},

		{"geese 2", imperial, quarter.GeeseFour(in("2")), "4, 1 of 3 1/4 x 3 1/4 goose, 4 of 1 7/8 x 1 7/8 sky"},
		{"geese 4", imperial, quarter.GeeseFour(in("4")), "4, 1 of 5 1/4 x 5 1/4 goose, 4 of 2 7/8 x 2 7/8 sky"},
		{"geese 6", imperial, quarter.GeeseFour(in("6")), "4, 1 of 7 1/4 x 7 1/4 goose, 4 of 3 7/8 x 3 7/8 sky"},
		{"geese trimmed", imperial, trimmed.GeeseFour(in("4")), "4, 1 of 5 1/2 x 5 1/2 goose, 4 of 3 x 3 sky"},
		{"geese 10 cm: 13.62 and 7.56", centimetres, metric.GeeseFour(cm("10")), "4, 1 of 13.7 x 13.7 goose, 4 of 7.6 x 7.6 sky"},
		{"geese 6 mm: 12.90 and 7.05", centimetres, metric6.GeeseFour(cm("10")), "4, 1 of 12.9 x 12.9 goose, 4 of 7.1 x 7.1 sky"},
		{"geese flip 4 x 2", imperial, quarter.GeeseFlip(sized("4 x 2")), "1, 1 of 4 1/2 x 2 1/2 goose, 2 of 2 1/2 x 2 1/2 sky"},
		{"geese flip 3 x 1 1/2", imperial, quarter.GeeseFlip(sized("3 x 1 1/2")), "1, 1 of 3 1/2 x 2 goose, 2 of 2 x 2 sky"},
		{"geese flip metric", centimetres, metric.GeeseFlip(length.Size{W: cm("10"), H: cm("5")}), "1, 1 of 11.5 x 6.5 goose, 2 of 6.5 x 6.5 sky"},
		{"geese flip trimmed", imperial, trimmed.GeeseFlip(sized("4 x 2")), "1, 1 of 4 3/4 x 2 5/8 goose, 2 of 2 5/8 x 2 5/8 sky"},

		// 6/1.414 + 1/2 = 4.743; 3 + 0.854
		{"square in square 6", imperial, quarter.SquareInSquare(in("6")), "1, 1 of 4 3/4 x 4 3/4 centre, 2 of 3 7/8 x 3 7/8 corner into 2"},
		{"square in square 8: 6.157", imperial, quarter.SquareInSquare(in("8")), "1, 1 of 6 1/4 x 6 1/4 centre, 2 of 4 7/8 x 4 7/8 corner into 2"},
		// a 6 in centre: 4.243 + 0.854
		{"square in square of a 6 in centre", imperial, quarter.SquareInSquare(in("8.4853")), "1, 1 of 6 5/8 x 6 5/8 centre, 2 of 5 1/8 x 5 1/8 corner into 2"},
		{"square in square metric: 7.071 + 1.5; 5 + 2.561", centimetres, metric.SquareInSquare(cm("10")), "1, 1 of 8.6 x 8.6 centre, 2 of 7.6 x 7.6 corner into 2"},
		{"square in square trimmed", imperial, trimmed.SquareInSquare(in("6")), "1, 1 of 4 3/4 x 4 3/4 centre, 2 of 4 x 4 corner into 2"},
		{"square in square by flipping", imperial, quarter.SquareInSquareFlip(in("6")), "1, 1 of 6 1/2 x 6 1/2 centre, 4 of 3 1/2 x 3 1/2 corner"},
		{"square in square by flipping, metric", centimetres, metric.SquareInSquareFlip(cm("10")), "1, 1 of 11.5 x 11.5 centre, 4 of 6.5 x 6.5 corner"},
	}
	for _, test := range tests {
		if got := show(test.u, test.got); got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

// TestSetting takes the squares of setting triangles for blocks of 5 to 16 in.
// The trade's charts, which round the seams up to 1 1/4 and 7/8 before they add,
// print the same but for the sides of 7, 10 and 13 in blocks, where they have an
// eighth more than the exact form needs.
func TestSetting(t *testing.T) {
	tests := []struct {
		block         length.Length
		side, corner  string
		chart         string // where it differs
		exactly       float64
		exactlyCorner float64
	}{
		{in("5"), "8 3/8", "4 1/2", "", 8.2782, 4.3891},
		{in("6"), "9 3/4", "5 1/8", "", 9.6924, 5.0962},
		{in("7"), "11 1/8", "5 7/8", "11 1/4", 11.1066, 5.8033},
		{in("8"), "12 5/8", "6 5/8", "", 12.5208, 6.5104},
		{in("9"), "14", "7 1/4", "", 13.9350, 7.2175},
		{in("10"), "15 3/8", "8", "15 1/2", 15.3492, 7.9246},
		{in("11"), "16 7/8", "8 3/4", "", 16.7635, 8.6317},
		{in("12"), "18 1/4", "9 3/8", "", 18.1777, 9.3388},
		{in("13"), "19 5/8", "10 1/8", "19 3/4", 19.5919, 10.0459},
		{in("14"), "21 1/8", "10 7/8", "", 21.0061, 10.7530},
		{in("15"), "22 1/2", "11 1/2", "", 22.4203, 11.4602},
		{in("16"), "23 7/8", "12 1/4", "", 23.8345, 12.1673},
	}
	for _, test := range tests {
		side, corner := quarter.SideSetting(test.block, 0).Parts[0], quarter.CornerSetting(test.block, 0).Parts[0]
		if got := length.Imperial.Format(side.Size.W); got != test.side || side.Diagonal != Twice {
			t.Errorf("side of a %v block: got %s, want %s", test.block, got, test.side)
		}
		if got := length.Imperial.Format(corner.Size.W); got != test.corner || corner.Diagonal != Once {
			t.Errorf("corner of a %v block: got %s, want %s", test.block, got, test.corner)
		}
		if test.chart != "" && in(test.chart) != side.Size.W+in("1/8") {
			t.Errorf("the chart's %s isn't an eighth over %v", test.chart, side.Size.W)
		}
		checkNear(t, noStep.SideSetting(test.block, 0).Parts[0].Size.W, test.exactly)
		checkNear(t, noStep.CornerSetting(test.block, 0).Parts[0].Size.W, test.exactlyCorner)
	}
	if got := quarter.SideSetting(in("12"), in("1/4")).Parts[0].Size.W; got != in("18 1/2") {
		t.Errorf("generous: got %v", got)
	}
	if got := metric.SideSetting(cm("30"), 0).Parts[0].Size.W; got != cm("46.1") { // 42.426 + 3.621
		t.Errorf("metric side: got %v", got)
	}
	if got := metric.CornerSetting(cm("30"), 0).Parts[0].Size.W; got != cm("23.8") { // 21.213 + 2.561
		t.Errorf("metric corner: got %v", got)
	}
}

// checkNear checks a length that isn't rounded to a step against decimal inches.
func checkNear(t *testing.T, got length.Length, inches float64) {
	t.Helper()
	if d := got.Inches() - inches; d < -0.0001 || d > 0.0002 {
		t.Errorf("got %v in, want %v", got.Inches(), inches)
	}
}

func TestFill(t *testing.T) {
	tests := []struct {
		across, down int
		want         OnPoint
	}{
		{1, 1, OnPoint{0, 0, 4}},
		{2, 2, OnPoint{1, 4, 4}},
		{3, 4, OnPoint{6, 10, 4}},
		{5, 6, OnPoint{20, 18, 4}},
		{1, 5, OnPoint{0, 8, 4}},
		{0, 3, OnPoint{}},
	}
	for _, test := range tests {
		if got := Fill(test.across, test.down); got != test.want {
			t.Errorf("%d by %d: got %v, want %v", test.across, test.down, got, test.want)
		}
	}
}

// The diagonal of a 12 in block is 16.9706 in: 137936.7 length units.
func TestPointToPoint(t *testing.T) {
	for n, want := range []length.Length{0, 137937, 275874, 413811} {
		if got := PointToPoint(in("12"), n); got != want {
			t.Errorf("%d blocks: %d, want %d", n, got, want)
		}
	}
}

func TestBatches(t *testing.T) {
	tests := []struct{ makes, units, batches, left int }{
		{2, 48, 24, 0}, {2, 5, 3, 1}, {8, 25, 4, 7}, {4, 4, 1, 0}, {4, 1, 1, 3}, {1, 7, 7, 0}, {2, 0, 0, 0}, {4, 1 << 60, 1 << 58, 0},
	}
	for _, test := range tests {
		r := Recipe{Makes: test.makes}
		if b, l := r.Batches(test.units), r.Leftover(test.units); b != test.batches || l != test.left {
			t.Errorf("%d units, %d a batch: got %d batches and %d left over, want %d and %d", test.units, test.makes, b, l, test.batches, test.left)
		}
	}
}

// TestBatchesSuffice checks that batches make what is asked for and that one
// fewer doesn't, for every method.
func TestBatchesSuffice(t *testing.T) {
	for _, makes := range []int{1, 2, 4, 8} {
		r := Recipe{Makes: makes}
		for units := range 200 {
			b := r.Batches(units)
			if b*makes < units || units > 0 && (b-1)*makes >= units || r.Leftover(units) != b*makes-units {
				t.Errorf("%d units, %d a batch: %d batches", units, makes, b)
			}
		}
	}
}
