package paperplace

import (
	"time"

	"groundrow/prep"
	"groundrow/prep/sheets"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// standing is how a sheet on paper stands against what it would show now.
type standing int

// The standings.
const (
	notPrinted standing = iota
	stillRight
	outOfDate
)

// record is the last printing of a sheet and how it stands.
type record struct {
	standing standing
	on       time.Time
	scene    string // when it was printed for another scene and is right for that
}

// lastPrinting returns when a sheet was last printed; ok is false when it has
// not been. A sheet that is not about a floor has no floor on record.
func lastPrinting(p *prep.Production, s sheets.Sheet, id floor.ID) (last prep.Printing, ok bool) {
	for _, r := range p.Printings {
		if r.Sheet != string(s.Kind) || s.PerFloor && r.Floor != id {
			continue
		}
		if !ok || r.On.After(last.On) {
			last, ok = r, true
		}
	}
	return last, ok
}

// recordOf compares what was printed with what the sheet shows now, in the chosen
// scene and then in every other one: a plan of another scene is not out of date.
func recordOf(s sheets.Sheet, job sheets.Job, now string) record {
	last, ok := lastPrinting(job.P, s, job.Floor)
	if !ok {
		return record{}
	}
	r := record{standing: outOfDate, on: last.On}
	if last.State == now {
		r.standing = stillRight
		return r
	}
	if !s.PerScene {
		return r
	}
	for _, scene := range scenesOf(job.P) {
		other := job
		other.Scene = scene
		if scene != job.Scene && sheets.State(s.Kind, other) == last.State {
			r.standing, r.scene = stillRight, sceneName(job.P, scene)
			return r
		}
	}
	return r
}

func scenesOf(p *prep.Production) []plan.SceneID {
	out := []plan.SceneID{""}
	for _, s := range p.Plan.Scenes {
		out = append(out, s.ID)
	}
	return out
}

func sceneName(p *prep.Production, id plan.SceneID) string {
	if s := p.Plan.Scene(id); s != nil {
		return s.Name
	}
	return "all scenes"
}

// short says on a card how the sheet stands.
func (r record) short() string {
	switch {
	case r.standing == notPrinted:
		return "not printed"
	case r.standing == outOfDate:
		return "out of date"
	case r.scene != "":
		return "right for " + r.scene
	}
	return "printed"
}

// words says in full how the sheet stands.
func (r record) words() string {
	switch {
	case r.standing == notPrinted:
		return "Not printed yet."
	case r.standing == outOfDate:
		return "Out of date: printed " + moment(r.on) + ", and what it shows has changed since. Print it again and take the old one away."
	case r.scene != "":
		return "Printed " + moment(r.on) + " for " + r.scene + ", and still right for that."
	}
	return "Printed " + moment(r.on) + ", and still right."
}

func moment(t time.Time) string { return t.Local().Format("Mon 2 Jan, 15:04") }
