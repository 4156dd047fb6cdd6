package trade

import (
	"math"
	"math/rand/v2"
	"testing"

	"cutbinder/layout/length"
)

// The tests of this file sew on paper: they take pieces of the cut size, lay them
// on each other, sew at the seam allowance from the edge or from a drawn
// diagonal, cut, fold open, and look at what the finished unit measures. They
// know nothing of the formulas.

// A point is a place on paper, in length units.
type point struct{ x, y float64 }

// A patch is the visible outline of a piece: a convex polygon.
type patch []point

// rect is a rectangle's outline.
func rect(x0, y0, x1, y1 float64) patch { return patch{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }

// A rule is a straight line: the points with a·x + b·y = c. Its normal (a, b) has
// length one.
type rule struct{ a, b, c float64 }

// below is how far a point is from the rule, on the side its normal points away from.
func (r rule) below(p point) float64 { return r.c - r.a*p.x - r.b*p.y }

// in is the rule moved by d away from its normal.
func (r rule) in(d float64) rule { return rule{r.a, r.b, r.c - d} }

var half = math.Sqrt(0.5)

// rising and falling are the diagonals through a point, with the normal to the
// upper left and to the upper right.
func rising(p point) rule  { return rule{-half, half, half * (p.y - p.x)} }
func falling(p point) rule { return rule{half, half, half * (p.x + p.y)} }

// other is the rule with its normal turned round.
func (r rule) other() rule { return rule{-r.a, -r.b, -r.c} }

// cut keeps what lies below the rule.
func (p patch) cut(r rule) patch {
	var out patch
	for i, a := range p {
		b := p[(i+1)%len(p)]
		da, db := r.below(a), r.below(b)
		if da >= 0 {
			out = append(out, a)
		}
		if da*db < 0 {
			t := da / (da - db)
			out = append(out, point{a.x + t*(b.x-a.x), a.y + t*(b.y-a.y)})
		}
	}
	return out
}

// flip folds a patch over the rule.
func (p patch) flip(r rule) patch {
	return p.move(func(q point) point {
		d := 2 * r.below(q)
		return point{q.x + d*r.a, q.y + d*r.b}
	})
}

func (p patch) move(f func(point) point) patch {
	out := make(patch, len(p))
	for i, q := range p {
		out[i] = f(q)
	}
	return out
}

// turn turns a patch by 45° about the origin.
func (p patch) turn() patch {
	return p.move(func(q point) point { return point{half * (q.x - q.y), half * (q.x + q.y)} })
}

// sew lays over on under, right sides together, sews along the rule, trims what
// is above it and folds over open.
func sew(under, over []patch, seam rule) []patch {
	var unit []patch
	for _, p := range under {
		unit = append(unit, p.cut(seam))
	}
	for _, p := range over {
		unit = append(unit, p.cut(seam).flip(seam))
	}
	return unit
}

// box is the least upright rectangle round patches.
func box(unit []patch) (lo, hi point) {
	lo, hi = point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, p := range unit {
		for _, q := range p {
			lo, hi = point{min(lo.x, q.x), min(lo.y, q.y)}, point{max(hi.x, q.x), max(hi.y, q.y)}
		}
	}
	return lo, hi
}

// finish sews a unit into its surroundings, a seam inside its raw edges. It gives
// the finished patches with the unit's lower left corner at 0, 0, and its size.
func finish(unit []patch, seam float64) (patches []patch, w, h float64) {
	lo, hi := box(unit)
	for _, p := range unit {
		p = p.cut(rule{1, 0, hi.x - seam}).cut(rule{-1, 0, -lo.x - seam}).
			cut(rule{0, 1, hi.y - seam}).cut(rule{0, -1, -lo.y - seam})
		patches = append(patches, p.move(func(q point) point { return point{q.x - lo.x - seam, q.y - lo.y - seam} }))
	}
	return patches, hi.x - lo.x - 2*seam, hi.y - lo.y - 2*seam
}

// slack is how much too large a unit may come out by rounding cut sizes up to
// whole length units: a hundredth of a millimetre.
const slack = 3.2

// near says whether a measure is right: never too small, and hardly too large.
func near(got, want float64) bool { return got > want-1e-4 && got < want+slack }

// checkUnit checks a unit's finished size, and that every patch has the corners
// given, in any order.
func checkUnit(t *testing.T, unit []patch, seam, w, h float64, want ...patch) {
	t.Helper()
	patches, gotW, gotH := finish(unit, seam)
	if !near(gotW, w) || !near(gotH, h) {
		t.Fatalf("the unit comes out at %.2f x %.2f, want %.2f x %.2f", gotW, gotH, w, h)
	}
	for i := range want {
		if !sameCorners(patches[i], want[i]) {
			t.Fatalf("patch %d comes out as %.2f, want %.2f", i, patches[i], want[i])
		}
	}
}

// sameCorners says whether each corner of either patch lies at one of the other.
func sameCorners(a, b patch) bool {
	close := func(p, q patch) bool {
		for _, u := range p {
			found := false
			for _, v := range q {
				found = found || math.Hypot(u.x-v.x, u.y-v.y) < 2*slack
			}
			if !found {
				return false
			}
		}
		return true
	}
	return close(a, b) && close(b, a)
}

// sides is the width of each part's square.
func sides(r Recipe) (out []float64) {
	for _, p := range r.Parts {
		out = append(out, float64(p.Size.W))
	}
	return out
}

// halfSquare sews two squares on one side of their diagonal.
func halfSquare(side, seam float64) []patch {
	square := []patch{rect(0, 0, side, side)}
	return sew(square, square, falling(point{side, 0}).in(seam))
}

// eachFinish runs a test for many finished sizes and seams, without a step.
func eachFinish(t *testing.T, test func(t *testing.T, s Sewing, f length.Length, seam, size float64)) {
	r := rand.New(rand.NewPCG(11, 12))
	seams := []length.Length{in("1/4"), in("3/16"), in("3/8"), cm("0.6"), cm("0.7"), cm("0.75"), 0, 1}
	for i := range 400 {
		s := Sewing{Seam: seams[i%len(seams)]}
		f := 2 * length.Length(100+r.IntN(120_000))
		test(t, s, f, float64(s.Seam), float64(f))
	}
}

// halves is the two triangles of a half-square of a size.
func halves(f float64) []patch {
	return []patch{{{0, 0}, {f, 0}, {0, f}}, {{f, f}, {f, 0}, {0, f}}}
}

func TestHalfSquareTwoOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		checkUnit(t, halfSquare(sides(s.HalfSquareTwo(f))[0], seam), seam, size, size, halves(size)...)
	})
}

func TestHalfSquareFlipOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		checkUnit(t, halfSquare(sides(s.HalfSquareFlip(f))[0], 0), seam, size, size, halves(size)...)
	})
}

func TestHalfSquareEightOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		checkUnit(t, halfSquare(sides(s.HalfSquareEight(f))[0]/2, seam), seam, size, size, halves(size)...)
	})
}

func TestHalfSquareFourOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		side := sides(s.HalfSquareFour(f))[0]
		// Sewn all round, then cut on both diagonals: the lower quarter.
		quarter := []patch{rect(0, 0, side, side).cut(rising(point{0, 0})).cut(falling(point{side, 0}))}
		unit := sew(quarter, quarter, rule{0, -1, -seam})
		for i := range unit {
			unit[i] = unit[i].turn()
		}
		checkUnit(t, unit, seam, size, size)
	})
}

func TestHourglassOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		pair := halfSquare(sides(s.Hourglass(f, 2))[0], seam)
		// Crossed: sewn beside the diagonal that crosses the first seam.
		unit := sew(pair, pair, rising(point{0, 0}).other().in(seam))
		m := point{size / 2, size / 2}
		checkUnit(t, unit, seam, size, size,
			patch{{0, 0}, {0, size}, m}, patch{{0, size}, {size, size}, m},
			patch{{0, 0}, {size, 0}, m}, patch{{size, 0}, {size, size}, m})
	})
}

func TestGeeseFourOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		cut := sides(s.GeeseFour(f))
		large, small := cut[0], cut[1]
		// Two small squares in opposite corners, sewn beside the diagonal through
		// both; the lower half.
		first := rising(point{0, 0}).in(seam)
		goose := rect(0, 0, large, large).cut(first)
		sky := rect(0, 0, small, small).cut(first).flip(first)
		// A third in the half's own corner, sewn beside its diagonal; the left half.
		second := falling(point{large, 0}).in(seam)
		third := rect(large-small, 0, large, small).cut(second).flip(second)
		unit := []patch{goose.cut(second), sky.cut(second), third}
		checkUnit(t, unit, seam, size, size/2, patch{{0, 0}, {size, 0}, {size / 2, size / 2}},
			patch{{0, 0}, {0, size / 2}, {size / 2, size / 2}}, patch{{size, 0}, {size, size / 2}, {size / 2, size / 2}})
	})
}

func TestGeeseFlipOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		r := s.GeeseFlip(length.Size{W: f, H: f / 2})
		w, h, q := float64(r.Parts[0].Size.W), float64(r.Parts[0].Size.H), float64(r.Parts[1].Size.W)
		left, right := rising(point{0, h - q}), falling(point{w, h - q})
		unit := []patch{rect(0, 0, w, h).cut(left).cut(right),
			rect(0, h-q, q, h).cut(left).flip(left), rect(w-q, h-q, w, h).cut(right).flip(right)}
		checkUnit(t, unit, seam, size, size/2, patch{{0, 0}, {size, 0}, {size / 2, size / 2}})
	})
}

func TestSquareInSquareOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		cut := sides(s.SquareInSquare(f))
		c, leg := cut[0], cut[1]
		// The triangle with its long side along the centre's upper edge, raw edges
		// together, and its point downward; sewn and folded up.
		seamLine := rule{0, 1, c - seam}
		reach := leg / math.Sqrt2
		triangle := patch{{c/2 - reach, c}, {c/2 + reach, c}, {c / 2, c - reach}}.cut(seamLine).flip(seamLine)
		round := func(q point) point { return point{c - q.y, q.x} }
		unit := []patch{rect(seam, seam, c-seam, c-seam)}
		for range 4 {
			unit = append(unit, triangle)
			triangle = triangle.move(round)
		}
		for i := range unit {
			unit[i] = unit[i].turn()
		}
		m := size / 2
		checkUnit(t, unit, seam, size, size, patch{{m, 0}, {size, m}, {m, size}, {0, m}})
	})
}

func TestSquareInSquareFlipOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		cut := sides(s.SquareInSquareFlip(f))
		c, q := cut[0], cut[1]
		centre := rect(0, 0, c, c)
		for _, r := range []rule{falling(point{q, 0}).other(), falling(point{c, c - q}), rising(point{0, c - q}), rising(point{c - q, 0}).other()} {
			centre = centre.cut(r)
		}
		corner := falling(point{q, 0}).other()
		unit := []patch{centre, rect(0, 0, q, q).cut(corner).flip(corner), rect(0, 0, c, c)}
		m := size / 2
		checkUnit(t, unit, seam, size, size, patch{{m, 0}, {size, m}, {m, size}, {0, m}}, patch{{0, 0}, {m, 0}, {0, m}})
	})
}

// inset moves all sides of a right triangle in by the seam: its corner is at the
// origin and its short sides lie along the axes.
func inset(leg, seam float64) patch {
	return patch{{0, 0}, {leg, 0}, {0, leg}}.cut(rule{-1, 0, -seam}).cut(rule{0, -1, -seam}).cut(falling(point{leg, 0}).in(seam))
}

func TestTrianglesOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		for _, test := range []struct {
			what      string
			square    float64
			cuts      float64 // a short side is the square's side over this
			shortSide float64
		}{
			{"quarter-square", sides(s.QuarterSquare(f))[0], math.Sqrt2, size / math.Sqrt2},
			{"side setting", sides(s.SideSetting(f, 0))[0], math.Sqrt2, size},
			{"corner setting", sides(s.CornerSetting(f, 0))[0], 1, size / math.Sqrt2},
		} {
			lo, hi := box([]patch{inset(test.square/test.cuts, seam)})
			if got := hi.x - lo.x; !near(got, test.shortSide) {
				t.Fatalf("%s for %.0f: a short side comes out at %.2f, want %.2f", test.what, size, got, test.shortSide)
			}
		}
	})
}

func TestMitreOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		width := f / 4
		_, ends := s.Border(length.Size{W: f, H: f}, width, true)
		long, b := float64(ends.Size.W), float64(width)
		// Outer edge down; the mitres' raw edges start in the strip's corners.
		strip := rect(0, 0, long, b+2*seam).cut(rule{0, -1, -seam}).cut(rule{0, 1, b + seam}).
			cut(rising(point{0, 0}).in(seam)).cut(falling(point{long, 0}).in(seam))
		outer, inner := extent(strip, seam), extent(strip, b+seam)
		if !near(outer, size+2*b) || !near(inner, size) {
			t.Fatalf("a strip of %.0f comes out at %.2f outside and %.2f inside, want %.2f and %.2f", long, outer, inner, size+2*b, size)
		}
	})
}

// extent is how wide a patch is along its corners at a height.
func extent(p patch, y float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range p {
		if math.Abs(q.y-y) < 1e-6 {
			lo, hi = min(lo, q.x), max(hi, q.x)
		}
	}
	return hi - lo
}

// TestSixtyFourTooSmall shows on paper that the rule of thumb for four half-squares
// at a time, unit over 0.64, comes out too small for a unit of 2 1/2 in, where
// the exact form doesn't.
func TestSixtyFourTooSmall(t *testing.T) {
	unitOf := func(side float64) float64 { return math.Sqrt2 * (side/2 - float64(in("1/4"))) }
	if got := unitOf(2.5 / 0.64 * float64(length.Inch)); got >= float64(in("2 1/2")) {
		t.Errorf("the rule of thumb gives %.0f", got)
	}
	if got := unitOf(sides(quarter.HalfSquareFour(in("2")))[0]); got < float64(in("2 1/2")) {
		t.Errorf("the exact form gives %.0f", got)
	}
}

// TestTrimOnPaper checks that a unit cut to be trimmed comes out larger by one
// trimming for each diagonal seam across it, so that so much can be cut off.
func TestTrimOnPaper(t *testing.T) {
	eachFinish(t, func(t *testing.T, s Sewing, f length.Length, seam, size float64) {
		s.Trim = TrimInch
		trim := float64(TrimInch)
		four := sides(s.HalfSquareFour(f))[0]
		pair := halfSquare(sides(s.Hourglass(f, 2))[0], seam)
		for _, test := range []struct {
			what string
			unit []patch
			more float64
		}{
			{"two", halfSquare(sides(s.HalfSquareTwo(f))[0], seam), trim},
			{"eight", halfSquare(sides(s.HalfSquareEight(f))[0]/2, seam), trim},
			{"flip", halfSquare(sides(s.HalfSquareFlip(f))[0], 0), trim},
			{"four", []patch{rect(0, 0, math.Sqrt2*(four/2-seam), 1)}, trim},
			{"hourglass", sew(pair, pair, rising(point{0, 0}).other().in(seam)), 2 * trim},
		} {
			if _, w, _ := finish(test.unit, seam); !near(w, size+test.more) {
				t.Fatalf("%s: comes out at %.1f, want %.1f", test.what, w, size+test.more)
			}
		}
	})
}
