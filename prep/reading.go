package prep

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plane"
)

// Reading is a check measure that somebody has read off a tape: a distance on a
// floor that was not used to place anything.
type Reading struct {
	ID       string
	Floor    floor.ID
	From, To string  // labels of marks, or FirstPivot and SecondPivot
	Metres   float64 // the length read
	Text     string  // as it was typed
	By       string
	On       time.Time
}

// The names of the two pivots in use as the ends of a reading. They have a space
// and a figure, which no label of a mark has.
const (
	FirstPivot  = "pivot 1"
	SecondPivot = "pivot 2"
)

// Joins tells whether the reading was taken between the two places, either way
// round.
func (r Reading) Joins(a, b string) bool {
	return r.From == a && r.To == b || r.From == b && r.To == a
}

// ReadingsOn returns the readings of a floor in the order in which they were kept.
func (p *Production) ReadingsOn(id floor.ID) []Reading {
	return filter(p.Readings, func(r Reading) bool { return r.Floor == id })
}

// longestRead is the length in metres that no tape measure reaches (common
// practice, no source).
const longestRead = 200

// ReadLength reads the typed length of a check measure.
func (p *Production) ReadLength(text string) (metres float64, err error) {
	metres, err = length.Parse(text, p.Unit())
	switch {
	case err != nil:
		return 0, err
	case !(metres > 0):
		return 0, errors.New("a check measure is longer than nothing")
	case metres > longestRead:
		return 0, fmt.Errorf("%s is longer than any tape: look at the unit", p.Style().Format(metres))
	}
	return metres, nil
}

// KeepReading adds a reading to its floor; its length is read from its text. A
// reading of the same distance stays: two of them are averaged, and the worse of
// two that disagree is named by the verdict. The ends must be two different marks
// of w, the work of that floor over all scenes, or its pivots. The labels of the
// floor are kept for good first, so that the reading never comes to speak of other
// marks.
func (p *Production) KeepReading(w *FloorWork, r Reading) error {
	metres, err := p.ReadLength(r.Text)
	if err != nil {
		return err
	}
	for _, end := range []*string{&r.From, &r.To} {
		if *end, err = w.PlaceNamed(*end); err != nil {
			return err
		}
	}
	if r.From == r.To {
		return fmt.Errorf("a check measure goes from one place to another, not from %s to itself", r.From)
	}
	r.Floor, r.Metres = w.Floor.ID, metres
	p.FreezeLabels(r.Floor, r.On)
	p.Readings = append(slices.Clip(p.Readings), r)
	return nil
}

// CorrectReading replaces what was read by another text.
func (p *Production) CorrectReading(id, text, by string, on time.Time) error {
	metres, err := p.ReadLength(text)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(p.Readings, func(r Reading) bool { return r.ID == id })
	if i < 0 {
		return errors.New("the reading is not there any more: somebody has deleted it")
	}
	r := &p.Readings[i]
	r.Metres, r.Text, r.By, r.On = metres, text, by, on
	return nil
}

// RemoveReading deletes a reading.
func (p *Production) RemoveReading(id string) {
	drop(&p.Readings, func(r Reading) bool { return r.ID == id })
}

// ShowReading returns what was read as it was typed while that still reads as the
// value, else in the production's unit.
func (p *Production) ShowReading(r Reading) string {
	if m, err := length.Parse(r.Text, p.Unit()); err == nil && math.Abs(m-r.Metres) < 1e-9 {
		return r.Text
	}
	return p.Style().Bare(r.Metres)
}

// PlaceNamed returns the end of a check measure that a person has typed, as it is
// written in a reading: the label of a mark, or a pivot by its number or name.
func (w *FloorWork) PlaceNamed(typed string) (string, error) {
	want := strings.Join(strings.Fields(typed), " ")
	for i, end := range []string{FirstPivot, SecondPivot} {
		if want != "" && i < len(w.Floor.Pivots) && (strings.EqualFold(want, end) || strings.EqualFold(want, w.Floor.Pivots[i].Name)) {
			return end, nil
		}
	}
	for _, m := range w.Marks {
		if strings.EqualFold(want, m.Label) {
			return m.Label, nil
		}
	}
	for _, g := range w.Gone {
		if strings.EqualFold(want, g.Label) {
			return "", fmt.Errorf("mark %s has been printed, but since then the plan has changed and nothing needs it any more: lift its tab, and measure to another", g.Label)
		}
	}
	if several := strings.FieldsFunc(want, func(r rune) bool { return strings.ContainsRune(" ,;/&+–-", r) }); len(several) > 1 && w.allThere(several) {
		return "", fmt.Errorf("%q names %d marks: one reading is from one mark to one other", typed, len(several))
	}
	return "", fmt.Errorf("there is no mark %q on %s: write a label from the sheet, or %s or %s", typed, w.Floor.Name, FirstPivot, SecondPivot)
}

// allThere tells whether all of the labels are marks of the floor.
func (w *FloorWork) allThere(labels []string) bool {
	for _, label := range labels {
		if !slices.ContainsFunc(w.Marks, func(m MeasuredMark) bool { return strings.EqualFold(label, m.Label) }) {
			return false
		}
	}
	return true
}

// Distance returns the distance in metres that is expected between two ends of a
// check measure; ok is false when one of them is not there.
func (w *FloorWork) Distance(from, to string) (metres float64, ok bool) {
	a, ok := w.place(from)
	b, also := w.place(to)
	return a.To(b), ok && also
}

func (w *FloorWork) place(name string) (at plane.Point, ok bool) {
	if pair, ok := Pivots(w.Floor); ok && name == FirstPivot {
		return pair.A, true
	} else if ok && name == SecondPivot {
		return pair.B, true
	}
	for _, m := range w.Marks {
		if m.Label == name {
			return m.At, true
		}
	}
	return plane.Point{}, false
}
