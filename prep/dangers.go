package prep

import (
	"slices"

	"groundrow/tapeout/floor"
)

// worst orders rules by how much they endanger the first rehearsal.
var worst = []string{
	RuleNoPlan, RuleNoRehearsal, RuleOwner, RuleNotMeasured, RuleLate, RuleCycle, RuleNoPeople, RuleLateOrder,
	RuleKeepClear, RuleTape, RuleHands, RuleClash, RuleOutside, RuleOpen, RuleNoStock, RuleObjects,
	RuleItem, RulePivots, RuleStandIn, RuleBudget, RuleNoScale,
}

// dangers returns the worst problem of each of the gravest rules.
func (j *job) dangers() []Problem {
	all := j.problems()
	var out []Problem
	for _, rule := range worst {
		if len(out) == mostDangers {
			break
		}
		if i := slices.IndexFunc(all, func(p Problem) bool { return p.Rule == rule }); i >= 0 {
			out = append(out, all[i])
		}
	}
	return out
}

// problems gathers the problems of every part of the job. Those of a stage do
// not endanger the first rehearsal and are left to the transfer.
func (j *job) problems() []Problem {
	var out []Problem
	if j.p.Settings.FirstRehearsal.IsZero() {
		out = append(out, Problem{Rule: RuleNoRehearsal, Place: PlaceWeek})
	}
	if len(j.p.Plan.Elements) == 0 {
		out = append(out, Problem{Rule: RuleNoPlan, Place: PlacePlan})
	} else if !(j.p.Plan.Scale > 0) {
		out = append(out, Problem{Rule: RuleNoScale, Place: PlacePlan})
	}
	for _, w := range j.floors {
		if w.Floor.Kind != floor.Stage {
			out = append(out, w.Problems...)
			out = append(out, readingProblems(j.p, w)...)
			out = append(out, moveProblems(j.p, w.Floor.ID)...)
		}
	}
	out = append(out, j.supplyProblems()...)
	out = append(out, j.crew.Problems(j.p)...)
	return append(out, StandInProblems(j.p)...)
}
