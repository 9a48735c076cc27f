package transferplace

import (
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// newRests lists where what turns or runs comes to rest on the next floor.
func (p *place) newRests() *grid.Grid {
	g := grid.New([]grid.Column{
		{Title: "What moves", Width: 140, ReadOnly: true},
		{Title: "Stands", Width: 210, Grow: true, ReadOnly: true},
		{Title: "Scenes", Width: 220, Grow: true, ReadOnly: true},
		{Title: "Mark", Width: 90, ReadOnly: true},
		{Title: "Up", Width: 92, Right: true, ReadOnly: true},
		{Title: "Over", Width: 104, Right: true, ReadOnly: true},
		{Title: "Its centre", Width: 170, ReadOnly: true},
	})
	g.OnSelect = func(ids []string) {
		if len(ids) > 0 {
			id, _, _ := strings.Cut(ids[0], " stop ")
			p.desk.Select(desk.Select(desk.Element, id))
		}
	}
	g.SetEmpty("Nothing turns or runs on the next floor.", "", nil)
	return g
}

func restRows(v *desk.View, rests []prep.Rest) []grid.Row {
	style := v.Style()
	rows := make([]grid.Row, len(rests))
	for i, r := range rests {
		mark, scenes, centre := r.Mark, strings.Join(r.Scenes, ", "), ""
		if mark == "" {
			mark = "off the floor"
		}
		if scenes == "" {
			scenes = "no scene stops here"
		}
		if r.Turns {
			centre = style.FormatUp(r.Centre.Y) + ", " + style.FormatOver(r.Centre.X)
		}
		rows[i] = grid.Row{ID: string(r.Element) + " stop " + strconv.Itoa(i), Cells: []string{
			r.Name, r.Where, scenes, mark, style.FormatUp(r.At.Y), style.FormatOver(r.At.X), centre,
		}}
	}
	return rows
}
