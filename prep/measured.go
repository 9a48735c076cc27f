package prep

import (
	"errors"

	"groundrow/tapeout/drawing"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
	"groundrow/tapeout/survey/room"
)

var errGone = errors.New("the floor is not there any more: somebody has deleted it")

// Measured is a floor as its measurements make it, beside the walls it has.
type Measured struct {
	room.Solution // in the axes of the floor; empty when Why says something

	Why   string  // a sentence: why the measurements make no room
	InUse bool    // the floor's walls are those that were measured
	Off   float64 // metres; how far the floor's walls are from the measured ones, +Inf when they are not the same in number
}

// Say tells in sentences what the measurements make of the room, and whether its
// walls are theirs.
func (m Measured) Say(style length.Style) []string {
	if m.Why != "" {
		return []string{m.Why}
	}
	out := m.Solution.Say(style)
	if !m.InUse {
		out = append(out, "The walls of the floor are not these: they were drawn or moved by hand, and what was measured is not used.")
	}
	return out
}

// Precision is how well the production's tape measures a room.
func (p *Production) Precision() room.Precision { return room.WithTape(p.Settings.TapeSigma) }

// MeasuredRoom works out a floor from its measurements. ok is false when nothing
// has been measured.
func (p *Production) MeasuredRoom(f *floor.Floor) (m Measured, ok bool) {
	if !f.Measured.Any() {
		return Measured{}, false
	}
	return p.measured(f, room.Solve), true
}

// MeasuredShape is MeasuredRoom without a judgement on the measurements, which takes
// seconds in a large room: its outline and points alone, for every edit.
func (p *Production) MeasuredShape(f *floor.Floor) (m Measured, ok bool) {
	if !f.Measured.Any() {
		return Measured{}, false
	}
	return p.measured(f, room.Shape), true
}

func (p *Production) measured(f *floor.Floor, solve func(floor.Measured, room.Precision) (room.Solution, error)) Measured {
	s, err := solve(f.Measured, p.Precision())
	if err != nil {
		return Measured{Why: room.Why(err, p.Style())}
	}
	m := Measured{Off: s.Off(f.Outline)}
	m.InUse = m.Off < room.Same
	m.Solution = s.Moved(s.Onto(f.Outline))
	return m
}

// Measure changes what was measured of a floor. Walls that are those measured, or
// none at all, follow in the same edit; walls that somebody has drawn or moved stay
// until UseMeasured. Measurements that make no room are kept, and the walls stay.
func (p *Production) Measure(id floor.ID, change func(*floor.Measured) error) error {
	f := p.Floor(id)
	if f == nil {
		return errGone
	}
	before, had := p.MeasuredShape(f)
	follows := len(f.Outline.Vertices) == 0 || had && before.InUse
	if err := change(&f.Measured); err != nil {
		return err
	}
	if after, ok := p.MeasuredShape(f); ok && follows && after.Why == "" {
		f.Outline = after.Outline
	}
	return nil
}

// UseMeasured gives the floor the walls that were measured. The error is a sentence.
func (p *Production) UseMeasured(id floor.ID) error {
	f := p.Floor(id)
	if f == nil {
		return errGone
	}
	m, ok := p.MeasuredShape(f)
	switch {
	case !ok:
		return errors.New("nothing has been measured of this floor yet")
	case m.Why != "":
		return errors.New(m.Why)
	}
	f.Outline = m.Outline
	return nil
}

// PlaceOf returns where a corner or a measured point lies, by its identifier.
func (m Measured) PlaceOf(of floor.Measured, id string) (at plane.Point, ok bool) {
	if i, found := of.Corner(id); found && i < len(m.Outline.Vertices) {
		return m.Outline.Vertices[i].Point, true
	}
	if i, found := of.Point(id); found && i < len(m.Points) {
		return m.Points[i], true
	}
	return plane.Point{}, false
}

// TakeRoom gives a floor what a table holds of it: what was measured, with the walls
// that follow, or its corners, which leave nothing measured. The error says why the
// measurements make no room; then the floor is as it was.
func (p *Production) TakeRoom(id floor.ID, t drawing.RoomTable) error {
	f := p.Floor(id)
	if f == nil {
		return errGone
	}
	outline := t.Outline
	if t.Measured.Any() {
		s, err := room.Shape(t.Measured, p.Precision())
		if err != nil {
			return errors.New(room.Clause(err, p.Style()))
		}
		outline = s.Outline.Moved(s.Onto(f.Outline))
	}
	f.Measured, f.Outline = t.Measured, outline
	for _, typed := range t.Typed {
		p.KeepTyped(typed.ID, typed.Column, typed.Text)
	}
	return nil
}

// TriedRoom is what a table would make of a floor.
type TriedRoom struct {
	After    floor.Floor          // as TakeRoom would leave it; as it was when something is wrong
	Measured Measured             // what the table's measurements make; nothing of a table of corners
	Wrong    []drawing.RowProblem // the table's problems, or else why its measurements make no room
}

// TryRoom works out what TakeRoom would make of a floor, and changes nothing.
func (p *Production) TryRoom(f *floor.Floor, t drawing.RoomTable) TriedRoom {
	tried := TriedRoom{After: *f, Wrong: t.Problems}
	if len(tried.Wrong) > 0 {
		return tried
	}
	trial := Production{Settings: p.Settings, Floors: []floor.Floor{*f}}
	if err := trial.TakeRoom(f.ID, t); err != nil {
		tried.Wrong = []drawing.RowProblem{{Why: err.Error()}}
		return tried
	}
	tried.After = trial.Floors[0]
	tried.Measured, _ = trial.MeasuredRoom(&tried.After)
	return tried
}
