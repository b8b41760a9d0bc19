package visit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// question is a value that nobody measured, with both ends of what it may be.
type question struct {
	measure string // what would answer it
	low     possible
	high    possible
	roof    bool // the roof has to do with it
	lids    bool // the lids have to do with it
	lid     int  // 1 and up: only this one
}

// possible is one value that the answer may have; without set it is the one that
// was taken.
type possible struct {
	says string
	set  func(*Survey)
}

// outcome is one thing that a visit decides.
type outcome struct {
	what  string
	rank  int     // 0: someone may get hurt; 1: the system; 2: gallons and dates
	state string  // the decision; empty where there is only a figure
	value float64 // the figure behind it
	text  string
}

// Change is what measuring one unknown value would change the most: the outcome at
// both ends of what the value may be.
type Change struct {
	Measure   string
	Low, High string // the ends of the value
	What      string // the outcome that differs the most
	AtLow     string
	AtHigh    string
	Decides   bool    // the outcome is another decision, and not only another figure
	Share     float64 // how far the figure behind it differs, 0 to 1
	rank      int
}

// text is the change in words.
func (c Change) text() string {
	if c.AtLow == c.AtHigh {
		return fmt.Sprintf("%s: %s either way, the figure behind it moves by %.0f %%", c.What, c.AtLow, 100*c.Share)
	}
	return fmt.Sprintf("%s, with %s: %s; with %s: %s", c.What, c.Low, c.AtLow, c.High, c.AtHigh)
}

// tell works the visit again with each unknown value at both of its ends and puts
// the changes in order: other decisions before other figures, those that may hurt
// someone first, the greater change first.
func (v *Visit) tell() {
	questions := v.questions()
	changes := make([]Change, len(questions))
	var done sync.WaitGroup
	for i, q := range questions {
		done.Go(func() { changes[i] = v.change(q) })
	}
	done.Wait()
	changes = slices.DeleteFunc(changes, func(c Change) bool { return !c.Decides && c.Share < 0.005 })
	slices.SortStableFunc(changes, Change.against)
	v.Changes = changes
}

// against orders changes: less than 0 where c tells more than d. Shares are equal
// within a millionth.
func (c Change) against(d Change) int {
	switch {
	case c.Decides != d.Decides && c.Decides:
		return -1
	case c.Decides != d.Decides:
		return 1
	case c.Decides && c.rank != d.rank:
		return cmp.Compare(c.rank, d.rank)
	}
	return cmp.Compare(math.Round(1e6*d.Share), math.Round(1e6*c.Share))
}

// change is what differs most between the ends of a question. An end that the
// survey does not allow changes nothing.
func (v *Visit) change(q question) Change {
	low, high := v.at(q, q.low), v.at(q, q.high)
	best := Change{Measure: q.measure, Low: q.low.says, High: q.high.says, rank: math.MaxInt}
	for i, a := range low {
		if i >= len(high) || high[i].what != a.what {
			continue
		}
		b := high[i]
		c := best
		c.What, c.AtLow, c.AtHigh, c.rank = a.what, a.text, b.text, a.rank
		c.Decides = a.state != b.state
		c.Share = 0
		if most := max(math.Abs(a.value), math.Abs(b.value)); most > 0 {
			c.Share = min(math.Abs(a.value-b.value)/most, 1)
		}
		if best.What == "" || c.against(best) < 0 {
			best = c
		}
	}
	return best
}

// at is what the visit decides with one possible answer. Only the rooms that the
// question has to do with are worked again.
func (v *Visit) at(q question, p possible) []outcome {
	if p.set == nil {
		return v.outcomes()
	}
	s := v.Survey.clone()
	p.set(&s)
	other, err := v.of(s)
	if err != nil {
		return nil
	}
	other.Roof, other.RoofTried, other.Accesses = v.Roof, v.RoofTried, slices.Clone(v.Accesses)
	steps := []func() error{other.float, other.pump}
	if q.roof {
		steps = append(steps, other.roofUnderPerson)
	}
	for i := range s.Accesses {
		if q.lids && (q.lid == 0 || q.lid == i+1) {
			steps = append(steps, func() error { return other.liftLid(s.Accesses[i], &other.Accesses[i]) })
		}
	}
	for _, step := range steps {
		if step() != nil {
			return nil
		}
	}
	return other.outcomes()
}

