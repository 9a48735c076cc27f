package prep

import (
	"fmt"
	"math"
	"strings"
)

// leastTurn is the turn in degrees below which none is said: a quarter of an inch
// on a piece of ten feet.
const leastTurn = 0.1

// Sentence says what was found of a piece, in plain words.
func (b Back) Sentence(p *Production) string {
	name := "The tape-out"
	if e := p.Plan.Element(b.Element); e != nil {
		name = e.Name
	}
	style := p.Style()
	switch b.Finding {
	case Stayed:
		return fmt.Sprintf("%s is where it should be, to within %s.", name, style.FormatSmall(b.Allowed))
	case HasMoved:
		if b.Element == "" {
			return name + " has been shifted or turned as a whole: its datum or its pivots are not where the sheets have them."
		}
		return fmt.Sprintf("%s has moved as one piece: %s.", name, p.MoveWords(b.Move))
	case Stretched:
		way := "large"
		if b.Stretch < 0 {
			way = "small"
		}
		return fmt.Sprintf("%s has not moved by itself: its measures are %.1f %% too %s all over. The tape-out is stretched, or one of the two tapes is.", name, 100*math.Abs(b.Stretch), way)
	case WrongPoint:
		cause := ""
		if b.Wrong != "" {
			for _, f := range b.Points {
				if f.Label == b.Wrong && f.Cause != "" {
					cause = ", most likely " + f.Cause
				}
			}
		}
		rest := "the others are where they should be"
		if b.Takeable() {
			rest = "the others have moved as one piece: " + p.MoveWords(b.Move)
		}
		return fmt.Sprintf("Mark %s does not belong%s; %s.", b.Wrong, cause, rest)
	}
	return fmt.Sprintf("The marks measured do not make %s: no shift, turn or stretch carries one onto the other.", strings.ToLower(name[:1])+name[1:])
}

// Next says what to do about it.
func (b Back) Next() string {
	switch b.Finding {
	case Stayed:
		return "Nothing is to be done."
	case HasMoved:
		if b.Element == "" {
			return "Find the datum and the pivots again before anything else is measured from them."
		}
		return "Take the new place into the plan, or note it for the transfer and let somebody decide."
	case Stretched:
		return "Measure one long distance with a steel tape; do not take this into the plan."
	case WrongPoint:
		return fmt.Sprintf("Measure %s again before anything is taken into the plan.", b.Wrong)
	}
	return "Measure all of them again, and one more."
}

// MoveWords says how a piece has gone: by depth and side of the plan, and its
// turn.
func (p *Production) MoveWords(m Move) string {
	var out []string
	if way := offset(p.Style(), m.Over, m.Up); math.Hypot(m.Over, m.Up) >= p.Style().Grain()/2 {
		out = append(out, way)
	}
	if math.Abs(m.Turn) >= leastTurn {
		way := "counter-clockwise"
		if m.Turn < 0 {
			way = "clockwise"
		}
		out = append(out, fmt.Sprintf("turned %.1f° %s", math.Abs(m.Turn), way))
	}
	if len(out) == 0 {
		return "by nothing that can be measured"
	}
	return strings.Join(out, ", ")
}

// MoveSentence says a move for a team that was not there: where, how far, why, by
// whom and when, and whether the plan has it.
func (p *Production) MoveSentence(m Move) string {
	s := "Moved in rehearsal"
	if m.Scene != "" {
		s += " in " + p.Plan.SceneName(m.Scene)
	}
	s += ": " + p.MoveWords(m)
	var why []string
	for _, part := range []string{m.Reason, m.By} {
		if part != "" {
			why = append(why, part)
		}
	}
	if !m.On.IsZero() {
		why = append(why, m.On.Format("2 January 2006"))
	}
	if len(why) > 0 {
		s += " (" + strings.Join(why, ", ") + ")"
	}
	if m.Taken {
		return s + ". The plan has it in the new place."
	}
	return s + ". The plan still has it in the old place."
}
