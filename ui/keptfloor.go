package ui

import "groundrow/ui/desk"

// keepsFloors is the place from which a floor is kept for next time, and into which
// one is taken from another file.
type keepsFloors interface {
	KeepFloor()
	TakeFloor()
}

func (w *Window) keepFloor() { w.withFloors(keepsFloors.KeepFloor) }
func (w *Window) takeFloor() { w.withFloors(keepsFloors.TakeFloor) }

// withFloors goes to the place of the floors and does something there.
func (w *Window) withFloors(do func(keepsFloors)) {
	if w.desk.View() == nil {
		w.desk.Told("Open a production first; its floors are kept and taken")
		return
	}
	w.goTo(desk.Floors)
	if p, ok := w.here().(keepsFloors); ok {
		do(p)
	}
}
