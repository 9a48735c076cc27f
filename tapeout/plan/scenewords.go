package plan

import (
	"fmt"
	"slices"
	"strings"
)

// everyScene is how all scenes are written where scenes are named.
const everyScene = "all"

// ScenesNamed reads names of scenes, parted by commas or semicolons, in any
// capitals; a name may have such in itself, as "Act 1, Scene 2" has. None, which
// stands for every scene, is returned for "all" and for nothing.
func (p *Plan) ScenesNamed(text string) ([]SceneID, error) {
	if t := strings.TrimSpace(text); t == "" || strings.EqualFold(t, everyScene) {
		return nil, nil
	}
	var ids []SceneID
	for rest := partedFrom(text); rest != ""; {
		id, after, ok := p.sceneBeginning(rest)
		if !ok {
			name, _, _ := strings.Cut(strings.ReplaceAll(rest, ";", ","), ",")
			return nil, fmt.Errorf("there is no scene “%s”; %s", strings.TrimSpace(name), p.scenesThere())
		}
		if !slices.Contains(ids, id) {
			ids = append(ids, id)
		}
		rest = partedFrom(after)
	}
	return ids, nil
}

const betweenNames = ",;"

// partedFrom is what follows the signs between two names.
func partedFrom(text string) string { return strings.Trim(text, betweenNames+" \t") }

// sceneBeginning returns the scene with the longest name that the text begins with,
// and what comes after it.
func (p *Plan) sceneBeginning(text string) (id SceneID, after string, ok bool) {
	longest := 0
	for _, s := range p.Scenes {
		name := partedFrom(s.Name)
		if len(name) <= longest || len(name) > len(text) || !strings.EqualFold(text[:len(name)], name) {
			continue
		}
		if end := strings.TrimSpace(text[len(name):]); end == "" || strings.ContainsAny(end[:1], betweenNames) {
			longest, id, after, ok = len(name), s.ID, end, true
		}
	}
	return id, after, ok
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

// InEveryScene has the element stand in all scenes: where it stood in them already, and
// elsewhere as drawn.
func (p *Plan) InEveryScene(e *Element) {
	var all []SceneID
	for _, s := range p.Scenes {
		all = append(all, s.ID)
	}
	e.InScenes(all)
	if !slices.ContainsFunc(e.Stands, func(s Stand) bool { return s.Over != 0 || s.Up != 0 || s.Turn != 0 }) {
		e.InScenes(nil)
	}
}

// Scenes are those that the element stands in; none is all.
func (e *Element) Scenes() []SceneID {
	var ids []SceneID
	for _, s := range e.Stands {
		ids = append(ids, s.Scene)
	}
	return ids
}
