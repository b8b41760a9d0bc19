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
	strong := body
	if err := out.tryLid(a, v.Survey.Tank, &strong); err != nil {
		faults.Under("Lid", err)
		return faults.Err()
	}
	out.Strength, err = strong.Strength(lid.StrengthCase{
		Seat: seat, Steel: manway.Reinforcement{State: a.Lid.steel()},
		Person: manway.Person{Mass: v.Survey.Crew.Heaviest},
	})
	faults.Under("Lid", err)
	out.Handle, err = body.CheckHandle(lid.Handle{State: a.Seen.Handle, Waist: a.Lid.HandleWaist, AsMade: a.Lid.HandleBar})
	faults.Under("Lid", err)
	out.Guard, err = body.CheckGuard(lid.Guard{
		Opening: a.Opening, Depth: max(a.Cover-a.Riser.Height, 0), DepthKnown: true,
		Fastened: a.Seen.Fastened, Secondary: a.Seen.Guard, Crew: crew,
	}, lid.GuardRules())
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
		ID: "lids", For: ForCrew, Title: "The lids: weight, and how to move them",
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
		s.Says = append(s.Says, v.lidSays(a, r)...)
		ways, notes := v.ways(a, m)
		tables = append(tables, ways)
		s.Says = append(s.Says, notes...)
		s.Assumed |= m.Assumed | r.Handle.Assumed | r.Guard.Assumed
		s.Cautions |= m.Cautions | r.Handle.Cautions | r.Guard.Cautions
		s.Working = append(s.Working, m.Weight.Working(sys)...)
	}
	s.Tables = append([]Table{weights}, tables...)
	s.Basis = merge(lid.Weight{}.Basis(), v.wayBasis(), lid.HandleCheck{}.Basis(), lid.GuardCheck{}.Basis())
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
		if k.Possible == manway.No {
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
			words("crew", k.Crew.Status.Against()),
		})
	}
	for _, n := range not {
		notes = append(notes, a.Name+", not as it lies: "+n+".")
	}
	return t, notes
}

// lidSays is what the handle and the guarding of one lid come to.
func (v Visit) lidSays(a Access, r AccessAnswer) []string {
	sys := v.Survey.Units
	var says []string
	if h := r.Handle; h.DoNotLift {
		line := a.Name + ": do not lift by the handle (" + h.Reason + ")"
		if h.Left > 0 {
			line += fmt.Sprintf(", %.0f %% of its steel is left", 100*h.Left)
		}
		says = append(says, line+".")
	}
	g := r.Guard
	switch {
	case g.AddFastener && g.AddSecondary:
		says = append(says, a.Name+": fit fasteners that need a tool, and a guard below the lid.")
	case g.AddFastener:
		says = append(says, a.Name+": fit fasteners that need a tool.")
	case g.AddSecondary:
		says = append(says, a.Name+": fit a guard below the lid.")
	}
	if g.WeightConflict {
		limit := "the crew lifts " + short(g.ConflictLimit.Text(sys)) + " together"
		if !g.ConflictByLimit {
			limit = "that is more than " + short(g.ConflictLimit.Text(sys)) + ", taken since the crew's limit was not said"
		}
		says = append(says, fmt.Sprintf("%s: some rules take its weight of %s for a guard, but %s. Weight keeps the crew out first.",
			a.Name, short(g.ConflictWeight.Text(sys)), limit))
	}
	return says
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
