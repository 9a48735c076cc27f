package prep

// The places of the window, in the order of the job. A problem and a part of the
// week name the one where they can be cured.
const (
	PlaceWeek     = "Week"
	PlacePlan     = "Plan"
	PlaceFloors   = "Floors"
	PlaceMarks    = "Marks"
	PlaceTape     = "Tape"
	PlaceSupplies = "Supplies"
	PlaceCrew     = "Crew"
	PlaceStandIns = "Stand-ins"
	PlaceTransfer = "Transfer"
	PlacePaper    = "Paper"
)

// Places in the order of the job.
var Places = []string{
	PlaceWeek, PlacePlan, PlaceFloors, PlaceMarks, PlaceTape, PlaceSupplies,
	PlaceCrew, PlaceStandIns, PlaceTransfer, PlacePaper,
}

// State is how far one part of the job has got.
type State string

// States of a part of the job.
const (
	Nothing  State = "nothing yet"
	UnderWay State = "under way"
	Ready    State = "ready"
	NeedsYou State = "needs you"
)
