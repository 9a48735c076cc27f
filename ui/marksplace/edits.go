package marksplace

import (
	"fmt"
	"slices"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/marks"
	"groundrow/tapeout/plane"
)

// errGone is what an edit says whose row somebody else has deleted.
func errGone(what string) error {
	return fmt.Errorf("%s is not there any more: somebody has deleted it", what)
}

// onFloor makes a change to one floor.
func onFloor(id floor.ID, change func(*floor.Floor) error) func(*prep.Production) error {
	return func(p *prep.Production) error {
		f := p.Floor(id)
		if f == nil {
			return errGone("the floor")
		}
		return change(f)
	}
}

// retire marks printed labels as never to be used again.
func retire(p *prep.Production, id floor.ID, labels []string) {
	for i := range p.Issued {
		if is := &p.Issued[i]; is.Floor == id && has(labels, is.Label) {
			is.Retired = true
		}
	}
	p.Progress = slices.DeleteFunc(p.Progress, func(g marks.Progress) bool { return g.Floor == id && has(labels, g.Label) })
}

func pivotAt(f *floor.Floor, id string) (int, error) {
	i := slices.IndexFunc(f.Pivots, func(v floor.Pivot) bool { return v.ID == id })
	if i < 0 {
		return 0, errGone("the pivot")
	}
	return i, nil
}

// movePivot puts a pivot at a place in datum axes.
func movePivot(f *floor.Floor, id string, at plane.Point) error {
	i, err := pivotAt(f, id)
	if err != nil {
		return err
	}
	f.Pivots[i].At = f.FloorToDatum().Inverse().Apply(at)
	return nil
}

// shiftPivot moves a pivot by a distance in datum axes.
func shiftPivot(f *floor.Floor, id string, by plane.Point) error {
	i, err := pivotAt(f, id)
	if err != nil {
		return err
	}
	f.Pivots[i].At = f.Pivots[i].At.Add(f.FloorToDatum().Inverse().Rotate(by))
	return nil
}

// reorder moves a pivot by one place in the order; the first two are in use.
func reorder(f *floor.Floor, id string, by int) error {
	i, err := pivotAt(f, id)
	if err != nil {
		return err
	}
	j := i + by
	if j < 0 || j >= len(f.Pivots) {
		return nil
	}
	f.Pivots[i], f.Pivots[j] = f.Pivots[j], f.Pivots[i]
	return nil
}
