package demo

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

var (
	roomID   = floor.ID(id("floor Tannery Hall"))
	studioID = floor.ID(id("floor Loft Studio"))
	stageID  = floor.ID(id("floor Tidewrack stage"))
)

// floors describes the two rooms, neither of which holds the whole set, and the
// stage to which everything goes in the end.
func (b *builder) floors() {
	b.p.Floors = []floor.Floor{b.hall(), b.studio(), b.stage()}
}

// hall is the main room: no corner is square, two columns stand in it, and the
// upper storey has to lie beside the lower one.
func (b *builder) hall() floor.Floor {
	f := floor.Floor{
		ID: roomID, Name: "Tannery Hall", Kind: floor.Room, Rule: floor.SomeTapes, Side: floor.Outside,
		Surface: "sprung maple, sealed last summer",
		Note:    "Ask the hall keeper before anything is stuck near the north wall: the varnish there is soft.",
		Outline: plane.Closed(
			at(0, 0), in(ft(58, 2.5), ft(0, 3.5)), in(ft(57, 7.25), ft(31, 2.5)), in(ft(0, 4.75), ft(30, 9.5)),
		),
		Placement: plane.Motion{Shift: at(19.75, 9)},
		Obstacles: []floor.Obstacle{
			obstacle("North-west column", "column", at(6.5, 27.6), at(7.9, 29)),
			obstacle("North-east column", "column", at(38.4, 27.6), at(39.8, 29)),
			obstacle("Upright piano", "piano", at(51, 0.8), at(56, 3)),
		},
		KeepClears: []floor.KeepClear{
			keepClear("Exit to the yard", "exit", at(53.5, 26.5), at(57.6, 31)),
			keepClear("Front table", "front table", at(12, 0.4), at(27.5, 3.4)),
			keepClear("Music", "music", at(46, 0.4), at(51, 5)),
		},
		BoardModule: ft(0, 2.25), // strip maple along the hall
		Features: []floor.Feature{
			feature("Main door", floor.RoomDoor, floor.OpensIn, at(0.06, 5.4), at(0.03, 2.4)),
			feature("Yard door", floor.RoomDoor, floor.OpensOut, at(57.68, 27.2), at(57.6, 30.2)),
			feature("North windows", floor.RoomWindow, "", at(16, 30.9), at(28, 30.99)),
			feature("Mirrors under their curtain", floor.WallMirror, "", at(57.9, 8), at(57.75, 20)),
			feature("Socket, south wall", floor.PowerOutlet, "", at(22, 0.1)),
		},
		Ways: []floor.Way{
			way("Out to the yard", floor.WayOut, at(20, 5), floor.Spot{Thing: id("feature Yard door")}, ft(3)),
			way("Out by the main door", floor.WayOut, at(20, 5), floor.Spot{Thing: id("feature Main door")}, ft(2, 8)),
		},
		Pivots: []floor.Pivot{
			pivot("Brass stud in the floor, west", at(4, 4)),
			pivot("Brass stud in the floor, east", at(36, 4)),
		},
		Wishes: floor.Wishes{Area: 1, Sight: 0.25},
	}
	f.Treatments = b.hallTreatments()
	return f
}

func (b *builder) hallTreatments() []floor.Treatment {
	settled := floor.Decision{By: "Ines Marlowe", On: b.start}
	var out []floor.Treatment
	add := func(name string, how floor.How, reason string, d floor.Decision) *floor.Treatment {
		out = append(out, floor.Treatment{Element: plan.ElementID(id(name)), How: how, Reason: reason, Decided: d})
		return &out[len(out)-1]
	}
	for i := range b.p.Plan.Elements {
		e := &b.p.Plan.Elements[i]
		if e.Level == upper {
			t := add(e.Name, floor.MovedAside, "the upper storey lies beside the lower one", settled)
			t.Over, t.Up = ft(22.5), ft(-8)
		}
	}
	add("Escape stair", floor.LeftOut, "nobody is seen on it, and it falls outside the room", settled)
	add("Side wall, stage right", floor.LeftOut, "outside the room", settled)
	add("Side wall, stage left", floor.LeftOut, "outside the room", settled)
	add("Sky cloth", floor.LeftOut, "outside the room", settled)
	add("Proscenium, stage right", floor.CutShort, "runs into the west wall", settled)
	for _, leg := range []string{"one", "two", "three"} {
		add("Leg "+leg+", stage right", floor.CutShort, "its offstage end is beyond the west wall", settled)
	}
	add("Boat track", floor.CutShort, "runs through the north wall", floor.Decision{})
	add("Boat wagon", floor.LeftOut, "its track lies beyond the north wall: six chairs in the crossover until the stage", floor.Decision{})
	add("Front door arch", floor.CutShort, "the hall wall stands one foot beyond the room", floor.Decision{})
	add("Hall back wall, stage left", floor.CutShort, "one foot of it is beyond the room", floor.Decision{})
	add("Hall back wall, stage right", floor.CutShort, "one foot of it is beyond the room", floor.Decision{})
	for _, leg := range []string{"one", "two", "three"} {
		add("Leg "+leg+", stage left", floor.LeftOut, "its place is taken by the upper storey", settled)
	}
	return out
}

