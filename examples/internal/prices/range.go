package prices

import "manway.example/manway/cost"

// Range is the range of quantity or price of every line of a code.
type Range struct {
	Code     string      `json:"code"`
	Quantity *cost.Range `json:"quantity"`
	Price    *cost.Range `json:"price"`
}

// Set puts the range on the lines of its code and reports whether there are any.
func (r Range) Set(lines []cost.Line) bool {
	found := false
	for k := range lines {
		if lines[k].Code != r.Code {
			continue
		}
		found = true
		if r.Quantity != nil {
			lines[k].Quantities = *r.Quantity
		}
		if r.Price != nil {
			lines[k].Prices = *r.Price
		}
	}
	return found
}
