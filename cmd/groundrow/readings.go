package main

import (
	"fmt"

	"github.com/google/uuid"
	"github.com/spf13/cobra"

	"groundrow/prep"
)

// judged is the verdict on a floor in JSON.
type judged struct {
	Floor     string        `json:"floor"`
	Verdict   string        `json:"verdict"`
	Sentence  string        `json:"sentence"`
	Next      string        `json:"next"`
	Readings  []readMeasure `json:"readings"`
	Unchecked []string      `json:"unchecked"`
	OneWay    []string      `json:"checked_one_way"`
	Ask       []asked       `json:"measure_also"`
}

type readMeasure struct {
	From     string `json:"from"`
	To       string `json:"to"`
	Typed    string `json:"typed"`
	Read     metres `json:"read_m"`
	Expected metres `json:"expected_m"`
	Off      metres `json:"off_m"`
	Grade    string `json:"grade"`
	Cause    string `json:"cause,omitempty"`
	By       string `json:"by"`
}

type asked struct {
	From     string `json:"from"`
	To       string `json:"to"`
	Expected metres `json:"expected_m"`
	Why      string `json:"why"`
}

// readingsCommand lists and judges the check measures that have been read.
func readingsCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "readings FILE",
		Short: "List the check measures read on a floor and judge them",
		Long: "List the check measures that have been read on a floor, each with what is expected, the difference and the likely slip, " +
			"and say whether the floor is accepted, has wrong or doubtful marks, or is not checked enough, and what to do next.",
		Example: "  groundrow readings demo.groundrow --floor \"Tannery Hall\"\n  groundrow readings demo.groundrow --json\n" +
			"  → { \"floor\": \"Tannery Hall\", \"verdict\": \"not enough checked\", \"readings\": [ { \"from\": \"A\", \"to\": \"K\", \"read_m\": 3.81, \"expected_m\": 3.8125, … } ], … }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			return s.tellReadings(p.P, p.work(f.ID))
		}),
	}
	s.asksFloor(c)
	s.asksJSON(c)
	return c
}

// readCommand keeps one check measure.
func readCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "read FILE FROM TO LENGTH",
		Short: "Keep a check measure that was read, and judge it",
		Long:  "Keep the length read between two marks of a floor, or between a mark and a pivot, and say what follows. A pivot is called \"pivot 1\" or \"pivot 2\".",
		Example: "  groundrow read demo.groundrow A K \"12' 6 1/2\\\"\" --floor \"Tannery Hall\" --who Wren\n  groundrow read demo.groundrow A K \"12' 6 1/2\\\"\" --json\n" +
			"  → { \"floor\": \"Tannery Hall\", \"verdict\": \"not enough checked\", \"readings\": [ { \"from\": \"A\", \"to\": \"K\", \"read_m\": 3.81, … } ], … }",
		Args: takes("FILE", "FROM", "TO", "LENGTH"),
		RunE: s.reads(func(c *cobra.Command, p *production, args []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			w := p.work(f.ID)
			r := prep.Reading{ID: uuid.NewString(), From: args[0], To: args[1], Text: args[2], By: s.worker(), On: s.now()}
			err = p.Edit(c.Context(), p.Snapshot, "Keep a reading on "+f.Name, func(to *prep.Production) error {
				return to.KeepReading(w, r)
			})
			if err != nil {
				return err
			}
			now := p.Now().P
			return s.tellReadings(now, prep.Work(now, f.ID, ""))
		}),
	}
	s.asksFloor(c)
	s.asksWho(c)
	s.asksJSON(c)
	return c
}

func (s *session) tellReadings(p *prep.Production, w *prep.FloorWork) error {
	v := w.Verdict()
	if s.json {
		return s.writeJSON(judgedOf(p, w, v))
	}
	style := p.Style()
	t := newTable("From", "To", ">Read", ">Expected", ">Off", "", "Verdict", "By")
	for _, r := range v.Readings {
		t.row(r.From, r.To, p.ShowReading(r.Reading), style.Format(r.Expected), style.Format(r.Off), r.Grade.Sign(), r.Words(), r.By)
	}
	if err := t.write(s.out); err != nil {
		return err
	}
	_, err := fmt.Fprintf(s.out, "%s: %s\n%s\n", w.Floor.Name, v.Sentence(p), v.Next(p))
	return err
}

func judgedOf(p *prep.Production, w *prep.FloorWork, v *prep.Verdict) judged {
	out := judged{
		Floor: w.Floor.Name, Verdict: string(v.State), Sentence: v.Sentence(p), Next: v.Next(p),
		Readings: []readMeasure{}, Unchecked: append([]string{}, v.Unchecked...), OneWay: append([]string{}, v.OneWay...), Ask: []asked{},
	}
	for _, r := range v.Readings {
		out.Readings = append(out.Readings, readMeasure{
			r.From, r.To, r.Text, metres(r.Metres), metres(r.Expected), metres(r.Off), string(r.Grade), r.Cause, r.By,
		})
	}
	for _, a := range v.Ask {
		out.Ask = append(out.Ask, asked{a.From, a.To, metres(a.Expected), a.Why})
	}
	return out
}
