package prep

import (
	"fmt"
	"strings"
)

// The rules that a problem can say are broken. Got and Limit are words or
// figures ready to be shown; which of them a rule uses is seen in its sentence.
const (
	RuleNoRehearsal = "first rehearsal" // no date is set
	RuleNoPlan      = "plan drawn"      // nothing is drawn
	RuleNoScale     = "scale"           // the plan's scale is not known
	RuleNoLines     = "line work"       // Where is an element without lines

	RuleNotMeasured = "floor measured" // Where is a floor without walls
	RuleOwner       = "owner asked"    // Where is a floor; Got is its rule
	RuleOutside     = "inside floor"   // Got metres of Limit metres of Where lie outside
	RuleKeepClear   = "keep clear"     // Where lies on the keep-clear area Got
	RuleFigures     = "figures clear"  // a dance line runs through the keep-clear area Where
	RuleWay         = "wide enough"    // the way Where is only Got wide, where Limit is required
	RuleNoWay       = "way free"       // nobody gets along the way Where; Got says why
	RuleMirror      = "mirror"         // actors who face front face the mirror Where
	RuleOpen        = "decided"        // Where has a treatment Got that nobody decided
	RuleSecondLevel = "level beside"   // Where is a level laid beside another
	RuleOutline     = "outline sound"  // Where is a floor whose walls cannot be; Got says why
	RuleSamePivots  = "pivots apart"   // Where is a floor whose two pivots are in one place
	RulePivots      = "pivots"         // Where is a floor without a pair of pivots
	RuleWeak        = "angle of tapes" // Where are marks whose tapes meet flatter than Got
	RuleFar         = "tape length"    // Where are marks beyond the longest tape, Limit
	RuleUnreached   = "mark reached"   // Where are marks that no method reaches; Got says why
	RulePoor        = "sure enough"    // Where are marks less sure than Limit by their method
	RuleGone        = "label in use"   // Where is a printed label that nothing needs
	RuleNoStock     = "stock decided"  // Got of tape on the floor Where have no stock
	RuleRoll        = "roll length"    // Where is a stock whose rolls have no length
	RuleTape        = "tape enough"    // Got rolls of Where must be ordered by Limit
	RuleItem        = "kit enough"     // Got of Where must be ordered by Limit
	RuleLateOrder   = "order in time"  // Got of Where come only after Limit
	RuleBudget      = "budget"         // Got is over the budget of Limit
	RuleCycle       = "order of tasks" // the tasks Got wait for each other
	RuleLate        = "task in time"   // Where ends at Got, due at Limit
	RuleHands       = "hands enough"   // Where has Got of Limit people
	RuleClash       = "pinned in time" // Where is pinned where its people or place in the order are taken
	RuleNoPeople    = "team"           // nobody is in the team
	RuleStandIn     = "stand-in found" // Where has nothing to stand in for it in the scene Got
	RuleObjects     = "objects enough" // Got of Where are used in one scene, Limit exist
	RuleNote        = "note answered"  // Where has the open note Got of the owner Limit
	RuleNoPosition  = "position"       // Where has no position on the floor Got
	RuleWrongMark   = "mark right"     // on the floor Where the readings say Got
	RuleMoved       = "move taken"     // Where has moved in rehearsal as Got says
	RuleDoubtful    = "mark sure"      // on the floor Where the readings leave open Got; Limit is what to measure
)

