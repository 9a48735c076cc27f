package transferplace

import (
	"errors"
	"slices"
	"time"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/grid"
)

// Columns of the notes.
const (
	ntAbout = iota
	ntText
	ntOwner
	ntState
	ntOn
)

// Words of the notes.
const (
	wholeFloor = "the whole floor"
	stateOpen  = "open"
	stateDone  = "answered"
)

func noteColumns() []grid.Column {
	return []grid.Column{
		{Title: "About", Width: 170, Choices: []string{wholeFloor}},
		{Title: "What the next team must know, or what is still to be asked", Width: 360, Grow: true},
		{Title: "Owner", Width: 150, Hint: "who answers it"},
		{Title: "State", Width: 96, Choices: []string{stateOpen, stateDone}},
		{Title: "Date", Width: 140, Hint: "30 Nov"},
	}
}

// abouts are the things that a note can be about.
func abouts(p *prep.Production) []string {
	out := []string{wholeFloor}
	for _, e := range p.Plan.Elements {
		out = append(out, e.Name)
	}
	return out
}

func aboutName(p *prep.Production, id plan.ElementID) string {
	if e := p.Plan.Element(id); e != nil {
		return e.Name
	}
	return wholeFloor
}

// noteRows lists the notes, open ones first.
func noteRows(p *prep.Production) []grid.Row {
	var rows []grid.Row
	for _, open := range []bool{true, false} {
		for _, n := range p.Notes {
			if n.Open != open {
				continue
			}
			state := stateDone
			if open {
				state = stateOpen
			}
			row := grid.Row{ID: n.ID, Dim: !open, Cells: []string{
				aboutName(p, n.Element), n.Text, n.Owner, state, fields.FormatDay(n.On),
			}}
			if open && n.Owner == "" {
				row.CellProblems = map[int]string{ntOwner: "nobody has been asked to answer this"}
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// editNote takes what was typed into one cell.
func editNote(p *prep.Production, id string, column int, text string) error {
	i := slices.IndexFunc(p.Notes, func(n prep.Note) bool { return n.ID == id })
	if i < 0 {
		return errors.New("the note is not there any more: somebody has deleted it")
	}
	n := &p.Notes[i]
	switch column {
	case ntAbout:
		return aboutWhat(p, n, text)
	case ntText:
		n.Text = text
	case ntOwner:
		n.Owner = text
	case ntState:
		n.Open = text == stateOpen
	case ntOn:
		on, err := fields.ParseDay(text, time.Now())
		if err != nil {
			return err
		}
		n.On = on
	}
	return nil
}

// aboutWhat sets what a note is about. Of elements with one name the note keeps
// the one that it has.
func aboutWhat(p *prep.Production, n *prep.Note, text string) error {
	if text == wholeFloor || text == "" {
		n.Element = ""
		return nil
	}
	if aboutName(p, n.Element) == text {
		return nil
	}
	for _, e := range p.Plan.Elements {
		if e.Name == text {
			n.Element = e.ID
			return nil
		}
	}
	return errors.New("no element has the name " + text + "; choose one from the list, or “" + wholeFloor + "”")
}

// elementOf returns the element that is selected, or that a selected note is
// about; empty for neither.
func elementOf(v *desk.View) plan.ElementID {
	if id, ok := v.Selected.Of(desk.Element); ok {
		return plan.ElementID(id)
	}
	if id, ok := v.Selected.Of(desk.Note); ok {
		for _, n := range v.P.Notes {
			if n.ID == id {
				return n.Element
			}
		}
	}
	if label, ok := v.Selected.Of(desk.Mark); ok {
		if w := v.Work(v.Floor); w != nil {
			for _, m := range w.Marks {
				if m.Label == label && len(m.Elements) > 0 {
					return m.Elements[0]
				}
			}
		}
	}
	return ""
}

// noteInFull is the text of the selected note, for which its row may be too
// narrow.
func noteInFull(v *desk.View) string {
	id, ok := v.Selected.Of(desk.Note)
	if !ok {
		return ""
	}
	for _, n := range v.P.Notes {
		if n.ID == id && n.Text != "" {
			return aboutName(v.P, n.Element) + ". " + noteWords(n)
		}
	}
	return ""
}
