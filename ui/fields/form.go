package fields

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Form lays fields out in two columns, labels left, with headings and whatever else a panel needs between them.
type Form struct {
	widget.BaseWidget
	rows   []*formRow
	byName map[string]*formRow
	box    *fyne.Container
	record string
}

// formRow is a label with a field, or one object across both columns.
type formRow struct {
	label  *widget.Label
	object fyne.CanvasObject
	field  Field // nil where the row is not a field
}

// NewForm returns an empty form.
func NewForm() *Form {
	f := &Form{byName: map[string]*formRow{}}
	f.box = container.New(&formLayout{f})
	f.ExtendBaseWidget(f)
	return f
}

// CreateRenderer implements fyne.Widget.
func (f *Form) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(f.box) }

// Add puts a field under the last row. The name is for Focus and ShowRow; the label is what a person reads.
func (f *Form) Add(name, label string, field Field) {
	r := &formRow{label: widget.NewLabel(label), object: field, field: field}
	f.add(name, r)
}

// Section begins a part of the form with a heading.
func (f *Form) Section(title string) {
	l := widget.NewLabel(title)
	l.TextStyle.Bold = true
	f.add("", &formRow{object: l})
}

// AddWide puts any object across both columns; the name may be empty.
func (f *Form) AddWide(name string, object fyne.CanvasObject) {
	r := &formRow{object: object}
	r.field, _ = object.(Field)
	f.add(name, r)
}

// AddBeside puts any object, such as words that are worked out, where a field would be.
func (f *Form) AddBeside(name, label string, object fyne.CanvasObject) {
	f.add(name, &formRow{label: widget.NewLabel(label), object: object})
}

func (f *Form) add(name string, r *formRow) {
	f.rows = append(f.rows, r)
	if name != "" {
		f.byName[name] = r
	}
	if r.label != nil {
		f.box.Add(r.label)
	}
	f.box.Add(r.object)
}

// ShowRow shows or hides a row by name.
func (f *Form) ShowRow(name string, on bool) {
	r, ok := f.byName[name]
	if !ok || r.object.Visible() == on {
		return
	}
	for _, o := range r.objects() {
		if on {
			o.Show()
		} else {
			o.Hide()
		}
	}
	f.box.Refresh()
}

// Relabel changes what a person reads beside a field.
func (f *Form) Relabel(name, label string) {
	if r, ok := f.byName[name]; ok && r.label != nil && r.label.Text != label {
		r.label.SetText(label)
		f.box.Refresh()
	}
}

func (r *formRow) objects() []fyne.CanvasObject {
	if r.label == nil {
		return []fyne.CanvasObject{r.object}
	}
	return []fyne.CanvasObject{r.label, r.object}
}

// Focus gives a field the keyboard and reports whether it could.
func (f *Form) Focus(name string) bool {
	r, ok := f.byName[name]
	return ok && r.field != nil && focus(r.field)
}

// FocusFirst gives the first field the keyboard.
func (f *Form) FocusFirst() {
	if field := f.first(); field != nil {
		focus(field)
	}
}

// first returns the first field that is shown and can take the keyboard, or nil.
func (f *Form) first() Field {
	for _, r := range f.rows {
		if r.field != nil && r.object.Visible() && r.field.Target() != nil {
			return r.field
		}
	}
	return nil
}

func focus(field Field) bool {
	target := field.Target()
	if target == nil {
		return false
	}
	c := fyne.CurrentApp().Driver().CanvasForObject(target.(fyne.CanvasObject))
	if c == nil {
		return false
	}
	c.Focus(target)
	return true
}

// Enable lets all fields be changed.
func (f *Form) Enable() { f.each(Field.Enable) }

// Disable shows all fields without letting them be changed.
func (f *Form) Disable() { f.each(Field.Disable) }

func (f *Form) each(do func(Field)) {
	for _, r := range f.rows {
		if r.field != nil {
			do(r.field)
		}
	}
}

// Commit commits what is half typed and reports whether everything was taken; where it was not, the first field that
// refused gets the keyboard.
func (f *Form) Commit() bool {
	var refused Field
	f.each(func(field Field) {
		if !field.Commit() && refused == nil {
			refused = field
		}
	})
	if refused != nil {
		focus(refused)
	}
	return refused == nil
}

// Record says whose values are shown next, by any identifier. When it is another one than before, what was typed for
// the former and refused is dropped, so that it cannot be committed to the wrong thing. Call it before the setters.
func (f *Form) Record(id string) {
	if f.record == id {
		return
	}
	f.record = id
	f.each(Field.Reset)
}

// OnKeys sets what Enter, after a commit, and Esc, when there is nothing to bring back, do in every field.
func (f *Form) OnKeys(enter, escape func()) {
	f.each(func(field Field) { field.OnKeys(enter, escape) })
}

// formLayout gives the labels the width of the widest and the fields the rest.
type formLayout struct{ f *Form }

func (l *formLayout) labelWidth() float32 {
	w := float32(0)
	for _, r := range l.f.rows {
		if r.label != nil && r.label.Visible() {
			w = max(w, r.label.MinSize().Width)
		}
	}
	return w
}

func (l *formLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	left, size, gap := l.labelWidth(), fyne.Size{}, theme.Padding()
	for _, r := range l.f.rows {
		if !r.object.Visible() {
			continue
		}
		min := r.object.MinSize()
		if r.label != nil {
			min = fyne.NewSize(left+gap+min.Width, max(min.Height, r.label.MinSize().Height))
		}
		size.Width = max(size.Width, min.Width)
		size.Height += min.Height + gap
	}
	return size
}

func (l *formLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	left, y, gap := l.labelWidth(), float32(0), theme.Padding()
	for _, r := range l.f.rows {
		if !r.object.Visible() {
			continue
		}
		x, height := float32(0), r.object.MinSize().Height
		if r.label != nil {
			x = left + gap
			height = max(height, r.label.MinSize().Height)
			r.label.Move(fyne.NewPos(0, y))
			r.label.Resize(fyne.NewSize(left, r.label.MinSize().Height))
		}
		r.object.Move(fyne.NewPos(x, y))
		r.object.Resize(fyne.NewSize(size.Width-x, height))
		y += height + gap
	}
}
