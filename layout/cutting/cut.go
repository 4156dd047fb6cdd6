package cutting

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"cutbinder/layout/cores"
	"cutbinder/layout/length"
	"cutbinder/layout/pack"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// Options is how Cut goes about it.
type Options struct {
	// Effort is the work a fabric may take, in pack's units; zero leaves it to
	// pack: a second of one core at most, less where nothing comes of it.
	Effort int64
	// Brief gives up early what seems to lead nowhere: see pack.Problem.
	Brief bool
	// Cores is how many fabrics are worked on at once; zero stands for one.
	Cores int
	// Done is told each fabric as it is finished, from several goroutines at
	// once. It may be nil.
	Done func(id string)
}

// Cut lays out every list on its fabric, in the order given. It fails only
// where ctx ends or where a layout doesn't stand up to its check: pieces that
// find no place are told in Fabric.Short.
func Cut(ctx context.Context, p *plan.Plan, lists []List, o Options) ([]Fabric, error) {
	fabrics := make([]Fabric, len(lists))
	errs := make([]error, len(lists))
	order, load := make([]int, len(lists)), make([]int, len(lists))
	for i, l := range lists {
		order[i] = i
		for _, p := range l.Pieces {
			load[i] += p.Need
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return load[j] - load[i] }) // no long one is left to the end
	cores.Each(len(lists), max(o.Cores, 1), func(k int) {
		i := order[k]
		fabrics[i], errs[i] = cutOne(ctx, p, lists[i], o)
		if o.Done != nil {
			o.Done(lists[i].Fabric.ID)
		}
	})
	return fabrics, errors.Join(errs...)
}

func cutOne(ctx context.Context, p *plan.Plan, l List, o Options) (Fabric, error) {
	f := Fabric{List: l}
	var err error
	if len(l.Fabric.Have) > 0 {
		err = f.cutGiven(ctx, p, o)
	} else {
		err = f.cutBought(ctx, p, o)
	}
	if err != nil {
		return Fabric{}, fmt.Errorf("fabric %s: %w", l.Fabric.ID, err)
	}
	if err := f.verify(); err != nil {
		return Fabric{}, fmt.Errorf("fabric %s: its layout failed the check and isn't used: %w", l.Fabric.ID, err)
	}
	return f, nil
}

// Rules is what turns a used length of the fabric into what to ask for in the
// shop.
func Rules(p *plan.Plan, f *plan.Fabric) trade.Rules {
	r := trade.Rules{Squaring: p.Allow.Squaring, Extra: int(p.Allow.Extra), Step: f.Step}
	if f.Prewash {
		r.Shrink = int(f.Shrink.Length)
	}
	return r
}

func (f *Fabric) cutBought(ctx context.Context, p *plan.Plan, o Options) error {
	rules := Rules(p, f.Fabric)
	shop := func(used int64) trade.Purchase {
		return trade.ToBuy(length.Length(used)+retrueLoss(p, used, f.Pieces), rules)
	}
	problem := f.problem(o)
	problem.Width = int64(f.Fabric.Width)
	problem.Purchase = func(used int64) int64 { return cost(shop(used)) }
	problem.Sold = func(used int64) int64 { return int64(shop(used).Buy) }
	r, err := solve(ctx, problem)
	if err != nil {
		return err
	}
	c := newCloth(r.Cloths[0], f.Pieces, p.Ruler.H)
	c.Name, c.Bought, c.W, c.Square = "to buy", true, f.Fabric.Width, p.Allow.Squaring
	f.Short = r.Short
	f.Used, f.Bound, f.Any, f.Proved = length.Length(r.Used), length.Length(r.Bound), length.Length(r.Any), r.Proved
	f.Buy = trade.ToBuy(f.Used+trueing(p, c.strips()), rules)
	c.L = f.Buy.Buy
	f.Cloths = []Cloth{c}
	f.share()
	return nil
}

// cutGiven lays the pieces on what is on the shelf. Where edges are squared
// again on the way, the loss is found from a first layout and the cloths are
// shortened by it for a second. Of a cloth that squaring uses up a length unit
// is left, which nothing comes from.
func (f *Fabric) cutGiven(ctx context.Context, p *plan.Plan, o Options) error {
	have := f.Fabric.Have
	loss := make([]length.Length, len(have))
	for {
		problem := f.problem(o)
		for i, h := range have {
			problem.Given = append(problem.Given, pack.Cloth{W: int64(h.W), L: int64(max(h.H-p.Allow.Squaring-loss[i], 1))})
		}
		r, err := solve(ctx, problem)
		if err != nil {
			return err
		}
		f.Cloths, f.Short, f.Proved = nil, r.Short, r.Proved
		f.Used, f.Bound, f.Any = length.Length(r.Used), length.Length(r.Bound), length.Length(r.Any)
		fits := true
		for i, h := range have {
			c := newCloth(r.Cloths[i], f.Pieces, p.Ruler.H)
			c.Name, c.W, c.L, c.Square = h.Name, h.W, h.H, p.Allow.Squaring
			f.Cloths = append(f.Cloths, c)
			if need := trueing(p, c.strips()); need > loss[i] && c.leftAtEnd()+loss[i] < need {
				loss[i], fits = need, false
			}
		}
		if fits {
			f.share()
			return nil
		}
	}
}

// hair is the least that must be left of a purchase before it counts as one to
// the last thread: shops cut no more exactly than that.
const hair = length.Inch / 8

// cost orders purchases: less to buy comes first, and of equal ones those that
// leave a little for a crooked cut. It never falls as the purchase rises.
func cost(b trade.Purchase) int64 {
	c := 2 * min(int64(b.Buy), math.MaxInt64/2-1)
	if b.Buy-b.Exact < hair {
		c++
	}
	return c
}

func (f *Fabric) problem(o Options) pack.Problem {
	problem := pack.Problem{Kind: f.Fabric.Cutting, Effort: o.Effort, Brief: o.Brief}
	for _, piece := range f.Pieces {
		problem.Items = append(problem.Items, pack.Item{
			W: int64(piece.Size.W), H: int64(piece.Size.H), Count: piece.Need, Turn: piece.MayTurn})
	}
	return problem
}

func solve(ctx context.Context, p pack.Problem) (pack.Result, error) {
	r, err := pack.Solve(ctx, p)
	if err != nil {
		return r, err
	}
	return r, pack.Check(p, r)
}

// RetrueCut is what squaring the edge again on the way takes off: the trade
// reckons a quarter inch each time, which is 7 mm where a ruler shows millimetres.
func RetrueCut(units length.System) length.Length {
	if units == length.Metric {
		return 7 * length.MM
	}
	return length.Inch / 4
}

// trueing is what squaring the edge again takes over so many strips.
func trueing(p *plan.Plan, strips int) length.Length {
	if p.Allow.Retrue <= 0 || strips == 0 {
		return 0
	}
	return RetrueCut(p.Units) * length.Length((strips-1)/p.Allow.Retrue)
}

// retrueLoss estimates trueing for a used length before the strips are known:
// as if all were as low as the lowest piece.
func retrueLoss(p *plan.Plan, used int64, pieces []*Piece) length.Length {
	if p.Allow.Retrue <= 0 || len(pieces) == 0 {
		return 0
	}
	low := pieces[0].Size.H
	for _, piece := range pieces {
		low = min(low, piece.Size.H, piece.Size.W)
	}
	return trueing(p, int(length.Length(used)/max(low, 1)))
}
