package pack

// boundAny is a length that no edge-to-edge cutting of any kind of the sizes
// from a width can do with less of: the area over the width, rounded up.
func boundAny(sizes []size, width int64) int64 {
	return 0
}
