package plan

import (
	"fmt"
	"slices"
	"strings"
)

// everyScene is how all scenes are written where scenes are named.
const everyScene = "all"

// ScenesNamed reads names of scenes, parted by commas or semicolons, in any
// capitals. None, which stands for every scene, is returned for "all" and for
// nothing.
func (p *Plan) ScenesNamed(text string) ([]SceneID, error) {
	if t := strings.TrimSpace(text); t == "" || strings.EqualFold(t, everyScene) {
		return nil, nil
	}
	var ids []SceneID
	for _, part := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		name := strings.TrimSpace(part)
		if name == "" {
			continue
		}
		i := slices.IndexFunc(p.Scenes, func(s Scene) bool { return strings.EqualFold(strings.TrimSpace(s.Name), name) })
		if i < 0 {
			return nil, fmt.Errorf("there is no scene “%s”; %s", name, p.scenesThere())
		}
		if !slices.Contains(ids, p.Scenes[i].ID) {
			ids = append(ids, p.Scenes[i].ID)
		}
	}
	return ids, nil
}

func (p *Plan) scenesThere() string {
	if len(p.Scenes) == 0 {
		return "the plan has no scenes yet"
	}
	var names []string
	for _, s := range p.Scenes {
		names = append(names, s.Name)
	}
	return "write all, or some of: " + strings.Join(names, ", ")
}

// NamesOf writes scenes as ScenesNamed reads them; those that the plan has not are
// left out, and none is all.
func (p *Plan) NamesOf(ids []SceneID) string {
	if len(ids) == 0 {
		return everyScene
	}
	var names []string
	for _, id := range ids {
		if p.Scene(id) != nil {
			names = append(names, p.SceneName(id))
		}
	}
	return strings.Join(names, ", ")
}

// InScenes has the element stand in these scenes and no other, where it stood in
// them already and elsewhere as drawn; none is every scene, as drawn.
func (e *Element) InScenes(ids []SceneID) {
	var stands []Stand
	for _, id := range ids {
		at := slices.IndexFunc(e.Stands, func(s Stand) bool { return s.Scene == id })
		if at < 0 {
			stands = append(stands, Stand{Scene: id})
			continue
		}
		stands = append(stands, e.Stands[at])
	}
	e.Stands = stands
}

// Scenes are those that the element stands in; none is all.
func (e *Element) Scenes() []SceneID {
	var ids []SceneID
	for _, s := range e.Stands {
		ids = append(ids, s.Scene)
	}
	return ids
}
