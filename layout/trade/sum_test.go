package trade

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"cutbinder/layout/length"
)

// TestCeilRoot2 checks n·√2 rounded up against its definition: the least whole
// number whose square isn't below 2n².
func TestCeilRoot2(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	ns := []int64{0, 1, 2, 5, 12, 29, 70, 169, 985, 8128, 1 << 31, 1 << 45, 1 << 60}
	for range 2000 {
		ns = append(ns, r.Int64N(1<<r.IntN(61)+1))
	}
	for _, n := range ns {
		got := big.NewInt(ceilRoot2(n))
		twice := new(big.Int).Mul(big.NewInt(2), new(big.Int).Mul(big.NewInt(n), big.NewInt(n)))
		below := new(big.Int).Sub(got, big.NewInt(1))
		if new(big.Int).Mul(got, got).Cmp(twice) < 0 || n > 0 && new(big.Int).Mul(below, below).Cmp(twice) >= 0 {
			t.Errorf("%d·√2 rounded up isn't %v", n, got)
		}
	}
}

func TestRoundUp(t *testing.T) {
	tests := []struct{ l, step, want length.Length }{
		{0, 8, 0}, {1, 8, 8}, {8, 8, 8}, {9, 8, 16}, {9, 0, 9}, {9, 1, 9}, {1<<63 - 2, 8, 1<<63 - 2},
	}
	for _, test := range tests {
		if got := roundUp(test.l, test.step); got != test.want {
			t.Errorf("%d to %d: got %d, want %d", test.l, test.step, got, test.want)
		}
	}
}

// showSum prints a sum with its terms in inches.
func showSum(s Sum) string {
	var terms []string
	for _, t := range s.Terms {
		terms = append(terms, fmt.Sprintf("%d %s %.3f", max(t.Times, 1), t.What, t.Each.Inches()))
	}
	if s.Rounded != 0 {
		terms = append(terms, fmt.Sprintf("rounded %.3f", s.Rounded.Inches()))
	}
	return strings.Join(terms, " + ")
}

