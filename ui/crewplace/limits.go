package crewplace

import (
	"fmt"

	"fyne.io/fyne/v2/theme"

	"groundrow/prep"
	"groundrow/ui/fields"
	"groundrow/ui/poster"
)

// limits is what makes the end of work what it is, and what would bring it forward.
type limits struct {
	end      string
	kind     fields.Kind
	troubles []taskLine
	chain    []taskLine
	shorter  []string
}

// taskLine is a sentence about a task.
type taskLine struct{ task, text string }

func limitsOf(p *prep.Production, plan prep.CrewPlan, shorter []prep.Shorter) limits {
	l := limits{}
	for _, pr := range plan.Problems(p) {
		l.troubles = append(l.troubles, taskLine{pr.ID, pr.Sentence()})
	}
	for _, link := range plan.Limits {
		l.chain = append(l.chain, taskLine{link.Task, link.Sentence(p)})
	}
	for _, s := range shorter {
		l.shorter = append(l.shorter, fmt.Sprintf("%s: ends %s, %s sooner by the clock.", s.Name, shownMoment(s.End), worked(s.Gain)))
	}
	l.end, l.kind = outcome(p, plan, len(l.troubles))
	return l
}

// outcome says when all work ends, how that sits with the first rehearsal, and how good that is.
func outcome(p *prep.Production, plan prep.CrewPlan, troubles int) (string, fields.Kind) {
	end := "All work ends " + shownMoment(plan.End)
	switch {
	case len(p.Tasks) == 0:
		return "", fields.Note
	case plan.End.IsZero():
		return "Every task is done.", fields.Good
	case plan.Rehearsal.IsZero():
		return end + ". No first rehearsal is set.", fields.Note
	case plan.Spare < 0:
		return end + ": " + worked(-plan.Spare) + " of work too late for the first rehearsal.", fields.Danger
	}
	end += ", with " + worked(plan.Spare) + " of work to spare before the first rehearsal"
	switch troubles {
	case 0:
		return end + ".", fields.Good
	case 1:
		return end + "; but one thing cannot be as it is.", fields.Warning
	default:
		return end + "; but " + itoa(troubles) + " things cannot be as they are.", fields.Warning
	}
}

const whereRates = "How fast this team works, its breaks and the hours of the room are set under File, Production settings."

// limitsSketch draws the limits below the board, in three columns.
type limitsSketch struct {
	*poster.Pen
	l    limits
	pick func(task string)
}

func (s *limitsSketch) draw() {
	gap := float32(18)
	wide := (s.Width() - 6 - 2*gap) / 3
	s.column(6, wide, "What limits the end", s.l.chain, "Nothing: no work is left.", poster.NoSign)
	var shorter []taskLine
	for _, text := range s.l.shorter {
		shorter = append(shorter, taskLine{text: text})
	}
	s.column(6+wide+gap, wide, "What would shorten it", shorter, "Nothing that is known here would.", poster.NoSign)
	s.column(6+2*(wide+gap), wide, "What cannot be as it is", s.l.troubles, "Nothing: every task has its people and its time.", poster.Triangle)
}

func (s *limitsSketch) column(x, wide float32, title string, lines []taskLine, none string, sign poster.Sign) {
	s.Text(x, 2, wide, title, strong)
	y := 6 + strong.Line()
	if len(lines) == 0 {
		s.Para(x, y, wide, 3, none, quiet)
		return
	}
	for i, l := range lines {
		if left := len(lines) - i; y+2*small.Line() > s.Height() && left > 1 {
			s.Text(x, y, wide, fmt.Sprintf("and %d more", left), quiet)
			return
		}
		at := x
		if sign != poster.NoSign {
			s.Shape(sign, x+6, y+small.Line()/2, 10, theme.ColorNameError)
			at += 17
		}
		h := s.Para(at, y, wide-(at-x), 4, l.text, small)
		if l.task != "" {
			s.Zone(x-3, y-1, wide+3, h+2, l.text, func() { s.pick(l.task) })
		}
		y += h + 3
	}
}
