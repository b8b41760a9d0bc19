package hydraulics

import "manway.example/manway"

// Suction is a vacuum truck drawing from a tank.
type Suction struct {
	Altitude        manway.Length      // of the site, -1,500 ft to 11,000 m
	Temperature     manway.Temperature // of the liquid, 0 C to 100 C
	Vacuum          manway.Pressure    // gauge vacuum that the pump holds, 1 to 30 inHg
	Lift            manway.Length      // from the liquid's surface up to the highest point of the hose or the truck's inlet, 0 to 60 ft
	Hose            Hose               // with the K of entrance and exit
	SpecificGravity float64            // of what is pumped, 0.9 to 1.3; 0: 1.00, water
	UsualRate       manway.Flow        // what this truck usually pumps, an upper bound, 0.1 to 10,000 gal/min; 0: not known
	LightTank       bool               // plastic, fibreglass, or with no other opening to the air
}

// Lifting says whether the liquid comes up.
type Lifting uint8

// Whether it lifts.
const (
	CannotLift  Lifting = iota
	LiftsByHead         // the flow is what head is left for the hose
	LiftsByRate         // the flow is the truck's usual rate, the hose would carry more
)

var liftings = [...]string{"cannot lift", "flow by the head that is left", "flow by the truck's usual rate"}

// String is the state in words.
func (l Lifting) String() string { return manway.Word(liftings[:], l) }

// MarshalText is the same as String.
func (l Lifting) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// Pull is the balance of a suction hose.
type Pull struct {
	Lifting    Lifting
	Atmosphere manway.Pressure
	Vacuum     manway.Pressure // that counts: the gauge's, or what the air leaves above boiling
	Limited    bool            // the gauge asks for more vacuum than air and vapour allow
	Greatest   manway.Length   // lift of the atmosphere less vapour, whatever the pump
	Available  manway.Length   // lift of the vacuum that counts
	Left       manway.Length   // Available - Lift, for the hose; 0 where it cannot lift
	Missing    manway.Length   // Lift - Available where it cannot lift, else 0
	Hose       HoseFlow        // at the flow; empty where it cannot lift
	Cautions   manway.Cautions
}

// Pull balances the vacuum against lift and hose:
//
//	greatest  = (p_air(altitude) - p_vapour(temperature))/(SG ρ g)
//	available = min(vacuum, p_air - p_vapour)/(SG ρ g)
//	available - lift = (f L/D + K) v²/2g
//
// The flow is the smaller of the one that balances and the truck's usual rate.
// Where the lift takes all, it cannot lift, with the head that is missing. It
// holds for a hose full of liquid; air drawn in with it, thick sludge and a
// clogged strainer take more. Source: ISO 2533; Buck 1981; Colebrook 1939.
func (s Suction) Pull() (Pull, error) {
	w, air, err := s.checked()
	if err != nil {
		return Pull{}, err
	}
	return s.pull(w, air), nil
}

// checked gives the liquid and the air for valid input.
func (s Suction) checked() (Water, manway.Pressure, error) {
	var faults manway.InputErrors
	air, err := s.Atmosphere()
	faults.Under("", err)
	w, err := WaterAt(s.Temperature)
	faults.Under("", err)
	manway.Within(&faults, "Vacuum", s.Vacuum, 1*manway.InchMercury, 30*manway.InchMercury)
	manway.Within(&faults, "Lift", s.Lift, 0, 60*manway.Foot)
	var hose manway.InputErrors
	s.Hose.validate(&hose)
	if s.Hose.Length == 0 && s.Hose.Fittings == 0 {
		hose.Add("Length", s.Hose.Length.String(), "a length or fittings that take head")
	}
	faults.Under("Hose", hose.Err())
	if s.SpecificGravity != 0 {
		manway.Within(&faults, "SpecificGravity", s.SpecificGravity, 0.9, 1.3)
		w.Density *= manway.Density(s.SpecificGravity)
	}
	if s.UsualRate != 0 {
		manway.Within(&faults, "UsualRate", s.UsualRate, 0.1*manway.GallonPerMinute, 10000*manway.GallonPerMinute)
	}
	if air-w.Vapour < 1*manway.InchMercury && len(faults) == 0 {
		faults.Add("Temperature", s.Temperature.String(), "liquid that does not boil at this altitude")
	}
	return w, air, faults.Err()
}

