package fields

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// shown puts fields into a window, below an entry that a test can go to in order to leave them.
func shown(t *testing.T, objects ...fyne.CanvasObject) (fyne.Window, *Text) {
	t.Helper()
	elsewhere := NewText()
	w := test.NewTempWindow(t, container.NewVBox(append(objects, elsewhere)...))
	w.Resize(fyne.NewSize(500, 500))
	return w, elsewhere
}

// typeOver replaces the text of a field as a person would: everything selected, then typed.
func typeOver(w fyne.Window, f Field, text string) {
	w.Canvas().Focus(f.Target())
	f.Target().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
	f.Target().TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
	for _, r := range text {
		f.Target().TypedRune(r)
	}
}

func key(w fyne.Window, name fyne.KeyName) {
	if f := w.Canvas().Focused(); f != nil {
		f.TypedKey(&fyne.KeyEvent{Name: name})
		return
	}
	if heard := w.Canvas().OnTypedKey(); heard != nil {
		heard(&fyne.KeyEvent{Name: name})
	}
}

// feet stands in for the reading of lengths, which is no part of this package.
func feet(text string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSuffix(text, "'"), 64)
	if err != nil {
		return 0, fmt.Errorf("“%s” is not a length", text)
	}
	return v * 0.3048, nil
}

func writeFeet(m float64) string { return strconv.FormatFloat(m/0.3048, 'f', -1, 64) + "'" }

func TestALengthIsCommittedByEnterAndByLeaving(t *testing.T) {
	test.NewTempApp(t)
	l := NewLength(feet, writeFeet)
	var got []string
	l.OnCommit = func(text string, m float64) error {
		got = append(got, fmt.Sprintf("%s=%.4f", text, m))
		l.Set(text, m)
		return nil
	}
	l.Set("", 3.048)
	w, elsewhere := shown(t, l)
	if l.Shown() != "10'" {
		t.Fatalf("shows %q", l.Shown())
	}
	typeOver(w, l, "12'")
	key(w, fyne.KeyReturn)
	typeOver(w, l, "5")
	w.Canvas().Focus(elsewhere.Target())
	w.Canvas().Focus(l.Target())
	w.Canvas().Focus(elsewhere.Target())
	if want := []string{"12'=3.6576", "5=1.5240"}; !slices.Equal(got, want) {
		t.Errorf("committed %v, want %v", got, want)
	}
}

func TestARefusedLengthStaysWithTheReason(t *testing.T) {
	test.NewTempApp(t)
	l := NewLength(feet, writeFeet)
	l.OnCommit = func(string, float64) error { t.Error("committed"); return nil }
	l.Set("", 3.048)
	w, elsewhere := shown(t, l)
	typeOver(w, l, "far")
	w.Canvas().Focus(elsewhere.Target())
	if l.Shown() != "far" || l.Trouble() != "“far” is not a length" || !l.trouble.box.Visible() {
		t.Fatalf("shows %q with %q", l.Shown(), l.Trouble())
	}
	l.Set("", 3.048) // another edit has brought a new snapshot with the same length
	if l.Shown() != "far" {
		t.Error("a new snapshot took the refused text away")
	}
	w.Canvas().Focus(l.Target())
	key(w, fyne.KeyEscape)
	if l.Shown() != "10'" || l.trouble.box.Visible() {
		t.Errorf("Esc left %q, trouble visible %v", l.Shown(), l.trouble.box.Visible())
	}
}

func TestSettingNeitherCommitsNorOverwritesTyping(t *testing.T) {
	test.NewTempApp(t)
	x := NewText()
	committed := ""
	x.OnCommit = func(text string) error { committed = text; return nil }
	x.Set("one")
	w, elsewhere := shown(t, x)
	w.Canvas().Focus(x.Target())
	x.Set("two")
	if x.Shown() != "two" {
		t.Errorf("an untouched entry shows %q", x.Shown())
	}
	x.Target().TypedRune('!')
	typed := x.Shown()
	x.Set("three")
	if x.Shown() != typed || committed != "" {
		t.Errorf("shows %q, committed %q", x.Shown(), committed)
	}
	w.Canvas().Focus(elsewhere.Target())
	if committed != typed {
		t.Errorf("committed %q, want %q", committed, typed)
	}
}

func TestAnotherRecordDropsWhatWasRefused(t *testing.T) {
	test.NewTempApp(t)
	x := NewText()
	x.OnCommit = func(string) error { return errors.New("taken already") }
	f := NewForm()
	f.Add("name", "Name", x)
	w, elsewhere := shown(t, f)
	f.Record("a")
	x.Set("same")
	typeOver(w, x, "other")
	w.Canvas().Focus(elsewhere.Target())
	f.Record("a")
	x.Set("same")
	if x.Shown() != "other" {
		t.Errorf("the same record shows %q", x.Shown())
	}
	f.Record("b")
	x.Set("same")
	if x.Shown() != "same" || x.Trouble() != "" {
		t.Errorf("another record shows %q with %q", x.Shown(), x.Trouble())
	}
}

