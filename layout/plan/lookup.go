package plan

// Fabric finds a fabric by its id; nil where the plan has none of that id.
func (p *Plan) Fabric(id string) *Fabric {
	for _, f := range p.Fabrics {
		if f.ID == id {
			return f
		}
	}
	return nil
}

// Mix finds a mix by its id; nil where the plan has none of that id.
func (p *Plan) Mix(id string) *Mix {
	for _, m := range p.Mixes {
		if m.ID == id {
			return m
		}
	}
	return nil
}

// Block finds a block by its id; nil where the plan has none of that id.
func (p *Plan) Block(id string) *Block {
	for _, b := range p.Blocks {
		if b.ID == id {
			return b
		}
	}
	return nil
}

// FabricIDs are the ids of the fabrics that pieces of a source may come from: one,
// or a mix's in the order written. It is nil for a name the plan doesn't have.
func (p *Plan) FabricIDs(s Source) []string {
	if s.Mix {
		if m := p.Mix(s.ID); m != nil {
			return m.Fabrics
		}
		return nil
	}
	if p.Fabric(s.ID) == nil {
		return nil
	}
	return []string{s.ID}
}

// fabricIDs are the ids of all fabrics, in order.
func (p *Plan) fabricIDs() (ids []string) {
	for _, f := range p.Fabrics {
		ids = append(ids, f.ID)
	}
	return ids
}

// mixIDs are the ids of all mixes, in order.
func (p *Plan) mixIDs() (ids []string) {
	for _, m := range p.Mixes {
		ids = append(ids, m.ID)
	}
	return ids
}

// blockIDs are the ids of all blocks, in order.
func (p *Plan) blockIDs() (ids []string) {
	for _, b := range p.Blocks {
		ids = append(ids, b.ID)
	}
	return ids
}
