package fields

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

var (
	_ Field = (*Text)(nil)
	_ Field = (*Length)(nil)
)

// Text is one or several lines of text.
type Text struct {
	typed
	// OnCommit is asked to take the text, without spaces around it.
	OnCommit func(text string) error
}

// NewText returns a field for one line.
func NewText() *Text {
	t := &Text{}
	t.start(t, t.taken, nil)
	return t
}

// NewMemo returns a field for several lines, as tall as rows of them. Enter begins a line; Ctrl+Enter or going
// elsewhere commits.
func NewMemo(rows int) *Text {
	t := NewText()
	t.entry.MultiLine = true
	t.entry.Wrapping = fyne.TextWrapWord
	t.entry.SetMinRowsVisible(rows)
	return t
}

func (t *Text) taken(text string) error {
	if t.OnCommit == nil {
		return nil
	}
	return t.OnCommit(strings.TrimSpace(text))
}

// Set shows the text.
func (t *Text) Set(text string) { t.setText(text) }

// Length is a length with its unit. How lengths are read and written is given by the screen, which knows the
// production's unit.
type Length struct {
	typed
	unit   *widget.Label
	parse  func(text string) (metres float64, err error)
	format func(metres float64) string
	// OnCommit is asked to take what was typed and the length that it reads as, in metres.
	OnCommit func(text string, metres float64) error
	// OnBlank is asked to take an empty entry; nil refuses it in the words of the parser.
	OnBlank func() error
}

// NewLength returns a field that reads and writes lengths with the two functions.
func NewLength(parse func(string) (float64, error), format func(float64) string) *Length {
	l := &Length{parse: parse, format: format, unit: widget.NewLabel("")}
	l.start(l, l.taken, l.unit)
	return l
}

// SetUnit says what a bare number is taken as.
func (l *Length) SetUnit(unit string) { l.unit.SetText(unit) }

// SetReading changes how lengths are read and written, for when the production's unit changes.
func (l *Length) SetReading(parse func(string) (float64, error), format func(float64) string) {
	l.parse, l.format = parse, format
}

// Set shows a length: as it was typed where that is known, else as the format writes it.
func (l *Length) Set(text string, metres float64) {
	if text == "" {
		text = l.format(metres)
	}
	l.setText(text)
}

// SetBlank shows that there is no length.
func (l *Length) SetBlank() { l.setText("") }

func (l *Length) taken(text string) error {
	text = strings.TrimSpace(text)
	if text == "" && l.OnBlank != nil {
		return l.OnBlank()
	}
	metres, err := l.parse(text)
	if err != nil || l.OnCommit == nil {
		return err
	}
	return l.OnCommit(text, metres)
}
