package demo

import (
	"math"
	"time"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// space makes the demo's identifiers: always the same for the same name, and
// unlike any other production's.
var space = uuid.MustParse("6f1d0c3e-6f5b-4c0a-9f0e-2b7a5a1d4e77")

func id(name string) string { return uuid.NewSHA1(space, []byte(name)).String() }

// ft returns metres for feet and, after them, inches.
func ft(feet float64, inches ...float64) float64 {
	for _, in := range inches {
		feet += math.Copysign(in/12, feet)
	}
	return feet * 0.3048
}

// at is a place on the plan in feet: over, positive to stage left, then up.
func at(over, up float64) plane.Point { return plane.Point{X: ft(over), Y: ft(up)} }

// in is a place in metres, for what is measured in feet and inches.
func in(over, up float64) plane.Point { return plane.Point{X: over, Y: up} }

type builder struct {
	p            *prep.Production
	start, first time.Time
}

// add puts an element on the plan and returns it for what is special about it.
// The pointer holds until the next add.
func (b *builder) add(name string, kind plan.Kind, stock string, use plan.Use) *plan.Element {
	b.p.Plan.Elements = append(b.p.Plan.Elements, plan.Element{
		ID: plan.ElementID(id(name)), Name: name, Kind: kind, Use: use, Stock: stockID(stock),
	})
	return &b.p.Plan.Elements[len(b.p.Plan.Elements)-1]
}

func draw(e *plan.Element, role plan.Role, p plane.Path) {
	name := e.Name + string(role) + string(rune('a'+len(e.Paths)))
	e.Paths = append(e.Paths, plan.Path{ID: plan.PathID(id(name)), Role: role, Path: p})
}

// wall adds straight line work that is laid where it is drawn in every scene.
func (b *builder) wall(name string, points ...plane.Point) *plan.Element {
	e := b.add(name, plan.Wall, red, plan.Essential)
	draw(e, plan.Outline, plane.Open(points...))
	return e
}

// door adds an opening from hinge to latch with the swing of its leaf; side is
// +1 when the leaf opens to the left of the way from hinge to latch.
func (b *builder) door(name string, hinge, latch plane.Point, side float64) *plan.Element {
	e := b.add(name, plan.Door, yellow, plan.Essential)
	leaf := latch.Sub(hinge)
	open := hinge.Add(leaf.Left().Times(side))
	draw(e, plan.Outline, plane.Open(hinge, latch))
	quarter := math.Tan(math.Pi / 8)
	draw(e, plan.Swing, plane.Path{Vertices: []plane.Vertex{
		{Point: latch, Bulge: side * quarter}, {Point: open}, {Point: hinge},
	}})
	return e
}

// block adds a closed rectangle from one corner to the other, in feet.
func (b *builder) block(name string, kind plan.Kind, stock string, use plan.Use, from, to plane.Point) *plan.Element {
	e := b.add(name, kind, stock, use)
	draw(e, plan.Outline, plane.Rectangle(from, to))
	return e
}

// stair adds a straight flight of treads between two corners, climbing upstage.
func (b *builder) stair(name string, kind plan.Kind, use plan.Use, treads int, from, to plane.Point) *plan.Element {
	e := b.block(name, kind, yellow, use, from, to)
	for i := 1; i < treads; i++ {
		up := from.Y + (to.Y-from.Y)*float64(i)/float64(treads)
		draw(e, plan.Inner, plane.Open(plane.Point{X: from.X, Y: up}, plane.Point{X: to.X, Y: up}))
	}
	return e
}

// piece adds furniture of a size in feet, standing at its centre in the scenes.
func (b *builder) piece(name string, centre plane.Point, wide, deep float64, scenes ...plan.SceneID) *plan.Element {
	half := at(wide/2, deep/2)
	e := b.block(name, plan.Furniture, "", plan.Essential, centre.Sub(half), centre.Add(half))
	e.Stands = stands(scenes...)
	return e
}

func stands(scenes ...plan.SceneID) []plan.Stand {
	var out []plan.Stand
	for _, s := range scenes {
		out = append(out, plan.Stand{Scene: s})
	}
	return out
}
