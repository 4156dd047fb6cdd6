package pack

import (
	"context"
	"math/rand"
	"testing"
)

// randomProblem draws a small problem.
func randomProblem(r *rand.Rand, kind Kind) Problem {
	p := Problem{Kind: kind, Width: int64(4 + r.Intn(9)), Effort: 1_000_000}
	for i := 1 + r.Intn(4); i > 0; i-- {
		p.Items = append(p.Items, Item{
			W: int64(1 + r.Intn(int(p.Width))), H: int64(1 + r.Intn(9)),
			Count: 1 + r.Intn(3), Turn: r.Intn(2) == 0,
		})
	}
	for i := r.Intn(3); i > 0; i-- {
		p.Given = append(p.Given, Cloth{W: p.Width, L: int64(2 + r.Intn(12))})
	}
	return p
}

func TestSolveChecks(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for i := range 3000 {
		p := randomProblem(r, Kind(i%3))
		res, err := Solve(context.Background(), p)
		if err != nil {
			t.Fatalf("%+v: %v", p, err)
		}
		if err := Check(p, res); err != nil {
			t.Fatalf("%+v: %v\n%+v", p, err, res)
		}
	}
}
