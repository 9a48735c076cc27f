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
	"groundrow/ui/desk"
)

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
