package trade

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"cutbinder/layout/length"
)

func TestSashing(t *testing.T) {
	tests := []struct {
		name         string
		across, down int
		block        string
		width        string
		frame, posts bool
		want         string
	}{
		{"frame and cornerstones", 4, 5, "12", "2", true, true, "25 of 2 1/2 x 12 1/2, 24 of 12 1/2 x 2 1/2, 30 of 2 1/2 x 2 1/2"},
		{"cornerstones inside", 4, 5, "12", "2", false, true, "15 of 2 1/2 x 12 1/2, 16 of 12 1/2 x 2 1/2, 12 of 2 1/2 x 2 1/2"},
		{"inside, rows run through", 4, 5, "12", "2", false, false, "15 of 2 1/2 x 12 1/2, 4 of 54 1/2 x 2 1/2, none"},
		{"frame, rows run through", 4, 5, "12", "2", true, false, "25 of 2 1/2 x 12 1/2, 6 of 58 1/2 x 2 1/2, none"},
		{"oblong blocks", 2, 3, "10 x 6", "1 1/2", true, true, "9 of 2 x 6 1/2, 8 of 10 1/2 x 2, 12 of 2 x 2"},
		{"one block, framed", 1, 1, "8", "1", true, true, "2 of 1 1/2 x 8 1/2, 2 of 8 1/2 x 1 1/2, 4 of 1 1/2 x 1 1/2"},
		{"one block", 1, 1, "8", "1", false, true, "none, none, none"},
		{"a row", 3, 1, "8", "1", false, false, "2 of 1 1/2 x 8 1/2, none, none"},
	}
	for _, test := range tests {
		s := quarter.Sashing(test.across, test.down, sized(test.block), in(test.width), test.frame, test.posts)
		if got := cuts(s.Upright, s.Level, s.Cornerstones); got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

// cuts prints cuts with their counts.
func cuts(all ...Cut) (s string) {
	for i, c := range all {
		if i > 0 {
			s += ", "
		}
		if c.Count == 0 {
			s += "none"
			continue
		}
		s += fmt.Sprintf("%d of %s", c.Count, length.Imperial.FormatSize(c.Size))
	}
	return s
}

func TestBorder(t *testing.T) {
	tests := []struct {
		name, around, width string
		mitred              bool
		want                string
	}{
		{"butted", "44 x 56", "5", false, "2 of 5 1/2 x 56 1/2, 2 of 54 1/2 x 5 1/2"},
		{"mitred: 66 + 1.207", "44 x 56", "5", true, "2 of 5 1/2 x 67 1/4, 2 of 55 1/4 x 5 1/2"},
		{"narrow", "40", "1", false, "2 of 1 1/2 x 40 1/2, 2 of 42 1/2 x 1 1/2"},
		{"narrow mitred", "40", "1", true, "2 of 1 1/2 x 43 1/4, 2 of 43 1/4 x 1 1/2"},
		{"wide", "72 x 90", "10", false, "2 of 10 1/2 x 90 1/2, 2 of 92 1/2 x 10 1/2"},
	}
	for _, test := range tests {
		sides, ends := quarter.Border(sized(test.around), in(test.width), test.mitred)
		if got := cuts(sides, ends); got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

func TestJoin(t *testing.T) {
	tests := []struct {
		name             string
		total, wof, loss length.Length
		want             int
	}{
		{"nothing", 0, in("40"), in("2 1/2"), 0},
		{"one is enough", in("40"), in("40"), in("2 1/2"), 1},
		{"a little more", in("40 1/16"), in("40"), in("2 1/2"), 2},
		{"two, to the last thread", in("77 1/2"), in("40"), in("2 1/2"), 2},
		{"one thread more", in("77 1/2") + 1, in("40"), in("2 1/2"), 3},
		{"border of 254 in strips of 5 1/2 from 42", in("254"), in("42"), in("5 1/2"), 7},
		{"46 x 46 at 40", in("184"), in("40"), in("2 1/2"), 5},
		{"50 x 60 at 40", in("220"), in("40"), in("2 1/4"), 6},
		{"54 x 60 and 10 at 42", in("238"), in("42"), in("2 1/2"), 6},
		{"54 x 66 and 10 at 40: 247.5/37.5", in("250"), in("40"), in("2 1/2"), 7},
		{"150 x 200 cm and 25 at 102, strips of 6.5: 718.5/95.5", cm("725"), cm("102"), cm("6.5"), 8},
		{"straight joins of 1/4 seams: 249.5/39.5", in("250"), in("40"), in("1/2"), 7},
		{"joins eat all", in("50"), in("2"), in("2 1/2"), -1},
	}
	for _, test := range tests {
		if got := Join(test.total, test.wof, test.loss); got != test.want {
			t.Errorf("%s: got %d, want %d", test.name, got, test.want)
		}
	}
	if got := JoinLoss(in("2 1/2"), in("1/4"), false); got != in("2 1/2") {
		t.Errorf("diagonal: got %v", got)
	}
	if got := JoinLoss(in("2 1/2"), in("1/4"), true); got != in("1/2") {
		t.Errorf("straight: got %v", got)
	}
}

// TestJoinSuffices checks, strip by strip, that a run of the strips is long
// enough and that one strip fewer isn't; that wider cloth never needs more
// strips, nor a shorter run.
func TestJoinSuffices(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		total, wof, loss := length.Length(1+r.IntN(4_000_000)), length.Length(1000+r.IntN(400_000)), length.Length(r.IntN(900))
		n := Join(total, wof, loss)
		run := wof
		for range n - 1 {
			run += wof - loss
		}
		if run < total || n > 1 && run-(wof-loss) >= total {
			t.Fatalf("%d strips of %d with joins of %d for %d: they come to %d", n, wof, loss, total, run)
		}
		if wider := Join(total, wof+length.Length(r.IntN(50_000)), loss); wider > n {
			t.Fatalf("wider cloth takes %d strips in place of %d", wider, n)
		}
		if shorter := Join(total-length.Length(r.IntN(int(total))), wof, loss); shorter > n {
			t.Fatalf("a shorter run takes %d strips in place of %d", shorter, n)
		}
	}
}

func TestBindingRun(t *testing.T) {
	tests := []struct{ quilt, tail, want string }{
		{"54 x 66", "10", "250"}, {"46", "0", "184"}, {"50 x 60", "10", "230"}, {"54 x 60", "10", "238"}, {"90 x 108", "16", "412"},
	}
	for _, test := range tests {
		if got := BindingRun(sized(test.quilt), in(test.tail)); got != in(test.want) {
			t.Errorf("%s: got %v, want %s", test.quilt, got, test.want)
		}
	}
}

func TestBias(t *testing.T) {
	tests := []struct{ run, strip, seam, step, want string }{
		{"250", "2", "0", "1", "23"}, // √500 = 22.36
		{"250", "2", "0", "1/8", "22 3/8"},
		{"250", "2", "1/4", "1/8", "22 7/8"},     // 1/2 + √500.25 = 22.866
		{"200", "2", "0", "1", "20"},             // exactly
		{"250", "2 1/2", "1/4", "1/8", "25 5/8"}, // 1/2 + √625.25 = 25.505
		{"370", "2 1/2", "1/4", "1/2", "31"},     // 1/2 + √925.25 = 30.918
		{"0", "2", "1/4", "1", "0"},
	}
	for _, test := range tests {
		if got := BiasSide(in(test.run), in(test.strip), in(test.seam), in(test.step)); got != in(test.want) {
			t.Errorf("%s of %s: got %v, want %s", test.run, test.strip, got, test.want)
		}
	}
	yields := []struct{ side, strip, seam, want string }{
		{"20", "2", "0", "200"}, {"20", "2", "1/4", "190"}, {"36", "2 1/4", "0", "576"}, {"36", "2 1/4", "1/4", "560"}, {"1", "2", "1/4", "0"},
	}
	for _, test := range yields {
		if got := BiasYield(in(test.side), in(test.strip), in(test.seam)); got != in(test.want) {
			t.Errorf("a square of %s: got %v, want %s", test.side, got, test.want)
		}
	}
	if n, side := BiasSquares(in("442"), in("2 1/2"), in("1/4"), in("1/8"), in("20")); n != 3 || side != in("19 7/8") {
		t.Errorf("squares from a narrow fabric: got %d of %v", n, side) // (442 + 5)/3 = 149; 1/2 + √372.75 = 19.807
	}
	if n, _ := BiasSquares(in("442"), in("2 1/2"), in("1/4"), in("1/8"), in("1")); n != 0 {
		t.Errorf("squares from a ribbon: got %d", n)
	}
}

// TestBiasSuffices checks that the square a run asks for yields that run, and
// that a square smaller by a unit doesn't.
func TestBiasSuffices(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		run, strip, seam := length.Length(1+r.IntN(5_000_000)), length.Length(1+r.IntN(40_000)), length.Length(r.IntN(5000))
		side := BiasSide(run, strip, seam, 0)
		if BiasYield(side, strip, seam) < run {
			t.Fatalf("%d of %d: a square of %d yields %d", run, strip, side, BiasYield(side, strip, seam))
		}
		if BiasYield(side-2, strip, seam) >= run {
			t.Fatalf("%d of %d: a square of %d would do, not %d", run, strip, side-2, side)
		}
	}
}

func TestBacking(t *testing.T) {
	tests := []struct {
		name            string
		quilt, overhang string
		wof, allowance  string
		down, across    Panels
	}{
		{"88 wide and 102 long over all, from 42", "80 x 94", "4", "42", "1/2",
			Panels{3, in("102"), false, 2}, Panels{3, in("88"), false, 2}},
		{"65 x 78 over all: 130 in one way, 156 the other", "57 x 70", "4", "42", "1/2",
			Panels{2, in("78"), true, 2}, Panels{2, in("65"), true, 2}},
		{"small: one width", "30 x 36", "4", "40", "1/2",
			Panels{1, in("44"), false, 0}, Panels{2, in("38"), true, 2}},
		{"halves serve up to 2 x (40 - 1)", "70", "4", "40", "1/2",
			Panels{2, in("78"), true, 2}, Panels{2, in("78"), true, 2}},
		{"a seam down the middle where they don't", "71", "4", "40", "1/2",
			Panels{2, in("79"), false, 1}, Panels{2, in("79"), false, 1}},
		{"and three where two don't", "71 1/8", "4", "40", "1/2",
			Panels{3, in("79 1/8"), false, 2}, Panels{3, in("79 1/8"), false, 2}},
		{"four, halved", "140 x 100", "4", "40", "1/2",
			Panels{4, in("108"), true, 4}, Panels{3, in("148"), false, 2}},
	}
	for _, test := range tests {
		down, across := Backing(sized(test.quilt), in(test.overhang), in(test.wof), in(test.allowance))
		if down != test.down || across != test.across {
			t.Errorf("%s: got %+v and %+v, want %+v and %+v", test.name, down, across, test.down, test.across)
		}
	}
	if got := (Panels{Count: 2, Length: in("65")}).Cloth(); got != in("130") {
		t.Errorf("cloth: got %v", got)
	}
	if got := Panelled(in("50"), in("60"), in("1"), in("1/2")); got != (Panels{}) {
		t.Errorf("from ribbon: got %+v", got)
	}
	metricPanels := Panelled(cm("170"), cm("220"), cm("102"), BackingSeamMetric)
	if metricPanels != (Panels{2, cm("220"), true, 2}) { // 2 x (102 - 3) = 198
		t.Errorf("metric: got %+v", metricPanels)
	}
}

// TestPanelsSuffice lays panels side by side: they must be wide enough, halved or
// not, and no seam may run down the middle where halves serve.
func TestPanelsSuffice(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 5000 {
		wide, wof, allowance := length.Length(1+r.IntN(2_000_000)), length.Length(50_000+r.IntN(400_000)), length.Length(r.IntN(8000))
		p := Panelled(wide, 1, wof, allowance)
		got := length.Length(p.Count)*wof - length.Length(p.Seams)*2*allowance
		if got < wide {
			t.Fatalf("%+v of %d come to %d of %d", p, wof, got, wide)
		}
		if p.Count > 1 && length.Length(p.Count-1)*wof-length.Length(p.Count-2)*2*allowance >= wide {
			t.Fatalf("%+v: a panel fewer would do", p)
		}
		if p.Count%2 == 0 && !p.Halved && got-2*allowance >= wide {
			t.Fatalf("%+v: halves would serve", p)
		}
	}
}

func TestWithOverhang(t *testing.T) {
	tests := []struct{ quilt, overhang, want string }{
		{"54 x 66", "4", "62 x 74"}, {"40", "2", "44"}, {"60 x 80", "0", "60 x 80"}, {"54 x 66", "3 1/2", "61 x 73"}, {"90 x 108", "6", "102 x 120"},
	}
	for _, test := range tests {
		if got := WithOverhang(sized(test.quilt), in(test.overhang)); got != sized(test.want) {
			t.Errorf("%s: got %v, want %s", test.quilt, got, test.want)
		}
	}
}

func TestStripSet(t *testing.T) {
	tests := []struct {
		name     string
		sewing   Sewing
		finished []length.Length
		segment  length.Length
		wof      length.Length
		need     int
		want     string
	}{
		{"10 1/2 segments from 40", quarter, []length.Length{in("2"), in("2")}, in("10"), in("40"), 7, "[2 1/2 2 1/2] 10 1/2: 3 a set, 3 sets, 2 spare"},
		{"10 1/2 segments from 42, to the thread", quarter, []length.Length{in("2")}, in("10"), in("42"), 8, "[2 1/2] 10 1/2: 4 a set, 2 sets, 0 spare"},
		{"six patches", quarter, []length.Length{in("1 1/2"), in("3")}, in("1 1/2"), in("40"), 100, "[2 3 1/2] 2: 20 a set, 5 sets, 0 spare"},
		{"one more", quarter, []length.Length{in("1 1/2"), in("3")}, in("1 1/2"), in("40"), 101, "[2 3 1/2] 2: 20 a set, 6 sets, 19 spare"},
		{"scant seam", scant, []length.Length{in("2")}, in("2"), in("40"), 30, "[2 3/8] 2 3/8: 16 a set, 2 sets, 2 spare"},
		{"too long", quarter, []length.Length{in("2")}, in("40"), in("40"), 1, "[2 1/2] 40 1/2: 0 a set, 0 sets, 0 spare"},
		{"none", quarter, []length.Length{in("2")}, in("10"), in("40"), 0, "[2 1/2] 10 1/2: 0 a set, 0 sets, 0 spare"},
	}
	for _, test := range tests {
		s := test.sewing.StripSet(test.finished, test.segment, test.wof, test.need)
		var strips []string
		for _, w := range s.Strips {
			strips = append(strips, length.Imperial.Format(w))
		}
		got := fmt.Sprintf("%v %s: %d a set, %d sets, %d spare", strips, length.Imperial.Format(s.Segment), s.PerSet, s.Sets, s.Spare)
		if got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
	s := metric.StripSet([]length.Length{cm("5")}, cm("5"), cm("102"), 40) // 102/6.5 = 15.7
	if s.Strips[0] != cm("6.5") || s.PerSet != 15 || s.Sets != 3 {
		t.Errorf("metric: got %+v", s)
	}
}
