package prep

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/floor/placement"
	"groundrow/tapeout/plan"
)

// Proposals are ways to set the plan on a floor, found by a search, or what makes it
// impossible.
type Proposals struct {
	placement.Answer
	Give  []placement.Give // what would have to give, when nothing is proposed
	Alone bool             // any one of these is enough
}

// ProposePlacements searches for the best ways to set the plan on the floor, to the
// production's step where that costs next to nothing; told
// hears how much is done, from 0 to 1, and the best score so far. A context that ends
// ends the search, which answers with what it has.
func ProposePlacements(ctx context.Context, p *Production, f *floor.Floor, told func(done, best float64)) (Proposals, error) {
	c, err := placement.New(&p.Plan, f)
	if err != nil {
		return Proposals{}, err
	}
	out := Proposals{Answer: c.Search(ctx, placement.Options{Told: told})}
	for i, k := range out.Proposals {
		out.Proposals[i] = c.Rounded(k, p.Settings.Step)
	}
	if len(out.Proposals) > 0 {
		out.Proven = out.Proven && out.Bound-out.Proposals[0].Score <= placement.Gap
	}
	if len(out.Proposals) == 0 && ctx.Err() == nil {
		out.Give, out.Alone = c.WhatGives(ctx)
	}
	return out, nil
}

// PlacementScore scores the plan as it is set on the floor; ok is false when there is
// nothing to score.
func PlacementScore(p *Production, f *floor.Floor) (k placement.Kept, ok bool) {
	c, err := placement.New(&p.Plan, f)
	if m := f.Placement; err != nil || !m.Shift.Finite() || math.IsNaN(m.Turn) || math.IsInf(m.Turn, 0) {
		return placement.Kept{}, false
	}
	return c.At(f.Placement), true
}

// KeptWords says how much a placement keeps: "keeps 86.4 %: 91 % of lines, 80 % of
// playing area".
func KeptWords(k placement.Kept) string {
	parts := []string{percent(k.Lines.Part()) + " of the lines"}
	if k.Area.Of > 0 {
		parts = append(parts, percent(k.Area.Part())+" of the playing area")
	}
	if k.Sight.Of > 0 {
		parts = append(parts, percent(k.Sight.Part())+" of the lines in the front table's view")
	}
	return "keeps " + KeptPart(k) + ": " + strings.Join(parts, ", ")
}

// KeptPart is how much a placement keeps of all that counts: "86.4 %".
func KeptPart(k placement.Kept) string { return percent(k.Score) }

func percent(part float64) string { return fmt.Sprintf("%.1f %%", math.Floor(part*1000+1e-6)/10) }

// LostWords says what a placement loses and why, the greatest loss first, at most
// most elements by name; empty when nothing is lost.
func LostWords(p *Production, k placement.Kept, most int) string {
	losses := slices.Clone(k.Losses)
	worth := func(l placement.Loss) float64 {
		w := 1.0
		if e := p.Plan.Element(l.Element); e != nil {
			w = e.Worth()
		}
		return w * (l.Length + l.Area)
	}
	slices.SortStableFunc(losses, func(a, b placement.Loss) int {
		switch u, v := worth(a), worth(b); {
		case u > v:
			return -1
		case u < v:
			return 1
		}
		return 0
	})
	var parts []string
	for _, l := range losses[:min(most, len(losses))] {
		parts = append(parts, LossWords(p, l))
	}
	if more := len(losses) - len(parts); more > 0 {
		parts = append(parts, fmt.Sprintf("and of %s more", Counted(more, "element")))
	}
	return strings.Join(parts, "; ")
}

