package pack

import (
	"context"
	"math/rand"
	"slices"
	"testing"
	"time"
)

// fabric draws a fabric as quilts have them, in eighths of an inch: up to a
// number of sizes and about so many pieces, squares and rectangles up to 12 1/2
// in and now and then a long strip, bought in steps of 4 1/2 in.
func fabric(r *rand.Rand, sizes, pieces int) Problem {
	p := Problem{Kind: Stacks, Width: int64(320 + 8*r.Intn(5)), Purchase: func(v int64) int64 { return (v + 35) / 36 * 36 }}
	n := 1 + r.Intn(sizes)
	for range n {
		it := Item{W: int64(12 + r.Intn(89)), Count: 1 + r.Intn(2*pieces/n), Turn: true}
		it.H = it.W
		if r.Intn(2) == 0 {
			it.H = int64(12 + r.Intn(89))
		}
		if r.Intn(12) == 0 {
			it.H, it.Count = int64(200+r.Intn(100)), 1+r.Intn(4)
		}
		p.Items = append(p.Items, it)
	}
	return p
}

// BenchmarkTypicalFabric tells the median and the 95th percentile of the time
// that a fabric of up to 8 sizes and about 150 pieces takes, and how many of a
// hundred are proved.
func BenchmarkTypicalFabric(b *testing.B) {
	for b.Loop() {
		r := rand.New(rand.NewSource(3))
		var times []time.Duration
		proved := 0
		for range 200 {
			p := fabric(r, 8, 80)
			start := time.Now()
			res, err := Solve(context.Background(), p)
			if err != nil {
				b.Fatal(err)
			}
			times = append(times, time.Since(start))
			if res.Proved {
				proved++
			}
		}
		slices.Sort(times)
		b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
		b.ReportMetric(float64(times[len(times)*95/100].Microseconds())/1000, "ms-95%")
		b.ReportMetric(float64(proved)/2, "%proved")
	}
}

// BenchmarkTenThousandPieces cuts 10,000 pieces of 30 sizes.
func BenchmarkTenThousandPieces(b *testing.B) {
	for b.Loop() {
		r := rand.New(rand.NewSource(5))
		p := Problem{Kind: Stacks, Width: 336}
		for range 30 {
			p.Items = append(p.Items, Item{W: int64(12 + r.Intn(89)), H: int64(12 + r.Intn(89)), Count: 333, Turn: true})
		}
		res, err := Solve(context.Background(), p)
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(100*float64(res.Used-res.Bound)/float64(res.Used), "%gap")
	}
}

// remnants draws lengths of cloth at hand, of fat quarters, quarter yards and odd
// pieces, until they hold so many hundredths of a problem's area.
func remnants(r *rand.Rand, p Problem, hundredths int64) (given []Cloth) {
	area := int64(0)
	for _, it := range p.Items {
		area += it.W * it.H * int64(it.Count)
	}
	for sum := int64(0); sum < area*hundredths/100; {
		c := [3]Cloth{{164, 144}, {336, 72}, {int64(100 + r.Intn(200)), int64(100 + r.Intn(100))}}[r.Intn(3)]
		given = append(given, c)
		sum += c.W * c.L
	}
	return given
}

// BenchmarkGivenCloths tells the median and the 95th percentile of the time that
// a fabric of up to 6 sizes takes on cloths of 100 to 118 hundredths of its area,
// how many of a hundred are placed whole, by filling the cloths one after the
// other alone and in all, in how many exchanging was of use, and how many are
// proved.
func BenchmarkGivenCloths(b *testing.B) {
	for b.Loop() {
		r := rand.New(rand.NewSource(11))
		var times []time.Duration
		whole, alone, better, proved := 0, 0, 0, 0
		for i := range 100 {
			p := fabric(r, 6, 60)
			p.Given = remnants(r, p, int64(100+2*(i%10)))
			start := time.Now()
			res, err := Solve(context.Background(), p)
			if err != nil {
				b.Fatal(err)
			}
			times = append(times, time.Since(start))
			short, used := byStarts(p)
			if done(short) {
				alone++
			}
			if done(res.Short) {
				whole++
			}
			if c := slices.Compare(res.Short, short); c < 0 || c == 0 && usedOf(res) < used {
				better++
			}
			if res.Proved {
				proved++
			}
		}
		slices.Sort(times)
		b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "ms-median")
		b.ReportMetric(float64(times[len(times)*95/100].Microseconds())/1000, "ms-95%")
		b.ReportMetric(float64(alone), "%whole-alone")
		b.ReportMetric(float64(whole), "%whole")
		b.ReportMetric(float64(better), "%better")
		b.ReportMetric(float64(proved), "%proved")
	}
}
