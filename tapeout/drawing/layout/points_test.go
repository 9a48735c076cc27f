package layout_test

import (
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"groundrow/tapeout/drawing/layout"
	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

// listed reads a list of points back.
func listed(t *testing.T, l *layout.Layout, o layout.PointList) [][]string {
	t.Helper()
	var b strings.Builder
	if err := l.WritePoints(&b, o); err != nil {
		t.Fatal(err)
	}
	if strings.ContainsAny(b.String(), "\"") {
		t.Error("a cell is in quotation marks")
	}
	rows, err := csv.NewReader(strings.NewReader(b.String())).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Error(err)
	}
	return v
}

func TestPointsReadBackAsNorthingAndEasting(t *testing.T) {
	l := layout.Of(source(), layout.FromDatum)
	want := append(append([]layout.Point{}, l.Control...), l.Marks...)
	for _, o := range []layout.PointList{
		{},
		{Unit: linework.Foot, Header: true},
		{Unit: linework.Metre, Origin: plane.Point{X: 100, Y: 50}, Header: true},
	} {
		rows := listed(t, l, o)
		if o.Header {
			if got := strings.Join(rows[0], ","); got != "number,northing,easting,height,description" {
				t.Errorf("the header is %s", got)
			}
			rows = rows[1:]
		}
		if len(rows) != len(want) {
			t.Fatalf("%d rows, want %d", len(rows), len(want))
		}
		unit := float64(max(o.Unit, 0))
		if unit == 0 {
			unit = 1
		}
		for i, p := range want {
			north, east := number(t, rows[i][1])*unit, number(t, rows[i][2])*unit
			if got := (plane.Point{X: east, Y: north}).Sub(o.Origin); got.To(p.At) > 1e-4 {
				t.Errorf("%s is at %v, want %v", p.Label, got, p.At)
			}
			if rows[i][0] != strconv.Itoa(i+1) || number(t, rows[i][3]) != 0 || !strings.HasPrefix(rows[i][4], p.Label) {
				t.Errorf("row %d is %v, want that of %s", i+1, rows[i], p.Label)
			}
			if strings.HasPrefix(rows[i][1], "-0.0000") || len(rows[i][4]) > 32 {
				t.Errorf("row %d is %v", i+1, rows[i])
			}
		}
	}
}

func TestAnOriginThatLeavesNegativesIsRefused(t *testing.T) {
	l := layout.Of(source(), layout.FromDatum)
	var b strings.Builder
	err := l.WritePoints(&b, layout.PointList{Origin: plane.Point{X: 1, Y: 1}})
	if err == nil || b.Len() > 0 {
		t.Fatalf("it was written: %s", b.String())
	}
	// The south-west corner lies 6 cos 36° + 1 sin 36° = 5.44 m to stage right of the
	// datum; the south-east one 4 sin 36° + 1 cos 36° = 3.16 m downstage of it.
	if !strings.Contains(err.Error(), "northing of 4 or more and an easting of 6 or more") {
		t.Errorf("it says: %v", err)
	}
	if err := l.WritePoints(&b, layout.PointList{Origin: plane.Point{X: 6, Y: 4}}); err != nil {
		t.Error(err)
	}
}

func TestAPointWithoutAPositionIsRefused(t *testing.T) {
	l := layout.Of(source(), layout.FromDatum)
	l.Marks[1].At.X = math.NaN()
	if err := l.WritePoints(&strings.Builder{}, layout.PointList{}); err == nil || !strings.Contains(err.Error(), l.Marks[1].Label) {
		t.Errorf("got %v", err)
	}
}
