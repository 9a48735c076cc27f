package prep

import (
	"fmt"
	"math"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
)

// changes says what the next floor does otherwise than this one, in sentences
// for a team that was never here.
func changes(style length.Style, here, there floor.Treatment) []string {
	if here.How == there.How && here.How != floor.MovedAside {
		return nil
	}
	var out []string
	for _, s := range []string{wordHere(style, here, there), wordThere(style, here, there)} {
		if s != "" {
			out = append(out, s+".")
		}
	}
	return out
}

// wordHere words what was done on this floor and, when the next one lays the
// thing as drawn, that this is undone.
func wordHere(style length.Style, here, there floor.Treatment) string {
	undone := func(done, undone string) string {
		if there.How == floor.AsDrawn {
			return done + undone
		}
		return done
	}
	s := ""
	switch here.How {
	case floor.LeftOut:
		s = undone("Left out here", ", real there")
	case floor.CutShort:
		s = undone("Cut short here at the room", ", whole there")
	case floor.OutlineOnly:
		s = undone("Outline only here", ", with its inner lines there")
	case floor.ObjectOnly:
		s = "Only an object stood here"
	case floor.MovedAside:
		return moved(style, here, there)
	default:
		return ""
	}
	return s + because(here)
}

// wordThere words what the next floor does, unless that is what is drawn.
func wordThere(style length.Style, here, there floor.Treatment) string {
	switch there.How {
	case floor.AsDrawn, here.How:
		return ""
	case floor.MovedAside:
		return "Moved there " + offset(style, there.Over, there.Up) + because(there)
	case floor.LeftOut:
		return "Not laid there" + because(there)
	}
	return fmt.Sprintf("There: %s%s", there.How, because(there))
}

// moved words an offset of this floor that the next one undoes or keeps.
func moved(style length.Style, here, there floor.Treatment) string {
	over, up := here.Over, here.Up
	if there.How == floor.MovedAside {
		over, up = over-there.Over, up-there.Up
	}
	switch {
	case math.Hypot(over, up) < style.Grain()/2:
		return ""
	case there.How == floor.MovedAside:
		return "Stood here " + offset(style, over, up) + " of where it stands there" + because(here)
	case there.How != floor.AsDrawn:
		return "Moved here " + offset(style, over, up) + because(here)
	}
	return "Moved here " + offset(style, over, up) + because(here) + "; there it goes back to where it is drawn"
}

// offset words a displacement in plan axes.
func offset(style length.Style, over, up float64) string {
	grain := style.Grain() / 2
	across, along := "", ""
	switch {
	case over >= grain:
		across = style.Format(over) + " to stage left"
	case over <= -grain:
		across = style.Format(-over) + " to stage right"
	}
	switch {
	case up >= grain:
		along = style.Format(up) + " upstage"
	case up <= -grain:
		along = style.Format(-up) + " downstage"
	}
	switch {
	case across == "" && along == "":
		return "by nothing that can be measured"
	case along == "":
		return across
	case across == "":
		return along
	}
	return along + " and " + across
}

func because(t floor.Treatment) string {
	if t.Reason == "" {
		return ""
	}
	return " (" + t.Reason + ")"
}
