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
