package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"groundrow/prep"
)

// comparison is what differs between two floors, in JSON.
type comparison struct {
	From     string          `json:"from"`
	To       string          `json:"to"`
	Datum    string          `json:"datum_differs"`
	Elements []comparedThing `json:"elements"`
	Tape     []comparedStock `json:"tape"`
}

type comparedThing struct {
	Element string   `json:"element"`
	Kind    string   `json:"kind"`
	Here    thingOn  `json:"here"`
	There   thingOn  `json:"there"`
	Differs []string `json:"differs"`
}

// thingOn is one element on one floor; without a place where it is left out.
type thingOn struct {
	Treatment string   `json:"treatment"`
	Up        *metres  `json:"up_m"`
	Over      *metres  `json:"over_m"`
	Laid      metres   `json:"lines_m"`
	Cut       metres   `json:"cut_m"`
	Marks     []string `json:"marks"`
}

type comparedStock struct {
	Stock string `json:"stock"`
	Here  metres `json:"here_m"`
	There metres `json:"there_m"`
}

// compareCommand tells what differs between two floors.
func compareCommand(s *session) *cobra.Command {
	var from, to string
	var all bool
	c := &cobra.Command{
		Use:   "compare FILE",
		Short: "Tell what differs between two floors",
		Long: "Compare any two floors on which the plan is laid: what each does with every element, where its first drawn corner lies by up and over from that floor's own datum, " +
			"how much of it is cut away, its marks, and the tape that both take. What is laid alike is left out of the list unless --all is given; JSON has everything.",
		Example: "  groundrow compare demo.groundrow --from \"Tannery Hall\" --to \"Loft Studio\"\n" +
			"  groundrow compare demo.groundrow --json\n" +
			"  → { \"from\": \"Tannery Hall\", \"to\": \"Tidewrack Playhouse, stage\", \"elements\": [ { \"element\": \"Front door\", \"here\": { \"treatment\": \"as drawn\", \"up_m\": 9.1, … }, \"there\": { … }, \"differs\": […] }, … ], \"tape\": […] }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			here, there, err := handOverFloors(p.P, from, to)
			if err != nil {
				return err
			}
			if here.ID == there.ID {
				return fmt.Errorf("%s cannot be compared with itself; name two floors with --from and --to", here.Name)
			}
			c := prep.Compare(p.P, p.work(here.ID), p.work(there.ID))
			if s.json {
				return s.writeJSON(comparisonOf(p.P, c))
			}
			return s.tellComparison(p.P, c, all)
		}),
	}
	c.Flags().StringVar(&from, "from", "", "one floor (default: the first that is no stage)")
	c.Flags().StringVar(&to, "to", "", "the other floor (default: the first stage)")
	c.Flags().BoolVar(&all, "all", false, "list what is laid alike as well")
	s.asksJSON(c)
	return c
}

func comparisonOf(p *prep.Production, c prep.Comparison) comparison {
	out := comparison{From: c.A.Name, To: c.B.Name, Datum: c.Datum, Elements: []comparedThing{}, Tape: []comparedStock{}}
	for _, r := range c.Rows {
		out.Elements = append(out.Elements, comparedThing{
			Element: r.Name, Kind: string(r.Kind), Here: thingOnOf(r.A), There: thingOnOf(r.B), Differs: none(r.Differs),
		})
	}
	for _, t := range c.Tape {
		out.Tape = append(out.Tape, comparedStock{stockName(p, t.Stock), metres(t.A), metres(t.B)})
	}
	return out
}

func thingOnOf(x prep.OnFloor) thingOn {
	out := thingOn{Treatment: string(x.Treatment.How), Laid: metres(x.Laid), Cut: metres(x.Cut), Marks: []string{}}
	if x.Placed {
		up, over := metres(x.At.Y), metres(x.At.X)
		out.Up, out.Over = &up, &over
	}
	for _, m := range x.Marks {
		out.Marks = append(out.Marks, m.Label)
	}
	return out
}

func (s *session) tellComparison(p *prep.Production, c prep.Comparison, all bool) error {
	style := p.Style()
	place := func(x prep.OnFloor) string {
		if !x.Placed {
			return ""
		}
		return style.FormatUp(x.At.Y) + ", " + style.FormatOver(x.At.X)
	}
	list := newTable("Element", "Here", "There", "First corner here", "First corner there", "What differs")
	for _, r := range c.Rows {
		if all || len(r.Differs) > 0 {
			list.row(r.Name, string(r.A.Treatment.How), string(r.B.Treatment.How), place(r.A), place(r.B), strings.Join(r.Differs, "; "))
		}
	}
	fmt.Fprintf(s.out, "%s (here) and %s (there): %s laid otherwise, %d alike\n\n", c.A.Name, c.B.Name,
		prep.Counted(c.Different(), "element"), len(c.Rows)-c.Different())
	if c.Datum != "" {
		fmt.Fprintf(s.out, "The datum there lies elsewhere: %s\n\n", c.Datum)
	}
	if err := list.write(s.out); err != nil {
		return err
	}
	tape := newTable("Tape", ">Here", ">There")
	for _, t := range c.Tape {
		tape.row(stockName(p, t.Stock), style.Format(t.A), style.Format(t.B))
	}
	fmt.Fprintln(s.out)
	return tape.write(s.out)
}
