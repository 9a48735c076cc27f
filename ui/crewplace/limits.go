package crewplace

import (
	"fmt"

	"fyne.io/fyne/v2/theme"

	"groundrow/prep"
	"groundrow/ui/poster"
)

// limits is what makes the end of work what it is, and what would bring it forward.
type limits struct {
	end      string
	late     bool
	troubles []taskLine
	chain    []taskLine
	shorter  []string
}

// taskLine is a sentence about a task.
type taskLine struct{ task, text string }

func limitsOf(p *prep.Production, plan prep.CrewPlan, shorter []prep.Shorter) limits {
	l := limits{end: spare(plan), late: plan.Spare < 0 && !plan.Rehearsal.IsZero()}
	for _, pr := range plan.Problems(p) {
		l.troubles = append(l.troubles, taskLine{pr.ID, pr.Sentence()})
	}
	for _, link := range plan.Limits {
		l.chain = append(l.chain, taskLine{link.Task, link.Sentence(p)})
	}
	for _, s := range shorter {
		l.shorter = append(l.shorter, fmt.Sprintf("%s: ends %s, %s sooner by the clock.", s.Name, shownMoment(s.End), worked(s.Gain)))
	}
	return l
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
	s.column(6+wide+gap, wide, "What would shorten it", shorter, "Neither more people nor longer hours would.", poster.NoSign)
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
		h := s.Para(at, y, wide-(at-x), 2, l.text, small)
		if l.task != "" {
			s.Zone(x-3, y-1, wide+3, h+2, l.text, func() { s.pick(l.task) })
		}
		y += h + 3
	}
}
