package cutting

import (
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
)

// A spareKey is what spares are reckoned for together: a size of a fabric or mix.
type spareKey struct {
	source string
	mix    bool
	size   length.Size
	fixed  bool
}

// giveSpares adds a share of spares to the demands: for each size of a source,
// rounded up once over all its uses. The uses get them in order of need: each
// spare goes to the use that has most pieces for every spare, itself counted. It
// says how many it gave; more than MaxPieces are counted and not given.
func giveSpares(share plan.Percent, demands []*demand) (given int) {
	if share <= 0 {
		return 0
	}
	var order []spareKey
	groups := map[spareKey][]*demand{}
	for _, d := range demands {
		if d.spareless {
			continue
		}
		k := d.spareKey()
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], d)
	}
	for _, k := range order {
		given += shareOut(groups[k], share, MaxPieces-given)
	}
	return given
}

func (d *demand) spareKey() spareKey {
	k := spareKey{d.source.ID, d.source.Mix, d.size, d.fixed}
	if len(d.fabrics) == 1 && d.fabrics[0].OneWay {
		k.fixed = true
	}
	if !k.fixed && k.size.W > k.size.H {
		k.size = turned(k.size)
	}
	if k.size.W == k.size.H {
		k.fixed = false
	}
	return k
}

// shareOut gives a group its spares, unless they are more than most.
func shareOut(group []*demand, share plan.Percent, most int) int {
	total := 0
	for _, d := range group {
		total += d.count
	}
	spares := (total*int(share) + 9999) / 10000 // share is in hundredths of a percent
	if spares > most {
		return spares
	}
	for range spares {
		neediest := group[0]
		for _, d := range group[1:] {
			if d.count*(neediest.spares+1) > neediest.count*(d.spares+1) {
				neediest = d
			}
		}
		neediest.spares++
	}
	return spares
}