// LossWords says what of one element is lost, and why.
func LossWords(p *Production, l placement.Loss) string {
	style := p.Style()
	var why []string
	for _, w := range l.Why {
		where := string(w.Cause)
		if w.Name != "" {
			where = "on " + w.Name
		}
		if len(l.Why) > 1 {
			where = style.Format(w.Length) + " " + where
		}
		why = append(why, where)
	}
	said := fmt.Sprintf("%s: %s of %s", nameOf(p, l.Element), style.Format(l.Length), style.Format(l.Of))
	if l.Length == 0 {
		said = nameOf(p, l.Element) + ": part of its area"
	}
	if len(why) > 0 {
		said += " " + strings.Join(why, ", ")
	}
	return said
}

// mostBroken is how many elements are named of those that are not whole.
const mostBroken = 3

// BreachWords says which requirements a placement does not keep to, naming a few of
// the elements that are not whole; empty when it keeps to all.
func BreachWords(p *Production, k placement.Kept) string {
	var broken, parts []string
	for _, b := range k.Breaches {
		if b.Need == placement.Whole && b.Name == "" {
			broken = append(broken, nameOf(p, b.Element))
			continue
		}
		parts = append(parts, breachWords(p, b))
	}
	if more := len(broken) - mostBroken; more > 1 {
		broken = append(broken[:mostBroken], fmt.Sprintf("%d more", more))
	}
	switch len(broken) {
	case 0:
	case 1:
		parts = append([]string{broken[0] + mustBeWhole}, parts...)
	default:
		parts = append([]string{Listed(broken) + " must be whole and are not"}, parts...)
	}
	return strings.Join(parts, "; ")
}

const mustBeWhole = " must be whole and is not"

// BreachList says of each requirement that a placement does not keep to which it is.
func BreachList(p *Production, k placement.Kept) []string {
	out := make([]string, len(k.Breaches))
	for i, b := range k.Breaches {
		out[i] = breachWords(p, b)
	}
	return out
}

func breachWords(p *Production, b placement.Breach) string {
	switch {
	case b.Need == placement.Whole && b.Name != "":
		return fmt.Sprintf("%s stands in %s, which must be whole", b.Name, nameOf(p, b.Element))
	case b.Need == placement.Whole:
		return nameOf(p, b.Element) + mustBeWhole
	}
	return string(b.Need)
}

// GuaranteeWords says how good the best proposal is known to be.
func (a Proposals) GuaranteeWords() string {
	switch {
	case len(a.Proposals) == 0:
		return ""
	case a.Proven:
		return fmt.Sprintf("No placement keeps more than %s.", percentUp(a.Bound))
	}
	return fmt.Sprintf("The search was cut off: another placement may keep up to %s.", percentUp(a.Bound))
}

func percentUp(part float64) string { return fmt.Sprintf("%.1f %%", math.Ceil(part*1000-1e-6)/10) }

// NoneWords says why nothing is proposed and what would have to give.
func (a Proposals) NoneWords(p *Production) string {
	if len(a.Proposals) > 0 {
		return ""
	}
	said := "No placement keeps to everything that is required."
	if !a.None {
		said = "No placement was found that keeps to everything that is required; the search was cut off before it was certain that there is none."
	}
	var parts []string
	for _, g := range a.Give {
		parts = append(parts, giveWords(p, g))
	}
	switch {
	case len(parts) == 0:
		return said + " No single requirement is in the way: leave out or cut short what is largest, or look for a larger room."
	case len(parts) == 1:
		return said + " It becomes possible when this gives way: " + parts[0] + "."
	case a.Alone:
		return said + " It becomes possible when any one of these gives way: " + strings.Join(parts, "; ") + "."
	}
	return said + " These would have to give way together: " + strings.Join(parts, "; ") + "."
}

func giveWords(p *Production, g placement.Give) string {
	switch g.What {
	case placement.WholeElement:
		e := p.Plan.Element(g.Element)
		use := plan.Essential
		if e != nil {
			use = e.Use
		}
		return fmt.Sprintf("%s is %s and must be whole (cut it short, or leave it out)", nameOf(p, g.Element), use)
	case placement.ClearArea:
		return g.Name + " must stay clear"
	case placement.ObstacleAway:
		return g.Name + " stands where it stands"
	}
	return string(g.What)
}
