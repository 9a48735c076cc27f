package crewplace

import (
	"fmt"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/fields"
)

// everybody is how the calls of the whole team are offered.
const everybody = "the whole team"

// askCalendar asks whose calls are saved, in a menu under the button, and then where.
func (p *place) askCalendar() {
	v := p.desk.View()
	if v == nil {
		return
	}
	if len(p.plan.Calls()) == 0 {
		fields.Tell(p.desk.Window(), "No calls to save", "Nobody is called yet: add people and tasks first.")
		return
	}
	menu := fyne.NewMenu("", p.calendarItem(v.P, everybody, ""))
	for _, x := range v.P.People {
		menu.Items = append(menu.Items, p.calendarItem(v.P, x.Name, x.ID))
	}
	button := p.days.save
	widget.ShowPopUpMenuAtRelativePosition(menu, p.desk.Window().Canvas(), fyne.NewPos(0, button.Size().Height), button)
}

func (p *place) calendarItem(pr *prep.Production, name, person string) *fyne.MenuItem {
	file := "Calls"
	if person != "" {
		file += " of " + name
	}
	return fyne.NewMenuItem("The calls of "+name, func() { p.chooseCalendar(pr, person, fileName(file)+".ics") })
}

// chooseCalendar asks for a file and writes the calls of one person, or of everybody, into it.
func (p *place) chooseCalendar(pr *prep.Production, person, name string) {
	plan, stamp := p.plan, p.now()
	dlg := dialog.NewFileSave(func(w fyne.URIWriteCloser, err error) {
		if err != nil || w == nil {
			p.failed(err)
			return
		}
		if err := saveCalendar(w, pr, plan, person, stamp); err != nil {
			p.failed(err)
			return
		}
		p.desk.Told("Calls saved in " + w.URI().Name())
	}, p.desk.Window())
	dlg.SetFileName(name)
	dlg.SetFilter(storage.NewExtensionFileFilter([]string{".ics"}))
	dlg.Resize(fyne.NewSize(900, 600))
	dlg.Show()
}

func (p *place) failed(err error) {
	if err != nil {
		p.desk.Fail(fmt.Errorf("the calls could not be saved: %w", err))
	}
}

// saveCalendar writes the calls and closes the file; a file that cannot be closed has not been saved.
func saveCalendar(w fyne.URIWriteCloser, p *prep.Production, plan prep.CrewPlan, person string, stamp time.Time) error {
	err := prep.WriteCalendar(w, p, plan, person, stamp)
	if closing := w.Close(); err == nil {
		err = closing
	}
	return err
}

// fileName keeps of a name what every file system takes.
func fileName(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return -1
		}
		return r
	}, name)
}
