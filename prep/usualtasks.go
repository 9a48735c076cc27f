package prep

import (
	"slices"

	"groundrow/tapeout/floor"
)

// usualTask is a piece of the work that every floor asks for. Hours and hands are
// common practice without a source, to be changed where they do not fit.
type usualTask struct {
	name  string
	count Count
	hours float64
	hands int
	after []string // by name
}

var usualTasks = []usualTask{
	{"Measure", ByHours, 1.5, 2, nil},
	{"Test the tape on the floor of", ByHours, 0.5, 1, []string{"Measure"}},
	{"Cut and letter the tabs for", ByHours, 1, 2, nil},
	{"Lay the datum of", ByHours, 1, 2, []string{"Measure"}},
	{"Place the marks of", ByMarks, 0, 2, []string{"Lay the datum of", "Cut and letter the tabs for"}},
	{"Check the marks of", ByChecks, 0, 2, []string{"Place the marks of"}},
	{"Lay the tape of", ByTape, 0, 2, []string{"Check the marks of", "Test the tape on the floor of"}},
	{"Protect the corners of", ByPatches, 0, 1, []string{"Lay the tape of"}},
	{"Set the stand-ins in", ByHours, 1, 2, []string{"Lay the tape of"}},
}

// AddUsualTasks adds what has to be done for a floor between its measuring and the
// first rehearsal, in order, and returns how many tasks came. One that is there by
// its name stays as it is, and the others follow it.
func (p *Production) AddUsualTasks(on floor.ID, newID func() string) int {
	f := p.Floor(on)
	if f == nil {
		return 0
	}
	ids, added := map[string]string{}, 0
	for _, u := range usualTasks {
		name := u.name + " " + f.Name
		if i := slices.IndexFunc(p.Tasks, func(t Task) bool { return t.Name == name }); i >= 0 {
			ids[u.name] = p.Tasks[i].ID
			continue
		}
		t := Task{ID: newID(), Name: name, Count: u.count, Hours: u.hours, Hands: u.hands}
		if u.count != ByHours {
			t.Floor = on
		}
		for _, before := range u.after {
			t.After = append(t.After, ids[before])
		}
		p.Tasks = append(p.Tasks, t)
		ids[u.name] = t.ID
		added++
	}
	return added
}
