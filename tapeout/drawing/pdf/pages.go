package pdf

import (
	"context"
	"fmt"

	"github.com/klippa-app/go-pdfium/requests"

	"groundrow/tapeout/drawing/linework"
)

// PageInfo is what a person needs to know of a page to pick the one with the plan.
type PageInfo struct {
	Number        int     // from 1
	Label         string  // as the document numbers it: A-101; empty: it does not
	Width, Height float64 // of the page as it is shown, metres on paper
	Turned        int     // quarter turns clockwise by which the page is shown

	Paths, Texts, Images int     // forms taken apart
	Picture              float64 // part of the page that its largest picture covers, 0 to 1
	Counted              bool    // false: the page could not be looked into, or there is too much in the file
}

// Scan tells whether the page is a picture and not a drawing.
func (p *PageInfo) Scan() bool { return p.Counted && p.Paths == 0 && p.Picture > 0 }

// MostPages is how many pages are listed; a file can claim to have a million.
const MostPages = 2000

// Pages lists the pages of a file, at most MostPages. It takes as long as reading them all does, some
// seconds for a set of dense drawings. A page that is damaged is listed uncounted.
func (e *Engine) Pages(ctx context.Context, data []byte) ([]PageInfo, error) {
	var list []PageInfo
	err := e.open(ctx, data, func(s *session) error {
		budget := s.limits.Objects
		for i := range min(s.doc.pages, MostPages) {
			info := s.about(i, &budget)
			if err := s.ctx.Err(); err != nil {
				return err
			}
			list = append(list, info)
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("list the pages of the PDF file: %w", err)
	}
	return list, nil
}

// about looks at one page. Objects beyond the budget are not counted, and then the
// page's own size is all that is told.
func (s *session) about(index int, budget *int) PageInfo {
	info := PageInfo{Number: index + 1}
	label, err := s.lib.FPDF_GetPageLabel(&requests.FPDF_GetPageLabel{Document: s.doc.ref, Page: index})
	if err == nil {
		info.Label = label.Label
	}
	size, err := s.lib.FPDF_GetPageSizeByIndexF(&requests.FPDF_GetPageSizeByIndexF{Document: s.doc.ref, Index: index})
	if err == nil {
		k := s.doc.units[index] * float64(linework.Point)
		info.Width, info.Height = float64(size.Size.Width)*k, float64(size.Size.Height)*k
	}
	if *budget <= 0 {
		return info
	}
	p, err := s.page(info.Number)
	if err != nil {
		return info
	}
	info.Turned = p.turned
	c := counting{info: &info, reader: reader{s: s, page: p}, budget: budget}
	info.Counted = c.page()
	info.Picture = c.reader.picture
	return info
}

// counting counts what is on a page, without reading it.
type counting struct {
	info   *PageInfo
	reader reader
	budget *int
}

func (c *counting) page() bool {
	for i := range c.reader.page.objects {
		if o, ok := c.reader.s.onPage(c.reader.page.index, i); ok && !c.object(o, setting{place: c.reader.page.place}) {
			return false
		}
	}
	return true
}

func (c *counting) object(o object, in setting) bool {
	if *c.budget--; *c.budget < 0 || c.reader.s.ctx.Err() != nil {
		return false
	}
	switch o.kind() {
	case pathObject:
		c.info.Paths++
	case textObject:
		c.info.Texts++
	case imageObject:
		c.info.Images++
		c.reader.image(o, in)
	case formObject:
		return c.form(o, in)
	}
	return true
}

func (c *counting) form(o object, in setting) bool {
	if in.depth >= deepest {
		return true
	}
	in.depth++
	in.place = o.matrix().then(in.place)
	for i := range o.children() {
		if child, ok := o.child(i); ok && !c.object(child, in) {
			return false
		}
	}
	return true
}
