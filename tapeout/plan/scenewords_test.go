package plan

import (
	"slices"
	"strings"
	"testing"
)

func TestScenesByName(t *testing.T) {
	p := &Plan{Scenes: []Scene{{ID: "a", Name: "1.1"}, {ID: "b", Name: "1.2 Garden"}, {ID: "c", Name: "2.1"}}}
	for text, want := range map[string][]SceneID{
		"": nil, " All ": nil, "1.1": {"a"}, "2.1; 1.2 garden, 2.1,": {"c", "b"},
	} {
		got, err := p.ScenesNamed(text)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
		}
		if back, err := p.ScenesNamed(p.NamesOf(got)); err != nil || !slices.Equal(back, want) {
			t.Errorf("%q comes back as %v (%v)", p.NamesOf(got), back, err)
		}
	}
	if _, err := p.ScenesNamed("1.1, 3.9"); err == nil || !strings.Contains(err.Error(), "1.2 Garden") {
		t.Errorf("a scene that is not there: %v", err)
	}
	if _, err := (&Plan{}).ScenesNamed("1.1"); err == nil || !strings.Contains(err.Error(), "no scenes") {
		t.Errorf("without scenes: %v", err)
	}
}

func TestScenesWhoseNamesHaveCommas(t *testing.T) {
	p := &Plan{Scenes: []Scene{{ID: "a", Name: "Act 1, Scene 1"}, {ID: "b", Name: "Act 1, Scene 2; night"}, {ID: "c", Name: "Act 1"}}}
	for text, want := range map[string][]SceneID{
		"act 1, scene 1": {"a"}, "Act 1; Act 1, Scene 2; night": {"c", "b"}, "Act 1, Scene 1, Act 1": {"a", "c"},
	} {
		got, err := p.ScenesNamed(text)
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%q: %v (%v), want %v", text, got, err, want)
		}
		if back, err := p.ScenesNamed(p.NamesOf(got)); err != nil || !slices.Equal(back, want) {
			t.Errorf("%q comes back as %v (%v)", p.NamesOf(got), back, err)
		}
	}
	if _, err := p.ScenesNamed("Act 1, Scene 9"); err == nil || !strings.Contains(err.Error(), "“Scene 9”") {
		t.Errorf("a scene that is not there: %v", err)
	}
}

func TestScenesOfAnElementKeepWhereItStands(t *testing.T) {
	e := Element{Stands: []Stand{{Scene: "a", Up: 1}, {Scene: "b"}}}
	e.InScenes([]SceneID{"c", "a"})
	if want := []Stand{{Scene: "c"}, {Scene: "a", Up: 1}}; !slices.Equal(e.Stands, want) {
		t.Errorf("it stands %v, want %v", e.Stands, want)
	}
	p := &Plan{Scenes: []Scene{{ID: "a"}, {ID: "b"}, {ID: "c"}}}
	p.InEveryScene(&e)
	if want := []Stand{{Scene: "a", Up: 1}, {Scene: "b"}, {Scene: "c"}}; !slices.Equal(e.Stands, want) {
		t.Errorf("in every scene it stands %v, want %v", e.Stands, want)
	}
	e.Stands[0].Up = 0
	if p.InEveryScene(&e); e.Stands != nil {
		t.Errorf("as drawn everywhere it stands %v", e.Stands)
	}
	if e.InScenes(nil); e.Stands != nil || e.Scenes() != nil {
		t.Errorf("it stands %v, want everywhere as drawn", e.Stands)
	}
}
