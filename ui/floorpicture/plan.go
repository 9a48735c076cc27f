package floorpicture

import (
	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// OfPlan draws the ground plan in plan axes, each element where it stands in the
// scene; the empty scene shows them as drawn. Elements that shown refuses, and
// those that are not in the scene, are left out.
func OfPlan(p *prep.Production, scene plan.SceneID, shown func(plan.ElementID) bool) floorcanvas.Picture {
	pic := picture(p)
	t := tapesOf(p)
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		m, in := p.Plan.Where(e, scene)
		if !in || !shown(e.ID) {
			continue
		}
		id := ID(desk.Element, string(e.ID))
		for _, path := range e.Paths {
			moved := path.Path.Moved(m)
			pic.Shapes = append(pic.Shapes, t.tapeShapes(id, e.Stock, dashOf(path.Role), moved.Edges())...)
			if moved.Closed && path.Role == plan.Outline {
				pic.Areas = append(pic.Areas, floorcanvas.Area{ID: id, Path: moved, Z: -1})
			}
		}
		if box, ok := plan.BoundsOf(e.Paths, m); ok {
			pic.Labels = append(pic.Labels, floorcanvas.Label{
				ID: id, At: box.Centre(), Text: e.Name, Size: 11, Ink: theme.FaintLabel, Anchor: floorcanvas.Centred,
				Room: roomFor(box),
			})
		}
	}
	return pic
}
