package drawingin

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"groundrow/prep"
	"groundrow/ui/desk"
	"groundrow/ui/grid"
)

// floorsPanel is what a revision means on each floor: in a sentence, and mark by
// mark with what the crew measures.
type floorsPanel struct {
	page    *Page
	words   *widget.Label
	grid    *grid.Grid
	content fyne.CanvasObject
}

func newFloorsPanel(p *Page) *floorsPanel {
	f := &floorsPanel{page: p, words: wrapped("")}
	f.grid = grid.New([]grid.Column{
		{Title: "", Width: 40, ReadOnly: true}, {Title: "Mark", Width: 46, ReadOnly: true}, {Title: "Floor", Width: 96, Grow: true, ReadOnly: true},
		{Title: "Up", Width: 80, Right: true, ReadOnly: true}, {Title: "Over", Width: 92, Right: true, ReadOnly: true},
		{Title: "Tape 1", Width: 80, Right: true, ReadOnly: true}, {Title: "Tape 2", Width: 80, Right: true, ReadOnly: true},
		{Title: "What it is", Width: 100, ReadOnly: true},
	})
	f.grid.ShowTools(false)
	f.grid.SetEmpty("No mark is to be lifted or laid.", "", nil)
	split := container.NewVSplit(container.NewVScroll(f.words), f.grid)
	split.Offset = 0.3
	f.content = split
	return f
}

func (f *floorsPanel) show(v *desk.View) {
	p := f.page
	if !p.revising || len(v.P.Plan.Elements) == 0 {
		f.words.SetText("Here stands what a revision of the plan means on each floor. This drawing is none: what comes in is added.")
		f.grid.SetRows(nil)
		return
	}
	f.words.SetText(p.means.words())
	f.grid.SetRows(p.means.rows())
}

// words are a sentence for each floor, with its tape by stock.
func (m *meaning) words() string {
	if m.err != nil {
		return spoken(m.err)
	}
	if m.after == nil {
		return "No change is ticked, so every floor stays as it is."
	}
	var lines []string
	for i := range m.floors {
		f := &m.floors[i]
		lines = append(lines, f.Sentence(m.after))
		for _, t := range f.Tape {
			lines = append(lines, "    "+tapeWords(m.after, t))
		}
	}
	return strings.Join(lines, "\n")
}

func tapeWords(p *prep.Production, t prep.TapeChange) string {
	name := "Tape not decided"
	if s := p.Stock(t.Stock); s != nil {
		name = s.Name
	}
	style := p.Style()
	return fmt.Sprintf("%s: %s to lay, %s not needed any more.", name, style.Format(t.More), style.Format(t.Less))
}

// rows are the marks to lift and then those to lay, floor by floor.
func (m *meaning) rows() []grid.Row {
	var rows []grid.Row
	for i := range m.floors {
		f := &m.floors[i]
		for _, mark := range f.Lift {
			rows = append(rows, markRow(m.after, f, "lift", mark))
		}
		for _, mark := range f.Lay {
			rows = append(rows, markRow(m.after, f, "lay", mark))
		}
	}
	return rows
}

func markRow(p *prep.Production, f *prep.FloorChange, do string, m prep.MeasuredMark) grid.Row {
	style := p.Style()
	a, b := m.TapeFigures(style.Format)
	cells := []string{do, m.Label, f.Name, style.FormatUp(m.Up()), style.FormatOver(m.Over()), a, b, m.What}
	return grid.Row{ID: fmt.Sprint(f.Floor, " ", do, " ", m.Label), Cells: cells}
}