// outcomes are what a visit decides, always in the same order.
func (v *Visit) outcomes() []outcome {
	sys := v.Survey.Units
	list := []outcome{{"the emptied tank", 0, v.Float.State.String(), v.Float.Factor, v.Float.State.String()}}
	if v.Pump.Keep > 0 {
		list[0].text += ", leave " + v.Pump.Keep.Text(sys)
	}
	judged := func(what string, checks []manway.Check) {
		if len(checks) == 0 {
			return
		}
		state := worst(checks).Against()
		use := 0.0
		for _, c := range checks {
			if u, ok := c.Use(); ok {
				use = max(use, u)
			}
		}
		list = append(list, outcome{what, 0, state, use, state})
	}
	judged("the roof under a person", v.personOnRoof())
	for i, a := range v.Survey.Accesses {
		judged("the lid of "+a.Name, v.Accesses[i].Strength.Checks)
	}
	level := v.Pump.Found.PointsTo.String()
	list = append(list, outcome{"the level on arrival", 1, level, 0, level})
	list = append(list, outcome{"to pump", 2, "", float64(v.Pump.Remove), short(v.Pump.Remove.Text(sys))})
	due := outcome{what: "the next pump-out", rank: 2, text: "no date"}
	if next := v.Pump.Forecast.Pumped.Likely; !next.IsZero() {
		due.value, due.text = float64(v.Survey.Date.DaysUntil(next)), next.String()
	}
	return append(list, due)
}

// highLevel is a level on arrival, above the outlet, that nobody takes for another.
const highLevel = 3 * manway.Inch

// questions are the values that nobody measured and that decide something.
func (v *Visit) questions() (list []question) {
	s := v.Survey
	add := func(unknown bool, q question) {
		if unknown {
			list = append(list, q)
		}
	}
	in := v.Tank.Inside
	spec := v.Tank.Spec
	deep := v.mostCover() + spec.Roof + in.Height + spec.Floor
	add(!s.Ground.Groundwater.Known, question{measure: "the depth to groundwater beside the tank",
		low:  possible{says: "water at grade"},
		high: possible{"water below the tank", func(s *Survey) { s.Ground.Groundwater = manway.GroundwaterAt(deep) }}})
	// What cannot be shown by arithmetic, whatever the thickness, is not asked for.
	roof, lids := s.Tank.Material == tank.ConcreteShell && used(v.personOnRoof()), false
	for _, a := range v.Accesses {
		lids = lids || used(a.Strength.Checks)
	}
	add(roof && !s.Tank.RoofLoss.Taken && spec.Roof >= 2*manway.Inch, question{measure: "the thickness of the roof at an opening, at a worn and at a protected place", roof: true,
		low:  possible{"none of it lost", func(s *Survey) { s.Tank.RoofLoss = manway.Read(0) }},
		high: possible{"half of it lost", func(s *Survey) { s.Tank.RoofLoss = manway.Read(spec.Roof / 2) }}})
	add((roof || lids) && s.Tank.Strength == 0, question{measure: "the strength of the concrete, by rebound hammer or core", roof: roof, lids: lids,
		low:  possible{says: "2,500 psi"},
		high: possible{"5,000 psi", func(s *Survey) { s.Tank.Strength = 2 * manway.LeastConcreteStrength }}})
	add(s.Ground.Moist == 0 || s.Ground.Saturated == 0, question{measure: "the soil over the tank, moist and wet",
		low: possible{"light soil", func(s *Survey) { s.Ground.Moist, s.Ground.Saturated = manway.LightSoil, manway.LightSoil }},
		high: possible{"heavy soil", func(s *Survey) {
			s.Ground.Moist, s.Ground.Saturated = manway.HeavySoilMoist, manway.HeavySoilSaturated
		}}})
	add(!s.arrivalLevel().Taken, question{measure: "the level on arrival",
		low:  possible{"the level at the outlet", func(s *Survey) { s.Arrival.Level = manway.Read(s.Tank.OutletInvert) }},
		high: possible{highLevel.Text(s.Units) + " above it", func(s *Survey) { s.Arrival.Level = manway.Read(s.Tank.OutletInvert + highLevel) }}})
	for i, a := range s.Accesses {
		add(used(v.Accesses[i].Strength.Checks) && !a.Lid.Loss.Taken && a.Lid.Thickness >= 2*manway.Inch,
			question{measure: "the thickness of the lid of " + a.Name + ", at a worn and at a protected place", lids: true, lid: i + 1,
				low:  possible{"none of it lost", func(s *Survey) { s.Accesses[i].Lid.Loss = manway.Read(0) }},
				high: possible{"half of it lost", func(s *Survey) { s.Accesses[i].Lid.Loss = manway.Read(a.Lid.Thickness / 2) }}})
	}
	return v.solidsQuestions(list)
}

