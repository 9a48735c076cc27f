package crewplace

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"

	"groundrow/assets/demo"
)

// page is a file that is kept in memory.
type page struct {
	bytes.Buffer
	closing error
	closed  bool
}

func (p *page) Close() error  { p.closed = true; return p.closing }
func (p *page) URI() fyne.URI { return storage.NewFileURI("calls.ics") }

func TestCallsAreSavedForOneOrForAll(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	everyone, one := &page{}, &page{}
	if err := saveCalendar(everyone, d.View().P, p.plan, "", wednesday); err != nil {
		t.Fatal(err)
	}
	if err := saveCalendar(one, d.View().P, p.plan, d.View().P.People[0].ID, wednesday); err != nil {
		t.Fatal(err)
	}
	all, some := strings.Count(everyone.String(), "BEGIN:VEVENT"), strings.Count(one.String(), "BEGIN:VEVENT")
	if all <= some || some < 2 || !everyone.closed || !one.closed {
		t.Errorf("%d events for all, %d for one", all, some)
	}
	if err := saveCalendar(&page{closing: errors.New("the disk is full")}, d.View().P, p.plan, "", wednesday); err == nil {
		t.Error("a file that cannot be closed counts as saved")
	}
}

func TestWhoseCallsIsChosenInAMenuThenTheFile(t *testing.T) {
	p, d := shown(t, demo.Production(wednesday))
	test.Tap(p.days.save)
	menu := d.Window().Canvas().Overlays().Top()
	if menu == nil {
		t.Fatal("no menu opens")
	}
	d.Window().Canvas().Overlays().Remove(menu)
	p.chooseCalendar(d.View().P, "", "Calls.ics")
	if d.Window().Canvas().Overlays().Top() == nil {
		t.Error("no file is asked for")
	}
}

func TestFileNames(t *testing.T) {
	for name, want := range map[string]string{"Calls of Ada": "Calls of Ada", "a/b\\c:d?": "abcd", "Zoë\n": "Zoë"} {
		if got := fileName(name); got != want {
			t.Errorf("%q becomes %q", name, got)
		}
	}
}
