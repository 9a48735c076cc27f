package sheets

import (
	"fmt"
	"time"

	"groundrow/prep"
	"groundrow/supplies"
	"groundrow/tapeout/length"
)

// tapePurchase shows what is to be bought, and for each stock the sum that leads
// there, so that anybody with a calculator can check it.
func tapePurchase(j Job) content {
	p, w := j.production(), j.work()
	buy := purchaseTable(p, prep.Purchase(p, j.workOf))
	if len(buy.Rows) == 0 {
		return content{blocks: []block{buy}}
	}
	blocks := []block{heading{"What to buy, for all floors together"}, buy, paragraph{
		Text: "Rolls needed is the total divided by what is on a roll. Rolls to buy is that less the shelf and what is coming, rounded up.",
	}}
	blocks = append(blocks, budgetWords(j)...)
	blocks = append(blocks, heading{"How the sums of this floor are made"}, paragraph{
		Text: "Lines that lie on each other are counted once; of a broken line only the dashes.",
	})
	return content{blocks: append(blocks, sumTable(p, w.Tape))}
}

// budgetWords sets tape and kit against the budget, when there is one.
func budgetWords(j Job) []block {
	p := j.production()
	b := supplies.BudgetOf(prep.Purchase(p, j.workOf), prep.KitNeeds(p, j.workOf), p.Stocks, p.Orders, p.Settings.BudgetCents)
	if b.Limit <= 0 {
		return nil
	}
	s := fmt.Sprintf("Ordered %s + tape to buy %s + kit to buy %s = %s, of a budget of %s", p.Money(b.Placed), p.Money(b.Tape), p.Money(b.Kit), p.Money(b.Total), p.Money(b.Limit))
	if b.Over > 0 {
		s += ": OVER by " + p.Money(b.Over)
	}
	return []block{paragraph{Strong: true, Text: s + "."}}
}

func purchaseTable(p *prep.Production, runs []supplies.Run) table {
	t := table{
		Columns: []column{
			{Title: "tape", Flex: true},
			{Title: "total", Align: right, Type: strongType},
			{Title: "on a roll", Align: right},
			{Title: "rolls needed", Align: right},
			{Title: "on the shelf", Align: right},
			{Title: "coming", Align: right},
			{Title: "to buy", Align: right, Type: floorType},
			{Title: "each", Align: right},
			{Title: "cost", Align: right},
			{Title: "order by"},
		},
		Empty: "No tape is needed on this floor yet.",
	}
	sum := 0
	for _, r := range runs {
		if r.Total <= 0 && r.Buy == 0 {
			continue
		}
		each, roll := "–", "–"
		if s := p.Stock(r.Stock); s != nil {
			each, roll = p.Money(s.Cents), tapeLength(p, s.Roll)
		}
		sum += r.Cents
		t.Rows = append(t.Rows, cells(stockName(p, r.Stock), tapeLength(p, r.Total), roll, rolls(r.Need), rolls(r.Shelf),
			fmt.Sprint(r.Coming), fmt.Sprint(r.Buy), each, p.Money(r.Cents), orderBy(r.Buy, r.OrderBy)))
	}
	if len(t.Rows) > 0 {
		t.Rows = append(t.Rows, total("together", "", "", "", "", "", "", "", p.Money(sum), ""))
	}
	return t
}

// sumTable shows each step of each run.
func sumTable(p *prep.Production, runs []supplies.Run) table {
	t := table{Columns: []column{
		{Title: "what", Flex: true},
		{Title: "how", Flex: true},
		{Title: "length", Align: right, Type: strongType},
	}}
	for _, r := range runs {
		if r.Total <= 0 {
			continue
		}
		t.Rows = append(t.Rows, span(capitalise(stockName(p, r.Stock))))
		for _, s := range r.Sum() {
			t.Rows = append(t.Rows, cells(s.Label, stepHow(p, s), tapeLength(p, s.Metres)))
		}
		how := ""
		if s := p.Stock(r.Stock); s != nil && s.Roll > 0 {
			how = fmt.Sprintf("÷ %s on a roll = %s rolls", tapeLength(p, s.Roll), rolls(r.Need))
		}
		t.Rows = append(t.Rows, total("total", how, tapeLength(p, r.Total)))
	}
	return t
}

func stepHow(p *prep.Production, s supplies.Step) string {
	switch {
	case s.Count > 0:
		return fmt.Sprintf("%d × %s", s.Count, decimals(p, s.Each, 3))
	case s.Share > 0:
		return fmt.Sprintf("%.4g %% of %s", s.Share*100, tapeLength(p, s.Of))
	}
	return "as measured on the plan"
}

// tapeLength writes a run of tape, in decimals so that it can be added up on a
// calculator: feet, or metres.
func tapeLength(p *prep.Production, m float64) string { return decimals(p, m, 1) }

func decimals(p *prep.Production, m float64, places int) string {
	if p.Unit().Metric() {
		return fmt.Sprintf("%.*f m", places, m)
	}
	return fmt.Sprintf("%.*f ft", places, m/length.Foot)
}

func rolls(n float64) string { return fmt.Sprintf("%.2f", n) }

// orderBy writes the last day for an order; what is not bought has none.
func orderBy(n int, t time.Time) string {
	if n == 0 {
		return "–"
	}
	return day(t)
}
