package cutting

import (
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// sewing is what the cut sizes of a plan's units depend on.
func sewing(p *plan.Plan, trim bool) trade.Sewing {
	s := trade.Sewing{Seam: p.Seam, Step: p.CutStep}
	if trim {
		s.Trim = trade.TrimInch
		if p.Units == length.Metric {
			s.Trim = trade.TrimMetric
		}
	}
	return s
}

// Recipe is how the unit of a line of pieces is made. It is false for strips and
// strip sets, which depend on the fabric's width (see StripSet), for patches whose
// cut size is stated, and for methods that don't make the unit.
func Recipe(p *plan.Plan, piece *plan.Piece) (trade.Recipe, bool) {
	s, f := sewing(p, piece.Trim), piece.Finished
	switch piece.Unit {
	case plan.Patch, "":
		return s.Patch(f), f.W > 0 && f.H > 0
	case plan.HalfSquare:
		return halfSquare(s, piece)
	case plan.QuarterSquare:
		return s.QuarterSquare(f.W), true
	case plan.Hourglass:
		return s.Hourglass(f.W, len(piece.Sources)), true
	case plan.Geese:
		return geese(s, piece)
	case plan.SquareInSquare:
		return squareInSquare(s, piece)
	case plan.SideSetting:
		return s.SideSetting(f.W, 0), true
	case plan.CornerSetting:
		return s.CornerSetting(f.W, 0), true
	}
	return trade.Recipe{}, false
}

func halfSquare(s trade.Sewing, piece *plan.Piece) (trade.Recipe, bool) {
	switch f := piece.Finished.W; piece.Method {
	case plan.TwoAtATime, "":
		return s.HalfSquareTwo(f), true
	case plan.FourAtATime:
		return s.HalfSquareFour(f), true
	case plan.EightAtATime:
		return s.HalfSquareEight(f), true
	case plan.StitchAndFlip:
		return s.HalfSquareFlip(f), true
	}
	return trade.Recipe{}, false
}

func geese(s trade.Sewing, piece *plan.Piece) (trade.Recipe, bool) {
	switch f := piece.Finished; piece.Method {
	case plan.FourAtATime, "":
		return s.GeeseFour(f.W), f.W == 2*f.H
	case plan.StitchAndFlip:
		return s.GeeseFlip(f), true
	}
	return trade.Recipe{}, false
}

func squareInSquare(s trade.Sewing, piece *plan.Piece) (trade.Recipe, bool) {
	switch f := piece.Finished.W; piece.Method {
	case "":
		return s.SquareInSquare(f), true
	case plan.StitchAndFlip:
		return s.SquareInSquareFlip(f), true
	}
	return trade.Recipe{}, false
}