// used reports whether a check has a Use that a thickness would change.
func used(checks []manway.Check) bool {
	return slices.ContainsFunc(checks, func(c manway.Check) bool { _, ok := c.Use(); return ok })
}

// solidsQuestions adds those of what is in the tank and who fills it.
func (v *Visit) solidsQuestions(list []question) []question {
	s := v.Survey
	for i := range v.Tank.Compartments() {
		state, _ := s.opened(i + 1)
		read := i < len(s.Compartments) && s.Compartments[i].Sludge.Taken && s.Compartments[i].Scum.Taken
		over := slices.IndexFunc(s.Accesses, func(a Access) bool { return a.Compartment == i+1 })
		if read || over < 0 {
			continue
		}
		solids := func(share float64) func(*Survey) {
			return func(s *Survey) {
				s.Accesses[over].Opened = manway.Yes
				for len(s.Compartments) <= i {
					s.Compartments = append(s.Compartments, Contents{})
				}
				c := &s.Compartments[i]
				if !c.Level.Taken {
					c.Level = manway.Read(s.Tank.OutletInvert)
				}
				c.Sludge, c.Scum = manway.Read(manway.Length(share)*s.Tank.OutletInvert), manway.Read(0)
			}
		}
		q := question{measure: fmt.Sprintf("sludge and scum in compartment %d", i+1), low: possible{"no solids", solids(0)}, high: possible{"a third of solids", solids(1. / 3)}}
		if state != hydraulics.Opened {
			q.measure = fmt.Sprintf("opening compartment %d, whose sludge and scum nobody has seen", i+1)
			q.low = possible{says: "it left closed"}
		}
		list = append(list, q)
	}
	h := s.Household
	if h.certainty() == hydraulics.Unknown && h.Bedrooms == 0 {
		people := func(n int) func(*Survey) {
			return func(s *Survey) { s.Household.People, s.Household.Known = n, hydraulics.Counted }
		}
		list = append(list, question{measure: "how many people live on the tank", low: possible{"two people", people(2)}, high: possible{"six people", people(6)}})
	}
	if last, _ := s.lastPumped(s.Date); last.IsZero() {
		pumped := func(years int) func(*Survey) {
			return func(s *Survey) { s.Household.LastPumped = s.Date.AddMonths(-12 * years) }
		}
		list = append(list, question{measure: "when the tank was last pumped", low: possible{"a year ago", pumped(1)}, high: possible{"six years ago", pumped(6)}})
	}
	return list
}

// mostTelling is the one measurement that would change the answer the most.
func (v Visit) mostTelling() string {
	if len(v.Changes) == 0 {
		return "Nothing that was left out would change the answer by half a per cent; sludge and scum at the next visit give this household's own rate."
	}
	c := v.Changes[0]
	return "Would change the most: " + c.Measure + " (" + c.text() + ")."
}