// sentences turn problems into words, rule by rule.
var sentences = map[string]func(Problem) string{
	RuleNoRehearsal: func(Problem) string { return "No date is set for the first rehearsal." },
	RuleNoPlan:      func(Problem) string { return "Nothing is drawn on the plan yet." },
	RuleNoScale:     func(Problem) string { return "The scale of the plan is not known." },
	RuleNoLines:     at("%s has no lines on the plan."),
	RuleNotMeasured: at("%s has not been measured: it has no walls."),
	RuleOwner:       func(p Problem) string { return p.Where + ": " + owner(p.Got) },
	RuleOutside: func(p Problem) string {
		return fmt.Sprintf("%s sticks out of the floor: %s of %s lie outside.", p.Where, p.Got, p.Limit)
	},
	RuleKeepClear: gotAt("%[2]s lies on %[1]s, which must stay clear."),
	RuleFigures:   at("A dance line runs through %s, which must stay clear: shorten it or write it elsewhere."),
	RuleWay: func(p Problem) string {
		return fmt.Sprintf("%s is only %s; %s is required.", p.Where, p.Got, p.Limit)
	},
	RuleNoWay:       gotAt("%[2]s: nobody gets through; %[1]s."),
	RuleMirror:      at("Facing front, the actors face themselves in %s: cover it or turn the plan."),
	RuleOpen:        gotAt("Nobody has decided yet whether %[2]s is %[1]s."),
	RuleSecondLevel: at("%s is laid beside the level below: here it has no edge to fall from, and the real one has."),
	RuleOutline:     gotAt("%[2]s: %[1]s."),
	RuleSamePivots:  at("%s has both pivots in one place: two tapes from it find nothing."),
	RulePivots:      at("%s has no two pivots, so nothing can be found by two tapes."),
	RuleWeak:        gotAt("Weak by two tapes, which meet at less than %[1]s or nearly in line: %[2]s. Use up and over, or a further pivot."),
	RuleFar: func(p Problem) string {
		return fmt.Sprintf("Farther from a pivot than the longest tape, %s: %s.", p.Limit, p.Where)
	},
	RuleUnreached: gotAt("No method reaches %[2]s: %[1]s. Measure from a mark beside it, set a pivot that sees it, or decide what is done with the piece."),
	RulePoor: func(p Problem) string {
		return fmt.Sprintf("Less sure than %s by the method that is used: %s. Try better pivots, a longer right angle, or another method.", p.Limit, p.Where)
	},
	RuleGone:    at("Mark %s has been printed, but nothing needs it any more."),
	RuleNoStock: gotAt("%[1]s on %[2]s have no tape chosen."),
	RuleRoll:    at("The length of a roll of %s is not known, so its rolls cannot be counted."),
	RuleTape: func(p Problem) string {
		return fmt.Sprintf("%s of %s must still be ordered%s.", p.Got, p.Where, by(p.Limit))
	},
	RuleItem: func(p Problem) string {
		return fmt.Sprintf("%s: %s must still be ordered%s.", p.Where, p.Got, by(p.Limit))
	},
	RuleLateOrder: func(p Problem) string {
		return fmt.Sprintf("Expected too late, after %s: %s of %s.", p.Limit, p.Got, p.Where)
	},
	RuleBudget: func(p Problem) string {
		return fmt.Sprintf("Tape and kit are %s over the budget of %s.", p.Got, p.Limit)
	},
	RuleCycle: func(p Problem) string { return fmt.Sprintf("These tasks wait for each other: %s.", p.Got) },
	RuleLate: func(p Problem) string {
		return fmt.Sprintf("%s ends %s, but is due %s.", p.Where, p.Got, p.Limit)
	},
	RuleHands: func(p Problem) string {
		return fmt.Sprintf("%s has %s of the %s people it needs.", p.Where, p.Got, p.Limit)
	},
	RuleClash:    at("%s is pinned to a time at which its people are taken or earlier work has not ended."),
	RuleNoPeople: func(Problem) string { return "Nobody is in the team yet." },
	RuleStandIn:  gotAt("Nothing stands in yet for %[2]s in %[1]s."),
	RuleObjects: func(p Problem) string {
		return fmt.Sprintf("%s of %s are used at once, but there are only %s.", p.Got, p.Where, p.Limit)
	},
	RuleNote: func(p Problem) string {
		who := ""
		if p.Limit != "" {
			who = " (" + p.Limit + ")"
		}
		return fmt.Sprintf("%s: %s%s", p.Where, p.Got, who)
	},
	RuleNoPosition: gotAt("%[2]s has no position on %[1]s."),
	RuleWrongMark:  gotAt("%[2]s: %[1]s"),
	RuleMoved:      gotAt("%[2]s: %[1]s"),
	RuleDoubtful: func(p Problem) string {
		return strings.TrimSpace(fmt.Sprintf("%s: %s %s", p.Where, p.Got, p.Limit))
	},
}

// Sentence says the problem in plain words.
func (p Problem) Sentence() string {
	if s, ok := sentences[p.Rule]; ok {
		return s(p)
	}
	return fmt.Sprintf("%s: %s is %s, wanted %s.", p.Where, p.Rule, p.Got, p.Limit)
}

func at(form string) func(Problem) string {
	return func(p Problem) string { return fmt.Sprintf(form, p.Where) }
}

// gotAt fills a form with Got first and Where second.
func gotAt(form string) func(Problem) string {
	return func(p Problem) string { return fmt.Sprintf(form, p.Got, p.Where) }
}

func by(day string) string {
	if day == "" {
		return ""
	}
	return " by " + day
}

// owner words what the owner of a floor allows.
func owner(rule string) string {
	switch rule {
	case "", "not asked yet":
		return "its owner has not been asked what tape the floor takes."
	case "no tape at all":
		return "its owner allows no tape at all; lay a floor cloth instead."
	}
	return "its owner allows " + rule + "."
}
