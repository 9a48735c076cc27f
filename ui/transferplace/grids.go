package transferplace

import (
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

func (p *place) buildGrids() {
	p.going = grid.New(goingColumns())
	p.going.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Element, IDs: ids}) }
	p.going.OnActivate = func(id string) { p.desk.Go(desk.Floors, desk.Select(desk.Element, id)) }
	p.going.SetEmpty("Neither floor lays anything in this scene.", "Go to the floors", func() { p.desk.Go(desk.Floors, desk.Selection{}) })
	p.going.SetTools(widget.NewButton("Note about this", p.Add))

	p.detail = grid.New(detailColumns())
	p.detail.ShowTools(false)
	p.detail.SetEmpty("Select an element to see all its marks on both floors.", "", nil)

	p.buildNotes()

	p.missing = grid.New(missingColumns())
	p.missing.OnActivate = p.mend
	p.missing.SetEmpty("Nothing would be missing if it were handed over today.", "", nil)
	p.missing.SetTools(widget.NewButton("Go there", func() {
		if ids := p.missing.Selected(); len(ids) > 0 {
			p.mend(ids[0])
		}
	}))
	p.bring = grid.New(bringColumns())
	p.bring.ShowTools(false)
	p.bring.SetEmpty("No tape is laid on the next floor.", "", nil)
}

func (p *place) buildNotes() {
	g := grid.New(noteColumns())
	g.SetToolWords("Add a note", "Delete")
	g.OnSelect = func(ids []string) { p.desk.Select(desk.Selection{Kind: desk.Note, IDs: ids}) }
	g.OnAdd, g.OnDelete = func() { p.addNote("") }, p.removeNotes
	g.OnEdit = func(id string, column int, text string) error {
		label := map[int]string{
			ntAbout: "Say what a note is about", ntText: "Write a note", ntOwner: "Say who answers a note",
			ntState: "Set a note to " + text, ntOn: "Date a note",
		}[column]
		return p.desk.TryEdit(label, func(pr *prep.Production) error { return editNote(pr, id, column, text) })
	}
	g.SetEmpty("No notes yet: what the next team must know, and what is still to be asked.", "Write the first note", func() { p.addNote("") })
	p.notes = g
}

func (p *place) goingTab() fyne.CanvasObject {
	split := container.NewHSplit(p.going, container.NewBorder(p.about, nil, nil, nil, p.detail))
	split.SetOffset(0.7)
	return split
}

func (p *place) frontTab() fyne.CanvasObject {
	title := func(text string) fyne.CanvasObject {
		return widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	}
	right := container.NewBorder(container.NewVBox(title("Dance line there"), p.words), nil, nil, nil, p.bring)
	split := container.NewHSplit(p.missing, right)
	split.SetOffset(0.55)
	return split
}

// mend goes to where a problem can be mended. Floors and tape are looked at on the
// floor that it is handed on to.
func (p *place) mend(id string) {
	from, to := p.view.Work(p.view.Floor), p.view.Work(p.to)
	i, err := strconv.Atoi(id)
	if err != nil || from == nil || to == nil {
		return
	}
	t := prep.TransferBetween(p.view.P, from, to)
	if i >= len(t.Problems) {
		return
	}
	name, s := cure(t.Problems[i])
	switch name {
	case desk.Transfer:
		p.tabs.SelectIndex(tabNotes)
	case desk.Floors, desk.Tape:
		p.desk.ChooseFloor(p.to)
	}
	p.desk.Go(name, s)
}

// Add writes a note about the element that is selected.
func (p *place) Add() {
	if p.view != nil {
		p.addNote(elementOf(p.view))
	}
}

func (p *place) addNote(about plan.ElementID) {
	id := uuid.NewString()
	if !p.desk.Edit("Add a note", func(pr *prep.Production) error {
		pr.Notes = append(pr.Notes, prep.Note{ID: id, Element: about, Open: true, On: time.Now()})
		return nil
	}) {
		return
	}
	p.tabs.SelectIndex(tabNotes)
	p.desk.Select(desk.Select(desk.Note, id))
	p.notes.Edit(id, ntText)
}

// Remove deletes the selected notes.
func (p *place) Remove() {
	if p.tabs.SelectedIndex() == tabNotes {
		p.removeNotes(p.notes.Selected())
		return
	}
	p.desk.Told("What goes follows from the floors: leave an element out there.")
}

func (p *place) removeNotes(ids []string) {
	if len(ids) == 0 {
		return
	}
	p.desk.Edit("Delete "+prep.Counted(len(ids), "note"), func(pr *prep.Production) error {
		for _, id := range ids {
			pr.RemoveNote(id)
		}
		return nil
	})
}
