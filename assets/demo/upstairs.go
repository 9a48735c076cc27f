package demo

import (
	"cmp"
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// upstairs draws the upper storey, which stands over the kitchen and the hall.
func (b *builder) upstairs() {
	onUpper := func(e *plan.Element) *plan.Element {
		e.Level, e.Stock = upper, stockID(blue)
		return e
	}
	onUpper(b.block("Upper floor edge", plan.Platform, blue, plan.Essential, at(-4, 13), at(15, 23)))
	onUpper(b.wall("Bedroom upstage wall", at(2, 22.5), at(14.5, 22.5)))
	onUpper(b.wall("Bedroom wall, stage left", at(14.5, 22.5), at(14.5, 15)))
	onUpper(b.wall("Bedroom wall, stage right", at(2, 22.5), at(2, 18)))
	onUpper(b.door("Bedroom door", at(2, 18), at(2, 15.25), 1))
	rail := onUpper(b.add("Landing rail", plan.Wall, blue, plan.Essential))
	draw(rail, plan.Outline, plane.Open(at(-3.75, 13.25), at(2, 13.25), at(2, 15.25)))
	head := onUpper(b.add("Stair head", plan.Opening, blue, plan.Essential))
	draw(head, plan.Outline, plane.Closed(at(-1.75, 17.5), at(1.75, 17.5), at(1.75, 20), at(-1.75, 20)))
}

// furniture is set by hand between scenes and spiked.
func (b *builder) furniture() {
	b.piece("Kitchen table", at(10, 13), 5, 2.5, kitchen, storm)
	b.piece("Kitchen chair one", at(7, 13), 1.5, 1.5, kitchen, storm)
	b.piece("Kitchen chair two", at(13, 13), 1.5, 1.5, kitchen, storm)
	b.piece("Kitchen chair three", at(9, 15.5), 1.5, 1.5, kitchen)
	b.piece("Kitchen chair four", at(11, 15.5), 1.5, 1.5, kitchen)
	b.piece("Dresser", at(6, 19.25), 3.5, 1.25, kitchen, storm)
	b.piece("Wash tub", at(12.5, 10.5), 2, 2, kitchen)

	sofa := b.piece("Sofa", at(-10, 13.5), 6, 2.75, parlour)
	sofa.Stands = append(sofa.Stands, plan.Stand{Scene: lamps, Over: ft(1), Up: ft(-2), Turn: 20})
	b.piece("Armchair", at(-6.5, 15.5), 2.75, 2.75, parlour)
	b.piece("Upright piano", at(-8.5, 18.75), 5, 2, parlour, lamps)
	b.piece("Piano stool", at(-8.5, 16.75), 1.25, 1.25, parlour, lamps)
	tea := b.add("Tea table", plan.Furniture, "", plan.Essential)
	draw(tea, plan.Outline, plane.Circle(at(-10, 10.75), ft(1, 3)))
	tea.Stands = stands(parlour)

	for _, f := range []struct {
		name       string
		over, up   float64
		wide, deep float64
	}{{"Bed", 11.5, 19, 4, 6.5}, {"Wash stand", 4, 21.5, 2, 1.25}, {"Trunk", 5, 16, 3, 1.75}} {
		e := b.piece(f.name, at(f.over, f.up), f.wide, f.deep, attic)
		e.Level = upper
	}

	b.piece("Fish stall", at(-9, 6), 6, 2.5, market)
	b.piece("Flower stall", at(9, 4), 5, 2.5, market)
	b.piece("Lantern stall", at(0, 12), 5, 2.5, market)
	b.piece("Barrel stack", at(-15, 10), 3, 3, quay, storm, market)
	b.piece("Crate one", at(13, -0.5), 2, 2, quay, market)
	b.piece("Crate two", at(11, 0.5), 2, 2, quay, market)
	bench := b.piece("Quay bench", at(6, 1), 5, 1.5, quay, storm)
	bench.Stands = append(bench.Stands, plan.Stand{Scene: lamps, Over: ft(-12), Up: ft(0.5), Turn: -15})
	b.piece("Net rack", at(-7, 2), 4, 1.5, quay)
	b.piece("Hand cart", at(4, 8.5), 5, 2.5, market)
}

func sortCarries(list []plan.Carry) {
	slices.SortFunc(list, func(a, b plan.Carry) int {
		return cmp.Or(cmp.Compare(a.Carrier, b.Carrier), cmp.Compare(a.Scene, b.Scene))
	})
}
