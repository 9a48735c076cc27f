package floorsplace

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/google/uuid"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorcanvas"
	"groundrow/ui/theme"
)

// placingForm types what is on trial and edits what a placement has to keep to.
type placingForm struct {
	p    *placingPage
	form *fields.Form

	along, into *fields.Length
	turn        *fields.Decimal
	angles      *fields.Choice
	step        *fields.Decimal
	fronts      *fields.Multi
	area, sight *fields.Decimal
}

// anyAngle is how the free rule for turning is offered.
const anyAngle = "any way"

func angleNames() []string {
	out := words(floor.AngleRules)
	out[0] = anyAngle
	return out
}

func newPlacingForm(p *placingPage) *placingForm {
	f := &placingForm{p: p, form: fields.NewForm()}
	f.form.Section("On trial")
	f.along = f.length("along", "Along the room", func(m *plane.Motion) *float64 { return &m.Shift.X })
	f.into = f.length("into", "Into the room", func(m *plane.Motion) *float64 { return &m.Shift.Y })
	f.turn = fields.NewDecimal("degrees", -360, 360)
	f.turn.OnCommit = func(v float64) error {
		m := p.trial
		m.Turn = v * math.Pi / 180
		p.try(m)
		return nil
	}
	f.form.Add("turn", "Turned by", f.turn)

	f.form.Section("What it has to keep to")
	f.angles = fields.NewChoice(angleNames()...)
	f.angles.OnCommit = func(v string) error {
		return f.edit("Say how the plan may be turned", func(x *floor.Floor) {
			x.Wishes.Angles = floor.Angles(v)
			if v == anyAngle {
				x.Wishes.Angles = floor.AnyAngle
			}
			if x.Wishes.Angles == floor.InSteps && x.Wishes.Step < 0.1 {
				x.Wishes.Step = usualStep
			}
		})
	}
	f.form.Add("angles", "It may be turned", f.angles)
	f.step = f.decimal("step", "In steps of", "degrees", 0.1, 360, "Say in what steps the plan may be turned", func(w *floor.Wishes) *float64 { return &w.Step })
	f.fronts = fields.NewMulti()
	f.fronts.OnCommit = func(ticked []string) error {
		return f.edit("Say which side may be the front", func(x *floor.Floor) {
			var keep []float64
			names := f.p.sideNames(x)
			for i, s := range placement.Sides(x.Outline) {
				if slices.Contains(ticked, names[i]) {
					keep = append(keep, s.Toward)
				}
			}
			setFronts(x, keep)
		})
	}
	f.form.Add("fronts", "The front may be", f.fronts)
	f.form.Section("What counts, where all lines count 1")
	f.area = f.decimal("area", "Playing area", "", 0, 100, "Say what playing area counts", func(w *floor.Wishes) *float64 { return &w.Area })
	f.sight = f.decimal("sight", "Seen from the front table", "", 0, 100, "Say what sight counts", func(w *floor.Wishes) *float64 { return &w.Sight })
	return f
}

// usualStep is the step that turns in steps begin with, in degrees.
const usualStep = 15

func (f *placingForm) edit(label string, change func(*floor.Floor)) error {
	return f.p.desk.TryEdit(label, onFloor(f.p.shown, func(x *floor.Floor) error { change(x); return nil }))
}

func (f *placingForm) length(name, label string, at func(*plane.Motion) *float64) *fields.Length {
	l := fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, f.p.view.P.Unit()) },
		func(m float64) string { return f.p.view.Style().Bare(m) },
	)
	l.OnCommit = func(_ string, v float64) error {
		m := f.p.trial
		*at(&m) = v
		f.p.try(m)
		return nil
	}
	f.form.Add(name, label, l)
	return l
}

func (f *placingForm) decimal(name, label, unit string, least, most float64, doing string, at func(*floor.Wishes) *float64) *fields.Decimal {
	d := fields.NewDecimal(unit, least, most)
	d.OnCommit = func(v float64) error {
		return f.edit(doing, func(x *floor.Floor) { *at(&x.Wishes) = v })
	}
	f.form.Add(name, label, d)
	return d
}