func TestMemoTakesLinesAndCommitsOnLeaving(t *testing.T) {
	test.NewTempApp(t)
	m := NewMemo(3)
	committed := ""
	m.OnCommit = func(text string) error { committed = text; return nil }
	w, elsewhere := shown(t, m)
	typeOver(w, m, "one")
	key(w, fyne.KeyReturn)
	m.Target().TypedRune('2')
	if committed != "" {
		t.Fatalf("Enter committed %q", committed)
	}
	w.Canvas().Focus(elsewhere.Target())
	if committed != "one\n2" {
		t.Errorf("committed %q", committed)
	}
}

func TestNumbersSayWhatIsWrong(t *testing.T) {
	test.NewTempApp(t)
	whole, dec, money := NewWhole("rolls", 0, 99), NewDecimal("m/min", 0.5, 20), NewMoney("USD")
	var got []string
	whole.OnCommit = func(v int) error { got = append(got, fmt.Sprint(v)); return nil }
	dec.OnCommit = func(v float64) error { got = append(got, fmt.Sprint(v)); return nil }
	money.OnCommit = func(v int) error { got = append(got, fmt.Sprint(v)); return nil }
	w, _ := shown(t, whole, dec, money)
	for _, c := range []struct {
		field   Field
		text    string
		trouble string
	}{
		{whole, "12", ""},
		{whole, "1.5", "“1.5” is not a whole number; type one such as 3"},
		{whole, "100", "100 is out of range; type a number from 0 to 99"},
		{dec, "2,5", ""},
		{dec, "NaN", "“NaN” is not a number; type one such as 2.5"},
		{dec, "0.1", "0.1 is out of range; type a number from 0.5 to 20"},
		{money, "$1,234.5", ""},
		{money, "dear", "“dear” is not an amount; type one such as 12.50"},
	} {
		typeOver(w, c.field, c.text)
		key(w, fyne.KeyReturn)
		if trouble := c.field.(interface{ Trouble() string }).Trouble(); trouble != c.trouble {
			t.Errorf("%q: %q, want %q", c.text, trouble, c.trouble)
		}
	}
	if want := []string{"12", "2.5", "123450"}; !slices.Equal(got, want) {
		t.Errorf("committed %v, want %v", got, want)
	}
}

func TestChoicesTellOnlyAPersonsChange(t *testing.T) {
	test.NewTempApp(t)
	c, k, m := NewChoice("red", "blue"), NewTick("Placed"), NewMulti("Act 1", "Act 2")
	var got []string
	refuse := error(nil)
	c.OnCommit = func(v string) error { got = append(got, v); return refuse }
	k.OnCommit = func(v bool) error { got = append(got, fmt.Sprint(v)); return refuse }
	m.OnCommit = func(v []string) error { got = append(got, strings.Join(v, "+")); return refuse }
	w, _ := shown(t, c, k, m)
	c.Set("red")
	k.Set(true)
	m.Set([]string{"Act 2"})
	c.SetOptions("red", "blue", "green")
	if len(got) != 0 {
		t.Fatalf("setting told %v", got)
	}
	w.Canvas().Focus(c.Target())
	key(w, fyne.KeyRight)
	test.Tap(k.box)
	test.Tap(m.boxes[0])
	if want := []string{"blue", "false", "Act 1+Act 2"}; !slices.Equal(got, want) {
		t.Errorf("told %v, want %v", got, want)
	}
	refuse = errors.New("the floor is locked")
	w.Canvas().Focus(c.Target())
	key(w, fyne.KeyRight)
	test.Tap(k.box)
	test.Tap(m.boxes[1])
	if c.Value() != "blue" || c.pick.Selected != "blue" || k.box.Checked || !m.boxes[1].Checked {
		t.Errorf("after a refusal: %q/%q, %v, %v", c.Value(), c.pick.Selected, k.box.Checked, m.boxes[1].Checked)
	}
	if c.Trouble() == "" || k.Trouble() == "" || m.Trouble() == "" {
		t.Error("a refusal was not written under its field")
	}
}

