package store

import (
	"context"
	"errors"
	"slices"
	"testing"

	"groundrow/prep"
	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// kitchen is a small production: two elements, two scenes, one floor.
func kitchen() *prep.Production {
	wall := plan.Element{ID: "wall", Name: "Kitchen wall", Kind: plan.Wall, Level: "stage"}
	wall.Paths = []plan.Path{{ID: "p", Role: plan.Outline, Path: plane.Open(
		plane.Point{X: 0, Y: 1}, plane.Point{X: 1, Y: 1}, plane.Point{X: 2, Y: 1})}}
	table := plan.Element{ID: "table", Name: "Table", Kind: plan.Furniture}
	table.Stands = []plan.Stand{{Scene: "one", Over: 1, Up: 2, Turn: 3}}
	p := &prep.Production{}
	p.Settings.Title = "The Lamp"
	p.Plan.Levels = []plan.Level{{ID: "stage", Name: "Stage floor"}}
	p.Plan.Scenes = []plan.Scene{{ID: "one", Name: "1.1"}, {ID: "two", Name: "1.2"}}
	p.Plan.Elements = []plan.Element{wall, table}
	p.Floors = []floor.Floor{{ID: "studio", Name: "Studio", Outline: plane.Rectangle(plane.Point{}, plane.Point{X: 10, Y: 8})}}
	return p
}

func edit(f *File, base Snapshot, label string, change func(*prep.Production)) error {
	return f.Edit(context.Background(), base, label, func(p *prep.Production) error { change(p); return nil })
}

func TestEditLeavesTheSnapshotAlone(t *testing.T) {
	f := mustCreate(t, kitchen())
	before := f.Now()
	mustEdit(t, f, "Cut the corner", func(p *prep.Production) {
		p.Plan.Elements[0].Paths[0].Vertices[0].X = 99
		p.Floors[0].Outline.Vertices = p.Floors[0].Outline.Vertices[:3]
	})
	if d := alike(kitchen(), before.P); d != "" {
		t.Errorf("the snapshot that was edited has changed\n%s", d)
	}
}

func TestImagineChangesNothing(t *testing.T) {
	f := mustCreate(t, kitchen())
	s := f.Now()
	title := s.P.Plan.Title
	got, err := s.Imagine(func(p *prep.Production) error {
		p.Plan.Title = "Another"
		return nil
	})
	if err != nil || got.Plan.Title != "Another" {
		t.Errorf("imagined %v, %v", got, err)
	}
	if s.P.Plan.Title != title || f.Now().Seq != s.Seq {
		t.Error("the production has changed")
	}
}

func TestEditThatFailsOrChangesNothing(t *testing.T) {
	f := mustCreate(t, kitchen())
	told := 0
	f.Listen(func(Snapshot) { told++ })
	refusal := errors.New("the platform would leave the room")
	err := f.Edit(context.Background(), f.Now(), "Move", func(p *prep.Production) error {
		p.Settings.Title = "Else"
		return refusal
	})
	if err != refusal {
		t.Errorf("got %v, want the edit's own error", err)
	}
	mustEdit(t, f, "Nothing", func(*prep.Production) {})
	mustEdit(t, f, "Nothing again", func(p *prep.Production) { p.Settings.Title = "The Lamp" })
	if err := edit(f, f.Now(), "Break", func(p *prep.Production) { p.Plan.Scenes = nil }); CodeOf(err) != Invalid {
		t.Errorf("got %v, want Invalid", err)
	}
	if entries, _ := f.Journal(context.Background(), 0); len(entries) != 0 || told != 0 {
		t.Errorf("%d journal rows and %d calls of the listener, want none", len(entries), told)
	}
	if d := alike(kitchen(), mustOpen(t, f.Path(), "Ben").Now().P); d != "" {
		t.Errorf("the file has changed\n%s", d)
	}
}

// Two people edit the same snapshot; theirs is saved first.
func TestMerge(t *testing.T) {
	vertices := func(p *prep.Production) *[]plane.Vertex { return &p.Plan.Elements[0].Paths[0].Vertices }
	stand := func(p *prep.Production) *plan.Stand { return &p.Plan.Elements[1].Stands[0] }
	treat := func(how floor.How, by string) func(*prep.Production) {
		return func(p *prep.Production) {
			t := floor.Treatment{Element: "wall", How: how, Decided: floor.Decision{By: by}}
			p.Floors[0].Treatments = append(p.Floors[0].Treatments, t)
		}
	}
	type change = func(*prep.Production)
	tests := map[string]struct {
		theirs, mine change
		want         change // both together; nil: a conflict
	}{
		"other columns of one row": {
			func(p *prep.Production) { stand(p).Over = 5 },
			func(p *prep.Production) { stand(p).Up = 6 },
			func(p *prep.Production) { stand(p).Over, stand(p).Up = 5, 6 },
		},
		"the same column": {
			func(p *prep.Production) { stand(p).Over = 5 }, func(p *prep.Production) { stand(p).Over = 6 }, nil,
		},
		"the same column to the same value": {
			func(p *prep.Production) { stand(p).Over = 5 },
			func(p *prep.Production) { stand(p).Over = 5 },
			func(p *prep.Production) { stand(p).Over = 5 },
		},
		"other corners of one line": {
			func(p *prep.Production) { (*vertices(p))[0].X = 5 },
			func(p *prep.Production) { (*vertices(p))[2].X = 6 },
			func(p *prep.Production) { (*vertices(p))[0].X, (*vertices(p))[2].X = 5, 6 },
		},
		"the same corner": {
			func(p *prep.Production) { (*vertices(p))[0].X = 5 }, func(p *prep.Production) { (*vertices(p))[0].Y = 6 }, nil,
		},
		"a corner put in before the one that moved": {
			func(p *prep.Production) { *vertices(p) = slices.Insert(*vertices(p), 0, plane.Vertex{Bulge: 1}) },
			func(p *prep.Production) { (*vertices(p))[1].X = 6 }, nil,
		},
		"both add at the end": {
			func(p *prep.Production) { p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: "a"}) },
			func(p *prep.Production) { p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: "b"}) },
			func(p *prep.Production) {
				p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: "a"}, plan.Scene{ID: "b"})
			},
		},
		"one takes out, the other adds": {
			func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] },
			func(p *prep.Production) { p.Plan.Scenes = append(p.Plan.Scenes, plan.Scene{ID: "b"}) },
			func(p *prep.Production) { p.Plan.Scenes = []plan.Scene{p.Plan.Scenes[0], {ID: "b"}} },
		},
		"both take out the same": {
			func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] },
			func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] },
			func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] },
		},
		"they take out what I changed": {
			func(p *prep.Production) { p.Plan.Elements = p.Plan.Elements[:1] },
			func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk" }, nil,
		},
		"I take out what they changed": {
			func(p *prep.Production) { p.Plan.Elements[1].Name = "Desk" },
			func(p *prep.Production) { p.Plan.Elements = p.Plan.Elements[:1] }, nil,
		},
		"both decide the same treatment anew": {
			treat(floor.CutShort, ""), treat(floor.CutShort, "Ada"), treat(floor.CutShort, "Ada"),
		},
		"both decide another treatment anew": {treat(floor.CutShort, ""), treat(floor.LeftOut, ""), nil},
	}
	for name, tt := range tests {
		t.Run(name, func(t *testing.T) {
			f := mustCreate(t, kitchen())
			ben := mustOpen(t, f.Path(), "Ben")
			base := f.Now()
			mustEdit(t, ben, "Theirs", tt.theirs)
			err := edit(f, base, "Mine", tt.mine)
			want := kitchen()
			if tt.want == nil {
				conflict, ok := errors.AsType[*Conflict](err)
				if !ok || len(conflict.Cells) == 0 {
					t.Fatalf("got %v, want a conflict", err)
				}
				tt.want = tt.theirs
			} else if err != nil {
				t.Fatal(err)
			}
			tt.want(want)
			if d := alike(want, f.Now().P); d != "" {
				t.Errorf("(-want +got)\n%s", d)
			}
			if d := alike(want, mustOpen(t, f.Path(), "Cy").Now().P); d != "" {
				t.Errorf("in the file (-want +got)\n%s", d)
			}
		})
	}
}