func (f *placingForm) show(v *desk.View, x *floor.Floor) {
	f.form.Record(string(x.ID))
	rule := string(x.Wishes.Angles)
	if rule == "" {
		rule = anyAngle
	}
	f.angles.Set(rule)
	f.form.ShowRow("step", x.Wishes.Angles == floor.InSteps)
	f.step.Set(x.Wishes.Step)
	f.area.Set(x.Wishes.Area)
	f.sight.Set(x.Wishes.Sight)
	names := f.p.sideNames(x)
	f.fronts.SetOptions(names...)
	var ticked []string
	for i, s := range placement.Sides(x.Outline) {
		if isFront(x, s.Toward) {
			ticked = append(ticked, names[i])
		}
	}
	f.fronts.Set(ticked)
}

// place shows what is on trial.
func (f *placingForm) place(v *desk.View, m plane.Motion) {
	for l, at := range map[*fields.Length]float64{f.along: m.Shift.X, f.into: m.Shift.Y} {
		l.SetUnit(v.P.Unit().Name())
		l.Set("", at)
	}
	f.turn.Set(degrees(m.Turn))
}

// sideNames names the sides of a room by their walls, which are called as on the page of
// the measured room where they are those.
func (p *placingPage) sideNames(x *floor.Floor) []string {
	edges := x.Outline.Edges()
	called := func(wall int) string { return fmt.Sprint(wall + 1) }
	if m, _ := p.view.P.MeasuredShape(x); m.InUse && len(edges) == len(x.Measured.Walls) {
		called = func(wall int) string {
			corners := room.Corner(wall) + "–" + room.Corner((wall+1)%len(edges))
			return strings.TrimSpace(corners + " " + x.Measured.Walls[wall].Name)
		}
	}
	var out []string
	for _, s := range placement.Sides(x.Outline) {
		var walls []string
		long := 0.0
		for _, w := range s.Walls {
			walls = append(walls, called(w))
			long += edges[w].Length()
		}
		word := "wall "
		if len(walls) > 1 {
			word = "walls "
		}
		out = append(out, word+strings.Join(walls, ", ")+" ("+p.view.Style().Format(long)+")")
	}
	return out
}

// likeFront is how far apart two directions can be and stand for one side, in
// radians: five degrees, so that a room that is measured again keeps its front.
const likeFront = 5 * math.Pi / 180

func isFront(x *floor.Floor, toward float64) bool {
	return slices.ContainsFunc(x.Fronts, func(f floor.Front) bool {
		return math.Abs(math.Remainder(f.Toward-toward, 2*math.Pi)) < likeFront
	})
}

// setFronts makes the sides with these directions those that may be the front.
func setFronts(x *floor.Floor, toward []float64) {
	var out []floor.Front
	for _, t := range toward {
		i := slices.IndexFunc(x.Fronts, func(f floor.Front) bool { return f.Toward == t })
		if i >= 0 {
			out = append(out, x.Fronts[i])
			continue
		}
		out = append(out, floor.Front{ID: uuid.NewString(), Toward: t})
	}
	x.Fronts = out
}

// nearWall is how near to a wall a click has to be to mean it, in metres.
const nearWall = 0.4

// toggleFrontAt says that the side of the wall that was clicked may be the front, or
// that it may not any more.
func (p *placingPage) toggleFrontAt(at plane.Point) {
	edges := p.of.Outline.Edges()
	best, wall := nearWall, -1
	for i, e := range edges {
		if d := e.Distance(at); d < best {
			best, wall = d, i
		}
	}
	if wall < 0 {
		return
	}
	p.desk.Edit("Say which side may be the front", onFloor(p.shown, func(x *floor.Floor) error {
		var keep []float64
		for _, s := range placement.Sides(x.Outline) {
			if isFront(x, s.Toward) != slices.Contains(s.Walls, wall) {
				keep = append(keep, s.Toward)
			}
		}
		setFronts(x, keep)
		return nil
	}))
}

// frontShapes mark the walls that may be the front.
func frontShapes(x *floor.Floor) []floorcanvas.Shape {
	edges := x.Outline.Edges()
	var out []floorcanvas.Shape
	for _, s := range placement.Sides(x.Outline) {
		if !isFront(x, s.Toward) {
			continue
		}
		for _, w := range s.Walls {
			out = append(out, floorcanvas.Shape{Edges: edges[w : w+1], Ink: theme.Datum, Width: 6, Z: 4})
		}
	}
	return out
}
