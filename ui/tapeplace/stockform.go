package tapeplace

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	base "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/ui/desk"
	"groundrow/ui/fields"
	"groundrow/ui/floorpicture"
)

// The names under which what was typed into a length is kept.
const (
	columnWidth = "width"
	columnRoll  = "roll"
)

// stockForm describes one tape.
type stockForm struct {
	desk *desk.Desk
	form *fields.Form
	id   plan.StockID

	used                             *widget.Label
	name, material, colour, supplier *fields.Text
	swatch                           *fields.Text
	chip                             *canvas.Rectangle
	width, roll                      *fields.Length
	price                            *fields.Money
	shelf                            *fields.Decimal
	lead                             *fields.Whole
	duty                             *fields.Choice
}

func newStockForm(d *desk.Desk) *stockForm {
	f := &stockForm{desk: d, form: fields.NewForm(), used: widget.NewLabel("")}
	f.used.Wrapping = fyne.TextWrapWord
	f.name = f.text("name", "Name", "Rename the tape", named)
	f.material = f.text("material", "Material", "Change the material of the tape", func(s *supplies.Stock, t string) error { s.Material = t; return nil })
	f.colour = f.text("colour", "Colour, in a word", "Change the colour of the tape", func(s *supplies.Stock, t string) error { s.Colour = t; return nil })
	f.addSwatch()
	f.width = f.length("width", "Width", columnWidth, func(s *supplies.Stock) *float64 { return &s.Width })
	f.roll = f.length("roll", "On a roll", columnRoll, func(s *supplies.Stock) *float64 { return &s.Roll })
	f.price = fields.NewMoney("a roll")
	f.price.OnCommit = func(cents int) error {
		return f.try("Change the price of the tape", func(s *supplies.Stock) error { s.Cents = cents; return nil })
	}
	f.form.Add("price", "Price", f.price)
	f.shelf = fields.NewDecimal("rolls, part rolls too", 0, mostRolls)
	f.shelf.OnCommit = func(n float64) error {
		return f.try("Count the tape on the shelf", func(s *supplies.Stock) error { s.Shelf = n; return nil })
	}
	f.form.Add("shelf", "On the shelf", f.shelf)
	f.lead = fields.NewWhole("days from order to delivery", 0, 365)
	f.lead.OnCommit = func(n int) error {
		return f.try("Change the days of delivery of the tape", func(s *supplies.Stock) error { s.LeadDays = n; return nil })
	}
	f.form.Add("lead", "Comes in", f.lead)
	f.supplier = f.text("supplier", "Supplier", "Change the supplier of the tape", func(s *supplies.Stock, t string) error { s.Supplier = t; return nil })
	f.duty = fields.NewChoice(dutyNames()...)
	f.duty.OnCommit = func(t string) error {
		return f.try("Change what the tape is for", func(s *supplies.Stock) error { s.Duty = supplies.Duty(t); return nil })
	}
	f.form.Add("duty", "Laid for", f.duty)
	f.form.AddWide("used", f.used)
	return f
}

func dutyNames() []string {
	var out []string
	for _, d := range supplies.Duties {
		out = append(out, string(d))
	}
	return out
}

func (f *stockForm) try(label string, change func(*supplies.Stock) error) error {
	return f.desk.TryEdit(label, onStock(f.id, change))
}

func (f *stockForm) text(name, label, edit string, change func(*supplies.Stock, string) error) *fields.Text {
	t := fields.NewText()
	t.OnCommit = func(text string) error {
		return f.try(edit, func(s *supplies.Stock) error { return change(s, text) })
	}
	f.form.Add(name, label, t)
	return t
}

func (f *stockForm) length(name, label, column string, at func(*supplies.Stock) *float64) *fields.Length {
	l := fields.NewLength(
		func(text string) (float64, error) { return length.Parse(text, f.desk.View().P.Unit()) },
		func(m float64) string { return f.desk.View().P.Style().Bare(m) },
	)
	l.OnCommit = func(text string, m float64) error {
		if err := positive(m); err != nil {
			return err
		}
		return f.desk.TryEdit(fmt.Sprintf("Change the %s of the tape", column), func(p *prep.Production) error {
			return onStock(f.id, func(s *supplies.Stock) error {
				*at(s) = m
				p.KeepTyped(string(f.id), column, text)
				return nil
			})(p)
		})
	}
	f.form.Add(name, label, l)
	return l
}

// addSwatch puts the colour's chip before what is typed and a button to choose
// one after it.
func (f *stockForm) addSwatch() {
	f.chip = canvas.NewRectangle(color.Transparent)
	f.chip.SetMinSize(fyne.NewSize(26, 18))
	f.chip.StrokeWidth = 1
	f.swatch = fields.NewText()
	f.swatch.SetHint("#c62828")
	f.swatch.OnCommit = func(text string) error {
		return f.try("Change the swatch of the tape", func(s *supplies.Stock) error { return swatched(s, text) })
	}
	choose := fields.NewButton("Choose…", f.chooseColour)
	f.form.Add("swatch", "Swatch", f.swatch)
	f.form.AddBeside("chip", "", container.NewBorder(nil, nil, container.NewCenter(f.chip), choose, widget.NewLabel("as it is drawn")))
}

func (f *stockForm) chooseColour() {
	picker := dialog.NewColorPicker("Swatch", "The colour in which the lines are drawn", func(c color.Color) {
		rgb := color.NRGBAModel.Convert(c).(color.NRGBA)
		f.desk.Edit("Change the swatch of the tape", onStock(f.id, func(s *supplies.Stock) error {
			return swatched(s, fmt.Sprintf("#%02x%02x%02x", rgb.R, rgb.G, rgb.B))
		}))
	}, f.desk.Window())
	picker.Advanced = true
	picker.SetColor(f.chip.FillColor)
	picker.Show()
}

// show sets the form from a stock.
func (f *stockForm) show(p *prep.Production, s *supplies.Stock) {
	f.id = s.ID
	f.form.Record(string(s.ID))
	f.name.Set(s.Name)
	f.material.Set(s.Material)
	f.colour.Set(s.Colour)
	f.swatch.Set(s.Swatch)
	f.chip.FillColor, f.chip.StrokeColor = color.Color(color.Transparent), base.Color(base.ColorNameForeground)
	if c, ok := floorpicture.Swatch(s.Swatch); ok {
		f.chip.FillColor = c
	}
	f.chip.Refresh()
	f.width.SetUnit(p.Unit().Name())
	f.roll.SetUnit(p.Unit().Name())
	f.width.Set(p.ShowLength(string(s.ID), columnWidth, s.Width), s.Width)
	f.roll.Set(p.ShowLength(string(s.ID), columnRoll, s.Roll), s.Roll)
	f.price.Set(s.Cents)
	f.shelf.Set(s.Shelf)
	f.lead.Set(s.LeadDays)
	f.supplier.Set(s.Supplier)
	f.duty.Set(string(s.Duty))
	f.used.SetText(stockWords(p, s.ID))
}
