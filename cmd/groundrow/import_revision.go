package main

import (
	"context"
	"errors"
	"fmt"
	"math"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/tapeout/plan/revision"
)

// revisionReport is what a drawing changes on the plan that there is, in JSON.
type revisionReport struct {
	Changes   []changeReport  `json:"changes"` // those that there is something to say about
	Unchanged int             `json:"unchanged"`
	Floors    []floorRevision `json:"floors"` // what the changes to take mean on each
}

type changeReport struct {
	Element  string  `json:"element"`
	Outcome  string  `json:"outcome"`
	Moved    metres  `json:"moved_m"`
	Up       metres  `json:"moved_up_m"`
	Over     metres  `json:"moved_over_m"`
	Turned   float64 `json:"turned_deg"`
	Sentence string  `json:"sentence"`
	ToTake   bool    `json:"to_take"`
}

type floorRevision struct {
	Floor    string       `json:"floor"`
	Down     bool         `json:"marks_are_down"`
	Lift     []mark       `json:"lift"`
	Lay      []mark       `json:"lay"`
	Tape     []tapeRevise `json:"tape"`
	Minutes  int          `json:"minutes_for_two"`
	Sentence string       `json:"sentence"`
}

type tapeRevise struct {
	Stock string `json:"stock"`
	More  metres `json:"to_lay_m"`
	Less  metres `json:"not_needed_m"`
}

// drawingRevision is a drawing compared with the plan.
type drawingRevision struct {
	all  revision.Changes
	take []int
}

// compare compares what the drawing proposes with the plan. What is gone is to be
// taken only where that is said: a drawing may show a part.
func (r *drawingReading) compare(p *prep.Production, in *drawingIn) *drawingRevision {
	if len(p.Plan.Elements) == 0 || len(in.elements) == 0 || prep.FitForFloors(in.elements) != nil {
		return nil
	}
	v := &drawingRevision{all: revision.Compare(p.Plan.Elements, in.elements, revision.DefaultTolerance)}
	for i := range v.all {
		switch v.all[i].Outcome {
		case revision.Unchanged:
		case revision.Gone:
			if r.gone {
				v.take = append(v.take, i)
			}
		default:
			v.take = append(v.take, i)
		}
	}
	return v
}

func (v *drawingRevision) apply(p *prep.Production) error {
	return prep.TakeRevision(p, v.all, v.take, uuid.NewString)
}

// report tells the changes, and what those to take mean on the floors.
func (v *drawingRevision) report(now store.Snapshot) (*revisionReport, error) {
	out := &revisionReport{Changes: []changeReport{}, Floors: []floorRevision{}, Unchanged: v.all.Count(revision.Unchanged)}
	style := now.P.Style()
	takes := map[int]bool{}
	for _, i := range v.take {
		takes[i] = true
	}
	for i := range v.all {
		c := &v.all[i]
		if c.Outcome == revision.Unchanged {
			continue
		}
		out.Changes = append(out.Changes, changeReport{
			Element: c.Name(), Outcome: string(c.Outcome), Moved: metres(math.Hypot(c.Shift.X, c.Shift.Y)), Up: metres(c.Shift.Y), Over: metres(c.Shift.X),
			Turned: c.Turn * 180 / math.Pi, Sentence: c.Sentence(style), ToTake: takes[i],
		})
	}
	after, err := now.Imagine(v.apply)
	if err != nil {
		return nil, fmt.Errorf("working out what the revision means: %w", err)
	}
	for _, f := range prep.RevisionOnFloors(now.P, after) {
		out.Floors = append(out.Floors, floorRevised(after, &f))
	}
	return out, nil
}

func floorRevised(after *prep.Production, f *prep.FloorChange) floorRevision {
	out := floorRevision{
		Floor: f.Name, Down: f.Down, Minutes: f.Minutes, Sentence: f.Sentence(after),
		Lift: marksOf(after, f.Lift), Lay: marksOf(after, f.Lay), Tape: []tapeRevise{},
	}
	for _, t := range f.Tape {
		name := "not decided"
		if s := after.Stock(t.Stock); s != nil {
			name = s.Name
		}
		out.Tape = append(out.Tape, tapeRevise{name, metres(t.More), metres(t.Less)})
	}
	return out
}

// revise takes the changes over, and keeps the file as it came.
func (r *drawingReading) revise(ctx context.Context, p *production, in *drawingIn, v *drawingRevision) ([]string, error) {
	if err := r.known(in); err != nil {
		return nil, err
	}
	if v == nil {
		return nil, errors.New("the plan is empty, so there is nothing to revise: use --take")
	}
	if len(v.take) == 0 {
		return nil, nil
	}
	var names []string
	for _, i := range v.take {
		names = append(names, v.all[i].Name())
	}
	return names, p.EditWith(ctx, p.Now(), r.brought("Revise the plan from ", in.file), func(to *prep.Production) error {
		if in.baseline != "" {
			to.Plan.Baseline = in.baseline
		}
		return v.apply(to)
	})
}

// tellRevision writes what the drawing changes, and what to do on each floor.
func (r *drawingReading) tellRevision(v *revisionReport) error {
	if v == nil {
		return nil
	}
	changes := newTable("Change", "Element", "What became of it", "Taken")
	for _, c := range v.Changes {
		taken := "no"
		if c.ToTake {
			taken = "yes"
		}
		changes.row(c.Outcome, plain(c.Element), plain(c.Sentence), taken)
	}
	if _, err := fmt.Fprintf(r.out, "\nAs a revision of the plan, which keeps %d as they are:\n", v.Unchanged); err != nil {
		return err
	}
	if err := changes.write(r.out); err != nil {
		return err
	}
	for _, f := range v.Floors {
		if _, err := fmt.Fprintln(r.out, plain(f.Sentence)); err != nil {
			return err
		}
	}
	return nil
}
