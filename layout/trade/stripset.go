package trade

import "cutbinder/layout/length"

// A StripSet is strips across the width, sewn side by side, cut across into
// segments.
type StripSet struct {
	Strips  []length.Length // cut width of each, in sewing order
	Sums    []Sum           // how each comes about
	Segment length.Length   // cut width of a segment
	PerSet  int             // segments from one set
	Sets    int
	Spare   int // segments beyond those asked for
}

// StripSet works out how many sets of strips give so many segments. Strips are
// cut at their finished width + 2s, segments at their finished width + 2s, and a
// set as long as the fabric's usable width gives ⌊width / segment⌋ of them. Sets
// is 0 where a segment is longer than the width.
func (s Sewing) StripSet(finished []length.Length, segment, wof length.Length, need int) StripSet {
	var set StripSet
	for _, f := range finished {
		w, sum := s.add(s.patch(f)...)
		set.Strips, set.Sums = append(set.Strips, w), append(set.Sums, sum)
	}
	set.Segment = segment + 2*s.Seam
	if set.Segment <= 0 || need <= 0 {
		return set
	}
	set.PerSet = int(wof / set.Segment)
	if set.PerSet == 0 {
		return set
	}
	set.Sets = (need-1)/set.PerSet + 1
	set.Spare = set.Sets*set.PerSet - need
	return set
}
