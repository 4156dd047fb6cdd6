package main

import (
	"cutbinder/layout/cutting"
	"cutbinder/sheets"
	"cutbinder/sheets/say"
)

// The shapes of "cuts --json". Lengths are inches as decimals; x runs across the
// width from the left selvage, y along the length from the squared end.
type (
	cutsOut struct {
		Plan    string      `json:"plan"`
		Mark    string      `json:"mark"`
		Fabrics []fabricOut `json:"fabrics"`
	}
	fabricOut struct {
		ID         string      `json:"id"`
		Width      float64     `json:"usable_width_in"`
		Short      bool        `json:"short"`
		Used       float64     `json:"used_length_in"`
		LowerBound float64     `json:"lower_bound_in"`
		Proved     bool        `json:"proved"`
		Buy        buyOut      `json:"buy"`
		Pieces     []pieceOut  `json:"pieces"`
		Lengths    []lengthOut `json:"lengths"`
	}
	buyOut struct {
		Text string  `json:"text"`
		In   float64 `json:"in"`
	}
	pieceOut struct {
		ID      string  `json:"id"`
		Cut     string  `json:"cut"`
		W       float64 `json:"w_in"`
		H       float64 `json:"h_in"`
		Need    int     `json:"need"`
		MayTurn bool    `json:"may_turn"`
		Short   int     `json:"short,omitempty"`
	}
	lengthOut struct {
		Name   string      `json:"name"`
		Width  float64     `json:"width_in"`
		Length float64     `json:"length_in"`
		Placed []placedOut `json:"placed"`
		Steps  []string    `json:"steps"`
	}
	placedOut struct {
		Piece string  `json:"piece"`
		X     float64 `json:"x_in"`
		Y     float64 `json:"y_in"`
		W     float64 `json:"w_in"`
		H     float64 `json:"h_in"`
		Bag   int     `json:"bag"`
	}
)

func cutsJSON(q *sheets.Quilt, fabrics []*cutting.Fabric) cutsOut {
	out := cutsOut{Plan: q.Plan.Title, Mark: q.Bags.Mark, Fabrics: []fabricOut{}}
	for _, f := range fabrics {
		out.Fabrics = append(out.Fabrics, fabricJSON(q, f))
	}
	return out
}

func fabricJSON(q *sheets.Quilt, f *cutting.Fabric) fabricOut {
	v := say.For(q.Plan).InPlain()
	out := fabricOut{
		ID: f.Fabric.ID, Width: f.Fabric.Width.Inches(), Short: f.Missing() > 0,
		Used: f.Used.Inches(), LowerBound: f.Any.Inches(), Proved: f.Proved,
		Buy: buyOut{v.ToBuy(f.Buy.Buy), f.Buy.Buy.Inches()},
	}
	for i, p := range f.Pieces {
		out.Pieces = append(out.Pieces, pieceOut{p.ID, v.Size(p.Size), p.Size.W.Inches(), p.Size.H.Inches(), p.Need, p.MayTurn, f.Short[i]})
	}
	for i := range f.Cloths {
		out.Lengths = append(out.Lengths, clothJSON(q, f, &f.Cloths[i]))
	}
	return out
}

func clothJSON(q *sheets.Quilt, f *cutting.Fabric, c *cutting.Cloth) lengthOut {
	out := lengthOut{Name: c.Name, Width: c.W.Inches(), Length: c.L.Inches(), Placed: []placedOut{}, Steps: []string{}}
	for _, p := range c.Placed {
		piece := f.Pieces[p.Piece]
		out.Placed = append(out.Placed, placedOut{piece.ID, p.X.Inches(), p.Y.Inches(), p.W.Inches(), p.H.Inches(),
			q.Bags.Of(f.Fabric.ID, piece.ID, p.Use)})
	}
	for _, line := range say.For(q.Plan).InPlain().Steps(q.Plan, f, c) {
		out.Steps = append(out.Steps, line.Text)
	}
	return out
}
