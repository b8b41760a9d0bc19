package visit

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"manway.example/manway"
	"manway.example/manway/examples/internal/strictjson"
	"manway.example/manway/hydraulics"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// Validate returns every fault of the survey, by the Go path of its field.
func (s Survey) Validate() error {
	var faults manway.InputErrors
	text(&faults, "ID", s.ID, 1, 64)
	text(&faults, "Note", s.Note, 0, 500)
	s.Date.Within(&faults, "Date")
	faults.Under("Ground", s.Ground.validate())
	t, err := s.build()
	faults.Under("Tank", err)
	manway.Within(&faults, "Accesses", len(s.Accesses), 1, 8)
	for i, a := range s.Accesses {
		faults.Under(fmt.Sprintf("Accesses[%d]", i), a.validate(len(s.Tank.Partitions)+1))
	}
	if n := len(s.Compartments); n > len(s.Tank.Partitions)+1 {
		faults.Add("Compartments", fmt.Sprint(n), fmt.Sprintf("at most %d, one more than partitions", len(s.Tank.Partitions)+1))
	}
	for i, c := range s.Compartments {
		faults.Under(fmt.Sprintf("Compartments[%d]", i), c.validate(s.Tank.OutletInvert, s.insideHeight(t)))
	}
	faults.Under("Household", s.Household.validate(s.Date))
	faults.Under("Crew", s.Crew.validate())
	faults.Under("Truck", s.Truck.validate())
	manway.Within(&faults, "Rings", len(s.Rings), 0, 40)
	for i, r := range s.Rings {
		faults.Under(fmt.Sprintf("Rings[%d]", i), r.validate())
	}
	faults.Under("Money", s.Money.validate())
	faults.Under("Done", s.Done.validate())
	if s.Gas != nil {
		faults.Under("Gas", s.Gas.validate())
	}
	manway.Within(&faults, "Rules", len(s.Rules), 0, 10)
	for i, id := range s.Rules {
		if _, err := tank.RuleSetOf(id); err != nil {
			faults.Add(fmt.Sprintf("Rules[%d]", i), fmt.Sprintf("%.40q", id), "one of "+ruleIDs())
		}
	}
	manway.Within(&faults, "Offers", len(s.Offers), 0, 100)
	for i, o := range s.Offers {
		faults.Under(fmt.Sprintf("Offers[%d]", i), o.Date.Validate())
		faults.Under(fmt.Sprintf("Offers[%d]", i), o.validate())
	}
	s.validateHistory(t, &faults)
	s.openedOrNotRead(&faults)
	for _, one := range s.Said {
		if _, err := s.moved(one.Path, 0); one.Off > 0 && err != nil {
			faults.Add(one.Path, one.Written, "a quantity that was measured; this carries no tolerance")
		}
	}
	return faults.Err()
}

// ruleIDs lists the sets of rules that there are.
func ruleIDs() string {
	var ids []string
	for _, set := range tank.RuleSets() {
		ids = append(ids, set.ID)
	}
	return strings.Join(ids, ", ")
}

// openedOrNotRead adds a fault where something was read in a compartment that
// no access was opened into: one of the two is a slip of the pen.
func (s Survey) openedOrNotRead(faults *manway.InputErrors) {
	for i, c := range s.Compartments {
		if state, _ := s.opened(i + 1); state != hydraulics.Opened && (c.Level.Taken || c.Sludge.Taken || c.Scum.Taken) {
			faults.Add(fmt.Sprintf("Compartments[%d]", i), "readings", "an access of compartment "+fmt.Sprint(i+1)+" that was opened, or no readings")
		}
	}
}

func (d Done) validate() error {
	var faults manway.InputErrors
	text(&faults, "Disposal", d.Disposal, 0, 100)
	text(&faults, "Ticket", d.Ticket, 0, 60)
	const most = 20000 * manway.Gallon
	manway.Within(&faults, "GaugeBefore", d.GaugeBefore, 0, most)
	manway.Within(&faults, "GaugeAfter", d.GaugeAfter, 0, most)
	if d.GaugeAfter != 0 && d.GaugeAfter < d.GaugeBefore {
		faults.Add("GaugeAfter", d.GaugeAfter.String(), "at least the gauge before, "+d.GaugeBefore.String())
	}
	manway.Within(&faults, "Volume", d.Volume, 0, most)
	if d.Field != nil {
		text(&faults, "Field.Name", d.Field.Name, 1, 60)
		faults.Under("Field", hydraulics.SeptageField{Area: d.Field.Area, Nitrogen: d.Field.Nitrogen}.Validate())
	}
	return faults.Err()
}

