package visit

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/lid"
)

// body is the lid in the terms of its own package.
func (l Lid) body() lid.Lid {
	return lid.Lid{
		Shape: l.Shape, Diameter: l.Diameter, BottomDiameter: l.BottomDiameter,
		Length: l.Length, Width: l.Width, BottomLength: l.BottomLength, BottomWidth: l.BottomWidth,
		Thickness: l.Thickness, Loss: l.Loss.Length, Flange: l.Flange,
		Material: l.Material, Moisture: l.Moisture, Measured: l.Measured,
	}
}

// liftLid weighs the lid of an access, says how it can be moved, and bends it
// as worn under a person.
func (v *Visit) liftLid(a Access, out *AccessAnswer) error {
	if a.Lid.Shape == 0 {
		return nil
	}
	var faults manway.InputErrors
	out.HasLid = true
	body := a.Lid.body()
	body.Concrete = manway.Concrete{Strength: v.Survey.Tank.Strength, Density: v.Survey.Tank.Density}
	seat := lid.Seat{Fit: a.Lid.Fit, Opening: a.Opening, Depth: a.Lid.LetIn}
	crew := lid.Crew{People: v.Survey.Crew.People, Limit: v.Survey.Crew.Limit}
	var err error
	out.Moves, err = body.Move(lid.MoveCase{Seat: seat, Crew: crew, Edition: edition(v.Survey.Units)})
	faults.Under("Lid", err)
	out.Bending, err = body.Bend(lid.BendCase{
		Span:   min(a.Opening, a.Lid.least()),
		Person: manway.Person{Mass: v.Survey.Crew.Heaviest},
		Steel:  manway.Reinforcement{State: a.Lid.steel()},
	})
	faults.Under("Lid", err)
	return faults.Err()
}

// least is the least width of the lid's top.
func (l Lid) least() manway.Length {
	if l.Shape.Round() {
		return l.Diameter
	}
	return l.Width
}

// steel is what is known of the lid's steel. Bars that were seen but not
// measured are not known by size, and so count as unknown.
func (l Lid) steel() manway.SteelState {
	if l.Steel == manway.SteelNone {
		return manway.SteelNone
	}
	return manway.SteelUnknown
}

func edition(sys manway.System) lid.Edition {
	if sys == manway.SI {
		return lid.MetricEdition
	}
	return lid.USEdition
}

// lidSection says what each lid weighs and how it can be moved.
func (v Visit) lidSection() Section {
	sys := v.Survey.Units
	s := Section{
		ID: "lids", Title: "The lids: weight, and how to move them",
		Method: "Weight by the lid's exact volume; forces at the hands by statics, friction and measured shares; beside them the one-person limit of the revised lifting equation for the lid lifted flat at its near edge, and the crew's own limit.",
	}
	var tables []Table
	weights := Table{ID: "lids", Columns: []string{"Lid", "Dry", "Soaked", "One person may lift, by the equation", "Crew's own limit"}}
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		if !r.HasLid {
			s.Unjudged = append(s.Unjudged, a.Name+": no lid was described, so none is weighed.")
			continue
		}
		m := r.Moves
		weights.Rows = append(weights.Rows, []Cell{
			words("access", a.Name),
			amount(sys, "dry_lb", m.Weight.Dry, manway.Pound),
			amount(sys, "soaked_lb", m.Weight.Soaked, manway.Pound),
			onePerson(sys, m),
			v.crewLimit(),
		})
		ways, notes := v.ways(a, m)
		tables = append(tables, ways)
		s.Says = append(s.Says, notes...)
		s.Assumed |= m.Assumed
		s.Cautions |= m.Cautions
		s.Working = append(s.Working, m.Weight.Working(sys)...)
	}
	s.Tables = append([]Table{weights}, tables...)
	s.Basis = merge(lid.Weight{}.Basis(), v.wayBasis())
	if len(weights.Rows) == 0 {
		s.Tables = nil
	}
	return s
}

// wayBasis is where the forces of the ways come from.
func (v Visit) wayBasis() []manway.Citation {
	for _, r := range v.Accesses {
		if r.HasLid {
			list := []manway.Citation{r.Moves.Alone.Source}
			for _, k := range r.Moves.Methods {
				list = append(list, k.Source)
			}
			return merge(list)
		}
	}
	return nil
}

