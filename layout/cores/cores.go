// Package cores shares work whose parts don't need each other among the
// processors.
package cores

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// All stands for as many goroutines as there are processors.
const All = 0

// Each calls do with every number from 0 to n-1, in order but several at once: on
// as many goroutines as most says. It comes back when all are done. Where one
// panics, the rest is left undone and Each panics with the same value, so that the
// caller may see it.
func Each(n, most int, do func(i int)) {
	if most == All {
		most = runtime.GOMAXPROCS(0)
	}
	var next atomic.Int64
	var wait sync.WaitGroup
	var once sync.Once
	var broken any
	for range min(n, most) {
		wait.Go(func() {
			defer func() {
				if b := recover(); b != nil {
					once.Do(func() { broken = b })
					next.Store(int64(n))
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	wait.Wait()
	if broken != nil {
		panic(broken)
	}
}
