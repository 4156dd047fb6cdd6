package pack

// A table is a set of keys.
type table struct {
	slots []uint64
	used  int
}

// clear empties the table and makes room for so many keys.
func (t *table) clear(n int) {
	size := 1024
	for size < n {
		size *= 2
	}
	if len(t.slots) < size {
		t.slots = make([]uint64, size)
	} else {
		clear(t.slots)
	}
	t.used = 0
}

// add takes a key in, and gives whether it is new. A full table forgets.
func (t *table) add(key uint64) bool {
	if key == 0 {
		key = 1
	}
	if t.used++; t.used > len(t.slots)/2 {
		clear(t.slots)
		t.used = 1
	}
	mask := uint64(len(t.slots) - 1)
	i := key & mask
	for ; t.slots[i] != 0; i = (i + 1) & mask {
		if t.slots[i] == key {
			return false
		}
	}
	t.slots[i] = key
	return true
}