// ways is the force of every way that works on the seat as the lid lies, and
// what has to be said of the others.
func (v Visit) ways(a Access, m lid.Moves) (Table, []string) {
	sys := v.Survey.Units
	t := Table{ID: "ways_" + slug(a.Name), Title: a.Name + ": force at the hands", Columns: []string{"Way", "Once free", "First pull", "Crew's limit"}}
	var not, notes []string
	for _, k := range m.Methods {
		if k.Possible == lid.No {
			not = append(not, k.Way.String()+": "+k.Reason)
			continue
		}
		if k.Reason != "" {
			notes = append(notes, fmt.Sprintf("%s, %s: %s.", a.Name, k.Way, k.Reason))
		}
		t.Rows = append(t.Rows, []Cell{
			words("way", k.Way.String()),
			forceRange(sys, "once_free_lbf", k.Low, k.High),
			amount(sys, "first_pull_lbf", k.FirstPull, manway.PoundForce),
			words("crew", crewWords(k.Crew.Status)),
		})
	}
	for _, n := range not {
		notes = append(notes, a.Name+", not as it lies: "+n+".")
	}
	return t, notes
}

func crewWords(s manway.Status) string {
	switch s {
	case manway.Pass:
		return "within"
	case manway.Fail:
		return "above"
	}
	return s.String()
}

func onePerson(sys manway.System, m lid.Moves) Cell {
	if m.OnePerson.Standing != lid.Limited {
		return unknown("one_person_lb", m.Alone.Reason)
	}
	return amount(sys, "one_person_lb", m.OnePerson.Limit, manway.Pound)
}

func (v Visit) crewLimit() Cell {
	c := v.Survey.Crew
	if c.Limit == 0 {
		return unknown("crew_limit_lb", "not said")
	}
	cell := amount(v.Survey.Units, "crew_limit_lb", c.Limit, manway.Pound)
	cell.Text += " each, " + people(max(c.People, 1))
	return cell
}

func people(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d people", n)
}

func forceRange(sys manway.System, key string, low, high manway.Force) Cell {
	c := amount(sys, key, high, manway.PoundForce)
	if high > low*(1+1e-6) {
		c.Text = short(low.Text(sys)) + " to " + c.Text
	}
	return c
}

// structureSection is the screening of lids in bending, for the desk.
func (v Visit) structureSection() Section {
	s := Section{
		ID: "structure", Title: "Structure: unreviewed screening", Desk: true, Structure: true,
		Method: "Each lid as a plate of plain concrete of the thickness that is left, under its own weight and a person on one boot at its middle.",
		Basis:  lid.Bending{}.Basis(),
	}
	left := Table{ID: "lids", Columns: []string{"Lid", "Thickness left", "Plain bending strength left"}}
	sys := v.Survey.Units
	for i, a := range v.Survey.Accesses {
		r := v.Accesses[i]
		if !r.HasLid {
			continue
		}
		left.Rows = append(left.Rows, []Cell{
			words("access", a.Name), amount(sys, "left_in", r.Bending.Left, manway.Inch),
			{Key: "strength_left", Text: fmt.Sprintf("%.0f %%", 100*r.Bending.StrengthLeft), Number: r.Bending.StrengthLeft, Is: Number},
		})
		for _, c := range r.Bending.Checks {
			c.Name = a.Name + ", " + c.Name
			s.Checks = append(s.Checks, c)
		}
		s.Assumed |= r.Bending.Assumed
		s.Cautions |= r.Bending.Cautions
		if !a.Lid.Loss.Taken {
			s.Unjudged = append(s.Unjudged, a.Name+": the thickness lost was not measured, so the lid is taken as made. Measure the edge at a protected and at a worn place.")
		}
	}
	if len(left.Rows) > 0 {
		s.Tables = []Table{left}
	}
	s.Unjudged = append(s.Unjudged, "Roof, walls, floor and partition of the tank were not judged for strength here: nobody should stand or drive on them.")
	s.Cautions |= manway.Screening | manway.VehicleOverTank
	return s
}
