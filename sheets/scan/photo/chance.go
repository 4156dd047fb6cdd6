package photo

// A chance is a source of numbers that look as if by chance and are the same for
// the same seed: Steele, Lea and Flood's SplitMix of 2014.
type chance struct{ state uint64 }

func (c *chance) next() uint64 {
	c.state += 0x9E3779B97F4A7C15
	z := c.state
	z = (z ^ z>>30) * 0xBF58476D1CE4E5B9
	z = (z ^ z>>27) * 0x94D049BB133111EB
	return z ^ z>>31
}

// Float64 is a number from 0 to 1.
func (c *chance) Float64() float64 { return float64(c.next()>>11) / (1 << 53) }

// IntN is a number from 0 to n-1.
func (c *chance) IntN(n int) int { return int(c.next() % uint64(n)) }

// bell is a number that is mostly near 0, with a standard deviation of 1: the sum
// of four even ones, which is near enough to a Gauss.
func (c *chance) bell() float32 {
	z := c.next()
	sum := int(z&0xFFFF) + int(z>>16&0xFFFF) + int(z>>32&0xFFFF) + int(z>>48)
	return (float32(sum)/65536 - 2) * 1.732
}
