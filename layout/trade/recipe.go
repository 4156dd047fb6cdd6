package trade

import "cutbinder/layout/length"

// A Recipe is how a unit is made: the parts that one batch takes, and how many
// units the batch makes.
type Recipe struct {
	Parts []Part
	Makes int  // units a batch makes
	Bias  bool // the units' outer edges lie on the bias and stretch
}

// A Part is one size that a batch takes.
type Part struct {
	Source   int    // which of the unit's fabrics it comes from, counted from 0
	Role     string // "goose", "sky", "centre", "corner"; "" where all parts are alike
	Size     length.Size
	PerBatch int
	// Diagonal says how it is cut into triangles before any sewing. Where a
	// method sews first and cuts then it is Whole.
	Diagonal Diagonal
	Turned   bool // the method turns its print: one-way prints run several ways
	Sum      Sum
}

// The roles of parts.
const (
	Goose  = "goose"
	Sky    = "sky"
	Centre = "centre"
	Corner = "corner"
)

// Batches is how many batches so many units take.
func (r Recipe) Batches(units int) int {
	if units <= 0 || r.Makes <= 0 {
		return 0
	}
	return (units-1)/r.Makes + 1
}

// Leftover is how many units the batches make beyond those asked for.
func (r Recipe) Leftover(units int) int { return r.Batches(units)*r.Makes - max(units, 0) }

// Patch is a square or rectangle: finished + 2s each way.
func (s Sewing) Patch(finished length.Size) Recipe {
	size, sum := s.rectangle(s.patch(finished.W), s.patch(finished.H))
	return Recipe{Makes: 1, Parts: []Part{{Size: size, PerBatch: 1, Sum: sum}}}
}

func (s Sewing) patch(finished length.Length) []term {
	return []term{exactly(Finished, 1, finished), s.seams()}
}

// seams is a seam at both ends.
func (s Sewing) seams() term { return exactly(Seams, 2, s.Seam) }

// halfSquareSeams is (2+√2)s.
func (s Sewing) halfSquareSeams() term {
	return rooted(HalfSquareSeams, whole(2*s.Seam).plus(root2(s.Seam)))
}

// quarterSeams is (2+2√2)s.
func (s Sewing) quarterSeams(what What) term {
	return rooted(what, whole(2*s.Seam).plus(root2(2*s.Seam)))
}

// trim is so many times the trimming.
func (s Sewing) trim(times int64) term { return exactly(Trimming, times, s.Trim) }
