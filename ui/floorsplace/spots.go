package floorsplace

import (
	"fmt"

	"github.com/google/uuid"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
)

// namedSpot is a thing of the floor to which a way can lead.
type namedSpot struct {
	name string
	spot floor.Spot
}

// spots returns the doors and the areas that must stay free; of two with one name the
// second gets a number, so that they can be told apart.
func spots(f *floor.Floor) []namedSpot {
	var out []namedSpot
	taken := map[string]int{aPlace: 1}
	add := func(name string, s floor.Spot) {
		taken[name]++
		if n := taken[name]; n > 1 {
			name = fmt.Sprintf("%s (%d)", name, n)
		}
		out = append(out, namedSpot{name, s})
	}
	for i := range f.Features {
		t := &f.Features[i]
		if at, ok := f.Before(t); ok {
			add(t.Name, floor.Spot{Thing: t.ID, At: at})
		}
	}
	for _, k := range f.KeepClears {
		add(k.Name, floor.Spot{Thing: k.ID, At: middleOf(k.Shape)})
	}
	return out
}

// spotAt is where a way's end is on the floor, for when its thing goes.
func spotAt(f *floor.Floor, s floor.Spot) plane.Point {
	for _, o := range spots(f) {
		if s.Thing != "" && o.spot.Thing == s.Thing {
			return o.spot.At
		}
	}
	return s.At
}

// doorReach is how near a door a way must end to lead through it, in metres.
const doorReach = 0.5

// spotOf is the end of a way that is clicked: the area that it is in, the door that it
// is at, or the place itself.
func spotOf(f *floor.Floor, at plane.Point) floor.Spot {
	for i := range f.Features {
		t := &f.Features[i]
		if leaf, ok := t.Leaf(); ok && leaf.Distance(at) < doorReach {
			before, _ := f.Before(t)
			return floor.Spot{Thing: t.ID, At: before}
		}
	}
	for _, k := range f.KeepClears {
		if k.Shape.Contains(at, 0) {
			return floor.Spot{Thing: k.ID, At: middleOf(k.Shape)}
		}
	}
	return floor.Spot{At: at}
}

func middleOf(shape plane.Path) plane.Point {
	if c, ok := shape.Centroid(); ok {
		return c
	}
	box, _ := shape.Bounds()
	return box.Centre()
}

// addFeature and addWay return the identifier of what they add.
func addFeature(f *floor.Floor, kind floor.FeatureKind, points []plane.Point) (string, error) {
	least, area := kind.Corners()
	if len(points) < least {
		return "", fmt.Errorf("a %s needs at least %d points", kind, least)
	}
	shape := plane.Open(points...)
	if shape.Closed = area; area {
		if err := floor.CheckShape(shape); err != nil {
			return "", err
		}
	}
	t := floor.Feature{ID: uuid.NewString(), Kind: kind, Shape: shape, Name: numbered(capital(string(kind)), f)}
	if kind == floor.RoomDoor {
		t.Opens = floor.OpensIn
	}
	f.Features = append(f.Features, t)
	return t.ID, nil
}

// numbered is a name that no feature of the floor has yet.
func numbered(name string, f *floor.Floor) string {
	for n := 1; ; n++ {
		try := fmt.Sprintf("%s %d", name, n)
		taken := false
		for _, t := range f.Features {
			taken = taken || t.Name == try
		}
		if !taken {
			return try
		}
	}
}

// addWay adds a way; one that ends at an exit or a door is a way out.
func addWay(f *floor.Floor, from, to plane.Point) string {
	w := floor.Way{ID: uuid.NewString(), Kind: floor.OtherWay, From: spotOf(f, from), To: spotOf(f, to)}
	if w.To.Thing != "" {
		w.Kind = floor.WayOut
		for _, k := range f.KeepClears {
			if k.ID == w.To.Thing && k.Kind != "exit" && k.Kind != "door swing" {
				w.Kind = floor.OtherWay
			}
		}
	}
	w.Name = fmt.Sprintf("Way %d", len(f.Ways)+1)
	f.Ways = append(f.Ways, w)
	return w.ID
}

// release lets the ways that lead to things that go lead to where they were.
func release(f *floor.Floor, gone func(id string) bool) {
	for i := range f.Ways {
		for _, s := range []*floor.Spot{&f.Ways[i].From, &f.Ways[i].To} {
			if s.Thing != "" && gone(s.Thing) {
				s.At, s.Thing = spotAt(f, *s), ""
			}
		}
	}
}
