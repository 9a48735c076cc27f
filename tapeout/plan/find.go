package plan

import "slices"

// Element returns the element with the identifier; nil when there is none. The
// pointer is into the plan, so that an edit can change it.
func (p *Plan) Element(id ElementID) *Element {
	if id == "" {
		return nil // what rides nothing asks for every scene
	}
	for i := range p.Elements { // by index: an element is large to copy
		if p.Elements[i].ID == id {
			return &p.Elements[i]
		}
	}
	return nil
}

// Scene returns the scene with the identifier; nil when there is none.
func (p *Plan) Scene(id SceneID) *Scene {
	i := slices.IndexFunc(p.Scenes, func(s Scene) bool { return s.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Scenes[i]
}

// Level returns the level with the identifier; nil when there is none.
func (p *Plan) Level(id LevelID) *Level {
	i := slices.IndexFunc(p.Levels, func(l Level) bool { return l.ID == id })
	if i < 0 {
		return nil
	}
	return &p.Levels[i]
}

// SceneName returns what the team calls the scene; the empty identifier stands
// for all of them.
func (p *Plan) SceneName(id SceneID) string {
	if id == "" {
		return "all scenes"
	}
	if s := p.Scene(id); s != nil {
		return s.Name
	}
	return string(id)
}
