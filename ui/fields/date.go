package fields

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

var _ Field = (*Date)(nil)

// Date is a day, or a day and a time of day, typed or chosen from a calendar. It may be left empty.
type Date struct {
	typed
	button *widget.Button
	near   func() time.Time
	parse  func(string, time.Time) (time.Time, error)
	format func(time.Time) string
	value  time.Time
	// OnCommit is asked to take the time; the zero time stands for an empty field.
	OnCommit func(at time.Time) error
}

// NewDate returns a field for a day. Near, such as the first rehearsal or today, decides the year of a day that is typed
// without one and what the calendar opens on.
func NewDate(near func() time.Time) *Date { return newDate(near, ParseDay, FormatDay) }

// NewDateTime returns a field for a day and a time of day.
func NewDateTime(near func() time.Time) *Date { return newDate(near, ParseMoment, FormatMoment) }

func newDate(near func() time.Time, parse func(string, time.Time) (time.Time, error), format func(time.Time) string) *Date {
	d := &Date{near: near, parse: parse, format: format}
	d.button = widget.NewButtonWithIcon("", theme.CalendarIcon(), d.openCalendar)
	d.button.Importance = widget.LowImportance
	d.start(d, d.taken, d.button)
	d.SetHint("30 Nov")
	return d
}

// Set shows a time; the zero time shows as empty.
func (d *Date) Set(at time.Time) {
	d.value = at
	d.setText(d.format(at))
}

// Enable implements Field.
func (d *Date) Enable() {
	d.typed.Enable()
	d.button.Enable()
}

// Disable implements Field.
func (d *Date) Disable() {
	d.typed.Disable()
	d.button.Disable()
}

func (d *Date) taken(text string) error {
	at, err := d.parse(text, d.near())
	if err != nil {
		return err
	}
	if d.OnCommit != nil {
		if err := d.OnCommit(at); err != nil {
			return err
		}
	}
	d.value = at
	d.saved = d.format(at)
	return nil
}

// calendarWidth keeps the names of the days apart in a compact theme.
const calendarWidth = 280

// openCalendar offers the month of the value, or of what is near when there is none.
func (d *Date) openCalendar() {
	c := fyne.CurrentApp().Driver().CanvasForObject(d.button)
	if c == nil {
		return
	}
	from := d.value
	if from.IsZero() {
		from = d.near()
	}
	var pop *widget.PopUp
	calendar := widget.NewCalendar(from, func(day time.Time) {
		pop.Hide()
		d.choose(day)
	})
	pop = widget.NewPopUp(calendar, c)
	size := pop.MinSize().Max(fyne.NewSize(calendarWidth, 0))
	pop.Resize(size)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(d.button)
	at = at.AddXY(d.button.Size().Width-size.Width, d.button.Size().Height)
	at.Y = min(at.Y, c.Size().Height-size.Height)
	pop.ShowAtPosition(fyne.NewPos(max(0, at.X), max(0, at.Y)))
}

// choose commits a day from the calendar with the time of day that the field held.
func (d *Date) choose(day time.Time) {
	y, m, n := day.Date()
	at := time.Date(y, m, n, d.value.Hour(), d.value.Minute(), 0, 0, d.near().Location())
	d.entry.SetText(d.format(at))
	d.Commit()
}
