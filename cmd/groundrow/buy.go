package main

import (
	"fmt"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"groundrow/prep"
	"groundrow/supplies"
)

// purchase is what must be bought, in JSON.
type purchase struct {
	Tape   []tapeBuy `json:"tape"`
	Kit    []kitBuy  `json:"kit"`
	Budget budget    `json:"budget"`
}

type tapeBuy struct {
	Stock   string  `json:"stock"`
	Total   metres  `json:"total_m"`
	Rolls   int     `json:"rolls"`
	Shelf   float64 `json:"shelf_rolls"`
	Coming  int     `json:"coming_rolls"`
	Buy     int     `json:"buy_rolls"`
	Cents   int     `json:"cost_cents"`
	OrderBy string  `json:"order_by,omitempty"`
}

type kitBuy struct {
	Item    string `json:"item"`
	Need    int    `json:"need"`
	Shelf   int    `json:"shelf"`
	Coming  int    `json:"coming"`
	Buy     int    `json:"buy"`
	Cents   int    `json:"cost_cents"`
	OrderBy string `json:"order_by,omitempty"`
}

type budget struct {
	Placed int `json:"placed_cents"`
	Tape   int `json:"tape_cents"`
	Kit    int `json:"kit_cents"`
	Total  int `json:"total_cents"`
	Limit  int `json:"limit_cents"`
	Over   int `json:"over_cents"`
}

// buyCommand tells what must be bought.
func buyCommand(s *session) *cobra.Command {
	c := &cobra.Command{
		Use:   "buy FILE",
		Short: "Tell what must be bought, by when and for how much",
		Long: "Tell what tape and kit must be bought for all floors together: less what is on the shelf and on order, in whole rolls, " +
			"with the day by which it must be ordered, and how the sum stands against the budget.",
		Example: "  groundrow buy demo.groundrow\n  groundrow buy demo.groundrow --json\n" +
			"  → { \"tape\": [ { \"stock\": \"Red, 1 in cloth\", \"total_m\": 80.3, \"rolls\": 2, …, \"buy_rolls\": 1, \"cost_cents\": 1400, \"order_by\": \"2031-03-05\" }, … ], \"kit\": […], \"budget\": {…} }",
		Args: takes("FILE"),
		RunE: s.reads(func(_ *cobra.Command, p *production, _ []string) error {
			runs, needs := prep.Purchase(p.P, p.work), prep.KitNeeds(p.P, p.work)
			b := supplies.BudgetOf(runs, needs, p.P.Stocks, p.P.Orders, p.P.Settings.BudgetCents)
			if s.json {
				return s.writeJSON(purchaseOf(p.P, runs, needs, b))
			}
			return s.tellPurchase(p.P, runs, needs, b)
		}),
	}
	s.asksJSON(c)
	return c
}

func purchaseOf(p *prep.Production, runs []supplies.Run, needs []supplies.Need, b supplies.Budget) purchase {
	out := purchase{Tape: []tapeBuy{}, Kit: []kitBuy{}, Budget: budget(b)}
	for _, r := range runs {
		out.Tape = append(out.Tape, tapeBuy{stockName(p, r.Stock), metres(r.Total), r.Rolls, r.Shelf, r.Coming, r.Buy, r.Cents, dayIf(r.Buy > 0, r.OrderBy)})
	}
	for _, n := range needs {
		out.Kit = append(out.Kit, kitBuy{n.Item.Name, n.Need, n.Shelf, n.Coming, n.Buy, n.Cents, dayIf(n.Buy > 0, n.OrderBy)})
	}
	return out
}

func (s *session) tellPurchase(p *prep.Production, runs []supplies.Run, needs []supplies.Need, b supplies.Budget) error {
	t := newTable("To buy", ">Need", ">Shelf", ">Coming", ">Buy", ">Cost", "Order by")
	for _, r := range runs {
		t.row(stockName(p, r.Stock), strconv.Itoa(r.Rolls), strconv.FormatFloat(r.Shelf, 'g', 3, 64), strconv.Itoa(r.Coming),
			strconv.Itoa(r.Buy), p.Money(r.Cents), dayIf(r.Buy > 0, r.OrderBy))
	}
	for _, n := range needs {
		t.row(n.Item.Name, strconv.Itoa(n.Need), strconv.Itoa(n.Shelf), strconv.Itoa(n.Coming), strconv.Itoa(n.Buy), p.Money(n.Cents), dayIf(n.Buy > 0, n.OrderBy))
	}
	if err := t.write(s.out); err != nil {
		return err
	}
	limit := "no budget set"
	if b.Limit > 0 {
		limit = "budget " + p.Money(b.Limit)
	}
	_, err := fmt.Fprintf(s.out, "\nOrdered %s, tape %s, kit %s: %s in all; %s\n", p.Money(b.Placed), p.Money(b.Tape), p.Money(b.Kit), p.Money(b.Total), limit)
	return err
}

// dayIf writes the day by which something must be ordered, if anything must.
func dayIf(wanted bool, t time.Time) string {
	if !wanted {
		return ""
	}
	return day(t)
}
