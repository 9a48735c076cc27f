package standinsplace

import (
	"fmt"
	"slices"
	"strconv"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// Columns of the table of what stands for what.
const (
	colElement = iota
	colWhy
	colObject
	colNumber
	colFit
	colState
	colWeight
)

// nothing is how a table offers that no object is chosen.
const nothing = "nothing yet"

func pairColumns() []grid.Column {
	return []grid.Column{
		{Title: "Element", Width: 130, ReadOnly: true, Grow: true},
		{Title: "Why", Width: 128, ReadOnly: true},
		{Title: "Stands for it", Width: 150, Hint: "choose"},
		{Title: "No.", Width: 42, Right: true},
		{Title: "Fit", Width: 118, ReadOnly: true},
		{Title: "State", Width: 112, Choices: stateNames()},
		{Title: "Weight", Width: 92, ReadOnly: true},
	}
}

func stateNames() []string {
	var out []string
	for _, s := range prep.StandInStates {
		out = append(out, string(s))
	}
	return out
}

// pairRows shows what stands for what in the chosen scene.
func pairRows(v *desk.View) []grid.Row {
	needs := prep.StandInNeeds(v.P, v.Scene)
	clash := clashes(v.P, v.Scene)
	rows := make([]grid.Row, 0, len(needs))
	for _, n := range needs {
		row := grid.Row{ID: string(n.Element), Cells: make([]string, colWeight+1), CellProblems: map[int]string{}}
		c := row.Cells
		c[colElement], c[colWhy], c[colState], c[colObject] = n.Name, string(n.Why), string(n.State), nothing
		if climbed(n.Kind) {
			row.CellProblems[colElement] = "People climb on this: nothing that is climbed on is improvised. Ask the shop."
		}
		if n.State == prep.Swapped {
			row.Dim = true
		}
		if n.Object != nil {
			c[colObject], c[colNumber] = n.Object.Name, strconv.Itoa(n.Number)
			c[colFit] = fitOf(v.P, n.Element, n.Object.ID)
			if n.Safety {
				c[colWeight] = "weight it"
			}
			if words := clash[n.Object.ID]; words != "" && n.State != prep.Swapped {
				row.CellProblems[colObject] = words
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// climbed tells whether people stand on what the kind is.
func climbed(k plan.Kind) bool {
	return slices.Contains([]plan.Kind{plan.Stair, plan.EscapeStair, plan.Platform, plan.Ramp}, k)
}

// clashes says of every object that is used more often than it exists in the scene by how much. The empty scene looks
// at each scene.
func clashes(p *prep.Production, scene plan.SceneID) map[string]string {
	out := map[string]string{}
	if scene == "" {
		for _, l := range prep.PullList(p) {
			if l.Missing > 0 {
				out[l.Object.ID] = tooMany(l.Number, l.Object, p.Plan.SceneName(l.Scene))
			}
		}
		return out
	}
	used := usedIn(p, scene)
	for _, o := range p.Objects {
		if used[o.ID] > o.Count {
			out[o.ID] = tooMany(used[o.ID], o, p.Plan.SceneName(scene))
		}
	}
	return out
}

func tooMany(used int, o prep.Object, where string) string {
	return fmt.Sprintf("%d of %s are used in %s, but there are only %d.", used, o.Name, where, o.Count)
}

// usedIn counts how many of every object the scene uses; of the empty scene, the most that any one scene uses.
func usedIn(p *prep.Production, scene plan.SceneID) map[string]int {
	used := map[string]int{}
	if scene == "" {
		for _, l := range prep.PullList(p) {
			used[l.Object.ID] = l.Number
		}
		return used
	}
	for _, n := range prep.StandInNeeds(p, scene) {
		if n.Object != nil && n.State != prep.Swapped {
			used[n.Object.ID] += n.Number
		}
	}
	return used
}

// fitOf words how well an object fits an element.
func fitOf(p *prep.Production, element plan.ElementID, object string) string {
	for _, f := range prep.Fits(p, element) {
		if f.Object == object {
			return fitWords(p.Style(), f)
		}
	}
	return ""
}

// near is by how much an object may differ in plan and still count as the right size, in metres: common practice, no
// source.
const near = 0.05

func fitWords(s length.Style, f prep.Fit) string {
	text := "off by " + s.Format(f.Off)
	if f.Off <= near {
		text = "right size"
	}
	if f.Alike {
		text += ", alike"
	}
	return text
}

// Columns of the stock beside the pairs.
const (
	colOffer = iota
	colOfferSize
	colFree
	colOfferFit
)

func offerColumns() []grid.Column {
	return []grid.Column{
		{Title: "Rehearsal stock", Width: 120, Grow: true, ReadOnly: true},
		{Title: "Width, depth, height", Width: 142, ReadOnly: true},
		{Title: "Free here", Width: 78, Right: true, ReadOnly: true},
		{Title: "Fit", Width: 106, ReadOnly: true},
	}
}

// offerRows lists the stock, what fits the element best first; without an element in the order of the stock.
func offerRows(v *desk.View, element plan.ElementID) []grid.Row {
	used := usedIn(v.P, v.Scene)
	row := func(o prep.Object, fit string) grid.Row {
		free := o.Count - used[o.ID]
		r := grid.Row{ID: o.ID, Cells: []string{o.Name, sizeOf(v.P, o), fmt.Sprintf("%d of %d", max(0, free), o.Count), fit}}
		r.Dim = free <= 0
		if free < 0 {
			r.CellProblems = map[int]string{colFree: tooMany(used[o.ID], o, sceneWords(v.P, v.Scene))}
		}
		return r
	}
	rows := make([]grid.Row, 0, len(v.P.Objects))
	if fits := prep.Fits(v.P, element); len(fits) > 0 {
		for _, f := range fits {
			rows = append(rows, row(*v.P.Object(f.Object), fitWords(v.P.Style(), f)))
		}
		return rows
	}
	for _, o := range v.P.Objects {
		rows = append(rows, row(o, ""))
	}
	return rows
}

func sceneWords(p *prep.Production, scene plan.SceneID) string {
	if scene == "" {
		return "one scene"
	}
	return p.Plan.SceneName(scene)
}

// sizeOf writes the sizes of an object; a size that does not matter is a dash.
func sizeOf(p *prep.Production, o prep.Object) string {
	text := ""
	for i, m := range []float64{o.Width, o.Depth, o.Height} {
		if i > 0 {
			text += " × "
		}
		if m > 0 {
			text += p.Style().Format(m)
		} else {
			text += "–"
		}
	}
	return text
}

// summary says in a sentence how far the scene has got.
func summary(v *desk.View) string {
	needs := prep.StandInNeeds(v.P, v.Scene)
	if len(needs) == 0 {
		return "Nothing in " + where(v) + " needs a stand-in."
	}
	found, here := 0, 0
	for _, n := range needs {
		if n.Met() {
			found++
		}
		if n.Met() && (n.State == prep.InRoom || n.State == prep.Swapped) {
			here++
		}
	}
	return fmt.Sprintf("%d to stand in for in %s: %d found, %d in the room, %d still open.",
		len(needs), where(v), found, here, len(needs)-found)
}

func where(v *desk.View) string {
	if v.Scene == "" {
		return "all scenes"
	}
	return v.P.Plan.SceneName(v.Scene)
}

// caution is what must be said of the stand-ins in use.
func caution(p *prep.Production) string {
	text := "Nothing that people climb on is improvised. "
	if _, weighted := prep.StandInCount(p); weighted > 0 {
		return text + fmt.Sprintf("%d of the objects in use must be weighted, so that they cannot tip, before anyone leans on them: they are marked “weight it”.", weighted)
	}
	return text + "Whatever anyone leans on is weighted so that it cannot tip."
}
