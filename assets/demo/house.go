package demo

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// house draws what belongs to the theatre: the proscenium, the curved apron, the
// side walls and the masking.
func (b *builder) house() {
	b.block("Proscenium, stage right", plan.Proscenium, white, plan.Useful, at(-23, 0), at(-18, 1.5))
	b.block("Proscenium, stage left", plan.Proscenium, white, plan.Useful, at(18, 0), at(23, 1.5))

	apron := b.add("Apron edge", plan.ApronEdge, white, plan.Essential)
	curve, _ := plane.Through(at(-18, -2), at(0, -5), at(18, -2))
	draw(apron, plan.Outline, plane.Path{Vertices: []plane.Vertex{
		{Point: at(-18, 0)}, {Point: curve.A, Bulge: curve.Bulge}, {Point: curve.B}, {Point: at(18, 0)},
	}})

	for _, w := range []struct {
		name string
		over float64
	}{{"Side wall, stage right", -31}, {"Side wall, stage left", 31}} {
		e := b.add(w.name, plan.SideWall, white, plan.Seen)
		draw(e, plan.Outline, plane.Open(at(w.over, 0), at(w.over, 31)))
	}
	b.masking()
}

func (b *builder) masking() {
	for i, leg := range []struct {
		up   float64
		name string
	}{{5, "one"}, {12, "two"}, {19, "three"}} {
		inset := float64(i)
		l := b.add("Leg "+leg.name+", stage left", plan.Masking, white, plan.Useful)
		draw(l, plan.Outline, plane.Open(at(19-inset, leg.up), at(25-inset, leg.up)))
		r := b.add("Leg "+leg.name+", stage right", plan.Masking, white, plan.Useful)
		draw(r, plan.Outline, plane.Open(at(-19+inset, leg.up), at(-25+inset, leg.up)))
	}
	cloth := b.add("Sky cloth", plan.Masking, white, plan.Seen)
	draw(cloth, plan.Outline, plane.Open(at(-22, 29), at(22, 29)))
}