func TestAFormFocusesHidesDisablesAndCommits(t *testing.T) {
	test.NewTempApp(t)
	a, b := NewText(), NewText()
	b.OnCommit = func(string) error { return errors.New("no") }
	f := NewForm()
	f.Section("Where")
	f.Add("a", "First", a)
	f.Add("b", "The second, longer label", b)
	w, _ := shown(t, f)
	if !f.Focus("b") || w.Canvas().Focused() != b.Target() {
		t.Error("the field did not get the keyboard")
	}
	if a.Position().X != b.Position().X || a.Position().X == 0 {
		t.Errorf("fields begin at %v and %v", a.Position().X, b.Position().X)
	}
	typeOver(w, b, "x")
	w.Canvas().Focus(a.Target())
	if f.Commit() || w.Canvas().Focused() != b.Target() {
		t.Error("a refused field was passed over")
	}
	height := f.MinSize().Height
	f.ShowRow("a", false)
	if f.MinSize().Height >= height {
		t.Error("a hidden row takes room")
	}
	f.Disable()
	if !b.entry.Disabled() {
		t.Error("the form is not disabled")
	}
	if f.Focus("nothing") {
		t.Error("an unknown name got the keyboard")
	}
}

func TestConfirmAnswersEnterAndEsc(t *testing.T) {
	test.NewTempApp(t)
	w, _ := shown(t)
	yes := 0
	ask := func() { Confirm(w, "Delete?", "Three marks go.", "Delete", func() { yes++ }) }
	ask()
	key(w, fyne.KeyEscape)
	if yes != 0 || w.Canvas().Overlays().Top() != nil {
		t.Errorf("Esc: yes %d, still open %v", yes, w.Canvas().Overlays().Top() != nil)
	}
	ask()
	key(w, fyne.KeyReturn)
	if yes != 1 || w.Canvas().Overlays().Top() != nil {
		t.Errorf("Enter: yes %d, still open %v", yes, w.Canvas().Overlays().Top() != nil)
	}
	ask()
	w.Canvas().Unfocus() // as a click beside the buttons does
	key(w, fyne.KeyEscape)
	if yes != 1 || w.Canvas().Overlays().Top() != nil {
		t.Errorf("Esc without the focus: yes %d, still open %v", yes, w.Canvas().Overlays().Top() != nil)
	}
	if w.Canvas().OnTypedKey() != nil {
		t.Error("the dialog still hears keys after it has closed")
	}
}

func TestEscClosesADialogOfTheToolkit(t *testing.T) {
	test.NewTempApp(t)
	w, _ := shown(t)
	ShowDialog(w, dialog.NewCustom("List", "Close", widget.NewLabel("row"), w), fyne.NewSize(200, 100))
	if w.Canvas().Overlays().Top() == nil {
		t.Fatal("it is not shown")
	}
	w.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.Canvas().Overlays().Top() != nil || w.Canvas().OnTypedKey() != nil {
		t.Error("it stayed, or still hears keys")
	}
}

func TestAskStaysOpenUntilAllIsTaken(t *testing.T) {
	test.NewTempApp(t)
	w, _ := shown(t)
	count, name := NewWhole("", 1, 9), NewText()
	got := 0
	count.OnCommit = func(v int) error { got = v; return nil }
	f := NewForm()
	f.Add("count", "How many", count)
	f.Add("name", "Name", name)
	tries := 0
	Ask(w, "Copies", f, "Copy", func() error {
		if tries++; tries == 1 {
			return errors.New("nothing is selected")
		}
		return nil
	})
	if w.Canvas().Focused() != count.Target() {
		t.Fatal("the first field does not have the keyboard")
	}
	typeOver(w, count, "77")
	key(w, fyne.KeyReturn)
	if tries != 0 {
		t.Error("went on past a refused field")
	}
	typeOver(w, count, "7")
	key(w, fyne.KeyReturn)
	if w.Canvas().Overlays().Top() == nil {
		t.Error("closed on an error")
	}
	key(w, fyne.KeyReturn)
	if w.Canvas().Overlays().Top() != nil || got != 7 {
		t.Errorf("still open %v, got %d", w.Canvas().Overlays().Top() != nil, got)
	}
}

func TestPanelsShowAndAct(t *testing.T) {
	test.NewTempApp(t)
	done := 0
	b := NewBanner(Warning, "The scale has not been checked.", "Check it", func() { done++ })
	bar := NewToolbar(Tool{Text: "Fit", Keys: "F", Do: func() { done += 10 }}, Tool{}, Tool{Text: "Turn"})
	shown(t, b, bar, Empty("No marks yet", "They come from the floor's lines.", "Make them", func() { done += 100 }))
	test.Tap(b.button)
	test.Tap(bar.buttons["Fit"])
	bar.SetEnabled("Fit", false)
	test.Tap(bar.buttons["Fit"])
	if done != 11 || bar.buttons["Fit"].Text != "Fit (F)" {
		t.Errorf("done %d, words %q", done, bar.buttons["Fit"].Text)
	}
	b.Set(Good, "", "", nil)
	if b.Visible() {
		t.Error("a banner without words is shown")
	}
}
