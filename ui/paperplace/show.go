package paperplace

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"groundrow/prep"
	"groundrow/prep/sheets"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
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

// sizeWords says how large the pages are and how many.
func sizeWords(pages int, size sheets.PageSize, width, height float64) string {
	lies := "upright"
	if width > height {
		lies = "on its long side"
	}
	if pages == 1 {
		return fmt.Sprintf("1 page of %s, %s", size.Name, lies)
	}
	return fmt.Sprintf("%d pages of %s, %s", pages, size.Name, lies)
}

// choice is what is asked for above the sheets.
type choice struct {
	size  sheets.PageSize
	scale length.Scale // zero: the largest usual one that fits
}

// sizeOf is the paper that the production is set to.
func sizeOf(p *prep.Production) sheets.PageSize {
	if s, ok := sheets.Paper(p.Settings.Paper); ok {
		return s
	}
	return sheets.A4
}

func sizeNames() []string {
	var out []string
	for _, s := range sheets.PageSizes {
		out = append(out, s.Name)
	}
	return out
}

// anyScale leaves the scale of plans to what fits.
const anyScale = "largest that fits"

// scaleNames are the scales offered for plans.
func scaleNames(u length.Unit) []string {
	usual := slices.Clone(length.UsualScales(u))
	slices.Sort(usual)
	out := []string{anyScale}
	for _, s := range usual {
		out = append(out, s.String())
	}
	return out
}

// scaleNamed is the scale of a name; zero for what fits.
func scaleNamed(name string) length.Scale {
	if name == anyScale {
		return 0
	}
	s, err := length.ParseScale(name)
	if err != nil {
		return 0
	}
	return s
}

// jobOf is what is asked for of the chosen floor and scene. The works of all
// floors are taken from the view here, since a view belongs to one goroutine.
func jobOf(v *desk.View, c choice, now time.Time) sheets.Job {
	works := map[floor.ID]*prep.FloorWork{}
	for i := range v.P.Floors {
		id := v.P.Floors[i].ID
		works[id] = v.Work(id)
	}
	return sheets.Job{P: v.P, Works: works, Floor: v.Floor, Scene: v.Scene, Size: c.size, Scale: c.scale, Printed: now, By: v.Who}
}

// fileName is the name of a sheet's file: floor, scene and sheet in words, so
// that the files of a folder can be told apart.
func fileName(p *prep.Production, s sheets.Sheet, job sheets.Job, extension string) string {
	var parts []string
	if f := p.Floor(job.Floor); f != nil && s.PerFloor {
		parts = append(parts, f.Name)
	}
	parts = append(parts, s.Name)
	if s.PerScene && job.Scene != "" {
		parts = append(parts, sceneName(p, job.Scene))
	}
	return plain(strings.Join(parts, " - ")) + extension
}

// plain leaves out what some systems do not allow in the name of a file.
func plain(name string) string {
	name = strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return -1
		}
		return r
	}, name)
	name = strings.Trim(name, " .")
	if runes := []rune(name); len(runes) > 120 {
		name = strings.TrimSpace(string(runes[:120]))
	}
	if name == "" {
		return "sheet"
	}
	return name
}

// mustBeTold returns the floor whose labels a printing would fix for the first
// time; ok is false when there is none.
func mustBeTold(p *prep.Production, which []sheets.Sheet, job sheets.Job) (name string, ok bool) {
	for _, s := range which {
		id, freezes := sheets.Freezes(s.Kind, job)
		f := p.Floor(id)
		if !freezes || f == nil {
			continue
		}
		issued := false
		for _, is := range p.Issued {
			issued = issued || is.Floor == id
		}
		if !issued {
			return f.Name, true
		}
	}
	return "", false
}

// summary says how many sheets are out of date.
func summary(cards []*card) string {
	never, old := 0, 0
	for _, c := range cards {
		switch c.record.standing {
		case notPrinted:
			never++
		case outOfDate:
			old++
		}
	}
	said := fmt.Sprintf("%d sheets", len(cards))
	if old > 0 {
		said += fmt.Sprintf(", %d out of date", old)
	}
	if never > 0 {
		said += fmt.Sprintf(", %d not printed yet", never)
	}
	return said + "."
}
