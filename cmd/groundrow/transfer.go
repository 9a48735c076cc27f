package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/tapeout/floor"
)

// handOver is a transfer in JSON.
type handOver struct {
	From     string       `json:"from"`
	To       string       `json:"to"`
	Elements []handedOver `json:"elements"`
	Stops    []rest       `json:"stops"`
	Tape     []tapeRun    `json:"tape"`
	Open     []note       `json:"open_notes"`
	Missing  []problem    `json:"missing"`
}

type handedOver struct {
	Element string   `json:"element"`
	Kind    string   `json:"kind"`
	Goes    bool     `json:"goes"`
	Here    string   `json:"here"`
	There   string   `json:"there"`
	Stock   string   `json:"stock"`
	Changes []string `json:"changes"`
	Marks   []mark   `json:"marks"`
}

type note struct {
	About string `json:"about,omitempty"`
	Text  string `json:"text"`
	Owner string `json:"owner"`
}

// transferCommand tells what the team at the next floor needs.
func transferCommand(s *session) *cobra.Command {
	var from, to string
	c := &cobra.Command{
		Use:   "transfer FILE",
		Short: "Tell what the team at the next floor needs",
		Long: "Compare two floors element by element: what goes, what was done otherwise here, and where each thing lies there, " +
			"from that floor's own datum and by its own marks. What would be missing if it were handed over today goes to the messages.",
		Example: "  groundrow transfer demo.groundrow --from \"Tannery Hall\" --to \"Tidewrack stage\" --json\n" +
			"  → { \"from\": \"Tannery Hall\", \"to\": \"Tidewrack stage\", \"elements\": [ { \"element\": \"Front door\", \"goes\": true, \"changes\": […], \"marks\": […] }, … ], … }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			here, there, err := handOverFloors(p.P, from, to)
			if err != nil {
				return err
			}
			t, err := prep.TransferRows(p.P, here.ID, there.ID)
			if err != nil {
				return err
			}
			if s.json {
				return s.writeJSON(handOverOf(p.P, t))
			}
			return s.tellTransfer(p.P, t)
		}),
	}
	c.Flags().StringVar(&from, "from", "", "the floor that hands on (default: the first that is no stage)")
	c.Flags().StringVar(&to, "to", "", "the floor that takes over (default: the first stage)")
	s.asksJSON(c)
	return c
}

func handOverFloors(p *prep.Production, from, to string) (here, there *floor.Floor, err error) {
	if here, err = floorOr(p, from, func(k floor.Kind) bool { return k != floor.Stage }); err != nil {
		return nil, nil, fmt.Errorf("handing on from: %w", err)
	}
	if there, err = floorOr(p, to, func(k floor.Kind) bool { return k == floor.Stage }); err != nil {
		return nil, nil, fmt.Errorf("handing on to: %w", err)
	}
	return here, there, nil
}

// floorOr returns the named floor or, without a name, the first of a kind.
func floorOr(p *prep.Production, name string, kind func(floor.Kind) bool) (*floor.Floor, error) {
	if name != "" {
		return floorNamed(p, name)
	}
	i := slices.IndexFunc(p.Floors, func(f floor.Floor) bool { return kind(f.Kind) })
	if i < 0 {
		return nil, errors.New("the production has no such floor; name one with --from or --to")
	}
	return &p.Floors[i], nil
}

func handOverOf(p *prep.Production, t prep.Transfer) handOver {
	out := handOver{
		From: t.From.Name, To: t.To.Name, Elements: []handedOver{}, Stops: restsOf(t.Rests), Tape: runsOf(p, t.Tape),
		Open: []note{}, Missing: problemsOf(t.Problems),
	}
	for _, r := range t.Rows {
		out.Elements = append(out.Elements, handedOver{
			Element: r.Name, Kind: string(r.Kind), Goes: r.Goes, Here: string(r.Here.How), There: string(r.There.How),
			Stock: stockName(p, r.Stock), Changes: none(r.Changes), Marks: marksOf(p, r.Marks),
		})
	}
	for _, n := range t.Open {
		o := note{Text: n.Text, Owner: n.Owner}
		if e := p.Plan.Element(n.Element); e != nil {
			o.About = e.Name
		}
		out.Open = append(out.Open, o)
	}
	return out
}

func (s *session) tellTransfer(p *prep.Production, t prep.Transfer) error {
	list := newTable("Element", "Goes", "Here", "There", "Marks there", "What changed")
	for _, r := range t.Rows {
		var labels []string
		for _, m := range r.Marks {
			labels = append(labels, m.Label)
		}
		list.row(r.Name, yes(r.Goes), string(r.Here.How), string(r.There.How), strings.Join(labels, " "), strings.Join(r.Changes, " "))
	}
	fmt.Fprintf(s.out, "From %s to %s\n\n", t.From.Name, t.To.Name)
	if err := list.write(s.out); err != nil {
		return err
	}
	for _, problem := range t.Problems {
		fmt.Fprintln(s.messages, problem.Sentence())
	}
	return nil
}
