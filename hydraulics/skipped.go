package hydraulics

import "manway.example/manway"

// Skipped is what leaving compartments unpumped does to the next interval.
type Skipped struct {
	Count  int               // compartments not pumped
	Pumped HouseholdInterval // counting on the compartments that are drawn down
	Whole  HouseholdInterval // counting on all of them
	Lost   Span              // Whole less Pumped, where the table holds both
}

// Skipped sets the household interval of the compartments that are drawn down
// against that of the whole tank: solids stay in what is not opened, so that
// its liquid is not counted on. Where the smaller tank lies below the table,
// Pumped has no answer.
//
// Source: as [Household.Interval].
func (p Plan) Skipped(h Household) (Skipped, error) {
	var s Skipped
	whole := manway.Volume(0)
	for _, c := range p.Compartments {
		whole += c.Capacity
		if c.State != Opened {
			s.Count++
		}
	}
	var err error
	if s.Pumped, err = h.Interval(p.Clean); err != nil {
		return Skipped{}, err
	}
	if s.Whole, err = h.Interval(whole); err != nil {
		return Skipped{}, err
	}
	if s.Pumped.Likely.Known && s.Whole.Likely.Known {
		s.Lost = Span{true, max(s.Whole.Likely.Time-s.Pumped.Likely.Time, 0)}
	}
	return s, nil
}

// Basis lists the sources of both intervals.
func (Skipped) Basis() []manway.Citation { return HouseholdInterval{}.Basis() }
