package ui

import (
	"errors"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/ui/fields"

	"github.com/google/uuid"
)

// daysToPrepare is how long before the first rehearsal prep week starts, until
// somebody says otherwise.
const daysToPrepare = 6

// askNew asks for the few things that a production cannot do without.
func (w *Window) askNew() {
	var name string
	unit := length.Units[0]
	first := time.Now().AddDate(0, 0, daysToPrepare)

	title := fields.NewText()
	title.SetHint("the name of the show")
	title.OnCommit = func(text string) error {
		name = strings.TrimSpace(text)
		return nil
	}
	units := fields.NewChoice(unitNames()...)
	units.Set(unit.Name())
	units.OnCommit = func(text string) error {
		unit = length.Units[slices.Index(unitNames(), text)]
		return nil
	}
	day := fields.NewDate(time.Now)
	day.Set(first)
	day.OnCommit = func(at time.Time) error {
		first = at
		return nil
	}

	form := fields.NewForm()
	form.Add("title", "Title", title)
	form.Add("unit", "Lengths in", units)
	form.AddBeside("spellings", "", widget.NewLabel("what a bare number means; the other spellings are always understood"))
	form.Add("first", "First rehearsal", day)
	fields.Ask(w.win, "New production", form, "Choose where to keep it…", func() error {
		if name == "" {
			return errors.New("the production needs a title")
		}
		p := prep.New(name, unit, first, uuid.NewString)
		w.askWhere(name+extension, func(path string) { w.create(trimmed(path), p) })
		return nil
	})
}

// trimmed is a path without spaces round the file's name: the Space that pressed the
// button is also typed into the name that the file dialog asks for.
func trimmed(path string) string {
	folder, name := filepath.Split(path)
	return folder + strings.TrimSpace(name)
}

func unitNames() []string {
	var names []string
	for _, u := range length.Units {
		names = append(names, u.Name())
	}
	return names
}
