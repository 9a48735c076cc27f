package dxf

import "groundrow/tapeout/drawing/linework"

// style is how an entity is drawn, before layers and blocks have their say.
type style struct {
	layer     *layer
	ink       ink
	linetype  *linetype // nil: by layer
	scale     float64   // of the linetype, for this entity alone
	weight    int       // hundredths of a millimetre; -1 by layer, -2 by block, -3 not said
	invisible bool
}

// style reads what all entities have in common.
func (r *reader) style(e *record) (style, error) {
	l, err := r.layer(e)
	if err != nil {
		return style{}, err
	}
	s := style{layer: l, ink: e.ink(), scale: e.num(48, 1), weight: e.whole(370, -1), invisible: e.whole(60, 0) == 1}
	if name, ok := e.find(6); ok {
		if s.linetype = r.linetype(name); s.linetype.name == lineByLayer {
			s.linetype = nil
		}
	}
	return s, nil
}

// surroundings are what is handed down into a block.
type surroundings struct {
	m      affine
	block  string
	kind   string // of a dimension's picture; empty: things have their own
	group  int
	depth  int
	hidden bool
	layer  *layer // that layer 0 stands for; nil outside blocks
	colour linework.Colour
	dash   *linetype
	weight int
}

func outside() surroundings {
	return surroundings{m: identity, colour: indexed(foreground), weight: -3}
}

// on returns the layer that the style is on within the surroundings.
func (s *style) on(c *surroundings) *layer {
	if c.layer != nil && s.layer.Name == "0" {
		return c.layer
	}
	return s.layer
}

func (s *style) hidden(c *surroundings) bool {
	l := s.on(c)
	return c.hidden || s.invisible || l.Off || l.Frozen
}

func (s *style) colour(c *surroundings) linework.Colour {
	return s.ink.colour(s.on(c).Colour, c.colour)
}

// pattern returns the linetype, nil for solid.
func (s *style) pattern(c *surroundings) *linetype {
	switch {
	case s.linetype == nil:
		return s.on(c).linetype
	case s.linetype.name == lineByBlock:
		return c.dash
	}
	return s.linetype
}

func (s *style) lineWeight(c *surroundings) int {
	switch s.weight {
	case -1:
		return s.on(c).weight
	case -2:
		return c.weight
	}
	return s.weight
}

// within returns the surroundings inside an insert with the style. A frozen layer hides
// everything inside; one that is only off hides what takes its layer from it.
func (c surroundings) within(s *style) surroundings {
	l := s.on(&c)
	c.hidden = c.hidden || s.invisible || l.Frozen
	c.colour, c.dash, c.weight, c.layer = s.colour(&c), s.pattern(&c), s.lineWeight(&c), l
	c.depth++
	return c
}
