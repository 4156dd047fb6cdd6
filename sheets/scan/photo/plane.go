package photo

import "math"

// A plane is a projective map of one plane to another, as a matrix of three rows.
type plane [9]float64

func (m plane) at(x, y float64) point {
	w := m[6]*x + m[7]*y + m[8]
	return point{(m[0]*x + m[1]*y + m[2]) / w, (m[3]*x + m[4]*y + m[5]) / w}
}

func (m plane) scaled(k float64) plane {
	for i := range 6 {
		m[i] *= k
	}
	return m
}

// tilted turns a plane in itself, tilts it about an axis in it, and looks at its
// origin from a distance.
func tilted(turn, axis, tilt, distance float64) plane {
	st, ct := math.Sincos(turn)
	sa, ca := math.Sincos(axis)
	sin, cos := math.Sincos(tilt)
	// Across the axis lengths shrink by cos and depths grow by sin.
	row := func(x, y float64) (a, b, depth float64) {
		x, y = x*ct-y*st, x*st+y*ct
		along, across := x*ca+y*sa, y*ca-x*sa
		shrunk := across * cos
		return along*ca - shrunk*sa, along*sa + shrunk*ca, across * sin / distance
	}
	ax, ay, az := row(1, 0)
	bx, by, bz := row(0, 1)
	return plane{ax, bx, 0, ay, by, 0, az, bz, 1}
}

// inverse is the map back, but for a factor.
func (m plane) inverse() plane {
	return plane{
		m[4]*m[8] - m[5]*m[7], m[2]*m[7] - m[1]*m[8], m[1]*m[5] - m[2]*m[4],
		m[5]*m[6] - m[3]*m[8], m[0]*m[8] - m[2]*m[6], m[2]*m[3] - m[0]*m[5],
		m[3]*m[7] - m[4]*m[6], m[1]*m[6] - m[0]*m[7], m[0]*m[4] - m[1]*m[3],
	}
}
