package marksplace

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/survey"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
)

// asAdvised leaves the method to what is recommended.
const asAdvised = "as advised"

// methodWords are the methods as the table has them.
var methodWords = map[survey.Method]string{
	survey.UpAndOver: "up and over", survey.TwoTapes: "two tapes", survey.WithGuideLines: "guide lines",
}

// methodChoices are what can be chosen for a mark or for a floor.
var methodChoices = func() []string {
	out := []string{asAdvised}
	for _, m := range survey.Methods {
		out = append(out, methodWords[m])
	}
	return out
}()

// methodOf is the method that the words mean; empty for as recommended.
func methodOf(words string) survey.Method {
	for m, w := range methodWords {
		if w == words {
			return m
		}
	}
	return ""
}

// methodCell is the method of a mark, with a sign where somebody has chosen it.
func methodCell(m prep.MeasuredMark) string {
	switch {
	case m.Chosen:
		return methodWords[m.Method] + " ×"
	case m.OutOfReach():
		return "none"
	}
	return methodWords[m.Method]
}

// methodPanel is under the table of marks: what each method makes of the mark that is
// selected, and how the marks of this floor are placed.
type methodPanel struct {
	p       *place
	words   *widget.Label
	whole   *fields.Choice
	content fyne.CanvasObject
}

func newMethodPanel(p *place) *methodPanel {
	t := &methodPanel{p: p, words: wrapped(""), whole: fields.NewChoice(methodChoices...)}
	t.whole.OnCommit = func(words string) error {
		id := p.view.Floor
		return p.desk.TryEdit("Choose the method for the floor", func(pr *prep.Production) error {
			pr.ChooseMethodForFloor(id, methodOf(words), uuid.NewString())
			return nil
		})
	}
	t.content = container.NewBorder(nil, nil, nil, container.NewVBox(widget.NewLabel("Marks of this floor"), t.whole), t.words)
	return t
}

func (t *methodPanel) show(v *desk.View, w *prep.FloorWork) {
	chosen := asAdvised
	if whole := v.P.MethodForFloor(v.Floor); whole != "" {
		chosen = methodWords[whole]
	}
	t.whole.Set(chosen)
	t.words.SetText(markWords(v.P, w, marksOf(v.Selected, w)))
}

// markWords say what each method makes of the one mark that is selected; otherwise
// how many marks are placed how.
func markWords(p *prep.Production, w *prep.FloorWork, labels []string) string {
	if len(labels) == 1 {
		for _, m := range w.Marks {
			if m.Label == labels[0] {
				return oneMark(p, m)
			}
		}
	}
	count := map[survey.Method]int{}
	chosen := 0
	for _, m := range w.Marks {
		count[m.Method]++
		if m.Chosen {
			chosen++
		}
	}
	var parts []string
	for _, m := range survey.Methods {
		if count[m] > 0 {
			parts = append(parts, fmt.Sprintf("%d by %s", count[m], m))
		}
	}
	text := prep.Listed(parts) + ". "
	if chosen > 0 {
		text += fmt.Sprintf("%s by hand (×). ", verb(chosen, "method is chosen", "methods are chosen"))
	}
	if p.FewHands() {
		text += "Fewer than four people place: weighted stands hold the zero ends of the tapes. "
	}
	return text + "Select one mark to see what each method makes of it; choose in its column to place it otherwise."
}

func oneMark(p *prep.Production, m prep.MeasuredMark) string {
	var parts []string
	for _, way := range m.Ways {
		name := string(way.Method)
		if way.Method == survey.TwoTapes && m.HasTapes {
			name += fmt.Sprintf(" from pivots %d and %d", m.Pair.A+1, m.Pair.B+1)
		}
		switch {
		case way.Usable:
			parts = append(parts, name+" "+p.ErrorInWords(way.Ellipse))
		default:
			parts = append(parts, name+" no: "+way.Why)
		}
	}
	text := fmt.Sprintf("%s, %s. 95 times in 100: %s. ", m.Label, m.What, strings.Join(parts, "; "))
	switch {
	case m.Advised == "":
		text += "No method reaches it."
	case m.Chosen && m.Advised != m.Method:
		text += fmt.Sprintf("Chosen by hand: %s; recommended: %s, %s.", m.Method, m.Advised, whyAdvised(p, m))
	case m.Chosen:
		text += "Chosen by hand, as recommended."
	default:
		text += fmt.Sprintf("Recommended: %s, %s.", m.Advised, whyAdvised(p, m))
	}
	return text
}

// whyAdvised says why a method is recommended: see survey.Advise.
func whyAdvised(p *prep.Production, m prep.MeasuredMark) string {
	allowed := p.Errors().Allowed
	if m.Way(m.Advised).Ellipse.Major <= allowed {
		return "the least work that keeps within " + p.Fine(allowed)
	}
	return "the surest, though nothing keeps within " + p.Fine(allowed)
}
