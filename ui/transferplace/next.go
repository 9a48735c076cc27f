package transferplace

import (
	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// nextFloor returns the floor to hand on to: the one picked, else the first
// stage, else the first other floor; empty when there is none.
func nextFloor(p *prep.Production, from, picked floor.ID) floor.ID {
	if picked != "" && picked != from && p.Floor(picked) != nil {
		return picked
	}
	next := floor.ID("")
	for _, f := range p.Floors {
		switch {
		case f.ID == from:
		case f.Kind == floor.Stage:
			return f.ID
		case next == "":
			next = f.ID
		}
	}
	return next
}

func floorNames(p *prep.Production, but floor.ID) []string {
	var out []string
	for _, f := range p.Floors {
		if f.ID != but {
			out = append(out, f.Name)
		}
	}
	return out
}

func nameOf(p *prep.Production, id floor.ID) string {
	if f := p.Floor(id); f != nil {
		return f.Name
	}
	return ""
}
