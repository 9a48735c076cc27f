package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/plan"
)

// run is the tape of one stock in JSON.
type tapeRun struct {
	Stock     string `json:"stock"`
	Lines     metres `json:"lines_m"`
	Strips    int    `json:"strips"`
	Overlaps  metres `json:"overlaps_m"`
	Patches   metres `json:"patches_m"`
	Tabs      metres `json:"tabs_m"`
	Spikes    metres `json:"spikes_m"`
	Figures   metres `json:"dance_figures_m"`
	Wear      metres `json:"wear_m"`
	Waste     metres `json:"waste_m"`
	Total     metres `json:"total_m"`
	Rolls     int    `json:"rolls"`
	Undecided bool   `json:"no_stock_chosen,omitempty"`
}

// undecided names the run of what has no tape chosen.
const undecided = "no tape chosen"

// tapeCommand tells the tape of one floor.
func tapeCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "tape FILE",
		Short: "Tell the tape that a floor needs, by stock",
		Long: "Tell how much of which tape a floor needs: the lines, each laid once however many things draw it, and what is added for overlaps, " +
			"patches, tabs, spikes, dance-line figures, wear and waste. Shelf and orders are counted by the command buy, over all floors.",
		Example: "  groundrow tape demo.groundrow --floor \"Tannery Hall\"\n  groundrow tape demo.groundrow --json\n  → [ { \"stock\": \"Red, 1 in cloth\", \"lines_m\": 41.2, \"strips\": 23, …, \"total_m\": 52.9, \"rolls\": 1 }, … ]",
		Args:    takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			f, err := s.chosenFloor(p.P)
			if err != nil {
				return err
			}
			runs := p.work(f.ID).Tape
			if s.json {
				return s.writeJSON(runsOf(p.P, runs))
			}
			return runsTable(p.P, runs).write(s.out)
		}),
	}
	s.asksFloor(c)
	s.asksJSON(c)
	return c
}

func stockName(p *prep.Production, id plan.StockID) string {
	if stock := p.Stock(id); stock != nil {
		return stock.Name
	}
	return undecided
}

func runsOf(p *prep.Production, runs []supplies.Run) []tapeRun {
	out := []tapeRun{}
	for _, r := range runs {
		out = append(out, tapeRun{
			Stock: stockName(p, r.Stock), Lines: metres(r.Lines), Strips: r.Strips, Overlaps: metres(r.Overlaps),
			Patches: metres(r.Patches), Tabs: metres(r.Tabs), Spikes: metres(r.Spikes), Figures: metres(r.Figures),
			Wear: metres(r.Wear), Waste: metres(r.Waste), Total: metres(r.Total), Rolls: r.Rolls, Undecided: r.Stock == "",
		})
	}
	return out
}

func runsTable(p *prep.Production, runs []supplies.Run) *table {
	t := newTable("Stock", ">Lines", ">Strips", ">Overlaps", ">Patches", ">Tabs", ">Spikes", ">Figures", ">Wear", ">Waste", ">Total", ">Rolls")
	style := p.Style()
	for _, r := range runs {
		t.row(stockName(p, r.Stock), style.Format(r.Lines), strconv.Itoa(r.Strips), style.Format(r.Overlaps), style.Format(r.Patches),
			style.Format(r.Tabs), style.Format(r.Spikes), style.Format(r.Figures), style.Format(r.Wear), style.Format(r.Waste),
			style.Format(r.Total), strconv.Itoa(r.Rolls))
	}
	return t
}
