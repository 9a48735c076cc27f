package linework_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"groundrow/tapeout/drawing/linework"
	"groundrow/tapeout/plane"
)

func line(x1, y1, x2, y2 float64) plane.Edge {
	return plane.Edge{A: plane.Point{X: x1, Y: y1}, B: plane.Point{X: x2, Y: y2}}
}

func halfCircle(r float64) plane.Edge {
	return plane.Edge{A: plane.Point{X: r}, B: plane.Point{X: -r}, Bulge: 1}
}

func sheet() *linework.Sheet {
	s := &linework.Sheet{
		Unit: linework.Millimetre,
		Items: []linework.Item{
			{Layer: "WALLS", Edges: []plane.Edge{line(0, 0, 3000, 0), line(3000, 0, 3000, 4000)}, Dash: []float64{300, 100}, Width: 0.0005},
			{Layer: "WALLS", Edges: []plane.Edge{line(0, 0, 3000, 4000)}, Hidden: true},
			{Layer: "APRON", Edges: []plane.Edge{halfCircle(1000)}},
		},
		Texts: []linework.Text{{Text: "DOOR", At: plane.Point{X: 500, Y: 250}, Height: 100, Turn: 1}},
		Measures: []linework.Measure{
			{Measured: 3000, To: plane.Point{X: 3000}},
			{Measured: math.Pi / 2, Angular: true},
		},
	}
	s.Box, _ = s.Bounds((*linework.Item).Shown)
	return s
}

var near = cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) })

func TestBoundsHoldTheRiseOfArcs(t *testing.T) {
	b, ok := sheet().Bounds((*linework.Item).Shown)
	want := plane.Box{Min: plane.Point{X: -1000}, Max: plane.Point{X: 3000, Y: 4000}}
	if !ok || cmp.Diff(want, b, near) != "" {
		t.Errorf("got %v, %v, want %v", b, ok, want)
	}
	if _, ok := new(linework.Sheet).Bounds(nil); ok {
		t.Error("an empty sheet has bounds")
	}
}

func TestScaledIsInMetres(t *testing.T) {
	s := sheet()
	m := s.Scaled(float64(s.Unit))
	if m.Unit != linework.Metre {
		t.Errorf("unit is %v", m.Unit)
	}
	var lengths []float64
	for i := range m.Items {
		lengths = append(lengths, m.Items[i].Length())
	}
	if diff := cmp.Diff([]float64{7, 5, math.Pi}, lengths, near); diff != "" {
		t.Error(diff)
	}
	box, _ := m.Bounds((*linework.Item).Shown)
	if diff := cmp.Diff(box, m.Box, near); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]float64{0.3, 0.1}, m.Items[0].Dash, near); diff != "" {
		t.Error(diff)
	}
	if m.Items[0].Width != 0.0005 {
		t.Errorf("the pen became %v wide", m.Items[0].Width)
	}
	wantText := linework.Text{Text: "DOOR", At: plane.Point{X: 0.5, Y: 0.25}, Height: 0.1, Turn: 1}
	if diff := cmp.Diff(wantText, m.Texts[0], near); diff != "" {
		t.Error(diff)
	}
	if m.Measures[0].Measured != 3 || m.Measures[1].Measured != math.Pi/2 {
		t.Errorf("measures became %v", m.Measures)
	}
	if diff := cmp.Diff(sheet(), s); diff != "" {
		t.Errorf("the sheet itself changed: %s", diff)
	}
}

func TestScaledByNothingChangesNothing(t *testing.T) {
	for _, k := range []float64{0, -1, math.NaN()} {
		if diff := cmp.Diff(sheet(), sheet().Scaled(k)); diff != "" {
			t.Errorf("%v: %s", k, diff)
		}
	}
}

func TestLeftoversAreCountedByReason(t *testing.T) {
	var l linework.Leftovers
	l.Add("IMAGE", "it is a picture", 1)
	l.Add("POINT", "it has no length", 2)
	l.Add("POINT", "it has no length", 3)
	want := []linework.LeftAside{{"POINT", 5, "it has no length"}, {"IMAGE", 1, "it is a picture"}}
	if diff := cmp.Diff(want, l.List()); diff != "" {
		t.Error(diff)
	}
	for i := range 1000 {
		l.Add(fmt.Sprint("KIND ", i), "it is not known", 1)
	}
	total := 0
	list := l.List()
	for _, a := range list {
		total += a.Count
	}
	if total != 1006 || len(list) > 201 {
		t.Errorf("%d things in %d lines", total, len(list))
	}
}

func TestFaultSaysWhereAndWhatToDo(t *testing.T) {
	err := fmt.Errorf("read drawing: %w", &linework.Fault{
		Reason: linework.ErrDamaged, Where: "line 12", What: "the file ends in the middle of a line", Do: "Export it again",
	})
	if got, want := err.Error(), "read drawing: line 12: the file ends in the middle of a line. Export it again"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	var f *linework.Fault
	if !errors.Is(err, linework.ErrDamaged) || errors.Is(err, linework.ErrTooLarge) || !errors.As(err, &f) {
		t.Error("the reason cannot be matched")
	}
}

func TestUnitsHaveNames(t *testing.T) {
	for u, want := range map[linework.Unit]string{0: "unknown", 0.0254: "inch", 1200.0 / 3937: "US survey foot", 0.5: "0.5 m"} {
		if got := u.String(); got != want {
			t.Errorf("%v: got %q, want %q", float64(u), got, want)
		}
	}
}
