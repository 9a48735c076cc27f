package demo

import (
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// set draws the ground floor of the house: kitchen stage left, parlour stage
// right, the hall with the stair between them.
func (b *builder) set() {
	b.wall("Kitchen upstage wall", at(4, 20), at(8, 20))
	b.door("Pantry door", at(8, 20), at(10.5, 20), -1)
	b.wall("Kitchen corner", at(10.5, 20), at(15, 20), at(15.75, 15))
	b.window("Kitchen window", at(15.75, 15), at(16.25, 11.5))
	b.wall("Kitchen return", at(16.25, 11.5), at(16.5, 10))
	b.wall("Hall wall, stage left", at(4, 20), at(4, 14.5))
	b.door("Kitchen door", at(4, 14.5), at(4, 11.75), -1)
	b.wall("Parlour upstage wall", at(-4, 20), at(-7, 20))
	b.window("Parlour window", at(-7, 20), at(-11, 20))
	b.wall("Parlour corner", at(-11, 20), at(-15, 20), at(-16, 14))
	b.wall("Parlour return", at(-16.25, 12.5), at(-16.75, 9.5))
	b.door("Garden door", at(-16, 14), at(-16.25, 12.5), 1)
	b.wall("Hall wall, stage right", at(-4, 20), at(-4, 15))
	b.door("Parlour door", at(-4, 15), at(-4, 12.25), 1)
	b.opening("Front door arch", at(-1.5, 23), at(1.5, 23))
	b.wall("Hall back wall, stage left", at(1.5, 23), at(4, 23), at(4, 20))
	b.wall("Hall back wall, stage right", at(-1.5, 23), at(-4, 23), at(-4, 20))

	b.stair("Main stair", plan.Stair, plan.Danced, 8, at(-1.75, 12), at(1.75, 20))
	b.stair("Escape stair", plan.EscapeStair, plan.Seen, 9, at(16, 22), at(19, 28.5))
	b.block("Stove", plan.Platform, yellow, plan.Useful, at(11, 17.5), at(14, 19.5))
	b.block("Hearth", plan.Platform, yellow, plan.Essential, at(-15, 15.5), at(-12.5, 18.5))

	b.block("Quay, open floor", plan.PlayingArea, "", plan.Useful, at(-14, 1), at(5, 11))

	trap := b.block("Cellar trap", plan.Trap, green, plan.Essential, at(6, 6), at(9, 9))
	draw(trap, plan.Inner, plane.Open(at(6, 6), at(9, 9)))
	draw(trap, plan.Inner, plane.Open(at(6, 9), at(9, 6)))
}

func (b *builder) window(name string, from, to plane.Point) {
	e := b.add(name, plan.Window, red, plan.Essential)
	draw(e, plan.Outline, plane.Open(from, to))
	sill := to.Sub(from)
	n, _ := sill.Left().Unit()
	off := n.Times(ft(0.5))
	draw(e, plan.Inner, plane.Open(from.Add(off), to.Add(off)))
}

func (b *builder) opening(name string, from, to plane.Point) {
	e := b.add(name, plan.Opening, red, plan.Essential)
	draw(e, plan.Hidden, plane.Open(from, to))
}

// quay draws what stands before the house: the revolve with what it carries, the
// boat on its track, the ramp and the jetty.
func (b *builder) quay() {
	ring := b.add("Revolve", plan.Revolve, green, plan.Danced)
	draw(ring, plan.Outline, plane.Circle(at(0, 5), ft(5, 6)))
	revolve := ring.ID

	for _, part := range []struct {
		name       string
		over, up   float64
		wide, deep float64
	}{
		{"Lamp-post plinth", -3.5, 6.5, 1.5, 1.5},
		{"Well head", 2, 3, 3, 3},
	} {
		e := b.block(part.name, plan.Platform, yellow, plan.Essential,
			at(part.over, part.up), at(part.over+part.wide, part.up+part.deep))
		e.Rides = revolve
		e.Stands = stands(quay, storm, market, lamps)
	}
	for scene, degrees := range map[plan.SceneID]float64{storm: 90, market: 180, lamps: 270} {
		b.p.Plan.Carries = append(b.p.Plan.Carries, plan.Carry{Carrier: revolve, Scene: scene, Travel: degrees})
	}

	way := b.add("Boat track", plan.Track, green, plan.Useful)
	draw(way, plan.Way, plane.Open(at(-26, 25.5), at(14, 25.5)))
	track := way.ID
	boat := b.add("Boat wagon", plan.Wagon, green, plan.Essential)
	draw(boat, plan.Outline, plane.Closed(at(-30, 24), at(-23, 24), at(-20, 25.5), at(-23, 27), at(-30, 27)))
	boat.Rides = track
	boat.Stands = stands(quay, storm, lamps)
	for scene, feet := range map[plan.SceneID]float64{quay: 12, storm: 24, lamps: 36} {
		b.p.Plan.Carries = append(b.p.Plan.Carries, plan.Carry{Carrier: track, Scene: scene, Travel: ft(feet)})
	}
	sortCarries(b.p.Plan.Carries)

	ramp := b.add("Quay ramp", plan.Ramp, yellow, plan.Essential)
	draw(ramp, plan.Outline, plane.Closed(at(-17, 2.5), at(-12, 2.5), at(-12.5, 8), at(-17, 8)))
	draw(ramp, plan.Inner, plane.Open(at(-14.75, 3), at(-14.75, 7.5)))

	step := b.block("Porch", plan.Platform, yellow, plan.Essential, at(10, 2.5), at(17, 7))
	step.Level = porch
	b.stair("Porch steps", plan.Stair, plan.Essential, 3, at(12, 0.25), at(15, 2.5))
	jetty := b.add("Jetty", plan.Platform, yellow, plan.Essential)
	draw(jetty, plan.Outline, plane.Closed(at(-18, 0.5), at(-10, -1.5), at(-9.5, 0.5), at(-17.5, 2.25)))
	jetty.Stands = stands(quay, storm, market, lamps)
}
