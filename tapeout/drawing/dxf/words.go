package dxf

import (
	"errors"
	"strings"
)

// readWords takes a TEXT, an MTEXT or the template of an attribute.
func (r *reader) readWords(e *record) error {
	const constant = 2
	if e.kind == "ATTDEF" && e.whole(70, 0)&constant == 0 {
		return nil // a template: each insert brings its own words
	}
	w, err := r.wordsOf(e)
	if errors.Is(err, errLeft) {
		return nil
	}
	if err != nil {
		return err
	}
	return r.take(w)
}

// errLeft says that an entity has been left aside.
var errLeft = errors.New("left aside")

// wordsOf reads a TEXT, an ATTRIB or an MTEXT.
func (r *reader) wordsOf(e *record) (*entity, error) {
	s, err := r.style(e)
	if err != nil {
		return nil, err
	}
	const unseen = 1
	if e.kind == "ATTRIB" && e.whole(70, 0)&unseen != 0 {
		s.invisible = true
	}
	w := r.simpleWords(e)
	if e.kind == "MTEXT" {
		w = r.paragraph(e)
	}
	if e.bad != "" {
		r.note(e.kind, e.bad)
		return nil, errLeft
	}
	return &entity{kind: e.kind, style: s, words: w}, nil
}

// simpleWords read a line of text. Unless it stands on its lower left corner it is
// anchored at the second point; stretched between two, at the first.
func (r *reader) simpleWords(e *record) *words {
	const aligned, fitted = 3, 5
	across, down := e.whole(72, 0), e.whole(73, 0)
	if e.kind != "TEXT" {
		down = e.whole(74, 0)
	}
	at := e.vec(10)
	if (across != 0 || down != 0) && across != aligned && across != fitted && e.has(11) {
		at = e.vec(11)
	}
	raw, _ := e.find(1)
	own := ownPlane(e.extrusion())
	turned := own.after(spin(radians(e.num(50, 0))))
	return &words{
		text: strings.TrimSpace(plainText(r.text.text(raw))),
		at:   own.apply(at), along: turned.X, up: turned.Y.times(e.num(40, 0)),
	}
}

// paragraph reads an MTEXT, whose text may come in several pieces.
func (r *reader) paragraph(e *record) *words {
	var raw []byte
	for _, t := range e.tags {
		if t.code == 3 || t.code == 1 {
			raw = append(raw, e.value(t)...)
		}
	}
	own := ownPlane(e.extrusion())
	turned := own.after(spin(radians(e.num(50, 0))))
	if d := e.direction(11); d != nil {
		turned.X, turned.Y = *d, turned.Z.cross(*d)
	}
	return &words{
		text: strings.TrimSpace(plainMText(r.text.text(raw))),
		at:   e.vec(10), along: turned.X, up: turned.Y.times(e.num(40, 0)),
	}
}
