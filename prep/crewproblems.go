package prep

import "fmt"

// Problems names what is wrong with the plan: tasks that wait for each other,
// are late, lack people, or are pinned where they cannot be.
func (c CrewPlan) Problems(p *Production) []Problem {
	names := map[string]string{}
	for _, t := range p.Tasks {
		names[t.ID] = t.Name
	}
	var out []Problem
	add := func(rule, where, id, got, limit string) {
		out = append(out, Problem{Rule: rule, Where: where, Place: PlaceCrew, ID: id, Got: got, Limit: limit})
	}
	for _, group := range c.Cycles {
		var ns []string
		for _, id := range group {
			ns = append(ns, names[id])
		}
		add(RuleCycle, ns[0], group[0], Listed(ns), "")
	}
	if len(p.People) == 0 && len(c.Tasks) > 0 {
		add(RuleNoPeople, "", "", "", "")
	}
	for _, a := range c.Tasks {
		if a.Late > 0 {
			add(RuleLate, a.Name, a.Task, moment(a.End), moment(a.Due))
		}
		if a.Short() && len(p.People) > 0 {
			add(RuleHands, a.Name, a.Task, fmt.Sprint(len(a.People)), fmt.Sprint(a.Wanted))
		}
		if a.Clash {
			add(RuleClash, a.Name, a.Task, "", "")
		}
	}
	return out
}
