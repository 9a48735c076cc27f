package drawing

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// WritePlan writes the elements of a plan as the table that ReadPlan reads with
// the same unit. Lengths come back within 0.01 mm, or 0.001" in feet and inches;
// curves are written by their bulge. Elements of one name are told apart by a
// number after it, and an element without a line has no row.
func WritePlan(w io.Writer, p plan.Plan, u length.Unit) error {
	out := planWriter{csv: csv.NewWriter(w), style: length.Style{Unit: u}, levels: levelNames(p.Levels)}
	out.write(planColumns...)
	taken := map[string]int{}
	for _, e := range p.Elements {
		if err := out.element(e, unique(e.Name, "Unnamed", taken)); err != nil {
			return err
		}
	}
	out.csv.Flush()
	if err := out.csv.Error(); err != nil {
		return fmt.Errorf("writing the plan as a table: %w", err)
	}
	return nil
}

type planWriter struct {
	csv    *csv.Writer
	style  length.Style
	levels map[plan.LevelID]plan.Level // with names that differ
}

// write writes one row. The csv writer keeps its first error until the end.
func (w *planWriter) write(cells ...string) { _ = w.csv.Write(cells) }

// element writes one row for each vertex. What is said of the element stands in
// its first row, and what is said of a path in the path's first.
func (w *planWriter) element(e plan.Element, name string) error {
	about := w.about(e)
	for i, path := range e.Paths {
		closed := "no"
		if path.Closed {
			closed = "yes"
		}
		ofPath := []string{string(path.Role), closed}
		for j, v := range path.Vertices {
			up, over, ok := w.place(v.Point)
			if !ok {
				return fmt.Errorf("%s: point %d of line %d lies nowhere, or beyond 10 km", name, j+1, i+1)
			}
			row := append([]string{guard(name)}, about...)
			row = append(row, strconv.Itoa(i+1))
			row = append(row, ofPath...)
			w.write(append(row, up, over, bulge(v.Bulge))...)
			about, ofPath = make([]string, len(about)), make([]string, len(ofPath))
		}
	}
	return nil
}

// about returns the cells from kind to note.
func (w *planWriter) about(e plan.Element) []string {
	level, height := "", ""
	if l, ok := w.levels[e.Level]; ok {
		level, height = guard(l.Name), w.style.Bare(l.Height)
		if !w.style.Unit.Metric() {
			height = guard(height)
		}
	}
	return []string{string(e.Kind), level, height, string(e.Use), guard(strings.TrimSpace(e.Note))}
}

// place returns the cells up and over. In feet a side stands for the minus sign,
// which spreadsheets take for the start of a formula.
func (w *planWriter) place(p plane.Point) (up, over string, ok bool) {
	up, over = w.style.Bare(p.Y), w.style.Bare(p.X)
	if !w.style.Unit.Metric() {
		up, over = sided(up, " DS"), sided(over, " SR")
	}
	return up, over, up != "" && over != ""
}

// sided replaces a minus sign by a side.
func sided(text, side string) string {
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		return rest + side
	}
	return text
}

func bulge(v float64) string {
	if v == 0 {
		return ""
	}
	return "bulge " + strconv.FormatFloat(v, 'g', -1, 64)
}

// levelNames returns the levels by identifier, each with a name of its own.
func levelNames(levels []plan.Level) map[plan.LevelID]plan.Level {
	taken := map[string]int{stageFloor: 1}
	out := map[plan.LevelID]plan.Level{}
	for _, l := range levels {
		l.Name = unique(l.Name, "Level", taken)
		out[l.ID] = l
	}
	return out
}

// unique returns the name, or the fallback for an empty one, with a number after
// it where it is taken already, and takes it.
func unique(name, fallback string, taken map[string]int) string {
	name = tidy(name)
	if name == "" {
		name = fallback
	}
	first := name
	for taken[key(name)] > 0 {
		taken[key(first)]++
		name = fmt.Sprintf("%s (%d)", first, taken[key(first)])
	}
	taken[key(name)] = 1
	return name
}
