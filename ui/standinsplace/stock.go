package standinsplace

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/google/uuid"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/ui/grid"
)

// Columns of the table of the rehearsal stock.
const (
	colName = iota
	colKind
	colWidth
	colDepth
	colHeight
	colCount
	colUsed
	colSource
	colBallast
	colNote
)

var (
	errNoObject = errors.New("this object is gone: somebody else has deleted it")
	errNameless = errors.New("a name is needed: type one")
)

func stockColumns() []grid.Column {
	size := "empty: does not matter"
	return []grid.Column{
		{Title: "Object", Width: 190, Grow: true},
		{Title: "What it is", Width: 130, Hint: "chair"},
		{Title: "Width", Width: 86, Right: true, Hint: size},
		{Title: "Depth", Width: 86, Right: true, Hint: size},
		{Title: "Height", Width: 86, Right: true, Hint: size},
		{Title: "How many", Width: 86, Right: true},
		{Title: "Used at once", Width: 108, Right: true, ReadOnly: true},
		{Title: "From", Width: 130, Hint: "rehearsal stock"},
		{Title: "Must be weighted", Width: 138, Tick: true},
		{Title: "Note", Width: 160, Grow: true},
	}
}

// sizes are the columns that hold lengths, by the names under which what was typed is kept.
var sizes = map[int]string{colWidth: "width", colDepth: "depth", colHeight: "height"}

func size(o *prep.Object, column int) *float64 {
	switch column {
	case colDepth:
		return &o.Depth
	case colHeight:
		return &o.Height
	}
	return &o.Width
}

func stockRows(p *prep.Production) []grid.Row {
	used, clash := usedIn(p, ""), clashes(p, "")
	rows := make([]grid.Row, 0, len(p.Objects))
	for i := range p.Objects {
		o := &p.Objects[i]
		row := grid.Row{ID: o.ID, Cells: make([]string, colNote+1)}
		c := row.Cells
		c[colName], c[colKind], c[colSource], c[colNote] = o.Name, o.Kind, o.Source, o.Note
		for column, name := range sizes {
			if m := *size(o, column); m > 0 {
				c[column] = p.ShowLength(o.ID, name, m)
			}
		}
		c[colCount], c[colUsed] = strconv.Itoa(o.Count), strconv.Itoa(used[o.ID])
		if o.Ballast {
			c[colBallast] = grid.On
		}
		if words := clash[o.ID]; words != "" {
			row.CellProblems = map[int]string{colUsed: words}
		}
		rows = append(rows, row)
	}
	return rows
}

func newObject(p *prep.Production) prep.Object {
	o := prep.Object{ID: uuid.NewString(), Count: 1, Source: "rehearsal stock"}
	for n := 1; ; n++ {
		o.Name = "New object"
		if n > 1 {
			o.Name += " " + strconv.Itoa(n)
		}
		if objectNamed(p, o.Name) == nil {
			return o
		}
	}
}

func objectNamed(p *prep.Production, name string) *prep.Object {
	for i := range p.Objects {
		if strings.EqualFold(p.Objects[i].Name, name) {
			return &p.Objects[i]
		}
	}
	return nil
}

// stockEdit turns what was typed into a cell into a change of the object and its name.
func stockEdit(p *prep.Production, id string, column int, text string) (label string, change func(*prep.Production) error) {
	name := "an object"
	if o := p.Object(id); o != nil {
		name = o.Name
	}
	text = strings.TrimSpace(text)
	return "Change " + name + ": " + strings.ToLower(stockColumns()[column].Title), func(p *prep.Production) error {
		o := p.Object(id)
		if o == nil {
			return errNoObject
		}
		if sizes[column] != "" {
			return setSize(p, o, column, text)
		}
		return setObject(o, column, text)
	}
}

func setSize(p *prep.Production, o *prep.Object, column int, text string) error {
	m := 0.0
	if text != "" {
		var err error
		if m, err = length.Parse(text, p.Unit()); err != nil {
			return err
		}
		if m < 0 {
			return fmt.Errorf("%s is below zero; a size is needed, or nothing where it does not matter", text)
		}
	}
	*size(o, column) = m
	p.KeepTyped(o.ID, sizes[column], text)
	return nil
}

func setObject(o *prep.Object, column int, text string) error {
	switch column {
	case colName:
		if text == "" {
			return errNameless
		}
		o.Name = text
	case colKind:
		o.Kind = text
	case colCount:
		n, err := readCount(text, 0)
		if err != nil {
			return err
		}
		o.Count = n
	case colSource:
		o.Source = text
	case colBallast:
		o.Ballast = grid.Ticked(text)
	case colNote:
		o.Note = text
	}
	return nil
}

// most is how many of one thing are believed; more is a slip.
const most = 999

func readCount(text string, least int) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < least || n > most {
		return 0, fmt.Errorf("“%s” is not a whole number from %d to %d", text, least, most)
	}
	return n, nil
}

// Columns of the pull list.
func pullColumns() []grid.Column {
	ro := func(title string, width float32, right bool) grid.Column {
		return grid.Column{Title: title, Width: width, ReadOnly: true, Right: right}
	}
	cols := []grid.Column{
		ro("Object", 180, false), ro("Needed at once", 126, true), ro("There are", 84, true), ro("Missing", 74, true),
		ro("Most in", 140, false), ro("State", 110, false), ro("From", 120, false), ro("Weight", 92, false), ro("Stands for", 220, false),
	}
	cols[len(cols)-1].Grow = true
	return cols
}

// pullRows is the list to collect by: each object as often as one scene needs it at most.
func pullRows(p *prep.Production) []grid.Row {
	list := prep.PullList(p)
	rows := make([]grid.Row, 0, len(list))
	for _, l := range list {
		row := grid.Row{ID: l.Object.ID, Cells: []string{
			l.Object.Name, strconv.Itoa(l.Number), strconv.Itoa(l.Object.Count), "", p.Plan.SceneName(l.Scene),
			string(l.State), l.Object.Source, "", standsFor(p, l.Object.ID),
		}}
		if l.Missing > 0 {
			row.Cells[3] = strconv.Itoa(l.Missing)
			row.CellProblems = map[int]string{3: tooMany(l.Number, l.Object, p.Plan.SceneName(l.Scene))}
		}
		if l.Object.Ballast {
			row.Cells[7] = "weight it"
		}
		rows = append(rows, row)
	}
	return rows
}

// standsFor names the elements that an object stands in for.
func standsFor(p *prep.Production, object string) string {
	text, told := "", map[string]bool{}
	for _, s := range p.StandIns {
		e := p.Plan.Element(s.Element)
		if s.Object != object || e == nil || told[e.Name] {
			continue
		}
		if told[e.Name] = true; text != "" {
			text += ", "
		}
		text += e.Name
	}
	return text
}
