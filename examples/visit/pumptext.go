package visit

import (
	"fmt"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// pumpSection says what to pump and down to where.
func (v Visit) pumpSection() Section {
	sys, p := v.Survey.Units, v.Pump
	s := Section{
		ID: "pump_out", For: ForCrew, Title: "What to pump",
		Method:  "Volumes between the measured levels in the tank's real shape; a compartment that was not opened is never copied from the one beside it.",
		Basis:   p.Plan.Basis(),
		Assumed: p.Plan.Assumed, Cautions: p.Plan.Cautions, Working: p.Plan.Working(sys),
	}
	table := Table{ID: "compartments", Columns: []string{"Compartment", "Scum", "Clear", "Sludge", "Now", "To pump", "Stays"}}
	for i, c := range p.Compartments {
		row := []Cell{{Key: "compartment", Text: fmt.Sprint(i + 1), Number: float64(i + 1), Is: Number}}
		row = append(row, layerCells(sys, c.Now)...)
		row = append(row, amount(sys, "pump_gal", c.Remove, manway.Gallon), amount(sys, "stays_gal", c.Stays, manway.Gallon))
		table.Rows = append(table.Rows, row)
		if c.State != hydraulics.Opened {
			drains := "."
			if c.Remove > 0 {
				drains = "; " + short(c.Remove.Text(sys)) + " of it drain over to the one beside it."
			}
			s.Unjudged = append(s.Unjudged, fmt.Sprintf("Compartment %d was not opened (%s): what is in it is not known, and it is not pumped by itself%s", i+1, c.Reason, drains))
		} else if !c.Now.LayersKnown {
			s.Unjudged = append(s.Unjudged, fmt.Sprintf("Compartment %d: sludge or scum was not measured.", i+1))
		}
	}
	s.Tables = []Table{table}
	s.Facts = []Fact{{"To pump in all", amount(sys, "pump_gal", p.Remove, manway.Gallon)}, {"Do not pump below", v.keepCell()}}
	if p.HasTruck {
		s.Facts = append(s.Facts,
			Fact{"Room on the truck", amount(sys, "truck_room_gal", p.Loads.Room, manway.Gallon)},
			Fact{"Truck loads", count("truck_loads", p.Loads.Loads, "load")},
			Fact{"Trips to disposal on the way", count("disposal_trips", p.Loads.Trips, "trip")})
	} else {
		s.Facts = append(s.Facts, Fact{"Truck loads", unknown("truck_loads", "the truck was not described")})
	}
	if e := v.Options.PumpOut; e.Complete {
		price := v.money("price", e.Total)
		price.Text += " " + string(e.Currency)
		s.Facts = append(s.Facts, Fact{"Price of this pump-out", price})
	}
	v.hoseFacts(&s)
	s.Unjudged = append(s.Unjudged, v.notKept()...)
	return s
}

// hoseFacts says what the hose must reach and lift.
func (v Visit) hoseFacts(s *Section) {
	sys, p := v.Survey.Units, v.Pump
	if !p.HasHose {
		return
	}
	s.Facts = append(s.Facts,
		Fact{"Hose to lay", amount(sys, "hose_in", p.Hose.Length, manway.Inch)},
		Fact{"Lift from the floor of the tank", amount(sys, "lift_in", p.Hose.Lift, manway.Inch)})
	if p.Pull.Lifting == hydraulics.CannotLift {
		s.Says = append(s.Says, "The truck cannot lift from the floor: "+p.Pull.Missing.Text(sys)+" of head is missing.")
	} else {
		s.Facts = append(s.Facts, Fact{"Flow, at most", amount(sys, "flow_gpm", p.Pull.Hose.Flow, manway.GallonPerMinute)})
	}
	s.Cautions |= p.Pull.Cautions
	s.Basis = merge(s.Basis, p.Pull.Basis())
}

// crewSection is the message for a phone before the visit.
func (v Visit) crewSection() Section {
	s := Section{ID: "crew", For: ForCrew, Title: "Message to the crew", Method: "Five lines, from the plan of the pump-out.",
		Cautions: v.Pump.Cautions | v.Float.Cautions}
	brief := hydraulics.Brief{
		Plan: v.Pump.Plan, HoseLength: v.Pump.Hose.Length, Lift: v.Pump.Hose.Lift, Pull: v.Pump.Pull, PullKnown: v.Pump.HasHose,
		People: v.Survey.Crew.People, Loads: v.Pump.Loads, LoadsKnown: v.Pump.HasTruck,
	}
	for i, a := range v.Survey.Accesses {
		found := hydraulics.LidFound{Name: a.Name, Depth: manway.Read(max(a.Cover-a.Riser.Height, 0))}
		if r := v.Accesses[i]; r.HasLid {
			found.Note = r.Moves.Weight.Heaviest.Text(v.Survey.Units)
			if a.Seen.Handle != lid.HandleSound {
				found.Note += ", not by its handle"
			}
		}
		brief.Lids = append(brief.Lids, found)
	}
	for _, line := range brief.Lines(v.Survey.Units) {
		s.Says = append(s.Says, line)
	}
	return s
}

func layerCells(sys manway.System, now hydraulics.Split) []Cell {
	layers := [...]struct {
		key string
		v   manway.Volume
	}{{"scum_gal", now.Scum}, {"clear_gal", now.Clear}, {"sludge_gal", now.Sludge}}
	var cells []Cell
	for _, l := range layers {
		if now.LayersKnown {
			cells = append(cells, amount(sys, l.key, l.v, manway.Gallon))
		} else {
			cells = append(cells, unknown(l.key, "not measured"))
		}
	}
	if now.Known {
		return append(cells, amount(sys, "now_gal", now.Total, manway.Gallon))
	}
	return append(cells, unknown("now_gal", "not opened"))
}

// keepCell is the level not to go below, with what it rests on beside it.
func (v Visit) keepCell() Cell {
	p := v.Pump
	if p.Keep == 0 {
		return words("keep", "no level set by flotation"+v.onGroundwater()+v.notJudged())
	}
	c := amount(v.Survey.Units, "keep_in", p.Keep, manway.Inch)
	c.Text += " above the floor (" + p.KeepName + v.onGroundwater() + v.notJudged() + ")"
	return c
}

func (v Visit) onGroundwater() string {
	if v.Survey.Ground.Groundwater.Known {
		return ", groundwater at " + v.Survey.Ground.Groundwater.Depth.Text(v.Survey.Units)
	}
	return ", groundwater not measured and taken at grade"
}

// notJudged is what could not be judged of the emptied tank, as the end of a
// line.
func (v Visit) notJudged() string {
	if len(v.Pump.NotJudged) == 0 {
		return ""
	}
	return "; not judged: " + strings.Join(v.Pump.NotJudged, ", ")
}

func (v Visit) notKept() []string {
	var list []string
	for _, name := range v.Pump.NotJudged {
		list = append(list, "The "+name+" were not judged: pump with care and refill soon.")
	}
	return list
}

// arrivalSection says what the level on arrival points to.
func (v Visit) arrivalSection() Section {
	sys, f := v.Survey.Units, v.Pump.Found
	s := Section{
		ID: "arrival", For: ForCrew, Title: "The level on arrival",
		Method: "Level against the outlet invert; it points, it does not prove.",
		Basis:  f.Basis(), Cautions: f.Cautions,
		Facts: []Fact{{"Finding", words("points_to", f.PointsTo.String())}},
	}
	if f.PointsTo == hydraulics.LevelNotRead {
		s.Unjudged = []string{"The level on arrival was not read: it is lost once pumping starts."}
	} else {
		s.Facts = append(s.Facts, Fact{"Above the outlet", amount(sys, "above_outlet_in", f.Above, manway.Inch)})
		if f.OverKnown {
			s.Facts = append(s.Facts, Fact{"More than at the outlet", amount(sys, "over_gal", f.Over, manway.Gallon)})
		}
	}
	for _, next := range f.Next() {
		s.Says = append(s.Says, "Check next: "+next+".")
	}
	return s
}

// nextSection says whether a rule asks for pumping, and when to come again.
func (v Visit) nextSection() Section {
	sys, p := v.Survey.Units, v.Pump
	s := Section{
		ID: "next", Title: "Pump now? And when next?",
		Method:  "Published rules set against the measured layers; the next pump-out by the rate of solids between two readings, or since the last pump-out, or of an earlier filling, else by the household table for the volume that is pumped.",
		Assumed: p.Forecast.Assumed, Cautions: p.Forecast.Cautions,
		Basis: merge(p.Forecast.Basis(), p.Skipped.Basis()),
	}
	for _, r := range p.Rules {
		s.Basis = merge(s.Basis, r.Basis())
		s.Cautions |= r.Cautions
	}
	switch {
	case len(p.Rules) == 0:
		s.Unjudged = append(s.Unjudged, "No compartment was opened and measured, so no rule was set against it.")
	case v.pumpNow():
		s.Says = append(s.Says, "Pump now: "+v.rulesThatAsk()+".")
	default:
		s.Says = append(s.Says, "No rule that could be judged asks for pumping yet.")
	}
	if said := v.historySays(); len(said) > 0 {
		s.Says = append(s.Says, strings.Join(said, " "))
	}
	v.forecastFacts(&s)
	if table := p.Skipped.Pumped; table.Answered {
		s.Facts = append(s.Facts, Fact{"By the household table", amount(sys, "table_years", table.Likely.Time, manway.Year)})
	}
	if lost := p.Skipped.Lost; p.Skipped.Count > 0 && lost.Known {
		s.Says = append(s.Says, fmt.Sprintf("Leaving %s unpumped brings the next pump-out forward by about %s, by the household table.",
			plural(p.Skipped.Count, "compartment"), short(lost.Time.Text(sys))))
	}
	s.Facts = append(s.Facts, Fact{"Volume counted on", amount(sys, "clean_gal", p.Plan.Clean, manway.Gallon)})
	return s
}

// forecastFacts adds when the tank is to be pumped next, by the best method.
func (v Visit) forecastFacts(s *Section) {
	f := v.Pump.Forecast
	if f.Method == hydraulics.NoMethod {
		s.Facts = append(s.Facts, Fact{"Next pump-out", unknown("next_date", "no answer: nothing was measured, and the household table does not hold what is known")})
		return
	}
	by := " (by the " + f.Method.String() + ")"
	if !f.Due && f.Method != hydraulics.ByTable && !f.Likely.IsZero() {
		s.Facts = append(s.Facts, Fact{"Left as it is, to be pumped", words("left_date", dates(hydraulics.Ends{Low: f.Low, Likely: f.Likely, High: f.High}))})
	}
	pumped := f.Pumped
	if pumped.Likely.IsZero() {
		s.Facts = append(s.Facts, Fact{"If pumped now, next", unknown("next_date", "no answer")})
		return
	}
	s.Facts = append(s.Facts,
		Fact{"If pumped now, next likely", Cell{Text: pumped.Likely.String() + by, Parts: []Cell{words("next_date", pumped.Likely.String())}}},
		Fact{"Earliest to latest", words("next_range", dates(hydraulics.Ends{Low: pumped.Low, High: pumped.High}))})
}

// dates is a date with its ends, as far as they are known.
func dates(e hydraulics.Ends) string {
	text := func(d manway.Date) string {
		if d.IsZero() {
			return "not known"
		}
		return d.String()
	}
	span := text(e.Low) + " to " + text(e.High)
	if e.Likely.IsZero() {
		return span
	}
	return e.Likely.String() + ", " + span
}

// rulesThatAsk names the rules that ask for pumping.
func (v Visit) rulesThatAsk() string {
	var list []string
	for _, r := range v.Pump.Rules {
		if r.Pump {
			list = append(list, fmt.Sprintf("%s (compartment %d)", r.Rule.Name, r.Compartment))
		}
	}
	return "asked for by " + strings.Join(list, ", ")
}

// rulesSayPump is every published rule against every compartment, for the desk.
func (v Visit) rulesSayPump() Section {
	s := Section{ID: "pump_rules", Title: "Rules that say when to pump", For: ForDesk, Cautions: manway.LocalCode,
		Method: "Each check of a rule against the measured layers; ABOVE says that the rule asks for pumping."}
	for _, r := range v.Pump.Rules {
		s.addChecks(fmt.Sprintf("compartment %d, %s, ", r.Compartment, r.Rule.Name), r.List())
		s.Basis = merge(s.Basis, r.Basis())
	}
	return s
}

// floatSection says whether the emptied tank may float.
func (v Visit) floatSection() Section {
	sys, f := v.Survey.Units, v.Float
	s := Section{
		ID: "flotation", For: ForCrew, Title: "May the emptied tank float?",
		Method: "Weight of the empty shell and of the soil straight above it, lids off, against the groundwater it displaces; no friction on the walls.",
		Basis:  f.Basis(), Assumed: f.Assumed, Cautions: f.Cautions, Checks: []manway.Check{f.Check}, Working: f.Working(sys),
		Facts: []Fact{
			{"Holds it down", amount(sys, "down_lbf", f.Down, manway.PoundForce)},
			{"Lifts it", amount(sys, "uplift_lbf", f.Uplift, manway.PoundForce)},
			{"Flotation when emptied", words("state", f.State.String())},
		},
	}
	if f.State != tank.NoUplift {
		s.Facts = append(s.Facts, Fact{"Factor against floating", Cell{Key: "factor", Text: fmt.Sprintf("%.2f, asked for %.2f", f.Factor, f.Required.Value), Number: f.Factor, Is: Number}})
	}
	if f.Limit.AnyLevel {
		s.Facts = append(s.Facts, Fact{"Groundwater that it bears empty", words("water_limit", "any level up to grade")})
	} else {
		s.Facts = append(s.Facts, Fact{"It bears being emptied with groundwater at or below", amount(sys, "water_limit_in", f.Limit.Depth, manway.Inch)})
	}
	if !v.Survey.Ground.Groundwater.Known {
		s.Says = []string{"Groundwater was not measured and is taken at grade."}
	}
	return s
}
