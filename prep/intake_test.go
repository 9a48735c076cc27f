package prep

import (
	"slices"
	"strings"
	"testing"

	"groundrow/tapeout/drawing"
	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
)

func readPlan(t *testing.T, p *Production, table string) Intake {
	t.Helper()
	read, err := drawing.ReadPlan(strings.NewReader(table), drawing.PlanOptions{
		Unit: length.Metres, Levels: p.Plan.Levels, NewID: newIDs(len(p.Plan.Elements)),
	})
	if err != nil || len(read.Problems) > 0 {
		t.Fatalf("the table cannot be read: %v %v", err, read.Problems)
	}
	return p.TakePlan(read)
}

// newIDs makes identifiers that differ from those of an earlier reading.
func newIDs(reading int) func() string {
	next := counter()
	return func() string { return strings.Repeat("r", reading+1) + next() }
}

func TestTakePlanAddsWhatIsNew(t *testing.T) {
	p := &Production{}
	in := readPlan(t, p, "element,kind,up,over\nBack wall,wall,6,-3\n,,6,3\n")
	if !slices.Equal(in.Added, []string{"Back wall"}) || len(in.Redrawn) > 0 || len(in.Kept) > 0 {
		t.Errorf("got %+v, want the wall added and nothing else", in)
	}
}

func TestTakePlanRedrawsWhatIsThere(t *testing.T) {
	p := &Production{}
	readPlan(t, p, "element,kind,up,over\nBack wall,wall,6,-3\n,,6,3\nBench,furniture,1,0\n,,1,1\n")
	wall := &p.Plan.Elements[0]
	wall.Stock, wall.Stands = "red", []plan.Stand{{Scene: "one", Up: 1}}
	before := *wall

	in := readPlan(t, p, "element,up,over\nBACK WALL,7,-3\n,7,3\n")
	if !slices.Equal(in.Redrawn, []string{"Back wall"}) || !slices.Equal(in.Kept, []string{"Bench"}) {
		t.Errorf("got %+v, want the wall redrawn and the bench kept", in)
	}
	after := p.Plan.Elements[0]
	if after.ID != before.ID || after.Stock != "red" || len(after.Stands) != 1 || after.Kind != plan.Wall {
		t.Errorf("the wall lost what was decided about it: %+v", after)
	}
	if got := after.Paths[0].Points()[0].Y; got != 7 {
		t.Errorf("the wall begins at %v up, want 7", got)
	}
	if after.Paths[0].ID != before.Paths[0].ID {
		t.Error("the wall's line has another identifier than before")
	}
}
