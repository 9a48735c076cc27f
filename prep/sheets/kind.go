// Package sheets is the production on paper: what the crew holds on the floor,
// what is pinned to the wall and what goes with the show, as PDF and, where it
// is a table, as CSV.
//
// A sheet is made in two steps. A pure function turns the production into
// content: sentences, tables, drawings, already worded and rounded. Then the
// content is set on pages. Whether a sheet is out of date follows from its
// content alone, so a different paper or a later hour does not make it so.
package sheets

import "slices"

// Kind names one sheet; it is kept with a printing, so it never changes.
type Kind string

// Kinds of sheet, in the order of the job.
const (
	FloorPlan     Kind = "floor plan"
	Room          Kind = "room as measured"
	UpOver        Kind = "placing list, up and over"
	TwoTapes      Kind = "placing list, two tapes"
	Joining       Kind = "joining list"
	Checks        Kind = "check list"
	Retape        Kind = "re-tape list"
	Tabs          Kind = "tabs"
	DanceLine     Kind = "dance line"
	DanceNumerals Kind = "dance line numerals"
	Tape          Kind = "tape and purchase"
	Kit           Kind = "kit"
	Call          Kind = "call"
	Week          Kind = "week"
	StandIns      Kind = "stand-ins"
	Questions     Kind = "questions for the director"
	DownWhen      Kind = "what is down when"
	Compared      Kind = "two floors compared"
	Transfer      Kind = "transfer packet"
	Care          Kind = "care"
)

// Sheet describes one kind of sheet.
type Sheet struct {
	Kind     Kind
	Name     string // as it stands at the head of the sheet
	Holds    string // one sentence
	PerFloor bool   // there is one for each floor
	PerScene bool   // what it shows depends on the scene
	Table    bool   // the same content can be had as CSV

	build func(Job) content
}

// All returns every sheet in the order of the job.
func All() []Sheet {
	return []Sheet{
		{FloorPlan, "Floor plan", "The room with every line, mark, pivot and keep-clear area at a true scale, with a bar to check it.", true, true, false, floorPlan},
		{Room, "Room as measured", "Walls and diagonals as a tape has found them, what they make of the room, and how well each is checked; of a room nobody has measured, the form to fill in.", true, false, true, measuredRoom},
		{UpOver, "Placing list: up and over", "Every mark by row from downstage: how far up, which side, how far over.", true, true, true, upOver},
		{TwoTapes, "Placing list: two tapes", "Every mark by what the tapes from two pivots read, with the weak ones named.", true, true, true, twoTapes},
		{Joining, "Joining list", "What runs from which mark to which, stock by stock.", true, true, true, joining},
		{Checks, "Check list", "Distances to measure before anything is joined up, with a place to write each.", true, true, true, checkList},
		{Retape, "Re-tape list", "What has worn and is to be taped again, with the tape to bring, and what has moved in rehearsal.", true, false, true, retape},
		{Tabs, "Tabs to cut", "A label for every mark, with its figures, to cut out or copy onto tape.", true, true, false, tabs},
		{DanceLine, "Dance line", "How the numbers across the stage are laid, and where each one goes.", true, false, true, danceLine},
		{DanceNumerals, "Dance line numerals", "The numbers of the dance line, large enough to be read from the stage.", true, false, false, danceNumerals},
		{Tape, "Tape and purchase", "How much of which tape, how the sum is made, what to buy and by when.", true, true, true, tapePurchase},
		{Kit, "Kit", "What goes to the room and comes back, counted out and in.", false, false, true, kit},
		{Call, "Crew call", "Who does what and when, by person and for the wall.", false, false, true, call},
		{Week, "Prep week", "The days to first rehearsal, what is due on each, and who owns it.", false, false, true, week},
		{StandIns, "Stand-ins", "What stands for which scenery in each scene, and what must be pulled for it.", false, true, true, standIns},
		{Questions, "Questions for the director", "What does not fit as drawn, what we propose, and a place for the answer.", true, true, true, questions},
		{DownWhen, "What is down when", "What is down all the time and what only in some scenes, and the tape that no actor needs.", true, false, true, downWhen},
		{Compared, "Two floors compared", "What differs between this floor and the next: treatment, place, cut, marks and tape.", true, false, true, compare},
		{Transfer, "Transfer packet", "What a team that was never in the room needs to lay this again on another floor.", true, false, true, transfer},
		{Care, "Care", "The cautions that apply to this floor.", true, false, false, care},
	}
}

// Find returns the sheet of a kind; ok is false when there is none of that name.
func Find(k Kind) (s Sheet, ok bool) {
	all := All()
	i := slices.IndexFunc(all, func(s Sheet) bool { return s.Kind == k })
	if i < 0 {
		return Sheet{}, false
	}
	return all[i], true
}
