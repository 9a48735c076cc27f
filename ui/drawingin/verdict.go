package drawingin

import (
	"fmt"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/ui/fields"
)

// scaleVerdict says what is known of the scale, and what follows for one
// dimension that a person can compare with what they know.
func (d *drawn) scaleVerdict(dim *dimension) (fields.Kind, string) {
	if !(d.scale.perUnit > 0) {
		return fields.Warning, "How large is it? Choose a proposal, type the scale, or give one known dimension."
	}
	words := "The drawing is at " + d.scaleName() + ". " + d.scale.why
	if dim != nil {
		words += " The dimension marked in the drawing is then " + dim.text + "."
	}
	if d.scale.sure {
		return fields.Good, words
	}
	return fields.Note, words + " Is that right?"
}

// datumVerdict says where the datum is taken to be.
func (d *drawn) datumVerdict() (fields.Kind, string) {
	switch {
	case !d.datum.set:
		return fields.Warning, "Where does the centre line meet the baseline? Choose a proposal or show it in the drawing."
	case d.datum.sure:
		return fields.Good, "The datum is set. " + d.datum.why
	}
	return fields.Note, "The datum is drawn where it is taken to be. " + d.datum.why + " Is that right?"
}

// measured writes a dimension as long as it would be on the floor.
func (d *drawn) measured(m *dimension, style length.Style) {
	m.text = style.Format(m.from.To(m.to) * d.perUnit())
}

// answers are the four questions as the buttons on top show them: a few words of
// answer each, and whether it is settled.
func (d *drawn) answers(page, pages int) [4]answer {
	var out [4]answer
	out[0] = answer{"One page", true}
	if pages > 1 {
		out[0] = answer{fmt.Sprintf("Page %d of %d", page+1, pages), true}
	}
	out[1] = answer{fmt.Sprintf("%d of %s", d.taken(), prep.Counted(len(d.take), "line")), d.taken() > 0}
	out[2] = answer{d.scaleName(), d.scale.sure}
	switch {
	case !d.datum.set:
		out[3] = answer{"not known", false}
	case d.datum.sure:
		out[3] = answer{"set", true}
	default:
		out[3] = answer{"proposed", false}
	}
	return out
}

// answer is one question's answer in a few words.
type answer struct {
	words   string
	settled bool
}
