package cutting

import "cutbinder/layout/length"

// AsPlanned is the piece's size as plans write it: length.WOF across for strips
// across the whole width.
func (p *Piece) AsPlanned() length.Size {
	if p.WOF {
		return length.Size{W: length.WOF, H: p.Size.H}
	}
	return p.Size
}

// IsDone says whether all of a piece of the list are cut already, as the plan has
// it.
func (l *List) IsDone(p *Piece) bool {
	return l.Fabric.IsDone(p.AsPlanned()) || l.Fabric.IsDone(p.Size)
}

// AllDone says whether nothing of the list is left to cut.
func (l *List) AllDone() bool {
	for _, p := range l.Pieces {
		if !l.IsDone(p) {
			return false
		}
	}
	return len(l.Pieces) > 0
}

// Done says whether the cuts free only pieces that are cut already.
func (l *List) Done(step Step) bool {
	freed := false
	for _, then := range step.Then {
		if then.Piece >= 0 {
			freed = true
			if !l.IsDone(l.Pieces[then.Piece]) {
				return false
			}
		}
		for _, inner := range then.Steps {
			if inner.Leftover {
				continue
			}
			freed = true
			if !l.Done(inner) {
				return false
			}
		}
	}
	return freed
}