func (s Suction) pull(w Water, air manway.Pressure) Pull {
	p := Pull{Atmosphere: air, Vacuum: s.Vacuum, Cautions: manway.GasAndIgnition | manway.EstimateOnly}
	if s.LightTank {
		p.Cautions |= manway.VacuumOnTank
	}
	if p.Vacuum > air-w.Vapour {
		p.Vacuum, p.Limited = air-w.Vapour, true
	}
	p.Greatest = w.Head(air - w.Vapour)
	p.Available = w.Head(p.Vacuum)
	const leastHead = 1e-4 * manway.Inch
	if p.Available-s.Lift < leastHead {
		p.Missing = max(s.Lift-p.Available, 0)
		return p
	}
	p.Left = p.Available - s.Lift
	p.Lifting = LiftsByHead
	p.Hose = s.Hose.atHead(float64(p.Left), w)
	if s.UsualRate > 0 && s.UsualRate < p.Hose.Flow {
		p.Lifting = LiftsByRate
		p.Hose = s.Hose.atFlow(float64(s.UsualRate), w)
	}
	return p
}

// Basis lists the sources of the balance.
func (Pull) Basis() []manway.Citation {
	return []manway.Citation{{Source: iso2533, Place: "section 2"}, {Source: buck1981, Place: "equation ew, constants of 1996"}, {Source: colebrook1939, Place: "equation 10"}, {Source: epanet22, Place: "chapter 3, minor losses"}}
}

// Working is the balance step by step.
func (p Pull) Working(s Suction, sys manway.System) manway.Working {
	w := manway.Working{
		{Symbol: "p_air", Formula: "101.325 kPa (1 - 0.0065 z/288.15)^5.25588", Numbers: "z = " + s.Altitude.Text(sys), Value: p.Atmosphere.Text(sys)},
		{Symbol: "available", Formula: "min(vacuum, p_air - p_vapour)/(SG ρ g)", Numbers: "vacuum " + p.Vacuum.Text(sys), Value: p.Available.Text(sys)},
	}
	if p.Lifting == CannotLift {
		return append(w, manway.Step{Symbol: "missing", Formula: "lift - available", Numbers: s.Lift.Text(sys) + " - " + p.Available.Text(sys), Value: p.Missing.Text(sys)})
	}
	return append(w,
		manway.Step{Symbol: "left for the hose", Formula: "available - lift", Numbers: p.Available.Text(sys) + " - " + s.Lift.Text(sys), Value: p.Left.Text(sys)},
		manway.Step{Symbol: "flow", Formula: "left = (f L/D + K) v²/2g, at most the usual rate", Numbers: "v = " + p.Hose.Velocity.Text(sys), Value: p.Hose.Flow.Text(sys)},
	)
}

// VacuumTime is how long a pump of steady displacement takes to draw the room that is
// left in a tight tank from one absolute pressure down to another:
//
//	t = V/S × ln(p0/p1)
//
// Source: vacuum practice, a closed form of the gas law.
func (t Truck) VacuumTime(displacement manway.Flow, from, to manway.Pressure) (manway.Duration, error) {
	var faults manway.InputErrors
	faults.Under("", t.Validate())
	manway.Within(&faults, "Displacement", displacement, 1e-6*manway.CubicMetrePerSecond, 100*manway.CubicMetrePerSecond)
	manway.Within(&faults, "To", to, 1*manway.Pascal, 200*manway.Kilopascal)
	manway.Within(&faults, "From", from, to, 200*manway.Kilopascal)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return manway.Duration(float64(t.Capacity-t.Aboard) / float64(displacement) * logRatio(from, to)), nil
}
