package sheets

import (
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// layingCloth says how a cloth lies down the same way each time: its size, the marks on
// its edge and on the floor beneath, where they are, and what to measure between them.
func layingCloth(p *prep.Production, f *floor.Floor) []block {
	marks := f.Registrations()
	if f.Kind != floor.Cloth || len(marks) == 0 {
		return nil
	}
	g := figuresOf(p)
	box, _ := f.Outline.Moved(f.FloorToDatum()).Bounds()
	t := table{
		Columns: []column{
			{Title: "mark", Type: labelType}, {Title: "up", Type: floorType, Align: right},
			{Title: "side", Type: floorType, Align: middle}, {Title: "over", Type: floorType, Align: right},
			{Title: "what it is", Flex: true}, {Title: "on the cloth", Kind: tick}, {Title: "on the floor", Kind: tick},
		},
		Whole: true,
	}
	for _, r := range marks {
		t.Rows = append(t.Rows, cells(r.Label, g.up(r.At.Y), g.side(r.At.X), g.over(r.At.X), registrationWords(r), "", ""))
	}
	checks := table{
		Columns: []column{{Title: "from", Type: labelType}, {Title: "to", Type: labelType}, {Title: "apart", Type: floorType, Align: right}, {Title: "read", Kind: blank, Width: 30}},
		Whole:   true,
	}
	for _, pair := range registrationChecks(marks) {
		a, b := marks[pair[0]], marks[pair[1]]
		checks.Rows = append(checks.Rows, cells(a.Label, b.Label, g.length(a.At.To(b.At)), ""))
	}
	items := []string{
		fmt.Sprintf("The cloth is %s across and %s from front to back.", g.length(box.Width()), g.length(box.Height())),
		"Make each mark twice: on the edge of the cloth, in ink or stitched, and on the floor beneath, in what its owner allows. Lay the cloth flat and square first, and measure the distances below.",
	}
	items = append(items, unrolling(marks)...)
	return append([]block{heading{"Laying the cloth the same way each time"}, bullets{Items: append(items, seams(f, g)...), Tick: true}, t},
		paragraph{Text: "Measured from mark to mark, on the cloth and on the floor:"}, checks)
}

// unrolling says how the cloth comes to lie on its marks. One that its centre line does
// not cross has no C1 and C2 to begin with.
func unrolling(marks []floor.Registration) []string {
	const stretched = " and only then weight the edges. A cloth that no longer meets its marks has stretched: measure before you tape it over."
	if !slices.ContainsFunc(marks, func(r floor.Registration) bool { return r.Double }) {
		return []string{"Bring the first two marks together, pull the others to theirs," + stretched}
	}
	return []string{
		"C1 is the end of the centre line by the audience, with one tick; C2 is upstage, with two. A cloth turned end for end does not fit its marks.",
		"Unroll from C2 towards C1, bring C1 and C2 to their ticks, pull the corners to their marks," + stretched,
	}
}

func registrationWords(r floor.Registration) string {
	switch {
	case r.Corner:
		return "corner: an L round it"
	case r.Double:
		return "centre line upstage: two ticks across the edge"
	case r.Label == "C1":
		return "centre line by the audience: one tick across the edge"
	}
	return "baseline: a tick across the edge"
}

// registrationChecks are the pairs to measure: every corner to the next and to the one
// across from it, and the ends of the centre line.
func registrationChecks(marks []floor.Registration) [][2]int {
	var corners, out [][2]int
	n := 0
	for n < len(marks) && marks[n].Corner {
		n++
	}
	for i := range n {
		corners = append(corners, [2]int{i, (i + 1) % n})
		if across := i + n/2; n > 3 && i < n/2 && across < n {
			out = append(out, [2]int{i, across})
		}
	}
	if n == 2 {
		corners = corners[:1]
	}
	out = append(corners, out...)
	for i := n; i+1 < len(marks); i += 2 {
		out = append(out, [2]int{i, i + 1})
	}
	return out
}

// seams say where the cloth's seams lie, from its datum.
func seams(f *floor.Floor, g figures) []string {
	var out []string
	m := f.FloorToDatum()
	for _, t := range f.Features {
		if t.Kind != floor.Seam || len(t.Shape.Vertices) < 2 {
			continue
		}
		a, b := m.Apply(t.Shape.Vertices[0].Point), m.Apply(t.Shape.Vertices[len(t.Shape.Vertices)-1].Point)
		out = append(out, fmt.Sprintf("%s runs from %s to %s. Lay it there each time, the same face up.", t.Name, g.place(a), g.place(b)))
	}
	return out
}
