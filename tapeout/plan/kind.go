package plan

// Kind is what an element is, in the trade's words.
type Kind string

// Kinds of element.
const (
	Wall        Kind = "wall or flat"
	Door        Kind = "door"
	Window      Kind = "window"
	Opening     Kind = "opening"
	Stair       Kind = "stair"
	EscapeStair Kind = "escape stair"
	Platform    Kind = "platform"
	Ramp        Kind = "ramp"
	Furniture   Kind = "furniture"
	Trap        Kind = "trap"
	Masking     Kind = "masking"
	Track       Kind = "track"
	Revolve     Kind = "revolve"
	Wagon       Kind = "wagon"
	Proscenium  Kind = "proscenium"
	ApronEdge   Kind = "apron edge"
	SideWall    Kind = "side wall"
	PlayingArea Kind = "playing area" // floor that is played on; nothing marks its edge
	Other       Kind = "other"
)

// Kinds in the order offered.
var Kinds = []Kind{
	Wall, Door, Window, Opening, Stair, EscapeStair, Platform, Ramp, Furniture, Trap,
	Masking, Track, Revolve, Wagon, Proscenium, ApronEdge, SideWall, PlayingArea, Other,
}

// House tells whether the kind belongs to the theatre and not to the set.
func (k Kind) House() bool { return k == Proscenium || k == ApronEdge || k == SideWall }

// Movable tells whether the kind is set by hand from scene to scene, so that it
// is spiked and not outlined.
func (k Kind) Movable() bool { return k == Furniture }

// Bare tells whether nothing marks a thing of the kind on any floor: no tape, no
// spikes.
func (k Kind) Bare() bool { return k == PlayingArea }

// Area tells whether a thing of the kind mostly has its outline all the way round:
// one stands on it, walks round it, or looks into it.
func (k Kind) Area() bool {
	switch k {
	case Stair, EscapeStair, Platform, Ramp, Furniture, Trap, Revolve, Wagon, PlayingArea:
		return true
	}
	return false
}

// Solid tells whether people walk round a thing of the kind. They walk through doors
// and openings, along the apron's edge, and over tracks and revolves; what one can
// climb or fall into is no way through.
func (k Kind) Solid() bool {
	switch k {
	case Door, Opening, Track, Revolve, ApronEdge:
		return false
	}
	return true
}

// Carrier tells whether the kind carries others from scene to scene.
func (k Kind) Carrier() bool { return k == Revolve || k == Track }
