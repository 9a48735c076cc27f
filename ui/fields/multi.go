package fields

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Multi is any number of several, each with its box.
type Multi struct {
	chosen
	options  []string
	boxes    []*ticker
	list     *fyne.Container
	value    []string
	disabled bool
	// OnCommit is asked to take the options that are ticked, in the order of the options.
	OnCommit func(ticked []string) error
}

// NewMulti returns a field for any of the options.
func NewMulti(options ...string) *Multi {
	m := &Multi{list: container.NewVBox()}
	m.start(m, m.list)
	m.SetOptions(options...)
	return m
}

// SetOptions replaces the options; what is ticked stays for those that remain.
func (m *Multi) SetOptions(options ...string) {
	if slices.Equal(options, m.options) {
		return
	}
	m.options = slices.Clone(options)
	m.boxes, m.list.Objects = nil, nil
	for _, o := range options {
		b := &ticker{c: &m.chosen}
		b.Text = o
		b.OnChanged = func(bool) { m.changed() }
		b.ExtendBaseWidget(b)
		m.boxes = append(m.boxes, b)
		m.list.Add(b)
	}
	m.show(m.value)
	m.enable(!m.disabled)
}

func (m *Multi) changed() {
	if m.setting {
		return
	}
	before := m.value
	m.value = nil
	for i, b := range m.boxes {
		if b.Checked {
			m.value = append(m.value, m.options[i])
		}
	}
	if m.OnCommit != nil && !m.tell(func() error { return m.OnCommit(slices.Clone(m.value)) }) {
		m.show(before)
	}
}

// Set ticks these options and no others.
func (m *Multi) Set(ticked []string) {
	m.trouble.say("")
	m.show(slices.Clone(ticked))
}

func (m *Multi) show(ticked []string) {
	m.value = ticked
	m.quietly(func() {
		for i, b := range m.boxes {
			b.SetChecked(slices.Contains(ticked, m.options[i]))
		}
	})
}

// Value returns what is ticked.
func (m *Multi) Value() []string { return slices.Clone(m.value) }

// Target implements Field; without options there is nothing to take the keyboard.
func (m *Multi) Target() fyne.Focusable {
	if len(m.boxes) == 0 {
		return nil
	}
	return m.boxes[0]
}

// Enable implements Field.
func (m *Multi) Enable() { m.enable(true) }

// Disable implements Field.
func (m *Multi) Disable() { m.enable(false) }

func (m *Multi) enable(on bool) {
	m.disabled = !on
	for _, b := range m.boxes {
		if on {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}

// Reset implements Field.
func (m *Multi) Reset() { m.trouble.say("") }
