package dxf

import "strings"

// readEntities reads the drawing itself.
func (r *reader) readEntities() error {
	if err := r.eachRecord(r.readEntity); err != nil {
		return err
	}
	return r.closeOpen()
}

// readEntity takes one record of the drawing or of a block.
func (r *reader) readEntity(e *record) error {
	switch e.kind {
	case "VERTEX", "ATTRIB":
		if r.open == nil {
			return nil // of something that has been left aside
		}
		return r.open.add(r, e)
	case "SEQEND":
		return r.closeOpen()
	}
	if err := r.closeOpen(); err != nil {
		return err
	}
	if e.whole(67, 0) == 1 || r.block != nil && r.block.paper {
		if e.kind != "VIEWPORT" {
			r.note("things in paper space", "it is the layout of printed sheets, not the drawing itself")
		}
		return nil
	}
	if e.bad != "" {
		r.note(kindName(e.kind), e.bad)
		return nil
	}
	switch e.kind {
	case "POLYLINE":
		return r.startPolyline(e)
	case "INSERT":
		return r.startInsert(e)
	case "DIMENSION":
		return r.dimension(e)
	case "ACAD_TABLE":
		return r.tablePicture(e)
	case "TEXT", "MTEXT", "ATTDEF":
		return r.readWords(e)
	}
	return r.readShape(e)
}

func (r *reader) closeOpen() error {
	open := r.open
	r.open = nil
	if open == nil {
		return nil
	}
	return open.close(r)
}

// unread are the kinds that are not read, with the reason.
var unread = map[string]string{
	"POINT": whyPoint, "XLINE": whyEndless, "RAY": whyEndless, "IMAGE": whyPicture, "WIPEOUT": whyPicture,
	"OLEFRAME": whyPicture, "OLE2FRAME": whyPicture, "PDFUNDERLAY": whyPicture, "DWFUNDERLAY": whyPicture,
	"DGNUNDERLAY": whyPicture, "3DSOLID": whySolid, "BODY": whySolid, "REGION": whySolid, "SURFACE": whySolid,
	"MESH": whyMesh, "VIEWPORT": "it is a window on the drawing, not part of it",
}

const (
	whyEndless = "it is a construction line without an end"
	whyPicture = "it is a picture, not line work"
	whySolid   = "it is a solid or a surface in space"
	whyUnknown = "it is not of a kind that this program reads"
)

// kindName returns the kind as it can be shown: a damaged file may hold anything.
func kindName(kind string) string {
	const most = 40
	if kind = strings.ToValidUTF8(kind[:min(len(kind), most)], "\uFFFD"); kind == "" {
		return "nameless"
	}
	return kind
}

func (r *reader) readShape(e *record) error {
	shape := shapes[e.kind]
	if shape == nil {
		why := unread[e.kind]
		if why == "" {
			why = whyUnknown
		}
		r.note(kindName(e.kind), why)
		return nil
	}
	s, err := r.style(e)
	if err != nil {
		return err
	}
	parts := shape(r, e)
	if e.bad != "" {
		r.note(e.kind, e.bad)
		return nil
	}
	return r.take(&entity{kind: e.kind, style: s, parts: parts})
}

// take places a finished entity, or keeps it in the block that is being read.
func (r *reader) take(e *entity) error {
	if r.block != nil {
		r.block.entities = append(r.block.entities, e)
		return r.spend(e.cost())
	}
	if e.insert != nil && !r.blocksRead { // its block may still come
		r.deferred = append(r.deferred, e)
		return r.spend(e.cost())
	}
	return r.placeTop(e)
}

// placeTop places an entity of the drawing itself.
func (r *reader) placeTop(e *entity) error {
	c := outside()
	if e.insert == nil {
		return r.emit(e, &c)
	}
	return r.placeInsert(e, &c)
}
