// Package desktest puts a place on a desk with a real production file, for the
// tests of places.
package desktest

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/prep"
	"groundrow/store"
	"groundrow/ui/desk"
	"groundrow/ui/theme"
)

// Wednesday is a morning of prep week for tests that depend on the day.
var Wednesday = time.Date(2027, 3, 3, 9, 0, 0, 0, time.UTC)

// beside is the room that a place has beside the rail at 1366 by 768.
var beside = fyne.NewSize(1249, 665)

// Open shows the place that build makes in a window of the size that it has in
// the program, with the production in a file of its own. Everything is closed at
// the end of the test.
func Open[P desk.Place](t testing.TB, production *prep.Production, build func(*desk.Desk) P) (P, *desk.Desk) {
	t.Helper()
	app := test.NewTempApp(t)
	app.Settings().SetTheme(theme.New(theme.Light))
	win := test.NewTempWindow(t, nil)
	d := desk.New(win)
	// The toolkit's test driver has no goroutine of its own and would let the file's
	// run the place. An edit shows itself before it returns, so nothing is missed.
	d.Enter = func(func()) {}
	p := build(d)
	d.Changed = p.Show
	win.SetPadded(false)
	win.SetContent(p.Content())
	win.Resize(beside)
	file, err := store.Create(context.Background(), filepath.Join(t.TempDir(), "show.groundrow"), "A tester", production)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Take(file); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		win.Canvas().Unfocus() // an entry's cursor blinks on a goroutine of its own
		if err := d.Close(); err != nil {
			t.Error(err)
		}
	})
	return p, d
}
