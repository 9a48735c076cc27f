package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// questioned is what is asked and was answered about a floor, in JSON.
type questioned struct {
	Floor    string         `json:"floor"`
	Open     []openQuestion `json:"open"`
	Answered []answered     `json:"answered"`
}

type openQuestion struct {
	Number   int    `json:"number"`
	About    string `json:"about"`
	Question string `json:"question"`
	Proposal string `json:"proposal"`
}

type answered struct {
	About    string `json:"about"`
	Question string `json:"question"`
	Answer   string `json:"answer"`
	By       string `json:"by"`
	On       string `json:"on"`
}

// answering is an answer that a person typed.
type answering struct {
	number           int
	text, by, how    string
	takeAllProposals bool
}

// questionsCommand lists the questions for the director, or puts an answer on record.
func questionsCommand(s *session) *cobra.Command {
	var a answering
	c := &cobra.Command{
		Use:   "questions FILE",
		Short: "List what the director must decide about a floor, or put an answer on record",
		Long: "List what sticks out of a floor or is treated without anybody's decision, with what is proposed and why, and what was answered so far. " +
			"With --answer the question of that number is answered: what was said, by whom, and how the element is laid (the proposal, unless --how says otherwise). " +
			"With --propose every proposal is laid on the floor, to be decided; undo takes it back.",
		Example: "  groundrow questions demo.groundrow --floor \"Tannery Hall\"\n" +
			"  groundrow questions demo.groundrow --answer 2 --text \"Cut it\" --by \"Ines Marlowe\" --how \"cut short\"\n" +
			"  groundrow questions demo.groundrow --json\n  → { \"floor\": \"Tannery Hall\", \"open\": [ { \"number\": 1, \"about\": \"Boat track\", \"question\": \"…\", \"proposal\": \"…\" } ], \"answered\": [] }",
		Args: takes("FILE"),
		RunE: s.reads(func(c *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			if a.takeAllProposals {
				if err := a.propose(c, p, f); err != nil {
					return err
				}
				p = p.again()
			}
			if a.number != 0 {
				if err := a.settle(c, s, p, f); err != nil {
					return err
				}
				p = p.again()
			}
			return s.tellQuestions(c.Context(), p, p.P.Floor(f.ID))
		}),
	}
	c.Flags().IntVar(&a.number, "answer", 0, "the number of the question that is answered")
	c.Flags().StringVar(&a.text, "text", "", "what was answered")
	c.Flags().StringVar(&a.by, "by", "", "who answered")
	c.Flags().StringVar(&a.how, "how", "", "how the element is laid (default: as proposed)")
	c.Flags().BoolVar(&a.takeAllProposals, "propose", false, "lay everything as proposed, to be decided")
	s.asksFloor(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

// again is the production as it is after an edit.
func (p *production) again() *production {
	return &production{File: p.File, Snapshot: p.Now(), works: map[floor.ID]*prep.FloorWork{}}
}

func (a answering) propose(c *cobra.Command, p *production, f *floor.Floor) error {
	proposals, err := prep.Propose(c.Context(), p.P, f)
	if err != nil {
		return err
	}
	if len(proposals) == 0 {
		return errors.New("there is nothing to propose on " + f.Name)
	}
	return p.Edit(c.Context(), p.Snapshot, "Lay everything as proposed on "+f.Name, func(to *prep.Production) error {
		prep.TakeProposals(to, f.ID, proposals)
		return nil
	})
}

// questions are the open ones of a floor.
func (p *production) questions(ctx context.Context, f *floor.Floor) ([]prep.Question, error) {
	proposals, err := prep.Propose(ctx, p.P, f)
	if err != nil {
		return nil, err
	}
	return prep.Questions(p.P, p.work(f.ID), proposals), nil
}

func (a answering) settle(c *cobra.Command, s *session, p *production, f *floor.Floor) error {
	open, err := p.questions(c.Context(), f)
	if err != nil {
		return err
	}
	if a.number < 1 || a.number > len(open) {
		return fmt.Errorf("--answer: there is no question %d on %s; it has %s", a.number, f.Name, prep.Counted(len(open), "open question"))
	}
	q := open[a.number-1]
	t := q.Proposal
	if a.how != "" {
		how, err := howNamed(a.how)
		if err != nil {
			return err
		}
		if t.How != how {
			t = floor.Treatment{How: how, Reason: a.text}
		}
	}
	return p.Edit(c.Context(), p.Snapshot, "Put the answer on record: "+q.About, func(to *prep.Production) error {
		return to.Settle(q, prep.Answer{ID: uuid.NewString(), Floor: f.ID, Text: a.text, By: a.by, On: s.now()}, t)
	})
}

func howNamed(name string) (floor.How, error) {
	for _, h := range floor.Hows {
		if string(h) == name {
			return h, nil
		}
	}
	return "", fmt.Errorf("--how: %q is no treatment; write one of %q", name, floor.Hows)
}

func (s *session) tellQuestions(ctx context.Context, p *production, f *floor.Floor) error {
	out := questioned{Floor: f.Name, Open: []openQuestion{}, Answered: []answered{}}
	list := newTable(">No.", "About", "Question", "Proposal")
	open, err := p.questions(ctx, f)
	if err != nil {
		return err
	}
	for i, q := range open {
		out.Open = append(out.Open, openQuestion{i + 1, q.About, q.Text, q.Proposed})
		list.row(fmt.Sprint(i+1), q.About, q.Text, q.Proposed)
	}
	record := newTable("About", "Question", "Answer", "Who", "When")
	for _, a := range p.P.AnswersOn(f.ID) {
		out.Answered = append(out.Answered, answered{a.About, a.Question, a.Text, a.By, day(a.On)})
		record.row(a.About, a.Question, a.Text, a.By, day(a.On))
	}
	if s.json {
		return s.writeJSON(out)
	}
	if err := list.write(s.out); err != nil {
		return err
	}
	fmt.Fprintln(s.out)
	return record.write(s.out)
}
