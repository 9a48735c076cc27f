package ui

import (
	"errors"
	"os"
	"os/user"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"groundrow/ui/desk"
	"groundrow/ui/fields"
	looks "groundrow/ui/theme"
)

// Keys of what this machine remembers: settings only, never data.
const (
	keyWho    = "who"
	keyLook   = "look"
	keyRecent = "recent"
	keyWide   = "window wide"
	keyHigh   = "window high"
	keyAt     = "place"
)

// mostRecent bounds the list of files opened lately.
const mostRecent = 8

// who is the person at this machine, as the journal names them.
func (w *Window) who() string {
	if who := w.app.Preferences().String(keyWho); who != "" {
		return who
	}
	if u, err := user.Current(); err == nil && u.Name != "" {
		return u.Name
	}
	return "stage management"
}

// recents are the production files opened lately that are still there.
func (w *Window) recents() []string {
	return slices.DeleteFunc(w.app.Preferences().StringList(keyRecent), func(path string) bool {
		_, err := os.Stat(path)
		return err != nil
	})
}

func (w *Window) remember(path string) {
	list := slices.DeleteFunc(w.recents(), func(p string) bool { return p == path })
	list = append([]string{path}, list...)
	w.app.Preferences().SetStringList(keyRecent, list[:min(len(list), mostRecent)])
	w.win.SetMainMenu(w.menu())
}

func (w *Window) recentItems() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, path := range w.recents() {
		items = append(items, fyne.NewMenuItem(path, func() { w.Open(path) }))
	}
	if len(items) == 0 {
		none := fyne.NewMenuItem("nothing opened yet", nil)
		none.Disabled = true
		return []*fyne.MenuItem{none}
	}
	return items
}

func (w *Window) restoreSize() {
	prefs := w.app.Preferences()
	wide := prefs.FloatWithFallback(keyWide, 1366)
	high := prefs.FloatWithFallback(keyHigh, 768)
	w.win.Resize(fyne.NewSize(float32(wide), float32(high)).Max(smallest))
}

// restorePlace opens the window at the place where it was left.
func (w *Window) restorePlace() {
	at := desk.Name(w.app.Preferences().String(keyAt))
	if slices.Contains(desk.Names, at) {
		w.at = at
	}
}

func (w *Window) keepState() {
	size := w.win.Canvas().Size()
	w.app.Preferences().SetFloat(keyWide, float64(size.Width))
	w.app.Preferences().SetFloat(keyHigh, float64(size.Height))
	w.app.Preferences().SetString(keyAt, string(w.at))
}

func (w *Window) chooseLook(look looks.Choice) {
	w.app.Preferences().SetString(keyLook, string(look))
	w.applyLook()
	if v := w.desk.View(); v != nil {
		w.show(v)
	}
}

func (w *Window) applyLook() {
	choice := looks.Choice(w.app.Preferences().String(keyLook))
	w.app.Settings().SetTheme(looks.New(choice))
}

// askMachine asks who is working, once for this machine.
func (w *Window) askMachine() {
	name := fields.NewText()
	name.Set(w.who())
	name.OnCommit = func(text string) error {
		if text = strings.TrimSpace(text); text == "" {
			return errors.New("type the name by which the others know you")
		}
		w.app.Preferences().SetString(keyWho, text)
		return nil
	}
	form := fields.NewForm()
	form.Add("who", "Who is working", name)
	said := widget.NewLabel("The history of every production names you; takes effect with the next file opened.")
	said.Wrapping = fyne.TextWrapWord
	form.AddWide("said", said)
	fields.Ask(w.win, "This machine", form, "Keep", func() error { return nil })
}
