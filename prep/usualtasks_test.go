package prep_test

import (
	"strconv"
	"testing"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/length"
)

func TestTheUsualTasksFollowEachOtherAndComeOnce(t *testing.T) {
	n := 0
	newID := func() string { n++; return strconv.Itoa(n) }
	p := prep.New("Harbour", length.FeetInches, time.Time{}, newID)
	room := p.Floors[0].ID
	came := p.AddUsualTasks(room, newID)
	if came == 0 || came != len(p.Tasks) {
		t.Fatalf("%d came, %d are there", came, len(p.Tasks))
	}
	seen := map[string]bool{}
	for _, task := range p.Tasks {
		for _, before := range task.After {
			if !seen[before] {
				t.Errorf("%s waits for %q, which is not before it", task.Name, before)
			}
		}
		if (task.Count == prep.ByHours) != (task.Hours > 0) || (task.Count == prep.ByHours) == (task.Floor == room) {
			t.Errorf("%s: %s, %v hours, floor %q", task.Name, task.Count, task.Hours, task.Floor)
		}
		seen[task.ID] = true
	}
	p.RemoveTask(p.Tasks[0].ID)
	if again := p.AddUsualTasks(room, newID); again != 1 || len(p.Tasks) != came {
		t.Errorf("%d came again, %d are there", again, len(p.Tasks))
	}
	if got := p.AddUsualTasks("gone", newID); got != 0 {
		t.Errorf("%d tasks for a floor that is gone", got)
	}
}
