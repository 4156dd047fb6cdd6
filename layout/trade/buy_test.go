package trade

import (
	"math"
	"testing"

	"cutbinder/layout/length"
)

func TestToBuy(t *testing.T) {
	eighth, tenth := in("4 1/2"), cm("10")
	tests := []struct {
		name       string
		used       length.Length
		rules      Rules
		exact, buy length.Length
	}{
		{"nothing", 0, Rules{Squaring: in("1/2"), Step: eighth}, 0, 0},
		{"9 3/4 in and squaring", in("9 3/4"), Rules{Squaring: in("1/2"), Step: eighth}, in("10 1/4"), in("13 1/2")},
		{"the same and 10 %: 83312 units x 1.1 = 91643.2", in("9 3/4"), Rules{Squaring: in("1/2"), Extra: 1000, Step: eighth}, 91644, in("13 1/2")},
		{"on the line", in("8 1/2"), Rules{Squaring: in("1/2"), Step: eighth}, in("9"), in("9")},
		{"just past it", in("8 1/2") + 1, Rules{Squaring: in("1/2"), Step: eighth}, in("9") + 1, in("13 1/2")},
		{"65 in: 1.81 yd", in("65"), Rules{Step: eighth}, in("65"), in("67 1/2")},
		{"3 % shrinkage: 536448/0.97 = 553039.2", in("65 1/2"), Rules{Squaring: in("1/2"), Shrink: 300, Step: eighth}, 553040, in("72")},
		{"shrinkage and padding: 590092.8/0.97 = 608343.1", in("65 1/2"), Rules{Squaring: in("1/2"), Shrink: 300, Extra: 1000, Step: eighth}, 608344, in("76 1/2")},
		{"metric", cm("87"), Rules{Squaring: cm("1.5"), Step: tenth}, cm("88.5"), cm("90")},
		{"metric, flannel 8 %: 88.5/0.92 = 96.2", cm("87"), Rules{Squaring: cm("1.5"), Shrink: 800, Step: tenth}, 307827, cm("100")},
		{"sevenths of a yard: 14 are 2 yd", in("71"), Rules{Squaring: in("1/2"), Step: 41801}, in("71 1/2"), in("72")},
		{"sevenths: 5 are 209005.7", in("25"), Rules{Step: 41801}, in("25"), 209006},
		{"sevenths, on the line", 209006, Rules{Step: 41801}, 209006, 209006},
		{"sevenths, just past it: 6 are 250806.9", 209007, Rules{Step: 41801}, 209007, 250807},
		{"tenths of a yard: 10 are a yard", in("35 1/2"), Rules{Step: 29261}, in("35 1/2"), in("36")},
		{"two sevenths: 4 are 334409.1", in("40"), Rules{Step: 83602}, in("40"), 334409},
		{"thirds of a metre: 3 are a metre", cm("95"), Rules{Step: 106667}, cm("95"), cm("100")},
		{"no step", in("10"), Rules{}, in("10"), in("10")},
		{"all shrinks away", in("1"), Rules{Shrink: 10000}, in("10000"), in("10000")},
		{"too long to reckon", math.MaxInt64, Rules{Squaring: 1, Extra: 1000, Step: eighth}, math.MaxInt64, math.MaxInt64},
	}
	for _, test := range tests {
		got := ToBuy(test.used, test.rules)
		want := Purchase{Used: test.used, Exact: test.exact, Buy: test.buy}
		if got != want {
			t.Errorf("%s: got %+v, want %+v", test.name, got, want)
		}
	}
}

// FuzzToBuy checks that what is bought is never less than what is used, that it
// is a whole number of steps, and that more used never buys less.
func FuzzToBuy(f *testing.F) {
	f.Add(int64(79248), int64(4064), 300, 1000, int64(36576), int64(5))
	f.Add(int64(1), int64(0), 0, 0, int64(1), int64(1))
	f.Add(int64(math.MaxInt64-1), int64(1), 9999, 1<<30, int64(7), int64(1))
	f.Fuzz(func(t *testing.T, used, squaring int64, shrink, extra int, step, more int64) {
		used, squaring, step, more = abs(used), abs(squaring), abs(step), abs(more)
		r := Rules{Squaring: length.Length(squaring), Shrink: shrink, Extra: extra % (1 << 40), Step: length.Length(step)}
		p := ToBuy(length.Length(used), r)
		if p.Exact < p.Used || p.Buy < p.Exact || used > 0 && p.Buy == 0 {
			t.Fatalf("%+v buys %+v", r, p)
		}
		if step > 1 && p.Exact < math.MaxInt64-length.Length(step) && !inWhole(int64(p.Buy), step) {
			t.Fatalf("%+v buys %+v: not whole steps", r, p)
		}
		if more <= math.MaxInt64-used {
			if q := ToBuy(length.Length(used+more), r); q.Buy < p.Buy {
				t.Fatalf("%+v buys %+v for more than %+v", r, q, p)
			}
		}
	})
}

// inWhole says that a length is a number of steps, within what rounding may put on
// each of them.
func inWhole(l, step int64) bool {
	n := (l + step/2) / step
	return 2*abs(l-n*step) <= n && step >= int64(length.Yard)/64 || l%step == 0
}

func abs(n int64) int64 {
	if n < 0 {
		return -(n + 1)
	}
	return n
}
