package pack

// dice give a fixed sequence of numbers: a linear congruential generator with
// Knuth's constants, so that what is tried by chance is the same every time.
type dice struct{ state uint64 }

// draw gives the next number below n.
func (d *dice) draw(n int) int {
	d.state = d.state*6364136223846793005 + 1442695040888963407
	return int((d.state >> 33) % uint64(n))
}
