package drawing

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"groundrow/tapeout/length"
)

// MarkRow is one mark of a list.
type MarkRow struct {
	Label    string
	Kind     string
	What     string  // what meets there
	Up, Over float64 // metres from the datum; over positive to stage left
	Tapes    *Tapes  // nil: the mark has no two-tape measurements
}

// Tapes are the two-tape measurements of a mark.
type Tapes struct {
	A, B   float64 // metres from the first and from the second of the two pivots
	Side   string  // of the line from the first to the second
	Pivots string  // which pivots of the floor they are: "1 and 2"
}

// WriteMarks writes marks as a table. The measurements are rounded and spelt as
// the style has them, for the crew; two columns more give up and over in metres
// as they are, to 0.1 mm, for other programs.
func WriteMarks(w io.Writer, marks []MarkRow, s length.Style) error {
	out := csv.NewWriter(w)
	rows := [][]string{{"label", "kind", "up", "over", "tape A", "tape B", "side", "pivots", "what", "up in metres", "over in metres"}}
	for _, m := range marks {
		a, b, side, pivots := "", "", "", ""
		if m.Tapes != nil {
			a, b, side, pivots = s.Format(m.Tapes.A), s.Format(m.Tapes.B), guard(m.Tapes.Side), guard(m.Tapes.Pivots)
		}
		rows = append(rows, []string{guard(m.Label), guard(m.Kind), s.FormatUp(m.Up), s.FormatOver(m.Over),
			a, b, side, pivots, guard(m.What), plainMetres(m.Up), plainMetres(m.Over)})
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("writing the marks as a table: %w", err)
	}
	return nil
}

// plainMetres writes metres with four decimals; nothing for what is no number.
func plainMetres(v float64) string {
	if v-v != 0 {
		return ""
	}
	if v > -0.00005 && v < 0 {
		v = 0
	}
	return strconv.FormatFloat(v, 'f', 4, 64)
}
