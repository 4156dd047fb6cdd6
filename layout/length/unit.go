package length

import "strings"

// units are the names a length may carry, in lower case without a full stop.
var units = map[string]Length{
	"in": Inch, "inch": Inch, "inches": Inch, `"`: Inch,
	"ft": Foot, "foot": Foot, "feet": Foot, "'": Foot,
	"yd": Yard, "yds": Yard, "yard": Yard, "yards": Yard,
	"mm": MM, "millimetre": MM, "millimetres": MM, "millimeter": MM, "millimeters": MM,
	"cm": CM, "centimetre": CM, "centimetres": CM, "centimeter": CM, "centimeters": CM,
	"m": M, "metre": M, "metres": M, "meter": M, "meters": M,
}

// unitNamed finds a unit by its name, which may end in a full stop ("in.").
func unitNamed(name string) (Length, bool) {
	u, ok := units[strings.TrimSuffix(name, ".")]
	return u, ok
}

// unit is what a bare number counts: inches or centimetres.
func (s System) unit() Length {
	if s == Metric {
		return CM
	}
	return Inch
}

// suffix is the short name of the system's unit.
func (s System) suffix() string {
	if s == Metric {
		return "cm"
	}
	return "in"
}

// String gives the system's name as plans write it: "inch" or "metric".
func (s System) String() string {
	if s == Metric {
		return "metric"
	}
	return "inch"
}
