package desk

import (
	"context"
	"errors"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

var dialogSize = fyne.NewSize(560, 260)

// patience is how long work may take before the window says that it is under way.
const patience = 300 * time.Millisecond

// Run does long work off the UI goroutine and comes back with its error. Work
// that takes a while shows what it is doing and can be cancelled; work that was
// cancelled comes back quietly.
func (d *Desk) Run(doing string, work func(context.Context) error, done func(error)) {
	if d.still {
		d.kept = append(d.kept, func() { done(work(context.Background())) })
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	finished := make(chan error, 1)
	go func() { finished <- work(ctx) }()
	go func() {
		hide, err := d.await(doing, finished, cancel)
		fyne.Do(func() {
			hide()
			cancel()
			if errors.Is(err, context.Canceled) {
				d.Told("Cancelled: " + doing)
				return
			}
			done(err)
		})
	}()
}

func (d *Desk) await(doing string, finished <-chan error, cancel func()) (hide func(), err error) {
	select {
	case err := <-finished:
		return func() {}, err
	case <-time.After(patience):
	}
	var dlg *dialog.CustomDialog
	fyne.Do(func() {
		bar := widget.NewProgressBarInfinite()
		dlg = dialog.NewCustom(doing, "Cancel", bar, d.win)
		dlg.SetOnClosed(cancel)
		dlg.Show()
	})
	err = <-finished
	return func() {
		dlg.SetOnClosed(func() {})
		dlg.Hide()
	}, err
}

// Quietly works something out off the UI goroutine without saying so: for what a
// place shows when it is ready and nobody waits for. Done is not called once the
// work has been called off.
func (d *Desk) Quietly(work func(context.Context), done func()) (callOff func()) {
	ctx, cancel := context.WithCancel(context.Background())
	finish := func() {
		if ctx.Err() == nil {
			cancel()
			done()
		}
	}
	if d.still {
		d.kept = append(d.kept, func() { work(ctx); finish() })
		return cancel
	}
	go func() {
		work(ctx)
		fyne.Do(finish)
	}()
	return cancel
}
