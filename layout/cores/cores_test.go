package cores

import (
	"sync/atomic"
	"testing"
)

func TestEach(t *testing.T) {
	for _, tt := range []struct{ n, most int }{{0, All}, {1, 1}, {7, 1}, {7, 3}, {1000, All}, {3, 50}} {
		calls := make([]int, tt.n)
		var now, top atomic.Int64
		Each(tt.n, tt.most, func(i int) {
			top.Store(max(top.Load(), now.Add(1)))
			calls[i]++
			now.Add(-1)
		})
		for i, n := range calls {
			if n != 1 {
				t.Errorf("Each(%d, %d) calls with %d %d times", tt.n, tt.most, i, n)
			}
		}
		if tt.most != All && top.Load() > int64(tt.most) {
			t.Errorf("Each(%d, %d) does %d at once", tt.n, tt.most, top.Load())
		}
	}
}

func TestEachPanics(t *testing.T) {
	defer func() {
		if b := recover(); b != "third" {
			t.Errorf("Each panics with %v, want third", b)
		}
	}()
	Each(100, 2, func(i int) {
		if i == 3 {
			panic("third")
		}
	})
	t.Error("Each comes back where one panics")
}
