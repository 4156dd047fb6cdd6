package changes

import (
	"slices"

	"cutbinder/layout/page"
	"cutbinder/layout/plan"
	"cutbinder/sheets"
	"cutbinder/sheets/say"
)

// Document is what to print to bring an old binder up to date: a cover that says
// why, then the pages to put in, as they stand in the new binder, then the labels.
// Problems are those of the label sheet.
func (c *Changes) Document(new Binder, o sheets.Options) (page.Document, plan.Problems) {
	doc := new.Document
	doc.Title += ": changes"
	doc.Pages = c.cover(new, o)
	for _, p := range c.Pages {
		doc.Pages = append(doc.Pages, new.Document.Pages[p.Number-1])
	}
	if len(c.Labels) > 0 {
		labels, problems := new.LabelSheets(c.Labels, o)
		if problems.Faulty() {
			return page.Document{}, problems
		}
		for i := range labels {
			labels[i].Label = "labels " + labels[i].Label
		}
		doc.Pages = append(doc.Pages, labels...)
	}
	return doc, nil
}

// cover is the pages that say what has changed.
func (c *Changes) cover(new Binder, o sheets.Options) []page.Page {
	book := sheets.NewBook(new.Quilt, o)
	st, v := book.Style, say.For(new.Plan)
	book.PageOf = func(n, of int) string { return "changes" }
	blocks := []page.Block{
		page.Para{Text: st.Title.Say(new.Plan.Title), Mark: "title"},
		page.Para{Text: st.Help.Say(c.versions()), Mark: "imprint"},
	}
	matters := c.Words(v)
	slices.SortStableFunc(matters, func(a, b Matter) int { return boolean(b.Paper) - boolean(a.Paper) })
	for _, m := range matters {
		list := page.List{}
		for _, line := range m.Lines {
			list.Items = append(list.Items, page.ListItem{W: st.Tick, Text: st.Body.Say(line),
				Draw: func(p *page.Pen, box page.Box) { p.TickBox(box, "change") }})
		}
		blocks = append(blocks, page.Heading{Text: m.Head}, list)
	}
	book.Add(page.Section{Head: "What has changed", Name: "changes", Bookmark: "What has changed", Blocks: blocks})
	pages := book.Document().Pages
	for i := range pages {
		pages[i].Label = "changes"
	}
	return pages
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// versions says which versions are compared.
func (c *Changes) versions() string {
	return "what has changed " + c.between()
}

// between is "from version 2 to version 3", as far as the plans say.
func (c *Changes) between() string {
	was, now := c.Old.Plan.Version, c.New.Plan.Version
	if was == now || was == "" || now == "" {
		return "since the older plan"
	}
	return "from version " + was + " to version " + now
}
