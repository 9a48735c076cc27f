package drawingin

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/fields"
)

// question is one of the four that are asked of every drawing.
type question int

// The questions, in the order asked.
const (
	whichPage question = iota
	whichLines
	whatScale
	whereDatum
)

var questionWords = [4]string{"Page", "Lines", "Scale", "Datum"}

// questions are the buttons on top: what is asked, what is answered so far, and
// by the sign before it whether that is settled.
type questions struct {
	buttons [4]*fields.Button
	open    question
	content fyne.CanvasObject
}

func newQuestions(asked func(question)) *questions {
	q := &questions{}
	row := container.NewGridWithColumns(4)
	for i := range q.buttons {
		q.buttons[i] = fields.NewButton(questionWords[i], func() { asked(question(i)) })
		q.buttons[i].Alignment = widget.ButtonAlignLeading
		row.Add(q.buttons[i])
	}
	q.content = row
	return q
}

func (q *questions) show(open question, answers [4]answer) {
	q.open = open
	for i, b := range q.buttons {
		b.Text = questionWords[i] + ": " + answers[i].words
		b.Icon = theme.QuestionIcon()
		if answers[i].settled {
			b.Icon = theme.ConfirmIcon()
		}
		b.Importance = widget.MediumImportance
		if question(i) == open {
			b.Importance = widget.HighImportance
		}
		b.Refresh()
	}
}
