// Package bag sorts cut pieces into numbered bags and gives each bag a code: the
// short one that a maker can type and the square one that a camera reads.
//
// Start with Sort, which numbers the bags of a plan. Sorted.Of says which bag a
// piece goes into, Sorted.Squares makes the square codes, Parse reads a code
// back and Sorted.Read says what bag it belongs to, or why it belongs to none.
//
// # The code
//
// A code such as K7Q-07-F3X has four parts: the plan's mark (three characters),
// the bag's number (two digits or more), what the bag holds (two characters) and
// a check character. Mark and contents are written in Alphabet, which leaves out
// the letters that are easily taken for another character, so such a letter can
// be read as what it was taken for when it is typed. The check character is that
// of ISO/IEC 7064, pure system MOD 37-2, over the characters before it, and could
// be any of 0-9, A-Z and *: the contents are digested anew until it is one of
// Alphabet too.
//
// What the bag holds is worked out from that bag alone, not from its number or
// from other bags: a label stays good while its bag keeps number and contents,
// and a changed bag gets another code (but for one change in 841, the number of
// pairs that Alphabet can write).
package bag

import (
	"strings"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/plan"
	"cutbinder/layout/trade"
)

// A Bag is what goes into one bag.
type Bag struct {
	Number, Of int     // bag Number of Of, counted from 1
	Places     []Place // where its pieces go, in the plan's order; at least one
	Rows       []Row   // what is in it, largest size first; at least one
	Code       Code
}

// A Place is where pieces go: a block, or what pieces of no block are for.
type Place struct {
	Block string // the block's id; "" for pieces of no block
	Name  string // the block's name; "" where the plan gives none
	For   string // what pieces of no block are for; may be ""
	Count int    // how many of the bag's pieces go there, spares not counted
}

// A Row is one kind of piece in a bag.
type Row struct {
	Cut      length.Size
	Finished length.Size // zero where it isn't known
	Unit     plan.Unit
	Role     string         // what part of the unit: "goose"; "" where all are alike
	Into     trade.Diagonal // cut on the diagonal afterwards
	Joined   *cutting.Joined
	Set      *cutting.Set
	Note     string // what the plan says that a block's pieces are for; may be ""
	Count    int    // spares not counted
	Spares   int
	Fabrics  []Share // in the plan's order
}

// A Share is how many pieces of a row come from one fabric.
type Share struct {
	ID, Name      string
	Count, Spares int
}

// Count is how many pieces the bag holds, spares not counted.
func (b *Bag) Count() int {
	n := 0
	for _, r := range b.Rows {
		n += r.Count
	}
	return n
}

// Spares is how many spares the bag holds.
func (b *Bag) Spares() int {
	n := 0
	for _, r := range b.Rows {
		n += r.Spares
	}
	return n
}

// Block is the id of the bag's block, or of its blocks with commas between; ""
// for pieces of no block.
func (b *Bag) Block() string {
	return b.join(func(p Place) string { return p.Block })
}

// BlockName is the name of the bag's block, or of its blocks with commas
// between; for pieces of no block it is what they are for.
func (b *Bag) BlockName() string {
	return b.join(func(p Place) string {
		if p.Block == "" {
			return p.Purpose()
		}
		return p.Name
	})
}

func (b *Bag) join(field func(Place) string) string {
	var texts []string
	for _, p := range b.Places {
		if s := field(p); s != "" {
			texts = append(texts, s)
		}
	}
	return strings.Join(texts, ", ")
}

// Purpose is what pieces of no block are for, in words.
func (p Place) Purpose() string {
	if strings.TrimSpace(p.For) == "" {
		return "loose pieces"
	}
	return p.For
}

// Heading names a place in one line: "A Lantern", "side borders".
func (p Place) Heading() string {
	switch {
	case p.Block == "":
		return p.Purpose()
	case p.Name == "" || p.Name == p.Block:
		return p.Block
	}
	return p.Block + " " + p.Name
}

// Heading names the bag's places in one line.
func (b *Bag) Heading() string {
	if len(b.Places) == 1 {
		return b.Places[0].Heading()
	}
	return b.join(func(p Place) string {
		if p.Block == "" {
			return p.Purpose()
		}
		return p.Block
	})
}

// Fabrics is what the bag holds of each fabric, over all its rows, in the plan's
// order.
func (b *Bag) Fabrics() []Share {
	var all []Share
	at := map[string]int{}
	for _, r := range b.Rows {
		for _, s := range r.Fabrics {
			i, ok := at[s.ID]
			if !ok {
				at[s.ID] = len(all)
				all = append(all, s)
				continue
			}
			all[i].Count += s.Count
			all[i].Spares += s.Spares
		}
	}
	return all
}
