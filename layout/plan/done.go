package plan

import "cutbinder/layout/length"

// A DoneSize is a cut size of a fabric of which all pieces are cut.
type DoneSize struct {
	At Pos
	length.Size
}

// readDone reads what of a fabric is cut already: yes for all of it, or a list of
// cut sizes.
func readDone(r *reader, k Key, v value, f *Fabric) {
	if yes, ok := yesOrNo(v); ok {
		f.Done = yes
		return
	}
	items, ok := r.several(k, v)
	if !ok || r.tooMany(k, v, len(items), maxLines) {
		return
	}
	for _, item := range items {
		one := k
		one.Example = "3 1/2 x 6 1/2"
		if z, ok := r.size(one, item, true); ok {
			f.DoneSizes = append(f.DoneSizes, DoneSize{item.at, z})
		}
	}
}

// IsDone says whether all pieces of a cut size are cut already, whichever way
// round the size is written. W is length.WOF for strips across the width.
func (f *Fabric) IsDone(size length.Size) bool {
	if f.Done {
		return true
	}
	for _, d := range f.DoneSizes {
		if d.Is(size) {
			return true
		}
	}
	return false
}

// Is says whether it is that cut size, whichever way round it is written.
func (d DoneSize) Is(size length.Size) bool {
	return d.Size == size || d.W == size.H && d.H == size.W
}
