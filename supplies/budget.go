package supplies

// Budget sets what tape and kit cost against what may be spent, in hundredths of
// the currency.
type Budget struct {
	Placed int // ordered or received
	Tape   int // rolls still to order
	Kit    int // items still to order
	Total  int
	Limit  int // zero: none set
	Over   int // by how much Total passes a set limit, else zero
}

// BudgetOf adds up the money. Runs are those of Purchase, so that no roll is
// paid for twice; planned orders are not counted, since what they would cover is
// still in what must be bought. An order of something no longer listed has no
// price.
func BudgetOf(runs []Run, needs []Need, stocks []Stock, orders []Order, limit int) Budget {
	price := map[string]int{}
	for _, s := range stocks {
		price[string(s.ID)] = s.Cents
	}
	b := Budget{Limit: limit}
	for _, n := range needs {
		price[n.Item.ID] = n.Item.Cents
		b.Kit += n.Cents
	}
	for _, r := range runs {
		b.Tape += r.Cents
	}
	for _, o := range orders {
		if o.State == Ordered || o.State == Received {
			b.Placed += o.Quantity * price[o.For]
		}
	}
	b.Total = b.Placed + b.Tape + b.Kit
	if limit > 0 {
		b.Over = max(0, b.Total-limit)
	}
	return b
}
