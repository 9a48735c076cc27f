package floor

// Wishes are what a placement of the plan on a floor has to keep to, and what
// counts in it besides the lines. With the zero value the plan may be turned
// any way, and lines alone count.
type Wishes struct {
	Angles Angles
	Step   float64 // degrees from one turn to the next, for InSteps; counted from how the boards lie

	Area  float64 // what all playing area counts, where all lines count 1
	Sight float64 // what all that the front table sees counts, where all lines count 1
}

// Angles is a rule for how the plan may be turned.
type Angles string

// The rules for turning.
const (
	AnyAngle Angles = ""
	ToWalls  Angles = "square to a wall" // the audience's side of the plan along a wall that may be the front
	InSteps  Angles = "in steps from the boards"
)

// AngleRules in the order offered.
var AngleRules = []Angles{AnyAngle, ToWalls, InSteps}

// Front is one side of the room that may be the front, where the audience would
// be. It is kept as a direction, since walls are numbered anew when a room is
// measured again.
type Front struct {
	ID     string
	Toward float64 // radians in floor axes, from the floor out through its walls
}
