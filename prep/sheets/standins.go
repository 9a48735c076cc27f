package sheets

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/plan"
)

// standIns is what stands for which scenery, scene by scene, and what must be
// pulled for it.
func standIns(j Job) content {
	p := j.production()
	t := table{
		Columns: []column{
			{Title: "scenery", Type: strongType, Flex: true},
			{Title: "what stands for it", Flex: true},
			{Title: "how many", Align: right, Type: floorType},
			{Title: "how far", Type: bodyType},
			{Title: "note", Flex: true},
			{Title: "set", Kind: tick},
		},
		Empty: "Nothing needs a stand-in: no scene has furniture or doors, and no element is set as an object only.",
	}
	for _, id := range scenesOf(p, j.Scene) {
		needs := prep.StandInNeeds(p, id)
		if len(needs) == 0 {
			continue
		}
		t.Rows = append(t.Rows, span(capitalise(p.Plan.SceneName(id))))
		for _, n := range needs {
			t.Rows = append(t.Rows, standInRow(n))
		}
	}
	blocks := []block{t}
	if pull := pullTable(p); len(pull.Rows) > 0 {
		blocks = append(blocks, heading{"To pull, over all scenes"}, pull)
	}
	return content{blocks: blocks}
}

// scenesOf returns the scene asked for, or all of them; a plan without scenes
// has the one that stands for all.
func scenesOf(p *prep.Production, scene plan.SceneID) []plan.SceneID {
	if scene != "" || len(p.Plan.Scenes) == 0 {
		return []plan.SceneID{scene}
	}
	var out []plan.SceneID
	for _, s := range p.Plan.Scenes {
		out = append(out, s.ID)
	}
	return out
}

func standInRow(n prep.StandInNeed) row {
	what, count, note := "NOTHING FOUND YET", "", ""
	if n.Object != nil {
		what, count = or(n.Object.Name, n.Object.Kind), fmt.Sprint(n.Number)
	}
	if n.Safety {
		note = "WEIGHT IT before anyone leans on it. "
	}
	if n.StandIn != nil {
		note += n.StandIn.Note
	}
	return cells(or(n.Name, string(n.Kind)), what, count, string(n.State), note, tickedIf(n.State == prep.InRoom || n.State == prep.Swapped))
}

func pullTable(p *prep.Production) table {
	t := table{Columns: []column{
		{Title: "object", Type: strongType, Flex: true},
		{Title: "from"},
		{Title: "needed", Align: right, Type: floorType},
		{Title: "there are", Align: right},
		{Title: "missing", Align: right, Type: strongType},
		{Title: "most in scene", Flex: true},
		{Title: "how far"},
		{Title: "pulled", Kind: tick},
	}}
	for _, l := range prep.PullList(p) {
		t.Rows = append(t.Rows, cells(or(l.Object.Name, l.Object.Kind), l.Object.Source, fmt.Sprint(l.Number), fmt.Sprint(l.Object.Count),
			fmt.Sprint(l.Missing), p.Plan.SceneName(l.Scene), string(l.State), tickedIf(l.State == prep.InRoom)))
	}
	return t
}
