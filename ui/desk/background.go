package desk

import (
	"context"
	"errors"
	"sync/atomic"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

var (
	dialogSize   = fyne.NewSize(560, 260)
	progressSize = fyne.NewSize(420, 120)
)

// patience is how long work may take before the window says that it is under way.
const patience = 300 * time.Millisecond

// Run does long work off the UI goroutine and comes back with its error. Work
// that takes a while shows what it is doing and can be cancelled; work that was
// cancelled comes back quietly.
func (d *Desk) Run(doing string, work func(context.Context) error, done func(error)) {
	d.RunTelling(doing, func(ctx context.Context, _ func(float64)) error { return work(ctx) }, done)
}

// RunTelling is Run for work that tells how far it has come, from 0 to 1. It may
// do so from any goroutine and as often as it likes.
func (d *Desk) RunTelling(doing string, work func(context.Context, func(float64)) error, done func(error)) {
	if d.still {
		d.kept = append(d.kept, func() { done(work(context.Background(), func(float64) {})) })
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	finished := make(chan error, 1)
	var share portion
	go func() { finished <- work(ctx, share.tell) }()
	go func() {
		hide, err := d.await(doing, finished, &share, cancel)
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

// portion is how much of some work is done, in thousandths.
type portion struct{ atomic.Int64 }

func (p *portion) tell(part float64) {
	if part > 0 && part <= 1 {
		p.Store(int64(part * 1000))
	}
}

// glance is how often the window looks how far work has come.
const glance = 150 * time.Millisecond

func (d *Desk) await(doing string, finished <-chan error, share *portion, cancel func()) (hide func(), err error) {
	select {
	case err := <-finished:
		return func() {}, err
	case <-time.After(patience):
	}
	var dlg *dialog.CustomDialog
	known, unknown := widget.NewProgressBar(), widget.NewProgressBarInfinite()
	fyne.Do(func() {
		known.Hide()
		dlg = dialog.NewCustom(doing, "Cancel", container.NewStack(known, unknown), d.win)
		dlg.SetOnClosed(cancel)
		dlg.Resize(progressSize)
		dlg.Show()
	})
	look := time.NewTicker(glance)
	defer look.Stop()
	for {
		select {
		case err = <-finished:
			return func() {
				dlg.SetOnClosed(func() {})
				dlg.Hide()
			}, err
		case <-look.C:
			if part := share.Load(); part > 0 {
				fyne.Do(func() {
					unknown.Hide()
					known.Show()
					known.SetValue(float64(part) / 1000)
				})
			}
		}
	}
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
