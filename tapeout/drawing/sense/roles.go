package sense

import (
	"slices"

	"groundrow/tapeout/plan"
	"groundrow/tapeout/plane"
)

// roles says what each path shows, once the kind is known: the arc of a door is
// its swing, what lies within the outline is inner, and the broken line of a track
// is its way.
func (c *Candidate) roles() {
	if c.Kind == plan.Door {
		c.splitSwings()
	}
	if c.Kind == plan.Track && len(c.Paths) == 1 && !c.Paths[0].Closed {
		c.Paths[0].Role = plan.Way
	}
	around, ok := c.bounds()
	if !ok || c.Kind == plan.Door || c.Kind == plan.Wall || len(c.Paths) < 2 {
		return
	}
	hasOutline := slices.ContainsFunc(c.Paths, func(p plan.Path) bool { return p.Closed && near(p, around) })
	for i, p := range c.Paths {
		switch {
		case p.Role != plan.Outline:
		case hasOutline && !near(p, around), c.Kind == plan.Stair && !p.Closed && c.crosses(p, around):
			c.Paths[i].Role = plan.Inner
		}
	}
}

// near tells whether the path reaches around the whole box.
func near(p plan.Path, around plane.Box) bool {
	b, ok := p.Bounds()
	slack := 0.02 * (around.Width() + around.Height())
	return ok && b.Min.To(around.Min) <= slack && b.Max.To(around.Max) <= slack
}

// crosses tells whether a straight tread lies between the first and the last.
func (c *Candidate) crosses(p plan.Path, around plane.Box) bool {
	e := p.Edges()
	if len(e) != 1 || !e[0].Straight() {
		return false
	}
	b, slack := e[0].Bounds(), 0.02
	across := b.Height() < slack && b.Min.Y > around.Min.Y+slack && b.Max.Y < around.Max.Y-slack
	along := b.Width() < slack && b.Min.X > around.Min.X+slack && b.Max.X < around.Max.X-slack
	return across || along
}

// splitSwings parts the quarter arcs of a door from its other lines.
func (c *Candidate) splitSwings() {
	var out []plan.Path
	for _, p := range c.Paths {
		edges := p.Edges()
		if !slices.ContainsFunc(edges, quarterLeaf) {
			out = append(out, p)
			continue
		}
		for len(edges) > 0 {
			n := 1
			for n < len(edges) && quarterLeaf(edges[n]) == quarterLeaf(edges[0]) {
				n++
			}
			role := p.Role
			if quarterLeaf(edges[0]) {
				role = plan.Swing
			}
			out = append(out, plan.Path{Role: role, Path: openPath(edges[:n])})
			edges = edges[n:]
		}
	}
	c.Paths = out
}

func quarterLeaf(e plane.Edge) bool {
	_, r, ok := e.Circle()
	return ok && quarter(e) && r >= leafLeast && r <= leafMost
}

func openPath(run []plane.Edge) plane.Path {
	var p plane.Path
	for _, e := range run {
		p.Vertices = append(p.Vertices, plane.Vertex{Point: e.A, Bulge: e.Bulge})
	}
	p.Vertices = append(p.Vertices, plane.Vertex{Point: run[len(run)-1].B})
	return p
}
