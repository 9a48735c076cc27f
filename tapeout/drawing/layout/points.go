package layout

import (
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// PointList says how a list of points for a layout instrument is written.
type PointList struct {
	Unit   linework.Unit // Metre or Foot
	Origin plane.Point   // metres; the coordinates that the origin of the axes gets: X easting, Y northing
	Header bool          // whether a first row names the columns
}

// pointColumns are the columns of the list, the order that instruments call PNEZD.
var pointColumns = []string{"number", "northing", "easting", "height", "description"}

// WritePoints writes the datum, the pivots and the marks as CSV: number, northing,
// easting, height and description. Northing is up and easting is over, from the
// origin of the layout's axes, decimal with four places; height is that of the
// floor, zero. Descriptions hold no comma and no quotation mark, which not every
// instrument understands.
//
// An origin other than zero is meant to make every coordinate positive; where it
// does not, nothing is written and the error says what would.
func (l *Layout) WritePoints(w io.Writer, o PointList) error {
	if o.Unit != linework.Foot {
		o.Unit = linework.Metre
	}
	points := slices.Concat(l.Control, l.Marks)
	if err := o.check(points); err != nil {
		return fmt.Errorf("writing the list of points: %w", err)
	}
	out := csv.NewWriter(w)
	rows := [][]string{}
	if o.Header {
		rows = append(rows, pointColumns)
	}
	for i, p := range points {
		at := p.At.Add(o.Origin)
		rows = append(rows, []string{strconv.Itoa(i + 1), o.decimal(at.Y), o.decimal(at.X), o.decimal(0), description(p)})
	}
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("writing the list of points: %w", err)
	}
	return nil
}

// places of decimals: a tenth of a millimetre, or a thirtieth.
const places = 4

func (o PointList) decimal(metres float64) string {
	text := strconv.FormatFloat(metres/float64(o.Unit), 'f', places, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return text
}

func (o PointList) check(points []Point) error {
	lowest := plane.Point{}
	for _, p := range points {
		if at := p.At.Add(o.Origin); !at.Finite() {
			return fmt.Errorf("%s has no position; look at the plan and at the floor", description(p))
		}
		lowest.X, lowest.Y = min(lowest.X, p.At.X), min(lowest.Y, p.At.Y)
	}
	if o.Origin == (plane.Point{}) || o.Origin.X >= -lowest.X && o.Origin.Y >= -lowest.Y {
		return nil
	}
	whole := func(metres float64) float64 { return math.Ceil(metres/float64(o.Unit) - 1e-9) }
	return fmt.Errorf("with this origin some points would still be negative; give it a northing of %g or more and an easting of %g or more",
		whole(-lowest.Y), whole(-lowest.X))
}

// longestDescription is what common instruments keep of it (from memory).
const longestDescription = 32

func description(p Point) string {
	text := strings.ReplaceAll(strings.TrimSpace(p.Label+" "+p.What), ", ", " / ")
	text = strings.Map(func(r rune) rune {
		if strings.ContainsRune(",\";\r\n\t", r) {
			return ' '
		}
		return r
	}, text)
	text = strings.Join(strings.Fields(text), " ")
	if letters := []rune(text); len(letters) > longestDescription {
		text = strings.TrimSpace(string(letters[:longestDescription]))
	}
	return text
}
