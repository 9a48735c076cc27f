package sheets

import (
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/supplies"
)

// kit is what goes to the room, counted out and back in.
func kit(j Job) content {
	p := j.production()
	t := table{
		Columns: []column{
			{Title: "item", Flex: true},
			{Title: "needed", Align: right, Type: floorType},
			{Title: "shelf", Align: right},
			{Title: "to get", Align: right, Type: strongType},
			{Title: "out", Kind: blank, Width: 18},
			{Title: "by", Kind: blank, Width: 26},
			{Title: "back", Kind: blank, Width: 18},
			{Title: "by", Kind: blank, Width: 26},
		},
		Empty: "The kit is empty. Add what goes to the room under Supplies.",
	}
	needs := prep.KitNeeds(p, j.workOf)
	for _, group := range kitGroups(p.Items) {
		t.Rows = append(t.Rows, span(capitalise(or(group, "other"))))
		for _, n := range needs {
			if n.Item.Group == group {
				t.Rows = append(t.Rows, kitRow(n))
			}
		}
	}
	blocks := []block{}
	if few := zeroEnds(p); few != "" {
		blocks = append(blocks, paragraph{Text: "Weighted stands: " + few})
	}
	return content{blocks: append(blocks, t)}
}

func kitRow(n supplies.Need) row {
	name := n.Item.Name
	if n.Item.Note != "" {
		name += " – " + n.Item.Note
	}
	return cells(name, fmt.Sprint(n.Need), fmt.Sprint(n.Shelf), fmt.Sprint(n.Buy), writtenCount(n.Item.Out), "", writtenCount(n.Item.Back), "")
}

// writtenCount is what has been counted already; nothing leaves the line free.
func writtenCount(n int) string {
	if n == 0 {
		return ""
	}
	return fmt.Sprint(n)
}

// kitGroups returns the groups in the order in which the items name them.
func kitGroups(items []supplies.Item) []string {
	var out []string
	for _, it := range items {
		if !slices.Contains(out, it.Group) {
			out = append(out, it.Group)
		}
	}
	return out
}
