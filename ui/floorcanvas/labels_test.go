package floorcanvas

import (
	"strings"
	"testing"

	"groundrow/tapeout/plane"
)

func placeAll(p Picture, scale float64) []placed {
	return prepare(p).place(newTypesetter(), newLens(View{Scale: scale}, port{0, 0, 1000, 700}, 1), 1)
}

func TestLabelsNeverCoverEachOther(t *testing.T) {
	for _, scale := range []float64{0.005, 0.02, 0.1, 2} {
		ls := placeAll(crowded(0, 500), scale)
		shown := 0
		for i, a := range ls {
			if a.dropped {
				continue
			}
			shown++
			for _, b := range ls[:i] {
				if !b.dropped && a.box.meets(b.box) {
					t.Fatalf("scale %v: %s covers %s", scale, a.Text, b.Text)
				}
			}
		}
		if shown == 0 {
			t.Errorf("scale %v: none is shown", scale)
		}
	}
}

func TestALabelMovedAsideHasALeader(t *testing.T) {
	var p Picture
	for _, text := range strings.Fields("one two three four five six seven eight nine ten eleven twelve") {
		p.Labels = append(p.Labels, Label{Text: text})
	}
	moved := 0
	for _, l := range placeAll(p, 0.01) {
		if far := !l.box.grown(l.Offset+6).holds(l.x, l.y); far && !l.dropped && !l.moved {
			t.Errorf("%s stands away from its point without a leader", l.Text)
		}
		if l.moved {
			moved++
		}
	}
	if moved == 0 {
		t.Error("no label was moved aside")
	}
}

func TestTheMoreImportantLabelGetsItsPlace(t *testing.T) {
	p := Picture{Labels: []Label{{Text: "minor", Anchor: Centred}, {Text: "major", Anchor: Centred, Priority: 1}}}
	ls := placeAll(p, 0.01)
	if ls[0].Text != "major" || ls[0].moved || ls[0].box.x0 > 0 {
		t.Errorf("%+v", ls[0])
	}
}

func TestAFixedLabelStaysWhateverIsInItsWay(t *testing.T) {
	p := Picture{Dots: []Dot{{Size: 60}}}
	p.Labels = []Label{{Text: "here", Anchor: Centred, Fixed: true}}
	if l := placeAll(p, 0.01)[0]; l.dropped || !l.box.holds(0, 0) {
		t.Errorf("%+v", l)
	}
}

func TestPanningMovesNoLabel(t *testing.T) {
	s := prepare(crowded(0, 200))
	ts := newTypesetter()
	pt := port{0, 0, 1000, 700}
	a := s.place(ts, newLens(View{Scale: 0.02}, pt, 1), 1)
	b := s.place(ts, newLens(View{Scale: 0.02, Centre: plane.Point{X: 3.3, Y: -8}}, pt, 1), 1)
	for i := range a {
		if a[i] != b[i] {
			t.Fatalf("%s stands elsewhere after a pan", a[i].Text)
		}
	}
}

func TestNoLabelIsTooSmallToRead(t *testing.T) {
	if l := (Label{Text: "x", Size: 3}).settled(); l.Size < leastText {
		t.Errorf("size %v", l.Size)
	}
}

func TestTenThousandLabelsArePainted(t *testing.T) {
	img := Render(crowded(0, 10000), 400, 300, Look{Full: true})
	if inked(img) == 0 {
		t.Error("nothing was painted")
	}
}
