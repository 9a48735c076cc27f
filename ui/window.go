// Package ui is the window: a rail of places down one side, the chosen floor and
// scene on top, the place in the middle, the state of things along the bottom.
package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/tapeout/plane"
	"groundrow/ui/desk"
	"groundrow/ui/readings"
)

// Title is the name of the program as the window shows it.
const Title = "Groundrow"

// smallest is the size below which the window does not go.
var smallest = fyne.NewSize(1180, 640)

// Window is the one window of the program.
type Window struct {
	app    fyne.App
	win    fyne.Window
	desk   *desk.Desk
	made   map[desk.Name]desk.Place
	at     desk.Name
	rail   *rail
	head   *head
	status *status
	middle *fyne.Container
	whole  *fyne.Container // with a production open
	bare   fyne.CanvasObject

	readings fyne.Window // nil while it is closed
	reader   *readings.Page
}

// New builds the window; it shows nothing until Run.
func New(app fyne.App) *Window {
	w := &Window{app: app, made: map[desk.Name]desk.Place{}, at: desk.Week}
	openFilesLate()
	w.applyLook() // before the first word is measured: its font is remembered
	w.win = app.NewWindow(Title)
	w.win.SetPadded(false)
	w.win.SetMaster()
	w.desk = desk.New(w.win)
	w.desk.Changed = w.show
	w.desk.Went = w.goTo
	w.desk.Told = func(text string) { w.status.say(text) }
	w.desk.Pointed = func(at plane.Point, ok bool) { w.status.point(w.desk.View(), at, ok) }
	w.desk.ReadTable = w.askPlanTable
	w.desk.TakeTable = w.readPlanTable
	w.desk.EnterReadings = w.showReadings

	w.rail = newRail(w.goTo)
	w.head = newHead(w.desk)
	w.status = newStatus(w.desk)
	w.middle = container.NewStack()
	w.whole = container.NewBorder(nil, w.status.content, w.rail.content, nil,
		container.NewBorder(w.head.content, nil, nil, nil, w.middle))
	w.bare = w.welcome()
	w.win.SetMainMenu(w.menu())
	w.addShortcuts()
	w.win.SetOnDropped(w.dropped)
	w.win.SetCloseIntercept(w.quit)
	w.restoreSize()
	w.restorePlace()
	w.showBare()
	return w
}

// Run shows the window and returns when it is closed.
func (w *Window) Run() { w.win.ShowAndRun() }

// Desk is what the places share.
func (w *Window) Desk() *desk.Desk { return w.desk }

// Content is what the window shows, for pictures of it.
func (w *Window) Content() fyne.CanvasObject { return w.win.Content() }

func (w *Window) showBare() {
	w.win.SetTitle(Title)
	w.win.SetContent(container.NewStack(sized(smallest), w.bare))
}

// show sets everything that is visible from the view; the other places are set
// when they are gone to.
func (w *Window) show(v *desk.View) {
	w.win.SetTitle(v.P.Settings.Title + " — " + Title)
	w.rail.show(v, w.at)
	w.head.show(v)
	w.status.show(v)
	w.place(w.at).Show(v)
	if w.reader != nil {
		w.reader.Show(v)
	}
}

// goTo opens a place.
func (w *Window) goTo(name desk.Name) {
	v := w.desk.View()
	if v == nil {
		return
	}
	w.at = name
	w.middle.Objects = []fyne.CanvasObject{w.place(name).Content()}
	w.middle.Refresh()
	w.show(v)
}

// place returns the place, built when it is first needed.
func (w *Window) place(name desk.Name) desk.Place {
	p, ok := w.made[name]
	if !ok {
		p = build(name, w.desk)
		w.made[name] = p
	}
	return p
}

// here returns the place that is shown; nil without a production.
func (w *Window) here() desk.Place {
	if w.desk.View() == nil {
		return nil
	}
	return w.made[w.at]
}

// sized is nothing of a certain size: it keeps the window from being made
// smaller.
func sized(s fyne.Size) fyne.CanvasObject {
	return container.NewGridWrap(s, widget.NewLabel(""))
}
