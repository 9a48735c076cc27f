package revision_test

import (
	"testing"

	"groundrow/tapeout/length"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plan/revision"
	"groundrow/tapeout/plane"
)

func TestSentences(t *testing.T) {
	style := length.Style{Unit: length.Metres, Step: 0.005}
	sofa := element("sofa", plan.Furniture, plane.Rectangle(pt(0, 0), pt(2, 0.8)))
	about := func(x, y, turn float64) plan.Element {
		m := plane.About(pt(1, 0.4), turn)
		m.Shift = m.Shift.Add(pt(x, y))
		return moved(sofa, m)
	}
	longer := element("sofa", plan.Furniture, plane.Rectangle(pt(0, 0), pt(2.4, 0.8)))
	notched := element("sofa", plan.Furniture, plane.Closed(pt(0, 0), pt(2, 0), pt(2, 0.8), pt(1, 0.8), pt(1, 0.6), pt(0, 0.6)))
	for _, c := range []struct {
		name       string
		old, young []plan.Element
		want       string
	}{
		{"unchanged", []plan.Element{sofa}, []plan.Element{sofa}, "Sofa is unchanged."},
		{"new", nil, []plan.Element{sofa}, "Sofa is new."},
		{"new without a name", nil, []plan.Element{named(sofa, "")}, "An unnamed furniture is new."},
		{"gone", []plan.Element{sofa}, nil, "Sofa is gone."},
		{"moved", []plan.Element{sofa}, []plan.Element{about(0.5, -0.25, 0)}, "Sofa has moved 0.250 m downstage and 0.500 m to stage left."},
		{"turned", []plan.Element{sofa}, []plan.Element{about(-0.5, 0, -0.1)}, "Sofa has moved 0.500 m to stage right and 5.7° clockwise."},
		{"renamed", []plan.Element{sofa}, []plan.Element{named(sofa, "Settee")}, "Sofa is unchanged, and is called “Settee” now."},
		{"longer", []plan.Element{sofa}, []plan.Element{longer}, "Sofa is reshaped, from 2.000 m by 0.800 m to 2.400 m by 0.800 m."},
		{"notched", []plan.Element{sofa}, []plan.Element{notched}, "Sofa is reshaped within the same size."},
	} {
		t.Run(c.name, func(t *testing.T) {
			cs := revision.Compare(c.old, c.young, revision.DefaultTolerance)
			if len(cs) != 1 {
				t.Fatalf("%d changes", len(cs))
			}
			if got := cs[0].Sentence(style); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}
