package sense

import (
	"fmt"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// Category is a sort of thing on a drawing that is not scenery.
type Category string

// Categories, in the order in which an item is given to the first that claims it.
const (
	NotSeen    Category = "not seen"
	Border     Category = "border"
	TitleBlock Category = "title block"
	Dimensions Category = "dimensions"
	Hatching   Category = "hatching"
	DatumLines Category = "centre line and baseline"
)

// Aside is what is proposed to be left aside, for one reason.
type Aside struct {
	Category Category
	Items    Set
	Why      string // a sentence
}

// ProposeAside returns what of the drawing is not scenery, by category and reason.
// No item is in two of them. Nothing is left out where there is a doubt that words
// or a clear pattern do not settle: a wall left aside is worse than a border kept.
func ProposeAside(s *linework.Sheet) []Aside {
	a := &asides{sheet: s, taken: make([]bool, len(s.Items))}
	a.claim(NotSeen, pick(s, func(i *linework.Item) bool { return i.Hidden }), "Their layer is off, or they are hidden.")
	a.byWords(Border, "border", "frame", "viewport", "vport", "defpoint")
	a.claim(Border, frames(s), "They run around everything else.")
	a.byWords(TitleBlock, "title", "titleblock", "ttlb")
	if box, ok := titleBox(s); ok {
		a.claim(TitleBlock, Inside(s, box), "They stand around the words of a title block.")
	}
	a.claim(Dimensions, pick(s, func(i *linework.Item) bool { return i.Kind == "DIMENSION" || i.Kind == "LEADER" }), "The file says that they are dimensions.")
	a.byWords(Dimensions, "dim", "dimension")
	a.claim(Dimensions, dimensionLines(s), "A figure beside them is their length, and they end in ticks or arrows.")
	a.claim(Hatching, pick(s, func(i *linework.Item) bool { return i.Kind == "HATCH" }), "The file says that they are hatching.")
	a.byWords(Hatching, "hatch", "hatching", "pattern", "poche")
	a.claim(Hatching, hatched(s), "They are many parallel lines at even distances.")
	a.claim(DatumLines, datumLines(s), "They are the drawing's datum: words beside them or their layer say so.")
	return a.out
}

// asides gathers claims; an item goes to the first.
type asides struct {
	sheet *linework.Sheet
	taken []bool
	out   []Aside
}

func (a *asides) claim(c Category, items Set, why string) {
	var mine Set
	for _, i := range items {
		if !a.taken[i] {
			a.taken[i] = true
			mine = append(mine, i)
		}
	}
	if len(mine) > 0 {
		a.out = append(a.out, Aside{c, mine, why})
	}
}

// byWords claims the items of layers whose names have one of the words, layer by
// layer. Borders that hang over a stage are masking, so a layer that names a kind
// of scenery beside the word is not claimed.
func (a *asides) byWords(c Category, words ...string) {
	layers := map[string]Set{}
	var order []string
	for i := range a.sheet.Items {
		name := a.sheet.Items[i].Layer
		if _, known := layers[name]; !known {
			layers[name] = nil
			ts := tokens(name)
			_, _, scenery := kindOf(name)
			if hasWord(ts, words...) && !scenery {
				order = append(order, name)
			}
		}
		layers[name] = append(layers[name], i)
	}
	for _, name := range order {
		a.claim(c, layers[name], fmt.Sprintf("Their layer is called “%s”.", name))
	}
}

// frames returns the lines that run around everything: straight, square to the
// page, along a side of the drawing and nearly as long as it.
func frames(s *linework.Sheet) Set {
	const long, near = 0.85, 0.06
	if len(s.Items) < 3 {
		return nil
	}
	w, h := s.Box.Width(), s.Box.Height()
	edge := func(e plane.Edge) bool {
		b := e.Bounds()
		c := b.Centre()
		across := b.Height() <= 1e-3*h && b.Width() >= long*w && min(c.Y-s.Box.Min.Y, s.Box.Max.Y-c.Y) <= near*h
		along := b.Width() <= 1e-3*w && b.Height() >= long*h && min(c.X-s.Box.Min.X, s.Box.Max.X-c.X) <= near*w
		return e.Straight() && (across || along)
	}
	sides := map[int]bool{} // of the page: left, right, bottom, top
	var out Set
	for i := range s.Items {
		item := &s.Items[i]
		all := !item.Hidden
		for _, e := range item.Edges {
			all = all && edge(e)
		}
		if !all {
			continue
		}
		out = append(out, i)
		for _, e := range item.Edges {
			c := e.Bounds().Centre()
			left, low := c.X < s.Box.Centre().X, c.Y < s.Box.Centre().Y
			switch b := e.Bounds(); {
			case b.Width() > b.Height() && low:
				sides[2] = true
			case b.Width() > b.Height():
				sides[3] = true
			case left:
				sides[0] = true
			default:
				sides[1] = true
			}
		}
	}
	// A back wall alone is no frame.
	if len(sides) < 4 || len(out) == len(s.Items) || !paperLike(s) {
		return nil
	}
	return out
}

// paperLike tells whether there are words that only a sheet has, so that the walls
// of a room drawn alone are not taken for a frame.
func paperLike(s *linework.Sheet) bool {
	_, ok := titleBox(s)
	return ok || s.Unit == linework.Point
}

// dimensionLines returns lines whose length a figure beside them states at the
// ratio that most figures agree on, where both ends have ticks or arrows, and the
// ticks with them.
func dimensionLines(s *linework.Sheet) Set {
	_, agree, _ := vote(figures(s))
	if len(agree) < 2 {
		return nil
	}
	small := smallItems(s)
	var out []int
	for _, f := range agree {
		if f.item < 0 || len(s.Items[f.item].Edges) != 1 {
			continue
		}
		e := s.Items[f.item].Edges[0]
		n := e.Length()
		from, to := ticks(s, small, e.A, n), ticks(s, small, e.B, n)
		if len(from) > 0 && len(to) > 0 {
			out = append(append(append(out, f.item), from...), to...)
		}
	}
	return NewSet(out...)
}

// smallItems returns the items below a fortieth of the drawing.
func smallItems(s *linework.Sheet) []int {
	limit := max(s.Box.Width(), s.Box.Height()) / 40
	return pick(s, func(i *linework.Item) bool { return !i.Hidden && i.Length() < limit })
}

// ticks returns the small items that touch the end of a dimension line.
func ticks(s *linework.Sheet, small []int, end plane.Point, line float64) []int {
	var out []int
	for _, i := range small {
		n := s.Items[i].Length()
		if n > line/4 {
			continue
		}
		for _, e := range s.Items[i].Edges {
			if e.Distance(end) <= 0.1*n {
				out = append(out, i)
				break
			}
		}
	}
	return out
}