func TestSum(t *testing.T) {
	_, end := quarter.Border(sized("44 x 56"), in("5"), true)
	run := quarter.Sashing(4, 5, sized("12"), in("2"), false, false).Level
	tests := []struct {
		name string
		sum  Sum
		want string
	}{
		{"patch", quarter.Patch(sized("3 x 6")).Parts[0].Sum, "1 finished 3.000 + 2 seams 0.250"},
		{"its height", *quarter.Patch(sized("3 x 6")).Parts[0].Sum.Along, "1 finished 6.000 + 2 seams 0.250"},
		{"two at a time", quarter.HalfSquareTwo(in("3")).Parts[0].Sum, "1 finished 3.000 + 1 half-square-seams 0.854 + rounded 0.021"},
		{"and trimmed", trimmed.HalfSquareTwo(in("3")).Parts[1].Sum, "1 finished 3.000 + 1 half-square-seams 0.854 + 1 trimming 0.125 + rounded 0.021"},
		{"four at a time", quarter.HalfSquareFour(in("3")).Parts[0].Sum, "1 finished-diagonal 4.243 + 1 four-square-seams 1.207 + rounded 0.050"},
		{"eight at a time", quarter.HalfSquareEight(in("3")).Parts[0].Sum, "2 finished 3.000 + 1 eight-square-seams 1.707 + rounded 0.043"},
		{"quarter-square", quarter.QuarterSquare(in("3")).Parts[0].Sum, "1 finished 3.000 + 1 quarter-seams 1.207 + rounded 0.043"},
		{"sky", quarter.GeeseFour(in("4")).Parts[1].Sum, "1 half-finished 2.000 + 1 half-square-seams 0.854 + rounded 0.021"},
		{"centre", quarter.SquareInSquare(in("6")).Parts[0].Sum, "1 half-diagonal 4.243 + 2 seams 0.250 + rounded 0.007"},
		{"side setting", quarter.SideSetting(in("12"), in("1/4")).Parts[0].Sum, "1 block-diagonal 16.971 + 1 quarter-seams 1.207 + 1 generous 0.250 + rounded 0.072"},
		{"mitred", end.Sum, "1 side 44.000 + 2 border-width 5.000 + 1 mitre-seams 1.207 + rounded 0.043"},
		{"through sash", run.Sum, "4 block 12.000 + 3 sash-width 2.000 + 2 seams 0.250"},
	}
	for _, test := range tests {
		if got := showSum(test.sum); got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

// everyPart is the parts of every recipe for a finished length, and the pieces of
// sashing and borders.
func everyPart(s Sewing, f length.Length) (parts []Part) {
	size := length.Size{W: 2 * f, H: f}
	recipes := []Recipe{s.Patch(size), s.HalfSquareTwo(f), s.HalfSquareFour(f), s.HalfSquareEight(f), s.HalfSquareFlip(f),
		s.QuarterSquare(f), s.Hourglass(f, 3), s.GeeseFour(f), s.GeeseFlip(size), s.SquareInSquare(f),
		s.SquareInSquareFlip(f), s.SideSetting(f, 7), s.CornerSetting(f, 7)}
	for _, r := range recipes {
		parts = append(parts, r.Parts...)
	}
	sides, ends := s.Border(size, f/5, true)
	sash := s.Sashing(3, 4, size, f/5, true, true)
	through := s.Sashing(3, 4, size, f/5, true, false)
	for _, c := range []Cut{sides, ends, sash.Upright, sash.Level, sash.Cornerstones, through.Level} {
		parts = append(parts, Part{Size: c.Size, Sum: c.Sum})
	}
	return parts
}

// TestSumsAddUp checks for every formula that its sum comes to the cut size, with
// nothing taken off by rounding and less than a step put on, and that it stays so
// when the piece is turned; and that all that terms stand for is listed.
func TestSumsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 24))
	for range 500 {
		s := Sewing{Seam: length.Length(r.IntN(5000)), Step: length.Length(r.IntN(1100)), Trim: length.Length(r.IntN(2)) * TrimInch}
		for _, p := range everyPart(s, length.Length(10+r.IntN(500_000))) {
			checkSum(t, p.Sum, p.Size, s.Step)
			checkSum(t, p.Sum.Turned(), length.Size{W: p.Size.H, H: p.Size.W}, s.Step)
		}
	}
}

func checkSum(t *testing.T, sum Sum, size length.Size, step length.Length) {
	t.Helper()
	along := sum
	if sum.Along != nil {
		along = *sum.Along
	}
	if sum.Total() != size.W || along.Total() != size.H {
		t.Fatalf("%s comes to %d x %d, want %v", showSum(sum), sum.Total(), along.Total(), size)
	}
	if sum.Rounded < 0 || sum.Rounded >= max(step, 1) {
		t.Fatalf("%s: rounded by %d at a step of %d", showSum(sum), sum.Rounded, step)
	}
	for _, term := range sum.Terms {
		if !slices.Contains(Whats, term.What) {
			t.Fatalf("%q isn't listed", term.What)
		}
	}
}

// TestMonotone checks that nothing asks for a smaller cut when the finished size,
// the seam or the step's fineness grows: cut sizes never fall short.
func TestMonotone(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 26))
	for range 300 {
		s := Sewing{Seam: length.Length(r.IntN(5000)), Step: in("1/8")}
		f := length.Length(100 + r.IntN(300_000))
		small, exact := everyPart(s, f), everyPart(Sewing{Seam: s.Seam}, f)
		larger := everyPart(s, f+length.Length(r.IntN(5000)))
		wider := everyPart(Sewing{Seam: s.Seam + length.Length(r.IntN(500)), Step: s.Step}, f)
		for i := range small {
			if larger[i].Size.W < small[i].Size.W || wider[i].Size.W < small[i].Size.W || small[i].Size.W < exact[i].Size.W {
				t.Fatalf("part %d of %d at a seam of %d: %v, exactly %v, larger %v, wider seam %v",
					i, f, s.Seam, small[i].Size, exact[i].Size, larger[i].Size, wider[i].Size)
			}
		}
	}
}