// studio is the second room: only the upper storey is laid there, at full size
// and in its own place.
func (b *builder) studio() floor.Floor {
	f := floor.Floor{
		ID: studioID, Name: "Loft Studio", Kind: floor.Room, Rule: floor.NightClear, Side: floor.Outside,
		Surface: "dance vinyl over boards, seams along the room",
		Note:    "Let by the evening to a dance class: nothing stays down overnight.",
		Outline: plane.Closed(at(0, 0), at(31, 0), at(31, 14.5), at(24, 14.5), at(24, 22), at(0, 22)),
		// The upper storey runs from 13 ft to 23 ft up; it is set low in the room.
		Placement: plane.Motion{Shift: at(8, -9)},
		Obstacles: []floor.Obstacle{obstacle("Barre", "other", at(0, 18), at(0.6, 21.5))},
		KeepClears: []floor.KeepClear{
			keepClear("Way out", "exit", at(25, 10.5), at(31, 14.5)),
		},
		Pivots: []floor.Pivot{
			pivot("South-west corner of the room", at(0.5, 0.5)),
			pivot("South-east corner of the room", at(30.5, 0.5)),
		},
	}
	for i := range b.p.Plan.Elements {
		if e := &b.p.Plan.Elements[i]; e.Level != upper {
			f.Treatments = append(f.Treatments, floor.Treatment{
				Element: e.ID, How: floor.LeftOut, Reason: "only the upper storey is laid here",
				Decided: floor.Decision{By: "Ines Marlowe", On: b.start},
			})
		}
	}
	return f
}

// stage is the theatre. Its crew measures from the stage edge at centre, not
// from the plaster line, so it has a datum of its own.
func (b *builder) stage() floor.Floor {
	return floor.Floor{
		ID: stageID, Name: "Tidewrack Playhouse, stage", Kind: floor.Stage, Rule: floor.AnyTape, Side: floor.Outside,
		Surface: "painted hardboard on softwood",
		Note:    "The stage is painted on the first morning: nothing is laid before it is dry.",
		Outline: plane.Path{Closed: true, Vertices: []plane.Vertex{
			{Point: at(-31, 0)}, {Point: at(-18, 0)},
			{Point: at(-18, -2), Bulge: apronBulge()}, {Point: at(18, -2)},
			{Point: at(18, 0)}, {Point: at(31, 0)}, {Point: at(31, 32)}, {Point: at(-31, 32)},
		}},
		OwnDatum: true,
		Datum:    plane.Motion{Shift: at(0, -5)},
		Ways: []floor.Way{
			way("Crossover", floor.Crossover, at(-27, 14), floor.Spot{At: at(27, 14)}, ft(3)),
		},
		Pivots: []floor.Pivot{
			pivot("Painted cross on the back wall, stage right", at(-20, 31.75)),
			pivot("Painted cross on the back wall, stage left", at(20, 31.75)),
		},
	}
}

func apronBulge() float64 {
	e, _ := plane.Through(at(-18, -2), at(0, -5), at(18, -2))
	return e.Bulge
}

func obstacle(name, kind string, from, to plane.Point) floor.Obstacle {
	return floor.Obstacle{ID: id("obstacle " + name), Name: name, Kind: kind, Shape: plane.Rectangle(from, to)}
}

func keepClear(name, kind string, from, to plane.Point) floor.KeepClear {
	return floor.KeepClear{ID: id("clear " + name), Name: name, Kind: kind, Shape: plane.Rectangle(from, to)}
}

func feature(name string, kind floor.FeatureKind, opens floor.Opens, points ...plane.Point) floor.Feature {
	return floor.Feature{ID: id("feature " + name), Name: name, Kind: kind, Opens: opens, Shape: plane.Open(points...)}
}

func way(name string, kind floor.WayKind, from plane.Point, to floor.Spot, width float64) floor.Way {
	return floor.Way{ID: id("way " + name), Name: name, Kind: kind, From: floor.Spot{At: from}, To: to, Width: width}
}

func pivot(name string, p plane.Point) floor.Pivot {
	return floor.Pivot{ID: id("pivot " + name), Name: name, At: p}
}
