package lid

import (
	"fmt"

	"manway.example/manway"
)

// Basis is where the forces and limits come from.
func (Moves) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: serway, Place: "ch. 5 and 12, friction and static equilibrium"},
		{Source: pciFriction, Place: "concrete on concrete 0.8"},
		{Source: coverRemoval, Place: "peak handle forces of a J-hook and a fulcrum bar"},
		{Source: niosh94110, Place: "pp. 7-18"},
		{Source: hseTeam, Place: "two thirds and one half of the sum"},
		{Source: milstd1472D, Place: "doubling"},
		{Source: pushPull, Place: "two-handed pull by hand height"},
		{Source: manway.OSHA1926, Place: "1926.704(c), (d)"},
	}
}

// Working is the forces step by step.
func (m Moves) Working(s manway.System) manway.Working {
	w := m.Weight.Working(s)
	now, most := m.Weight.Now.Weight().Text(s), m.Weight.Heaviest.Weight().Text(s)
	extra := ""
	if m.Bond > 0 {
		extra = ", bond " + m.Bond.Text(s)
	}
	if m.Seating.Extra > 0 {
		extra += ", wedged " + m.Seating.Extra.Text(s)
	}
	whole, rim := m.Weight.lid.turning()
	formulas := map[Way]string{
		Tip:        "W/2",
		WalkOut:    fmt.Sprintf("friction x W x turning share %s to %s", number(whole), number(rim)),
		Drag:       fmt.Sprintf("friction %s to %s x W", number(m.friction.Low), number(m.friction.High)),
		Hook:       "0.80 W",
		FulcrumBar: "0.45 to 0.51 W",
		PryBar:     fmt.Sprintf("W/2 x %s/%s", m.bar.LoadArm.Text(s), m.bar.EffortArm.Text(s)),
		Hoist:      "W",
	}
	for _, k := range m.Methods {
		w = append(w, manway.Step{
			Symbol: k.Way.String(), Formula: formulas[k.Way], Numbers: "W " + between(now, most) + extra,
			Value: between(k.Low.Text(s), k.High.Text(s)) + ", first pull " + k.FirstPull.Text(s),
		})
	}
	return append(w, m.OnePerson.Working(s)...)
}

// Basis is where the limit comes from.
func (LiftLimit) Basis() []manway.Citation {
	return []manway.Citation{{Source: niosh94110, Place: "pp. 7-29"}}
}

// Working is the limit step by step, at the end that governs.
func (r LiftLimit) Working(s manway.System) manway.Working {
	if r.Standing == NotCovered {
		return manway.Working{{Symbol: "RWL", Formula: "none: the equation does not cover " + r.Outside.String(), Value: "no number"}}
	}
	end, at, name := r.AtOrigin, r.lift.Origin, "origin"
	if r.Governs == AtDestination {
		end, at, name = r.AtEnd, r.lift.Destination, "destination"
	}
	m, us := end.Multipliers, r.lift.Edition == USEdition
	pick := func(a, b string) string {
		if us {
			return a
		}
		return b
	}
	d := r.lift.Destination.Vertical - r.lift.Origin.Vertical
	if d < 0 {
		d = -d
	}
	step := func(symbol, formula, numbers string, v float64) manway.Step {
		return manway.Step{Symbol: symbol, Formula: formula, Numbers: numbers, Value: number(v)}
	}
	w := manway.Working{
		step("HM", pick("10/H", "25/H"), "H "+at.Horizontal.Text(s), m.Horizontal),
		step("VM", pick("1 - 0.0075 |V - 30|", "1 - 0.003 |V - 75|"), "V "+at.Vertical.Text(s), m.Vertical),
		step("DM", pick("0.82 + 1.8/D", "0.82 + 4.5/D"), "D "+d.Text(s)+", at least "+pick("10 in", "25 cm"), m.Distance),
		step("AM", "1 - 0.0032 A", at.Turn.Text(s), m.Asymmetry),
		step("FM", "Table 5", number(r.lift.Frequency)+" a minute, "+r.lift.Spell.String()+" spell", m.Frequency),
		step("CM", "Table 7", r.lift.Grip.String()+" grip", m.Grip),
		{Symbol: "RWL at " + name, Formula: "LC HM VM DM AM FM CM", Numbers: fmt.Sprintf("%s x %s x %s x %s x %s x %s x %s", pick("51 lb", "23 kg"), number(m.Horizontal), number(m.Vertical), number(m.Distance), number(m.Asymmetry), number(m.Frequency), number(m.Grip)), Value: end.Limit.Text(s)},
	}
	switch {
	case r.Standing == NoLift:
		w = append(w, manway.Step{Symbol: "LI", Formula: "none: a multiplier is 0, nobody should lift it so", Value: "no number"})
	case r.lift.Load > 0:
		w = append(w, manway.Step{Symbol: "LI", Formula: "load/RWL", Numbers: r.lift.Load.Text(s) + "/" + end.Limit.Text(s), Value: number(end.Index)})
	}
	return w
}

