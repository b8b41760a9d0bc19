package visit_test

import (
	"errors"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/examples/visit"
	"manway.example/manway/internal/limit"
)

// What a survey takes at most and at least, by its fields.
func TestLimitsOfASurvey(t *testing.T) {
	s, _ := read(t, "rusted-handle.json")
	oxygen := 20.9
	s.Gas = &visit.Gas{Oxygen: &oxygen}
	s.Done = visit.Done{GaugeBefore: 0, GaugeAfter: 20000 * manway.Gallon, Volume: manway.Gallon}
	s.Crew = visit.Crew{People: 2, Limit: 60 * manway.Pound, Heaviest: 200 * manway.Pound}
	s.Truck.Aboard = 0
	s.Ground.Machine = manway.Read(3)
	s.Arrival = visit.Arrival{}
	const (
		lb  = manway.Pound
		in  = manway.Inch
		ft  = manway.Foot
		gal = manway.Gallon
	)
	limit.Check(t, s, visit.Survey.Validate,
		limit.Between("Crew.People", 0, 6),
		limit.Between("Crew.Limit", 5*lb, 200*lb),
		limit.Between("Crew.Heaviest", 50*lb, 600*lb),
		limit.Between("Truck.Capacity", 0, 20000*gal),
		limit.Between("Truck.Aboard", 0, s.Truck.Capacity),
		limit.Between("Truck.Hose", 0, 2000*ft).In("Truck.Hose.Length"),
		limit.Between("Truck.Rise", -200*ft, 200*ft),
		limit.Between("Truck.Altitude", -1500*ft, 30000*ft),
		limit.Between("Household.People", 1, 100),
		limit.Between("Household.Bedrooms", 0, 30),
		limit.Between("Household.Months", 0, 12),
		limit.Between("Ground.Slope", 0, 45*manway.Degree),
		limit.Between("Ground.Machine", 0, 100*ft).In("Ground.Machine.Length"),
		limit.Between("Accesses[0].Compartment", 1, 2),
		limit.Between("Accesses[0].Opening", 6*in, 10*ft),
		limit.Between("Accesses[0].Cover", 0, 20*ft),
		limit.Between("Accesses[0].Reveal", -3*ft, 3*ft),
		limit.Between("Accesses[0].Riser.Height", 0, 20*ft),
		limit.Between("Accesses[0].Riser.Rings", 0, 40),
		limit.Between("Accesses[0].Lid.HandleWaist", 0, 2*in),
		limit.Between("Accesses[0].Lid.HandleBar", 0, 2*in),
		limit.Between("Compartments[0].Level", 0, 60*in).In("Compartments[0].Level.Length"),
		limit.Between("Compartments[0].Sludge", 0, 48*in).In("Compartments[0].Sludge.Length"),
		limit.Between("Compartments[0].Scum", 0, 36.5*in).In("Compartments[0].Scum.Length"), // the level, 49.5 in, less 13 in of sludge
		limit.Between("Rings[0].Height", 1*in, 6*ft),
		limit.Between("Rings[0].Bore", 6*in, 10*ft),
		limit.Between("Rings[0].Wall", 0, 12*in),
		limit.Between("Rings[0].Weight", 0, 5000*lb),
		limit.Between("Rings[0].Count", 0, 1000),
		limit.Between("Money.Years", 0, 100),
		limit.Between("Done.GaugeBefore", 0, 20000*gal),
		limit.Between("Done.GaugeAfter", 0, 20000*gal),
		limit.Between("Done.Volume", 0, 20000*gal),
		limit.Between("Accesses", 1, 8),
		limit.AtMost("Rings", 40),
		limit.AtMost("Rules", 10),
		limit.AtMost("Offers", 100),
	)
	for field, most := range map[string]float64{"Oxygen": 100, "Sulfide": 100000, "Flammable": 1000} {
		for v, fine := range map[float64]bool{0: true, most: true, -0.01: false, most + 0.01: false} {
			gas := visit.Gas{}
			*map[string]**float64{"Oxygen": &gas.Oxygen, "Sulfide": &gas.Sulfide, "Flammable": &gas.Flammable}[field] = &v
			s.Gas = &gas
			if err := s.Validate(); fine != (err == nil) {
				t.Errorf("%s of %v: %v", field, v, err)
			}
		}
	}
}

// A text may be as long as its field says, in characters and not in bytes.
func TestLengthsOfTexts(t *testing.T) {
	for _, c := range []struct {
		field string
		most  int
		set   func(*visit.Survey, string)
	}{
		{"ID", 64, func(s *visit.Survey, text string) { s.ID = text }},
		{"Note", 500, func(s *visit.Survey, text string) { s.Note = text }},
		{"Done.Disposal", 100, func(s *visit.Survey, text string) { s.Done.Disposal = text }},
		{"Done.Ticket", 60, func(s *visit.Survey, text string) { s.Done.Ticket = text }},
		{"Accesses[1].Name", 60, func(s *visit.Survey, text string) { s.Accesses[1].Name = text }},
		{"Accesses[1].WhyNot", 200, func(s *visit.Survey, text string) { s.Accesses[1].WhyNot = text }},
		{"Money.Prices", 300, func(s *visit.Survey, text string) { s.Money.Prices = text }},
	} {
		for n, fine := range map[int]bool{c.most: true, c.most + 1: false} {
			s, _ := read(t, "rusted-handle.json")
			s.Offers, s.History = nil, nil
			c.set(&s, strings.Repeat("é", n))
			var faults manway.InputErrors
			if err := s.Validate(); fine != (err == nil) || !fine && (!errors.As(err, &faults) || faults[0].Field != c.field) {
				t.Errorf("%s of %d characters: %v", c.field, n, err)
			}
		}
	}
}