func (g Gas) validate() error {
	var faults manway.InputErrors
	for _, r := range [...]struct {
		field string
		v     *float64
		most  float64
	}{{"Oxygen", g.Oxygen, 100}, {"Sulfide", g.Sulfide, 100000}, {"Flammable", g.Flammable, 1000}} {
		if r.v != nil {
			manway.Within(&faults, r.field, *r.v, 0, r.most)
		}
	}
	return faults.Err()
}

// offerStates are what may have come of an offer.
var offerStates = []string{"", "open", "accepted", "declined", "done"}

func (o Offer) validate() error {
	var faults manway.InputErrors
	text(&faults, "Remedy", string(o.Remedy), 1, 60)
	text(&faults, "Access", o.Access, 0, 60)
	if !slices.Contains(offerStates, o.State) {
		faults.Add("State", fmt.Sprintf("%.40q", o.State), "open, accepted, declined or done")
	}
	return faults.Err()
}

// insideHeight is the inside height of the tank as far as it is known.
func (s Survey) insideHeight(t tank.Tank) manway.Length {
	if t.Inside.Height > 0 {
		return t.Inside.Height
	}
	return 100 * manway.Foot
}

func (g Ground) validate() error {
	var faults manway.InputErrors
	faults.Under("Groundwater", g.Groundwater.Validate())
	if err, ok := g.soil().Validate().(manway.InputErrors); ok {
		faults = append(faults, err...)
	}
	if g.Machine.Taken {
		manway.Within(&faults, "Machine", g.Machine.Length, 0, 100*manway.Foot)
	}
	manway.Within(&faults, "Slope", g.Slope, 0, 45*manway.Degree)
	return faults.Err()
}

func (a Access) validate(compartments int) error {
	var faults manway.InputErrors
	text(&faults, "Name", a.Name, 1, 60)
	text(&faults, "WhyNot", a.WhyNot, 0, 200)
	manway.Within(&faults, "Compartment", a.Compartment, 1, compartments)
	manway.Within(&faults, "Opening", a.Opening, 6*manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "Cover", a.Cover, 0, 20*manway.Foot)
	manway.Within(&faults, "Reveal", a.Reveal, -3*manway.Foot, 3*manway.Foot)
	manway.Within(&faults, "Riser.Height", a.Riser.Height, 0, 20*manway.Foot)
	manway.Within(&faults, "Riser.Rings", a.Riser.Rings, 0, 40)
	if a.Lid.Shape != 0 {
		faults.Under("Lid", a.Lid.body().Validate())
		manway.Within(&faults, "Lid.HandleWaist", a.Lid.HandleWaist, 0, 2*manway.Inch)
		manway.Within(&faults, "Lid.HandleBar", a.Lid.HandleBar, 0, 2*manway.Inch)
	}
	if a.Tie != nil {
		_, err := a.Tie.tie().Position()
		faults.Under("Tie", err)
	}
	return faults.Err()
}

func (c Contents) validate(outlet, height manway.Length) error {
	var faults manway.InputErrors
	if c.Level.Taken {
		manway.Within(&faults, "Level", c.Level.Length, 0, height)
	}
	if c.Sludge.Taken {
		if manway.NotNegative(&faults, "Sludge", c.Sludge.Length); c.Sludge.Length > outlet && outlet > 0 {
			faults.Add("Sludge", c.Sludge.Length.String(), "at most the outlet invert, "+outlet.String()+" above the floor")
		}
	}
	if c.Scum.Taken {
		manway.Within(&faults, "Scum", c.Scum.Length, 0, height)
		if c.Level.Taken && c.Sludge.Taken && c.Scum.Length+c.Sludge.Length > c.Level.Length*(1+1e-9) {
			faults.Add("Scum", c.Scum.Length.String(), "with the sludge at most the level, "+c.Level.Length.String())
		}
	}
	return faults.Err()
}