func TestConflictTellsBothValuesAndCanBeForced(t *testing.T) {
	f := mustCreate(t, kitchen())
	base := f.Now()
	mustEdit(t, f, "Theirs", func(p *prep.Production) {
		p.Plan.Levels[0].Height = 2
		p.Plan.Scenes[0].Name = "1.1 Dawn"
	})
	err := edit(f, base, "Raise the level", func(p *prep.Production) {
		p.Plan.Levels[0].Height = 3
		p.Plan.Levels[0].Name = "Upper"
	})
	conflict, ok := errors.AsType[*Conflict](err)
	if !ok {
		t.Fatalf("got %v, want a conflict", err)
	}
	want := Cell{Table: "level", Row: []string{"stage"}, Column: "height_m", Name: "level “Stage floor”", What: "height", Was: 0.0, Theirs: 2.0, Mine: 3.0}
	if got := conflict.Cells; len(got) != 1 || got[0].Name != want.Name || got[0].Was != want.Was || got[0].Theirs != want.Theirs || got[0].Mine != want.Mine || got[0].What != want.What {
		t.Errorf("got %+v, want only %+v", got, want)
	}
	if err := f.Force(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	p := f.Now().P
	if l := p.Plan.Levels[0]; l.Height != 3 || l.Name != "Upper" || p.Plan.Scenes[0].Name != "1.1 Dawn" {
		t.Errorf("got level %+v and scene %q: want mine, and theirs where I changed nothing", l, p.Plan.Scenes[0].Name)
	}
}

func TestForceBringsBackARemovedRow(t *testing.T) {
	f := mustCreate(t, kitchen())
	base := f.Now()
	mustEdit(t, f, "Strike the second scene", func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[:1] })
	err := edit(f, base, "Name the scene", func(p *prep.Production) { p.Plan.Scenes[1].Name = "1.2 Night" })
	conflict, ok := errors.AsType[*Conflict](err)
	if !ok {
		t.Fatalf("got %v, want a conflict", err)
	}
	if c := conflict.Cells[0]; c.Theirs != nil || c.Mine != "1.2 Night" {
		t.Errorf("got %+v, want theirs to be nothing", c)
	}
	if err := f.Force(context.Background(), conflict); err != nil {
		t.Fatal(err)
	}
	if got := f.Now().P.Plan.Scenes; !slices.Equal(got, []plan.Scene{{ID: "one", Name: "1.1"}, {ID: "two", Name: "1.2 Night"}}) {
		t.Errorf("got %+v", got)
	}
}

func TestRemovingWhatIsReferredTo(t *testing.T) {
	f := mustCreate(t, kitchen())
	err := edit(f, f.Now(), "Remove the scene", func(p *prep.Production) { p.Plan.Scenes = p.Plan.Scenes[1:] })
	wantError(t, err, Invalid, "place in a scene of element “Table” still refers to a scene")
}
