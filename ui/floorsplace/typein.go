package floorsplace

import (
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// What can be typed in besides features.
const (
	typeWay       = "way across the floor"
	typeObstacle  = "obstacle"
	typeKeepClear = "area to keep clear"
)

// askThing asks for a thing of the room by its measurements: from one point to another,
// or from one corner of an upright rectangle to the opposite one.
func (p *place) askThing() {
	form := fields.NewForm()
	kinds := append([]string{typeWay, typeObstacle, typeKeepClear}, words(floor.FeatureKinds)...)
	kind := fields.NewChoice(kinds...)
	kind.Set(kinds[0])
	form.Add("kind", "What", kind)
	values := make([]float64, 4)
	for i, label := range []string{"From, along the room", "From, into the room", "To, along the room", "To, into the room"} {
		l := p.lengthField()
		l.SetUnit(p.view.P.Unit().Name())
		l.Set("", 0)
		l.OnCommit = func(_ string, m float64) error { values[i] = m; return nil }
		form.Add(label, label, l)
	}
	fields.Ask(p.desk.Window(), "A thing of the room, by its measurements", form, "Add it", func() error {
		return p.addTyped(kind.Value(), plane.Point{X: values[0], Y: values[1]}, plane.Point{X: values[2], Y: values[3]})
	})
}

// addTyped adds a thing between two points.
func (p *place) addTyped(what string, from, to plane.Point) error {
	var id string
	kind := desk.Feature
	err := p.tryEdit("Add a "+what, func(f *floor.Floor) (err error) {
		box, _ := plane.BoxOf(from, to)
		rectangle := plane.Rectangle(box.Min, box.Max)
		switch what {
		case typeWay:
			kind, id = desk.Way, addWay(f, from, to)
		case typeObstacle:
			kind, id = desk.Obstacle, addObstacle(f, rectangle)
			return floor.CheckShape(rectangle)
		case typeKeepClear:
			kind, id = desk.KeepClear, addKeepClear(f, rectangle)
			return floor.CheckShape(rectangle)
		default:
			points := []plane.Point{from, to}
			switch least, area := floor.FeatureKind(what).Corners(); {
			case area:
				points = rectangle.Points()
			case least == 1:
				points = points[:1]
			}
			id, err = addFeature(f, floor.FeatureKind(what), points)
		}
		return err
	})
	if err == nil {
		p.desk.Select(desk.Select(kind, id))
	}
	return err
}
