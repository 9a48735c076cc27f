package prep

import (
	"fmt"
	"math"
	"sync"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/passage"
	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// WayWork is a way across a floor as it was found, in the scene in which it is
// narrowest. Places are in floor axes.
type WayWork struct {
	Way      floor.Way
	Scene    plan.SceneID // where it is narrowest; empty: in every scene alike
	From, To WayEnd
	Found    passage.Found
	Between  [2]string // what makes the narrowest place, in words

	scenes []*WayWork // scene by scene; none where the plan has no scenes
	drawn  func() []plane.Point
}

// WayEnd is where a way begins or ends.
type WayEnd struct {
	Name string
	At   plane.Point
	Door bool // a door of the room, which is as wide as its leaf
	Gone bool // it names a thing that is not there, or that leaves no place to stand
}

// tooNarrow is how much narrower than required a way may be and still do: what a
// door of just the width loses to arithmetic, in metres.
const tooNarrow = 1e-6

// Short tells whether the way is narrower than required, or is none.
func (w *WayWork) Short() bool {
	return w.None() || w.Found.Width < w.Way.Width-tooNarrow
}

// TooNarrow tells whether a width is required of the way that it does not have.
func (w *WayWork) TooNarrow() bool { return w.Way.Width > 0 && w.Short() }

// None tells whether nobody gets along the way at all.
func (w *WayWork) None() bool { return w.From.Gone || w.To.Gone || !(w.Found.Width > 0) }

// Path returns the way to be drawn; nil where there is none. It is searched at the
// first call.
func (w *WayWork) Path() []plane.Point { return w.drawn() }

// In returns the way in a scene; the empty scene is where it is narrowest.
func (w *WayWork) In(scene plan.SceneID) *WayWork {
	for _, s := range w.scenes {
		if s.Scene == scene {
			return s
		}
	}
	return w
}

// ShortScenes returns the scenes in which the way is short.
func (w *WayWork) ShortScenes() []plan.SceneID {
	var out []plan.SceneID
	for _, s := range w.scenes {
		if s.Short() && s.Scene != "" {
			out = append(out, s.Scene)
		}
	}
	return out
}

// WaysOf finds every way of a floor, as the plan is set on it, scene by scene, the
// scenes side by side.
func WaysOf(p *Production, f *floor.Floor) []*WayWork {
	if len(f.Ways) == 0 {
		return nil
	}
	scenes := sceneIDs(&p.Plan)
	out := make([]*WayWork, len(f.Ways))
	for i := range out {
		out[i] = &WayWork{scenes: make([]*WayWork, len(scenes))}
	}
	var all sync.WaitGroup
	for k, scene := range scenes {
		all.Go(func() {
			room := roomIn(p, f, scene)
			for i := range f.Ways {
				found := room.way(f.Ways[i])
				found.Scene = scene
				out[i].scenes[k] = found
			}
		})
	}
	all.Wait()
	for _, w := range out {
		w.narrowest()
	}
	return out
}

// narrowest makes the work that of the scene in which the way is narrowest.
func (w *WayWork) narrowest() {
	all := w.scenes
	least, alike := all[0], true
	for _, s := range all[1:] {
		if d := s.width() - least.width(); d < -tooNarrow {
			least = s
		}
		alike = alike && math.Abs(s.width()-all[0].width()) <= tooNarrow
	}
	*w = *least
	w.scenes = all
	if alike {
		w.Scene = ""
	}
}

func (w *WayWork) width() float64 {
	if w.None() {
		return 0
	}
	return min(w.Found.Width, math.MaxFloat64)
}

// roomInScene is the free floor in a scene, and the names of what stands on it.
type roomInScene struct {
	floor *floor.Floor
	p     *Production
	space *passage.Space
	names []string // of the solids
	mu    *sync.Mutex
}

func roomIn(p *Production, f *floor.Floor, scene plan.SceneID) roomInScene {
	r := roomInScene{floor: f, p: p, mu: &sync.Mutex{}}
	var solids []passage.Solid
	add := func(name string, path plane.Path) {
		solids = append(solids, passage.Solid{Name: name, Path: path})
		r.names = append(r.names, name)
	}
	for _, o := range f.Obstacles {
		add(o.Name, o.Shape)
	}
	for _, s := range f.Solids(&p.Plan, scene) {
		add(nameOf(p, s.Element), s.Path)
	}
	r.space = passage.Of(f.Outline, solids)
	return r
}

const wallWords = "the wall of the room"

func (r *roomInScene) name(of int) string {
	if of == passage.Walls {
		return wallWords
	}
	return r.names[of]
}

func (r *roomInScene) way(way floor.Way) *WayWork {
	w := &WayWork{Way: way, From: r.end(way.From), To: r.end(way.To)}
	w.drawn = func() []plane.Point { return nil }
	if w.From.Gone || w.To.Gone {
		return w
	}
	w.Found = r.space.Between(w.From.At, w.To.At)
	for i, of := range w.Found.Of {
		if w.Found.Limit != passage.ByNothing {
			w.Between[i] = r.name(of)
		}
	}
	space, mu, from, to, found := r.space, r.mu, w.From.At, w.To.At, w.Found
	w.drawn = sync.OnceValue(func() []plane.Point {
		mu.Lock()
		defer mu.Unlock()
		return space.Path(from, to, found)
	})
	return w
}

// end finds where a way begins or ends: half a leaf's width before a door, or where in
// an area there is most room.
func (r *roomInScene) end(spot floor.Spot) WayEnd {
	if spot.Thing == "" {
		style := r.p.Style()
		return WayEnd{Name: fmt.Sprintf("the place %s along, %s into the room", style.Format(spot.At.X), style.Format(spot.At.Y)), At: spot.At}
	}
	for i := range r.floor.Features {
		t := &r.floor.Features[i]
		if at, ok := r.floor.Before(t); ok && t.ID == spot.Thing {
			return WayEnd{Name: t.Name, At: at, Door: true}
		}
	}
	for _, k := range r.floor.KeepClears {
		if k.ID == spot.Thing {
			at, ok := r.space.Roomiest(k.Shape)
			return WayEnd{Name: k.Name, At: at, Gone: !ok}
		}
	}
	return WayEnd{Name: "a thing that is not there any more", At: spot.At, Gone: true}
}
