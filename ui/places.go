package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/crewplace"
	"groundrow/ui/desk"
	"groundrow/ui/floorsplace"
	"groundrow/ui/marksplace"
	"groundrow/ui/paperplace"
	"groundrow/ui/planplace"
	"groundrow/ui/standinsplace"
	"groundrow/ui/suppliesplace"
	"groundrow/ui/tapeplace"
	"groundrow/ui/transferplace"
	"groundrow/ui/weekplace"
)

// build makes the place of a name.
func build(name desk.Name, d *desk.Desk) desk.Place {
	switch name {
	case desk.Week:
		return weekplace.New(d)
	case desk.Plan:
		return planplace.New(d)
	case desk.Floors:
		return floorsplace.New(d)
	case desk.Marks:
		return marksplace.New(d)
	case desk.Tape:
		return tapeplace.New(d)
	case desk.Supplies:
		return suppliesplace.New(d)
	case desk.Crew:
		return crewplace.New(d)
	case desk.StandIns:
		return standinsplace.New(d)
	case desk.Transfer:
		return transferplace.New(d)
	case desk.Paper:
		return paperplace.New(d)
	}
	return blank{name}
}

type blank struct{ name desk.Name }

func (b blank) Name() desk.Name            { return b.name }
func (b blank) Content() fyne.CanvasObject { return widget.NewLabel(string(b.name)) }
func (b blank) Show(*desk.View)            {}
