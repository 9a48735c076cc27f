package fields

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// near is Wednesday 2 December 2026 in a zone that is not the machine's.
var near = time.Date(2026, 12, 2, 15, 0, 0, 0, time.FixedZone("house", -5*3600))

func TestDaysAreReadAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"2026-11-30":            "2026-11-30",
		"30 Nov":                "2026-11-30",
		"30th november":         "2026-11-30",
		"Nov 30, 2026":          "2026-11-30",
		"Mon 30 Nov":            "2026-11-30",
		"monday, 30 Nov 2026":   "2026-11-30",
		"5 Jan":                 "2027-01-05",
		"29 Feb":                "2028-02-29",
		"  1  december   2026 ": "2026-12-01",
	} {
		got, err := ParseDay(text, near)
		if err != nil || got.Format(time.DateOnly) != want || got.Location() != near.Location() {
			t.Errorf("ParseDay(%q) = %v, %v; want %s", text, got, err, want)
		}
	}
	if got, err := ParseDay(" ", near); err != nil || !got.IsZero() {
		t.Errorf("empty text is %v, %v", got, err)
	}
}

func TestDaysThatCannotBeAreRefusedInWords(t *testing.T) {
	for text, want := range map[string]string{
		"Tue 30 Nov 2026": "30 Nov 2026 is a Monday",
		"Thu 30 Nov":      "30 Nov 2026 is a Monday",
		"30/11/26":        "“30/11/26” is not a day; type it as 30 Nov or 2026-12-02",
		"31 Nov":          "“31 Nov” is not a day; type it as 30 Nov or 2026-12-02",
		"soon":            "“soon” is not a day; type it as 30 Nov or 2026-12-02",
	} {
		if _, err := ParseDay(text, near); err == nil || err.Error() != want {
			t.Errorf("ParseDay(%q): %v, want %q", text, err, want)
		}
	}
}

func TestMomentsAreReadAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"30 Nov 18:30":      "2026-11-30 18:30",
		"30 Nov 6pm":        "2026-11-30 18:00",
		"Mon 30 Nov 6:05pm": "2026-11-30 18:05",
		"Nov 30 6 pm":       "2026-11-30 18:00",
		"2026-11-30T09:00":  "2026-11-30 09:00",
		"2026-11-30 9.15":   "2026-11-30 09:15",
	} {
		got, err := ParseMoment(text, near)
		if err != nil || got.Format("2006-01-02 15:04") != want {
			t.Errorf("ParseMoment(%q) = %v, %v; want %s", text, got, err, want)
		}
	}
	if _, err := ParseMoment("30 Nov", near); err == nil || err.Error() != "add the time of day, such as 18:30" {
		t.Errorf("a day alone: %v", err)
	}
}

func FuzzDaysReadBackAsWritten(f *testing.F) {
	for _, s := range []string{"2026-11-30", "30 Nov 18:30", "Mon 30 Nov", "tt t", "29 Feb", "1 Jan 0001"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if day, err := ParseDay(text, near); err == nil {
			if again, err := ParseDay(FormatDay(day), near); err != nil || !again.Equal(day) {
				t.Errorf("%q is %v, read back %v, %v", text, day, again, err)
			}
		}
		if at, err := ParseMoment(text, near); err == nil {
			if again, err := ParseMoment(FormatMoment(at), near); err != nil || !again.Equal(at) {
				t.Errorf("%q is %v, read back %v, %v", text, at, again, err)
			}
		}
	})
}

func TestCents(t *testing.T) {
	for text, want := range map[string]int{"12.5": 1250, "$ 12": 1200, "1,234.50": 123450, "12,50": 1250, "0.07": 7, "€3.400": 340, ".5": 50} {
		if got, err := ParseCents(text); err != nil || got != want {
			t.Errorf("ParseCents(%q) = %d, %v; want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"", "-3", "1.2.3", "0.005", "99999999999", "1-2", "."} {
		if got, err := ParseCents(text); err == nil {
			t.Errorf("ParseCents(%q) = %d", text, got)
		}
	}
}

func FuzzCentsReadBackAsWritten(f *testing.F) {
	for _, c := range []int{0, 7, 1250, 99999999} {
		f.Add(c)
	}
	f.Fuzz(func(t *testing.T, cents int) {
		got, err := ParseCents(FormatCents(cents))
		if within := cents >= 0 && cents <= 1e9; within != (err == nil) || (within && got != cents) {
			t.Errorf("%d is written %q and read %d, %v", cents, FormatCents(cents), got, err)
		}
	})
}

func TestADateIsTypedChosenAndEmptied(t *testing.T) {
	test.NewTempApp(t)
	d := NewDateTime(func() time.Time { return near })
	var got []time.Time
	d.OnCommit = func(at time.Time) error { got = append(got, at); return nil }
	w, _ := shown(t, d)
	typeOver(w, d, "30 nov 18:30")
	key(w, fyne.KeyReturn)
	if d.Shown() != "Mon 30 Nov 2026 18:30" {
		t.Errorf("shows %q, trouble %q", d.Shown(), d.Trouble())
	}
	test.Tap(d.button)
	if w.Canvas().Overlays().Top() == nil {
		t.Error("no calendar opened")
	}
	d.choose(time.Date(2026, 12, 24, 0, 0, 0, 0, time.UTC))
	if d.Shown() != "Thu 24 Dec 2026 18:30" {
		t.Errorf("after choosing a day it shows %q", d.Shown())
	}
	w.Canvas().Overlays().Remove(w.Canvas().Overlays().Top())
	typeOver(w, d, "")
	key(w, fyne.KeyReturn)
	if len(got) != 3 || !got[2].IsZero() {
		t.Errorf("committed %v", got)
	}
}
