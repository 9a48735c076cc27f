package store

import (
	"context"
	"database/sql"
	"errors"

	"groundrow/prep"
)

// drawingContent is the bytes of an imported drawing.
type drawingContent struct {
	id    string
	bytes []byte
}

// write keeps the bytes for good: they are not part of the journal, so undo and
// redo of the drawing's row find them again.
func (c drawingContent) write(ctx context.Context, x executor) error {
	_, err := x.ExecContext(ctx, "INSERT INTO drawing_content (drawing, content) VALUES (?, ?) ON CONFLICT (drawing) DO NOTHING", c.id, c.bytes)
	return err
}

// AddDrawing adds an imported drawing with its bytes, as the edit "Add drawing"
// and its name. d.Bytes is set to the number of bytes. An identifier that the
// file has already used is refused: the bytes of a drawing never change.
func (f *File) AddDrawing(ctx context.Context, base Snapshot, d prep.Drawing, bytes []byte) error {
	return f.EditWith(ctx, base, Brought{Label: "Add drawing " + d.Name, Drawing: d, Bytes: bytes},
		func(*prep.Production) error { return nil })
}

// Brought is a drawing that comes in together with what was read from it.
type Brought struct {
	Label   string // what the person did, as undo will call it
	Drawing prep.Drawing
	Bytes   []byte
}

// EditWith is Edit that keeps a drawing as well: both are one named change, so
// that undo takes back all of what the person meant. It refuses as AddDrawing
// does; an error of alter leaves nothing behind.
func (f *File) EditWith(ctx context.Context, base Snapshot, b Brought, alter func(*prep.Production) error) error {
	d := b.Drawing
	d.Bytes = len(b.Bytes)
	_, err := f.Drawing(ctx, d.ID)
	switch {
	case d.ID == "" || err == nil:
		return fail(Invalid, nil, "The drawing “%s” cannot be added under the identifier “%s”: it is taken or empty.", d.Name, d.ID)
	case CodeOf(err) != NotFound:
		return err
	}
	edit := f.named(b.Label)
	edit.content = []drawingContent{{d.ID, append([]byte{}, b.Bytes...)}}
	err = edit.think(base, func(p *prep.Production) error {
		p.Drawings = append(p.Drawings, d)
		return alter(p)
	})
	if err != nil {
		return err
	}
	return f.save(ctx, edit)
}

// Drawing returns the bytes of a drawing as they came.
func (f *File) Drawing(ctx context.Context, id string) ([]byte, error) {
	var b []byte
	err := f.db.QueryRowContext(ctx, "SELECT content FROM drawing_content WHERE drawing = ?", id).Scan(&b)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, fail(NotFound, err, "The file has no drawing “%s”.", id)
	}
	return b, trouble("read the drawing", err)
}
