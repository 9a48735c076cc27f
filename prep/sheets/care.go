package sheets

import (
	"fmt"
	"slices"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// care is the cautions that apply to this floor, and only those.
func care(j Job) content {
	p, f := j.production(), j.floor()
	if f == nil {
		return content{blocks: []block{paragraph{Text: "Choose a floor: what to take care of follows from what is on it."}}}
	}
	blocks := []block{paragraph{Strong: true, Text: "Local codes, the owner of the room and licensed practice come first. Where this page and they differ, they are right."}}
	add := func(title string, items []string) {
		if len(items) > 0 {
			blocks = append(blocks, heading{title}, bullets{Items: items, Tick: true})
		}
	}
	add("The ways out", exits(f))
	add("The ways across this floor, as wide as a person may be", waysAcross(p, j.work()))
	add("The floor and its tape", append(surface(f), mirrors(f)...))
	blocks = append(blocks, layingCloth(p, f)...)
	add("While laying", []string{
		"Kneeling work wants knee pads and a change of task before knees and backs ask for it.",
		"Tapes under tension, stands and loose ends trip people: keep others off the floor while measuring, and pick up what is not in use.",
		"Knives cut away from hands and never on the floor itself; blades go into a box.",
	})
	add("The set on this floor", scenery(p, f))
	add("Stand-ins", standInCare(p, j.Scene))
	return content{blocks: blocks}
}

// exits names the ways out and the swings of doors.
func exits(f *floor.Floor) []string {
	var ways []string
	for _, k := range f.Clears() {
		if k.Kind == "exit" || k.Kind == "door swing" || k.Kind == "crossover" {
			ways = append(ways, or(k.Name, k.Kind))
		}
	}
	if len(ways) == 0 {
		return []string{"No way out is marked on this floor yet. Walk the room, mark each one and keep it clear."}
	}
	return []string{"Stay clear at all times, nothing stood there even for a moment: " + strings.Join(ways, "; ") + "."}
}

// waysAcross says how wide each way is, and gives published widths for comparison only.
func waysAcross(p *prep.Production, w *prep.FloorWork) []string {
	var out []string
	for _, way := range w.Ways {
		out = append(out, way.Sentence(p))
	}
	return append(out,
		"Published minimum widths, for comparison: "+strings.Join(p.Published(), "; ")+". "+floor.WidthCaution)
}

// mirrors says which way the mirrors are.
func mirrors(f *floor.Floor) []string {
	var out []string
	for _, m := range f.Mirrors() {
		switch {
		case m.Faced():
			out = append(out, fmt.Sprintf("Facing front, the actors face themselves in %s: cover it, or they learn to watch themselves.", m.Name))
		case m.Behind():
			out = append(out, fmt.Sprintf("%s is behind the actors: cover it, or the front table watches itself.", m.Name))
		}
	}
	return out
}

// surface says what the owner allows.
func surface(f *floor.Floor) []string {
	on := "this floor"
	if f.Surface != "" {
		on = "this floor (" + f.Surface + ")"
	}
	test := "Test each tape on a hidden patch of " + on + " for a night before laying any, and lift it to see what stays."
	switch f.Rule {
	case floor.NoTape:
		return []string{"The owner allows no tape on " + on + ". Lay the plan on a floor cloth."}
	case floor.NightClear:
		return []string{"Nothing may be left down overnight on " + on + ": use a cloth that is rolled up, or plan the time to lift.", test}
	case floor.SomeTapes:
		return []string{"Only tapes that the owner has agreed to on " + on + ". Keep the agreement with this page.", test}
	case floor.AnyTape:
		return []string{"The owner allows any tape on " + on + ".", test}
	}
	return []string{"The owner has not been asked yet what may be stuck to " + on + ". Ask before the first strip goes down.", test}
}

// scenery is what follows from the elements that the floor lays.
func scenery(p *prep.Production, f *floor.Floor) []string {
	var raised, climbed, moving, holes, moved, cut []string
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		t := f.Decide(e)
		if t.How == floor.LeftOut {
			continue
		}
		name := or(e.Name, string(e.Kind))
		if l := p.Plan.Level(e.Level); l != nil && l.Height > 0 {
			raised = append(raised, name)
		}
		switch e.Kind {
		case plan.Stair, plan.EscapeStair, plan.Platform, plan.Ramp:
			climbed = append(climbed, name)
		case plan.Revolve, plan.Track, plan.Wagon:
			moving = append(moving, name)
		case plan.Trap:
			holes = append(holes, name)
		}
		switch t.How {
		case floor.MovedAside:
			moved = append(moved, name)
		case floor.CutShort:
			cut = append(cut, name)
		}
	}
	var out []string
	say := func(names []string, form string) {
		if len(names) > 0 {
			out = append(out, fmt.Sprintf(form, prep.Listed(names)))
		}
	}
	say(raised, "Taped flat here, raised in the theatre: %s. Tape beside tape has no edge to fall from; the real one has. Say so at the first rehearsal and again on the day of the move.")
	say(climbed, "Nothing that people climb on is improvised for %s. What is stood or walked on is built and passed by those qualified to do it.")
	say(moving, "Moving scenery is for qualified people: %s. In the room it stands still, or people carry nobody on it.")
	say(holes, "An opening in the real floor: %s. Mark it so that nobody learns to walk across it.")
	say(moved, "Not where it will be on stage: %s. The offset is written on the floor; remind the company before the move.")
	say(cut, "Goes on beyond what is taped: %s. The room ends before the scenery does.")
	return out
}

// standInCare is about the objects that stand in.
func standInCare(p *prep.Production, scene plan.SceneID) []string {
	var ballast []string
	used := false
	for _, s := range p.StandIns {
		if scene != "" && s.Scene != "" && s.Scene != scene {
			continue
		}
		i := slices.IndexFunc(p.Objects, func(o prep.Object) bool { return o.ID == s.Object })
		if i < 0 {
			continue
		}
		used = true
		if o := p.Objects[i]; o.Ballast && !slices.Contains(ballast, o.Name) {
			ballast = append(ballast, o.Name)
		}
	}
	var out []string
	if len(ballast) > 0 {
		out = append(out, "Weight these so that they cannot tip, before anyone leans on them: "+prep.Listed(ballast)+".")
	}
	if used {
		out = append(out, "A stand-in carries no one unless it was made to. Look at each before the call begins.")
	}
	return out
}
