package marks

import (
	"fmt"
	"slices"

	"groundrow/tapeout/floor"
)

// Progress is how far the crew has got with one mark, and what has become of it
// since: each with who and when, and open as long as nobody has said so. A mark is
// on the floor while Placed is not open.
type Progress struct {
	Floor   floor.ID
	Label   string
	Placed  floor.Decision // last put down: placed, or taped again
	Checked floor.Decision
	Worn    floor.Decision // seen to be worn, and not taped again yet
	Lifted  floor.Decision // taken up, and not placed again yet
}

// Step is what happens to a mark on the floor.
type Step string

// Steps, as they are said.
const (
	Placed  Step = "placed"
	Checked Step = "checked"
	Worn    Step = "worn"
	Retaped Step = "taped again"
	Lifted  Step = "lifted"
)

// Steps in the order of a mark's life.
var Steps = []Step{Placed, Checked, Worn, Retaped, Lifted}

// StepError tells why a step cannot be taken with a mark.
type StepError struct {
	Label string
	Step  Step
}

// Error says what is wrong and what to do.
func (e *StepError) Error() string {
	switch e.Step {
	case Retaped:
		return fmt.Sprintf("%s is not worn, so that there is nothing to tape again", e.Label)
	case Worn, Lifted:
		return fmt.Sprintf("%s is not on the floor: say first that it has been placed", e.Label)
	}
	return fmt.Sprintf("%q is no step: choose one of %q", string(e.Step), Steps)
}

// Take records a step. Whoever checks a mark finds it placed; a mark that is
// placed again has been lifted no more; one that is taped again has to be checked
// again, since the old tab no longer holds it; one that is lifted is neither
// placed, checked nor worn. A step that was taken before keeps who took it first.
// The error is a *StepError, and then nothing has changed.
func (g *Progress) Take(s Step, d floor.Decision) error {
	down := !g.Placed.Open()
	if (s == Worn || s == Lifted) && !down || s == Retaped && g.Worn.Open() || !slices.Contains(Steps, s) {
		return &StepError{g.Label, s}
	}
	switch s {
	case Placed, Checked:
		if !down {
			g.Placed, g.Lifted = d, floor.Decision{}
		}
		if s == Checked && g.Checked.Open() {
			g.Checked = d
		}
	case Worn:
		if g.Worn.Open() {
			g.Worn = d
		}
	case Retaped:
		g.Placed, g.Checked, g.Worn = d, floor.Decision{}, floor.Decision{}
	case Lifted:
		g.Placed, g.Checked, g.Worn, g.Lifted = floor.Decision{}, floor.Decision{}, floor.Decision{}, d
	}
	return nil
}

// TakeBack clears what was recorded by mistake. A mark that was never placed was
// not checked and is not worn either.
func (g *Progress) TakeBack(s Step) {
	switch s {
	case Placed:
		g.Placed, g.Checked, g.Worn = floor.Decision{}, floor.Decision{}, floor.Decision{}
	case Checked:
		g.Checked = floor.Decision{}
	case Worn:
		g.Worn = floor.Decision{}
	case Lifted:
		g.Lifted = floor.Decision{}
	}
}

// Blank tells whether nothing is known of the mark.
func (g *Progress) Blank() bool {
	return g.Placed.Open() && g.Checked.Open() && g.Worn.Open() && g.Lifted.Open()
}
