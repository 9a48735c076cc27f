package dxf

import "groundrow/tapeout/drawing/linework"

// entity is one thing of the drawing in the coordinates of its block, or of the
// drawing itself. At most one of parts, words and insert is there.
type entity struct {
	kind   string
	style  style
	parts  []part
	words  *words
	insert *insert
}

// words is a TEXT, an MTEXT or an attribute.
type words struct {
	text      string
	at        vec
	along, up vec // the direction of reading, and the height of capitals across it
}

// insert is a block placed in the drawing, or the picture of a dimension.
type insert struct {
	block   string // its key
	name    string
	place   affine // the first of the array; its block's base point is still to come off
	columns int
	rows    int
	across  vec // from one column to the next
	along   vec // from one row to the next
	attribs []*entity
	measure *linework.Measure // of a dimension
	picture bool              // everything inside counts as of the entity's own kind
}

func (e *entity) cost() int {
	total := costEntity
	for _, p := range e.parts {
		total += p.cost()
	}
	if e.words != nil {
		total += len(e.words.text)
	}
	return total
}
