package scan

import (
	"math/rand/v2"
	"slices"
	"testing"

	"cutbinder/sheets/scan/photo"
)

// gridOf is a label's square code as it would be read without a fault.
func gridOf(l *photo.Label) grid {
	g := grid{n: l.Code.Size, soft: make([]float64, l.Code.Size*l.Code.Size)}
	for i, dark := range l.Code.Dark {
		g.soft[i] = 0.4
		if dark {
			g.soft[i] = -0.4
		}
	}
	return g
}

// However a code is damaged, it reads as what it says or not at all.
func TestDamaged(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	read, lost := 0, 0
	for _, l := range sample(t) {
		l := l
		for _, part := range []float64{0, 0.01, 0.02, 0.03, 0.04, 0.06, 0.1, 0.5} {
			g := gridOf(&l)
			for i := range g.soft {
				if r.Float64() < part {
					g.soft[i] = -g.soft[i] * r.Float64() // wrong, and more or less sure of it
				}
			}
			switch text, ok := g.text(); {
			case ok && text != l.Text:
				t.Errorf("%q reads %q with %g of it wrong", l.Text, text, part)
			case ok:
				read++
			case part == 0:
				t.Errorf("%q can't be read", l.Text)
			default:
				lost++
			}
		}
	}
	if read < lost || lost == 0 {
		t.Errorf("%d read and %d not; expected to read more than half and not all", read, lost)
	}
}

// Modules flipped one by one until one bag's code is another's: on the way it reads
// as one, then as none, then as the other, never as a third.
func TestMorphed(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	labels := sample(t)
	for range 40 {
		a, b := &labels[r.IntN(len(labels))], &labels[r.IntN(len(labels))]
		if a.Code.Size != b.Code.Size {
			continue
		}
		g, to := gridOf(a), gridOf(b)
		order := r.Perm(len(g.soft))
		for k, i := range order {
			g.soft[i] = to.soft[i]
			if k%7 != 0 {
				continue
			}
			if text, ok := g.text(); ok && text != a.Text && text != b.Text {
				t.Errorf("between %q and %q reads %q", a.Text, b.Text, text)
			}
		}
	}
}

func TestMirrored(t *testing.T) {
	l := &sample(t)[0]
	g := gridOf(l)
	if text, ok := g.mirrored().text(); ok {
		t.Errorf("in a mirror: %q", text)
	}
	s := square{g.n, make([]float64, (g.n+2)*(g.n+2))}
	for i := range s.grey {
		s.grey[i] = 200
	}
	for i, v := range g.mirrored().soft {
		s.grey[(i/g.n+1)*s.wide()+i%g.n+1] = 120 + 200*v
	}
	if text, ok := s.text(); !ok || text != l.Text {
		t.Errorf("in a mirror: %q", text)
	}
}

// Unknown errors and known gaps are mended as far as the checks allow.
func TestMend(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 2000 {
		check := 7 + r.IntN(20)
		n := check + 1 + r.IntN(80)
		good := encoded(r, n, check)
		f := r.IntN(check + 1)
		e := r.IntN((check-f)/2 + 1)
		bad := slices.Clone(good)
		at := r.Perm(n)[:f+e]
		for _, i := range at {
			bad[i] ^= uint8(r.IntN(256)) // a gap may be right by chance
		}
		if !mend(bad, check, at[:f], 0) || !slices.Equal(bad, good) {
			t.Fatalf("%d bytes, %d checks: %d gaps and %d errors are not mended", n, check, f, e)
		}
		if f+2*e > check-3 && e > 0 && f > 0 {
			bad[at[f]] = good[at[f]] ^ 1
			if mend(bad, check, at[:f], check) {
				t.Fatalf("%d gaps and %d errors are mended with no check to spare", f, e)
			}
		}
	}
}

// encoded is a block of n bytes by chance that ends in its checks: the remainder of
// a division, as ISO/IEC 18004 encodes.
func encoded(r *rand.Rand, n, check int) []uint8 {
	generator := []uint8{1} // highest power first
	for i := range check {
		next := append(slices.Clone(generator), 0)
		for j, g := range generator {
			next[j+1] ^= times(g, powers[i])
		}
		generator = next
	}
	block := make([]uint8, n)
	for i := range n - check {
		block[i] = uint8(r.IntN(256))
	}
	rest := slices.Clone(block)
	for i := range n - check {
		for j, g := range generator {
			if j > 0 {
				rest[i+j] ^= times(g, rest[i])
			}
		}
	}
	copy(block[n-check:], rest[n-check:])
	return block
}
