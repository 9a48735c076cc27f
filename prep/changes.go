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
	var out []string
	if here.How == there.How && here.How != floor.MovedAside {
		return nil
	}
	switch here.How {
	case floor.LeftOut:
		out = append(out, "Left out here, real there"+because(here))
	case floor.CutShort:
		out = append(out, "Cut short here at the room, whole there"+because(here))
	case floor.OutlineOnly:
		out = append(out, "Outline only here, with its inner lines there"+because(here))
	case floor.ObjectOnly:
		out = append(out, "Only an object stood here"+because(here))
	case floor.MovedAside:
		out = append(out, moved(style, here, there))
	}
	switch {
	case there.How == floor.MovedAside && here.How != floor.MovedAside:
		out = append(out, "Moved there "+offset(style, there.Over, there.Up)+because(there))
	case there.How != floor.AsDrawn && there.How != floor.MovedAside && there.How != here.How:
		out = append(out, fmt.Sprintf("There: %s%s", there.How, because(there)))
	}
	kept := out[:0]
	for _, s := range out {
		if s != "" {
			kept = append(kept, s+".")
		}
	}
	return kept
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
	case there.How == floor.LeftOut:
		return "Moved here " + offset(style, here.Over, here.Up) + because(here)
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
