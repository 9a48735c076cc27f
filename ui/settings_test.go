package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"groundrow/ui/fields"
)

func TestSettingsWithWhichNothingCouldBePlacedAreRefused(t *testing.T) {
	w := openDemo(t)
	v := w.desk.View()
	s := settingsForm{desk: w.desk, form: fields.NewForm()}
	s.marks(v.P)
	s.errors(v.P)
	w.win.SetContent(s.form)
	before := v.P.Settings
	for name, bad := range map[string][]string{
		"Flag tapes that meet flatter than": {"0", "95"},
		"Longest tape":                      {"1 in", "-20 ft"},
		"A mark may be off by":              {"0"},
	} {
		for _, text := range bad {
			if !s.form.Focus(name) {
				t.Fatalf("there is no field %q", name)
			}
			entry := w.win.Canvas().Focused()
			entry.(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
			test.Type(entry, text)
			if s.form.Commit() {
				t.Errorf("%s: %q was taken", name, text)
			}
		}
	}
	after := w.desk.View().P.Settings
	if after.WeakAngle != before.WeakAngle || after.TapeLength != before.TapeLength || after.Errors.Allowed != before.Errors.Allowed {
		t.Errorf("the settings are %v, %v, %v", after.WeakAngle, after.TapeLength, after.Errors.Allowed)
	}
}
