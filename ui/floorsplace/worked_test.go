package floorsplace

import (
	"context"
	"strings"
	"testing"
)

func TestWhatMeasurementsSayComesAfterTheShape(t *testing.T) {
	p, m := openMeasured(t)
	var later []func()
	m.worked.quietly = func(work func(context.Context), done func()) func() {
		later = append(later, func() { work(context.Background()); done() })
		return func() {}
	}
	for range 2 {
		typeWall(t, m, "8 m")
		typeWall(t, m, "6 m")
	}
	if !strings.Contains(m.said.Words(), underWay) {
		t.Errorf("before it is judged the room says %q", m.said.Words())
	}
	if got := len(p.here().Outline.Vertices); got != 4 || len(m.worked.room.Outline.Vertices) != 4 {
		t.Errorf("the floor has %d walls, and %d are drawn", got, len(m.worked.room.Outline.Vertices))
	}
	if len(later) != 1 {
		t.Fatalf("%d judgements are under way", len(later))
	}
	for len(later) > 0 {
		next := later[0]
		later = later[1:]
		next()
	}
	if said := m.said.Words(); strings.Contains(said, underWay) || !strings.Contains(said, "Measure A–C to fix it") {
		t.Errorf("when it is judged the room says %q", said)
	}
}
