package prep

import (
	"fmt"
	"slices"
	"time"

	"groundrow/tapeout/floor"
	"groundrow/tapeout/plan"
)

// Question is something about a floor that the director must decide.
type Question struct {
	ID       string         // of the element or the note; what a row of a list is called
	Element  plan.ElementID // empty: the whole floor
	Note     string         // the note that asks it; empty: the floor asks it
	About    string
	Text     string
	Proposal floor.Treatment // what is proposed; How is empty where nothing is
	Proposed string          // the proposal in words
}

// Answer is what was answered to a question, on record for good.
type Answer struct {
	ID       string
	Floor    floor.ID
	Element  plan.ElementID // empty: about the whole floor, or of what has been deleted
	About    string         // its name at the time
	Question string
	Text     string
	By       string
	On       time.Time
}

// Questions returns what nobody has decided on this floor: first what sticks out or
// is treated without a decision, in plan order, then the open notes. proposals are
// those of Propose for the floor.
func Questions(p *Production, w *FloorWork, proposals []floor.Treatment) []Question {
	over := map[plan.ElementID]floor.Overhang{}
	for _, o := range w.Overhangs {
		over[o.Element] = o
	}
	proposed := map[plan.ElementID]floor.Treatment{}
	for _, t := range proposals {
		proposed[t.Element] = t
	}
	var out []Question
	for i := range p.Plan.Elements {
		e := &p.Plan.Elements[i]
		t := w.Floor.Decide(e)
		o, sticks := over[e.ID]
		goesWithoutSaying := w.Floor.Kind == floor.Stage && e.Kind.House()
		if !t.Decided.Open() || goesWithoutSaying || !sticks && t.How == floor.AsDrawn {
			continue
		}
		q := Question{ID: string(e.ID), Element: e.ID, About: e.Name, Proposal: t}
		if t.How == floor.AsDrawn {
			q.Proposal = proposed[e.ID]
		}
		q.Text = questionText(p, e, t, o)
		q.Proposed = ProposalWords(p, q.Proposal)
		out = append(out, q)
	}
	for _, n := range p.Notes {
		if n.Open {
			out = append(out, noteQuestion(p, n))
		}
	}
	return out
}

func questionText(p *Production, e *plan.Element, t floor.Treatment, o floor.Overhang) string {
	use := string(e.Use)
	if use == "" {
		use = "of unknown use"
	}
	switch {
	case o.Length > 0:
		return fmt.Sprintf("It does not fit: %s of its %s of lines lie outside the floor. It is %s. Where does it go?",
			p.Style().Format(o.Length), p.Style().Format(o.Of), use)
	case t.How == floor.LeftOut:
		return "It is " + use + ". Can it be rehearsed without?"
	case t.How == floor.ObjectOnly:
		return "It is " + use + ". Is an object in its place enough?"
	}
	return "It is " + use + ". Is this how it is rehearsed?"
}

func noteQuestion(p *Production, n Note) Question {
	q := Question{ID: n.ID, Note: n.ID, Element: n.Element, About: "the whole floor", Text: n.Text, Proposed: "no proposal yet"}
	if e := p.Plan.Element(n.Element); e != nil {
		q.About = e.Name
	}
	if n.Owner != "" {
		q.Text += " (" + n.Owner + ")"
	}
	return q
}

// ProposalWords words what is proposed: "Moved aside 4' 0\" to stage left: it lies
// outside."
func ProposalWords(p *Production, t floor.Treatment) string {
	if t.How == "" || t.How == floor.AsDrawn {
		return "no proposal yet"
	}
	s := string(t.How)
	if t.How == floor.MovedAside {
		s += " " + offset(p.Style(), t.Over, t.Up)
	}
	if t.Reason != "" {
		s += ": " + t.Reason
	}
	return s + "."
}

// Settle puts an answer on record, as one step of an edit. On a question of the
// floor it decides the treatment; an empty how keeps what the floor does with the
// element now. On a note it closes it. It fails when what was asked about is gone,
// or nobody is named.
func (p *Production) Settle(q Question, a Answer, t floor.Treatment) error {
	f := p.Floor(a.Floor)
	if f == nil {
		return fmt.Errorf("the floor is not there any more: somebody has deleted it")
	}
	if a.By == "" {
		return fmt.Errorf("say who answered: a decision without a name binds nobody")
	}
	a.Question, a.About, a.Element = q.Text, q.About, q.Element
	if q.Note != "" {
		i := slices.IndexFunc(p.Notes, func(n Note) bool { return n.ID == q.Note })
		if i < 0 {
			return fmt.Errorf("the note is not there any more: somebody has deleted it")
		}
		p.Notes[i].Open = false
		p.Answers = append(p.Answers, a)
		return nil
	}
	e := p.Plan.Element(q.Element)
	if e == nil {
		return fmt.Errorf("the element is not there any more: somebody has deleted it")
	}
	if t.How == "" {
		t = f.Decide(e)
	}
	t.Element, t.Decided = e.ID, floor.Decision{By: a.By, On: a.On}
	f.SetTreatment(t)
	p.Answers = append(p.Answers, a)
	return nil
}

// AnswersOn returns what was answered about a floor, the latest first.
func (p *Production) AnswersOn(id floor.ID) []Answer {
	out := filter(p.Answers, func(a Answer) bool { return a.Floor == id })
	slices.SortStableFunc(out, func(a, b Answer) int { return b.On.Compare(a.On) })
	return out
}