// Working is the screening step by step.
func (b Bending) Working(s manway.System) manway.Working {
	left := b.Left.Text(s)
	w := manway.Working{{Symbol: "h", Formula: "thickness - loss", Value: left}}
	if b.load > 0 {
		strength := "f'c " + b.concrete.Strength.Text(s) + ", h " + left
		own, person := b.formulas()
		sizes := "span " + b.Span.Text(s)
		if !b.round {
			sizes += ", length " + b.long.Text(s) + ", width " + b.width.Text(s)
		}
		w = append(w,
			manway.Step{Symbol: "q", Formula: "weight on the area", Value: b.load.Text(s)},
			manway.Step{Symbol: "M own", Formula: own, Numbers: sizes + ", nu 0.2", Value: b.OwnMoment.Text(s)},
			manway.Step{Symbol: "M person", Formula: person, Numbers: "W " + b.person.Mass.Weight().Text(s) + ", r " + b.patch.Text(s) + ", " + sizes + ", nu 0.2", Value: b.LiveMoment.Text(s)},
			manway.Step{Symbol: "Mn", Formula: "5 lambda sqrt(f'c in psi) psi h2/6", Numbers: strength, Value: b.Nominal.Text(s)},
			manway.Step{Symbol: "Mcr", Formula: "7.5 lambda sqrt(f'c in psi) psi h2/6", Numbers: strength, Value: b.Rupture.Text(s)},
		)
	}
	for _, c := range b.Checks {
		value := c.Status.String()
		if use, ok := c.Use(); ok {
			value = "use " + number(use) + ", " + value
		}
		w = append(w, manway.Step{Symbol: c.Name, Formula: "demand/capacity, " + c.Combination.String(), Numbers: c.Kind.Text(c.Demand, s) + "/" + c.Kind.Text(c.Capacity, s), Value: value})
	}
	return w
}

// formulas are the moments that were used, of the own weight and of the person.
func (b Bending) formulas() (own, person string) {
	switch {
	case b.oneWay:
		return "q L2/8", "W L/(4 B)"
	case b.round:
		return "q a2 (3 + nu)/16", "W/(4 pi) [(1 + nu) ln(a/r) + 1 - (1 - nu) r2/(4 a2)]"
	}
	return "Levy's series, across the short side", "W/(4 pi) [(1 + nu) ln(2 a/(pi r)) + beta], beta " + number(slabBeta(float64(max(b.long, b.Span)), float64(min(b.long, b.Span)), poisson))
}

// Basis is where the strengths and factors come from.
func (HandleCheck) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.ACI318_19, Place: "17.6.1.2, 17.6.2"},
		{Source: manway.OSHA1926, Place: "1926.704(c)"},
		{Source: manway.Practice, Place: "a waist below 0.9 of the diameter is not lifted on"},
	}
}

// Working is the handle step by step.
func (r HandleCheck) Working(s manway.System) manway.Working {
	w := manway.Working{{Symbol: "load", Formula: "greatest pull meant for it", Value: r.Load.Text(s)}}
	if r.Area > 0 {
		w = append(w, manway.Step{Symbol: "Ase", Formula: "pi waist2/4, one leg", Value: r.Area.Text(s)})
	}
	for _, c := range r.Checks {
		value := c.Status.String()
		if c.Reason != "" {
			value += ": " + c.Reason
		}
		w = append(w, manway.Step{Symbol: c.Name, Formula: "4 x load against its strength", Numbers: c.Kind.Text(c.Demand, s) + " against " + c.Kind.Text(c.Capacity, s), Value: value})
	}
	return w
}

// Basis is where the seating comes from.
func (Seating) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.Practice, Place: "geometry of a body turned in a recess; friction on a cone"},
		{Source: pciFriction, Place: "concrete on concrete 0.8"},
		{Source: carver, Place: "rectangle within a rectangle"},
	}
}

// Basis is where the rules come from: each rule cites its own text.
func (GuardCheck) Basis() []manway.Citation {
	list := make([]manway.Citation, 0, len(guardRules))
	for _, r := range guardRules {
		list = append(list, r.Source)
	}
	return list
}

// Basis is where the attack of air comes from.
func (Attack) Basis() []manway.Citation {
	return []manway.Citation{{Source: iso9223, Place: "Table 2"}, {Source: iso9224, Place: "Table 2 and 3, t^B"}}
}
