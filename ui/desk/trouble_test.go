package desk_test

import (
	"context"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/desk/desktest"
)

// bare is a place that shows nothing.
type bare struct{}

func (bare) Name() desk.Name            { return desk.Week }
func (bare) Content() fyne.CanvasObject { return widget.NewLabel("") }
func (bare) Show(*desk.View)            {}

func TestAClashIsSettledEitherWayWithTheRestOfTheChange(t *testing.T) {
	for _, c := range []struct{ button, title string }{
		{"Keep theirs", "Theirs"},
		{"Use mine", "Mine"},
	} {
		t.Run(c.button, func(t *testing.T) {
			_, d := desktest.Open(t, &prep.Production{Settings: prep.DefaultSettings()}, func(*desk.Desk) bare { return bare{} })
			theirs := func(p *prep.Production) error { p.Settings.Title = "Theirs"; return nil }
			if err := d.File().Edit(context.Background(), d.File().Now(), "Theirs", theirs); err != nil {
				t.Fatal(err)
			}
			mine := func(p *prep.Production) error {
				p.Settings.Title, p.Settings.Company = "Mine", "Ours"
				return nil
			}
			if d.Edit("Mine", mine) {
				t.Fatal("nobody was asked")
			}
			tapButton(t, d.Window(), c.button)
			if s := d.View().P.Settings; s.Title != c.title || s.Company != "Ours" {
				t.Errorf("the file has %q by %q, want %q by Ours", s.Title, s.Company, c.title)
			}
		})
	}
}

// tapButton taps the button with these words in the dialog on top.
func tapButton(t *testing.T, win fyne.Window, words string) {
	t.Helper()
	for _, o := range test.LaidOutObjects(win.Canvas().Overlays().Top()) {
		if b, ok := o.(*widget.Button); ok && b.Text == words {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("there is no button %q", words)
}
