package sheets

import (
	"fmt"

	"cutbinder/layout/cutting"
	"cutbinder/layout/length"
	"cutbinder/layout/page"
	"cutbinder/layout/picture"
	"cutbinder/layout/plan"
)

// A Picture is one picture out of a binder, on paper of its own size, and what it
// shows in words.
type Picture struct {
	page.Page
	Title string
}

// FabricPicture is how a fabric is cut: its name and its diagrams. It is nil where
// no pieces are cut from a fabric of that id.
func FabricPicture(q *Quilt, o Options, id string) *Picture {
	b := newBinder(q, o)
	for i := range q.Fabrics {
		if f := &q.Fabrics[i]; f.Fabric.ID == id {
			return b.alone(b.book.Body().W, f.Fabric.Name+", "+q.Plan.Title+": how it is cut", b.diagrams(f)...)
		}
	}
	return nil
}

// diagrams is a fabric's name and the diagrams of its cloths.
func (b *binder) diagrams(f *cutting.Fabric) []page.Block {
	blocks := []page.Block{page.Para{Text: b.style.Title.Say(f.Fabric.Name), Mark: "title"}}
	for i := range f.Cloths {
		if c := &f.Cloths[i]; !c.Unused() {
			blocks = append(blocks, page.Heading{Text: c.Name, Aside: b.clothWords(c)})
			d := b.newDiagram(f, i)
			blocks = append(blocks, b.pictures(d, b.windows(f, i, d), c.Name)...)
		}
	}
	return blocks
}

// BlockPicture is a block: its picture, its size and its fabrics. It is nil where
// there is no block of that id, or it isn't drawn.
func BlockPicture(q *Quilt, o Options, id string) *Picture {
	block := q.Plan.Block(id)
	if block == nil || block.Drawing == nil {
		return nil
	}
	b := newBinder(q, o)
	return b.alone(b.book.Body().W, "Block "+id+", "+block.Name+", of "+q.Plan.Title, b.blockTop(block, picture.Block(q.Plan, block)))
}

// QuiltPicture is the whole quilt. It is nil where the plan doesn't lay it out;
// the doubts may say why.
func QuiltPicture(q *Quilt, o Options) (*Picture, plan.Problems) {
	pic, doubts := picture.Quilt(q.Plan)
	if pic == nil {
		return nil, doubts
	}
	b := newBinder(q, o)
	w := b.book.Body().W
	return b.alone(w, q.Plan.Title, page.Drawing{H: w * pic.H / pic.W, Draw: func(p *page.Pen, box page.Box) { b.drawQuilt(p, box, pic) }}), nil
}

// PagePicture is a page of the binder, counted from 1.
func PagePicture(q *Quilt, o Options, n int) (*Picture, plan.Problems, error) {
	doc, problems := Binder(q, o)
	if problems.Faulty() {
		return nil, problems, nil
	}
	if n < 1 || n > len(doc.Pages) {
		return nil, problems, fmt.Errorf("page %d: the binder has pages 1 to %d", n, len(doc.Pages))
	}
	return &Picture{doc.Pages[n-1], fmt.Sprintf("%s, page %d", q.Plan.Title, n)}, problems, nil
}

// pictureMargin is the white round a picture that stands alone: room for what
// hangs out of a drawing.
const pictureMargin = 10 * length.MM

// alone sets blocks on paper of just their size.
func (b *binder) alone(w length.Length, title string, blocks ...page.Block) *Picture {
	h := page.HeightOf(b.style, w, blocks...)
	paper := page.Paper{Name: "picture", W: w + 2*pictureMargin, H: h + 2*pictureMargin}
	live := page.Box{W: paper.W, H: paper.H}
	pen := page.NewPen(b.style, live)
	pen.Blocks(live.Inset(pictureMargin), blocks...)
	return &Picture{page.Page{Paper: paper, Live: live, Label: "1", Items: pen.Items()}, title}
}