func (h Household) validate(visit manway.Date) error {
	var faults manway.InputErrors
	if h.certainty() != hydraulics.Unknown {
		manway.Within(&faults, "People", h.People, 1, 100)
	}
	manway.Within(&faults, "Bedrooms", h.Bedrooms, 0, 30)
	manway.Within(&faults, "Months", h.Months, 0, 12)
	if !h.LastPumped.IsZero() {
		if h.LastPumped.Within(&faults, "LastPumped"); visit.Before(h.LastPumped) {
			faults.Add("LastPumped", h.LastPumped.String(), "on or before the visit, "+visit.String())
		}
	}
	return faults.Err()
}

// certainty is how the number of people is known; a number with no word is about.
func (h Household) certainty() hydraulics.Certainty {
	if h.Known == hydraulics.Unknown && h.People != 0 {
		return hydraulics.About
	}
	return h.Known
}

func (c Crew) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "People", c.People, 0, 6)
	if c.Limit != 0 {
		manway.Within(&faults, "Limit", c.Limit, 5*manway.Pound, 200*manway.Pound)
	}
	if c.Heaviest != 0 {
		manway.Within(&faults, "Heaviest", c.Heaviest, 50*manway.Pound, 600*manway.Pound)
	}
	return faults.Err()
}

func (t Truck) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Capacity", t.Capacity, 0, 20000*manway.Gallon)
	if manway.NotNegative(&faults, "Aboard", t.Aboard); t.Capacity > 0 && t.Aboard > t.Capacity {
		faults.Add("Aboard", t.Aboard.String(), "at most the capacity, "+t.Capacity.String())
	}
	if t.Hose.Taken {
		manway.Within(&faults, "Hose", t.Hose.Length, 0, 2000*manway.Foot)
	}
	manway.Within(&faults, "Rise", t.Rise, -200*manway.Foot, 200*manway.Foot)
	manway.Within(&faults, "Altitude", t.Altitude, -1500*manway.Foot, 30000*manway.Foot)
	return faults.Err()
}

// priceCode is what a price book takes for a code, and so a ring must have.
var priceCode = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9.-]{0,39}$`)

func (r Ring) validate() error {
	var faults manway.InputErrors
	if !priceCode.MatchString(r.Code) {
		faults.Add("Code", fmt.Sprintf("%.60q", r.Code), "a code of the price book: 1 to 40 letters, digits, points and hyphens, a letter or digit first")
	}
	manway.Within(&faults, "Height", r.Height, 1*manway.Inch, 6*manway.Foot)
	manway.Within(&faults, "Bore", r.Bore, 6*manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "Wall", r.Wall, 0, 12*manway.Inch)
	manway.Within(&faults, "Weight", r.Weight, 0, 5000*manway.Pound)
	manway.Within(&faults, "Count", r.Count, 0, 1000)
	return faults.Err()
}

func (m Money) validate() error {
	var faults manway.InputErrors
	text(&faults, "Prices", m.Prices, 0, 300)
	manway.Within(&faults, "Years", m.Years, 0, 100)
	if _, err := m.rate(); err != nil {
		faults.Add("Rate", m.Rate, "a real rate from 0 to 0.25, such as 0.03")
	}
	return faults.Err()
}

// text adds a fault unless s is one line of printable text of lo to hi
// characters.
func text(faults *manway.InputErrors, field, s string, lo, hi int) {
	n := utf8.RuneCountInString(s)
	if n < lo || n > hi || strings.ContainsFunc(s, strictjson.Unseen) || !utf8.ValidString(s) {
		faults.Add(field, fmt.Sprintf("%.60q", s), fmt.Sprintf("one line of %d to %d characters that are seen", lo, hi))
	}
}

// tie is the tie in the riser's own terms.
func (t Tie) tie() riser.Tie {
	return riser.Tie{Corners: t.Corners, FromA: t.FromA, FromB: t.FromB, Right: t.Right, Tape: t.Tape}
}
