package fields

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

var (
	_ Field = (*Choice)(nil)
	_ Field = (*Tick)(nil)
	_ Field = (*Multi)(nil)
)

// chosen is what fields that commit with each change have in common: there is never anything half done in them.
type chosen struct {
	widget.BaseWidget
	trouble       *trouble
	whole         fyne.CanvasObject
	setting       bool
	enter, escape func()
}

func (c *chosen) start(self fyne.Widget, control fyne.CanvasObject) {
	c.trouble = newTrouble()
	c.whole = container.NewVBox(control, c.trouble.box)
	c.ExtendBaseWidget(self)
}

// CreateRenderer implements fyne.Widget.
func (c *chosen) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(c.whole) }

// Commit implements Field.
func (c *chosen) Commit() bool { return true }

// OnKeys implements Field.
func (c *chosen) OnKeys(enter, escape func()) { c.enter, c.escape = enter, escape }

// Trouble returns what is written under the field, or nothing.
func (c *chosen) Trouble() string { return c.trouble.words.Text }

// quietly runs a setter of the toolkit without taking its callback for a person's change.
func (c *chosen) quietly(set func()) {
	was := c.setting
	c.setting = true
	set()
	c.setting = was
}

// tell commits a change; a refusal is written under the field and reported, for the control to go back.
func (c *chosen) tell(commit func() error) bool {
	if err := commit(); err != nil {
		c.trouble.say(err.Error())
		return false
	}
	c.trouble.say("")
	return true
}

// key runs what Enter and Esc do beyond the field and reports whether it was one of them.
func (c *chosen) key(name fyne.KeyName) bool {
	run := func(f func()) bool {
		if f != nil {
			f()
		}
		return true
	}
	switch name {
	case fyne.KeyReturn, fyne.KeyEnter:
		return run(c.enter)
	case fyne.KeyEscape:
		return run(c.escape)
	}
	return false
}

// Choice is one of several.
type Choice struct {
	chosen
	pick  *selector
	value string
	// OnCommit is asked to take the choice.
	OnCommit func(text string) error
}

type selector struct {
	widget.Select
	c *chosen
}

// TypedKey implements fyne.Focusable.
func (s *selector) TypedKey(e *fyne.KeyEvent) {
	if !s.c.key(e.Name) {
		s.Select.TypedKey(e)
	}
}

// NewChoice returns a field for one of the options.
func NewChoice(options ...string) *Choice {
	c := &Choice{pick: &selector{}}
	c.pick.c = &c.chosen
	c.pick.Options = options
	c.pick.PlaceHolder = "Choose"
	c.pick.OnChanged = c.picked
	c.pick.ExtendBaseWidget(c.pick)
	c.start(c, c.pick)
	return c
}

func (c *Choice) picked(text string) {
	if c.setting || text == c.value {
		return
	}
	before := c.value
	c.value = text
	if c.OnCommit != nil && !c.tell(func() error { return c.OnCommit(text) }) {
		c.show(before)
	}
}

// Set shows the choice. One that is not among the options shows as not yet chosen.
func (c *Choice) Set(text string) {
	c.trouble.say("")
	c.show(text)
}

func (c *Choice) show(text string) {
	c.value = text
	c.quietly(func() {
		if slices.Contains(c.pick.Options, text) {
			c.pick.SetSelected(text)
			return
		}
		c.pick.ClearSelected()
	})
}

// SetOptions replaces the options and keeps the choice if it is still among them.
func (c *Choice) SetOptions(options ...string) {
	if slices.Equal(options, c.pick.Options) {
		return
	}
	c.pick.SetOptions(options)
	c.show(c.value)
}

// Value returns the choice shown.
func (c *Choice) Value() string { return c.value }

// Target implements Field.
func (c *Choice) Target() fyne.Focusable { return c.pick }

// Enable implements Field.
func (c *Choice) Enable() { c.pick.Enable() }

// Disable implements Field.
func (c *Choice) Disable() { c.pick.Disable() }

// Reset implements Field.
func (c *Choice) Reset() { c.trouble.say("") }

// Tick is yes or no.
type Tick struct {
	chosen
	box   *ticker
	value bool
	// OnCommit is asked to take the change.
	OnCommit func(on bool) error
}

type ticker struct {
	widget.Check
	c *chosen
}

// TypedKey implements fyne.Focusable.
func (t *ticker) TypedKey(e *fyne.KeyEvent) {
	if !t.c.key(e.Name) {
		t.Check.TypedKey(e)
	}
}

// NewTick returns a box with words beside it.
func NewTick(text string) *Tick {
	t := &Tick{box: &ticker{}}
	t.box.c = &t.chosen
	t.box.Text = text
	t.box.OnChanged = t.changed
	t.box.ExtendBaseWidget(t.box)
	t.start(t, t.box)
	return t
}

func (t *Tick) changed(on bool) {
	if t.setting || on == t.value {
		return
	}
	t.value = on
	if t.OnCommit != nil && !t.tell(func() error { return t.OnCommit(on) }) {
		t.show(!on)
	}
}

// Set shows yes or no.
func (t *Tick) Set(on bool) {
	t.trouble.say("")
	t.show(on)
}

func (t *Tick) show(on bool) {
	t.value = on
	t.quietly(func() { t.box.SetChecked(on) })
}

// Value returns what is shown.
func (t *Tick) Value() bool { return t.value }

// Target implements Field.
func (t *Tick) Target() fyne.Focusable { return t.box }

// Enable implements Field.
func (t *Tick) Enable() { t.box.Enable() }

// Disable implements Field.
func (t *Tick) Disable() { t.box.Disable() }

// Reset implements Field.
func (t *Tick) Reset() { t.trouble.say("") }
