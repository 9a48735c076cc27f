package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"groundrow/ui/desk"
	looks "groundrow/ui/theme"
)

// zoomStep is how much one step of the menu enlarges.
const zoomStep = 1.25

func (w *Window) menu() *fyne.MainMenu {
	return fyne.NewMainMenu(w.fileMenu(), w.editMenu(), w.viewMenu(), w.placeMenu())
}

func (w *Window) fileMenu() *fyne.Menu {
	quit := fyne.NewMenuItem("Quit", w.quit)
	quit.IsQuit = true
	quit.Shortcut = ctrl(fyne.KeyQ)
	recent := fyne.NewMenuItem("Recent", nil)
	recent.ChildMenu = fyne.NewMenu("", w.recentItems()...)
	return fyne.NewMenu("File",
		keyed("New production…", ctrl(fyne.KeyN), w.askNew),
		keyed("Open…", ctrl(fyne.KeyO), w.askOpen),
		recent,
		fyne.NewMenuItem("Open the demo", w.openDemo),
		fyne.NewMenuItemSeparator(),
		keyed("Save a copy…", ctrlShift(fyne.KeyS), w.askCopy),
		fyne.NewMenuItem("Save for other programs…", w.askExport),
		keyed("Bring in a drawing…", ctrl(fyne.KeyI), func() { w.bringIn("") }),
		fyne.NewMenuItem("Read a plan from a table (CSV)…", w.askPlanTable),
		fyne.NewMenuItem("Keep this floor for next time…", w.keepFloor),
		fyne.NewMenuItem("Take a floor from another file…", w.takeFloor),
		fyne.NewMenuItem("History…", w.showHistory),
		fyne.NewMenuItemSeparator(),
		keyed("Print…", ctrl(fyne.KeyP), func() { w.goTo(desk.Paper) }),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem("Production settings…", w.askSettings),
		fyne.NewMenuItem("This machine…", w.askMachine),
		fyne.NewMenuItemSeparator(),
		quit,
	)
}

func (w *Window) editMenu() *fyne.Menu {
	// Undo and redo carry no shortcut here: the menu would take Ctrl+Z from an
	// entry that has the focus, and text has an undo of its own.
	return fyne.NewMenu("Edit",
		fyne.NewMenuItem("Undo        Ctrl+Z", w.desk.Undo),
		fyne.NewMenuItem("Redo        Ctrl+Y", w.desk.Redo),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem("Copy the selection", w.copySelection),
		keyed("Duplicate the selection", ctrl(fyne.KeyD), func() {
			if p, ok := w.here().(desk.Duplicator); ok && w.win.Canvas().Overlays().Top() == nil {
				p.Duplicate()
			}
		}),
		fyne.NewMenuItem("Delete the selection", func() {
			if p, ok := w.here().(desk.Remover); ok {
				p.Remove()
			}
		}),
		fyne.NewMenuItem("Add", func() {
			if p, ok := w.here().(desk.Adder); ok {
				p.Add()
			}
		}),
		keyed("Find…", ctrl(fyne.KeyF), func() {
			if p, ok := w.here().(desk.Finder); ok {
				p.Find()
			}
		}),
	)
}

func (w *Window) viewMenu() *fyne.Menu {
	zoom := func(by float64) func() {
		return func() {
			if p, ok := w.here().(desk.Zoomer); ok {
				p.Zoom(by)
			}
		}
	}
	fit := func() {
		if p, ok := w.here().(desk.Zoomer); ok {
			p.Fit()
		}
	}
	return fyne.NewMenu("View",
		keyed("Larger", ctrl(fyne.KeyEqual), zoom(zoomStep)),
		keyed("Smaller", ctrl(fyne.KeyMinus), zoom(1/zoomStep)),
		keyed("Whole floor", ctrl(fyne.Key0), fit),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem("Light", func() { w.chooseLook(looks.Light) }),
		fyne.NewMenuItem("Dark", func() { w.chooseLook(looks.Dark) }),
		fyne.NewMenuItem("As the system has it", func() { w.chooseLook(looks.System) }),
	)
}

var placeKeys = []fyne.KeyName{
	fyne.Key1, fyne.Key2, fyne.Key3, fyne.Key4, fyne.Key5, fyne.Key6, fyne.Key7, fyne.Key8, fyne.Key9,
}

func (w *Window) placeMenu() *fyne.Menu {
	var items []*fyne.MenuItem
	for i, name := range desk.Names {
		item := fyne.NewMenuItem(string(name), func() { w.goTo(name) })
		if i < len(placeKeys) {
			item.Shortcut = ctrl(placeKeys[i])
		}
		items = append(items, item)
	}
	items = append(items, fyne.NewMenuItemSeparator(), keyed("Enter readings…", ctrl(fyne.KeyR), w.showReadings))
	return fyne.NewMenu("Go to", items...)
}

func (w *Window) copySelection() {
	if p, ok := w.here().(desk.Copier); ok {
		if text := p.Copy(); text != "" {
			w.app.Clipboard().SetContent(text)
			w.desk.Told("Copied")
		}
	}
}

// addShortcuts gives the canvas what must not be taken from a focused entry.
func (w *Window) addShortcuts() {
	add := func(s fyne.Shortcut, do func()) {
		w.win.Canvas().AddShortcut(s, func(fyne.Shortcut) {
			if w.win.Canvas().Overlays().Top() == nil {
				do()
			}
		})
	}
	add(&fyne.ShortcutUndo{}, w.desk.Undo)
	add(&fyne.ShortcutRedo{}, w.desk.Redo)
	add(ctrl(fyne.KeyZ), w.desk.Undo)
	add(ctrl(fyne.KeyY), w.desk.Redo)
	add(ctrlShift(fyne.KeyZ), w.desk.Redo)
	add(&fyne.ShortcutCopy{}, w.copySelection)
}

func keyed(label string, s fyne.Shortcut, do func()) *fyne.MenuItem {
	item := fyne.NewMenuItem(label, do)
	item.Shortcut = s
	return item
}

func ctrl(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault}
}

func ctrlShift(key fyne.KeyName) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
}
