package planplace

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"groundrow/prep"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// Columns of the table of corners.
const (
	cornerNumber = iota
	cornerUp
	cornerOver
	cornerBow
)

// cornerRow is one corner as the table shows it; its identifier is its place in
// the line.
type cornerRow struct {
	ID    string
	Cells []string
}

func cornerRows(p *prep.Production, path *plan.Path) []cornerRow {
	rows := make([]cornerRow, len(path.Vertices))
	id := string(path.ID)
	for i, v := range path.Vertices {
		bow := ""
		if path.Closed || i < len(path.Vertices)-1 {
			bow = showBow(p, id, column(bowColumn, i), bowOf(&path.Path, i))
		}
		rows[i] = cornerRow{strconv.Itoa(i), []string{
			strconv.Itoa(i + 1),
			showUp(p, id, column(upColumn, i), v.Y),
			showOver(p, id, column(overColumn, i), v.X),
			bow,
		}}
	}
	return rows
}

// setCorner changes one cell of the table of corners and keeps what was typed.
func setCorner(p *prep.Production, path *plan.Path, corner, cell int, text string) error {
	if path == nil || corner < 0 || corner >= len(path.Vertices) {
		return errors.New("the corner is no longer there: somebody has changed the line")
	}
	at := path.Vertices[corner].Point
	var err error
	what := ""
	switch cell {
	case cornerUp:
		what = upColumn
		at.Y, err = length.ParseUp(text, p.Unit())
	case cornerOver:
		what = overColumn
		at.X, err = length.ParseOver(text, p.Unit())
	case cornerBow:
		what = bowColumn
		var bow float64
		if bow, err = parseBow(text, p.Unit()); err == nil {
			err = setBow(&path.Path, corner, bow)
		}
	default:
		return errors.New("corners are numbered by their order in the line")
	}
	if err != nil {
		return err
	}
	moveCorner(&path.Path, corner, at)
	p.KeepTyped(string(path.ID), column(what, corner), strings.TrimSpace(text))
	return nil
}

// pasteCorners takes a block of cells from a spreadsheet, from one corner and
// column on; rows beyond the last corner become new ones. Nothing is changed when
// a cell cannot be read.
func pasteCorners(p *prep.Production, path *plan.Path, cells [][]string, corner, cell int) error {
	for r, row := range cells {
		at := corner + r
		if at >= len(path.Vertices) {
			if len(row) < 2 || cell > cornerUp {
				return fmt.Errorf("row %d goes beyond the last corner: a new one needs its up and its over", r+1)
			}
			last := path.Vertices[len(path.Vertices)-1]
			path.Vertices = append(path.Vertices, plane.Vertex{Point: last.Point})
		}
		for c, text := range row {
			if cell+c > cornerBow || cell+c == cornerNumber {
				continue
			}
			if err := setCorner(p, path, at, cell+c, text); err != nil {
				return fmt.Errorf("row %d: %w", r+1, err)
			}
		}
	}
	return nil
}

// cornersText writes the corners of elements as a table for a spreadsheet, its
// cells apart by tabs.
func cornersText(p *prep.Production, ids []plan.ElementID) string {
	if len(ids) == 0 {
		return ""
	}
	lines := []string{"element\tline\tcorner\tup\tover\tbow"}
	for _, id := range ids {
		e := p.Plan.Element(id)
		for i := range e.Paths {
			for _, row := range cornerRows(p, &e.Paths[i]) {
				cells := append([]string{plainCell(e.Name), string(e.Paths[i].Role)}, row.Cells...)
				lines = append(lines, strings.Join(cells, "\t"))
			}
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// plainCell keeps a text in one cell.
func plainCell(text string) string { return strings.Join(strings.Fields(text), " ") }
