package hydraulics

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"manway.example/manway"
)

// Emptying is one compartment drawn down by a truck.
type Emptying struct {
	Suction     Suction // its Lift is from the level From
	Compartment Compartment
	From, To    manway.Length // levels above the floor
	Inflow      manway.Flow   // that comes in meanwhile
}

// Emptied is how long it takes.
type Emptied struct {
	Lifting  Lifting // at the lowest level
	Volume   manway.Volume
	Time     Span          // not known where it cannot lift, or the inflow keeps up
	First    Pull          // at From
	Last     Pull          // at To
	Lowest   manway.Length // level to which it lifts; To where it lifts all
	Missing  manway.Length // head missing at To
	KeepsUp  bool          // the inflow is as much as the pump moves before To is reached
	Cautions manway.Cautions
}

// panels of ten points each make the integral good to 1e-9 for any shape.
const emptyPanels, emptyPoints = 12, 10

// Time is how long the compartment takes to fall from one level to another as
// the lift grows with it:
//
//	t = ∫ A(h)/(Q(h) - inflow) dh from To to From,  lift = lift at From + From - h
//
// by Gauss-Legendre. Air drawn in near the floor, stirring and rinsing come on
// top. Errors: as [Suction.Pull]; levels outside the compartment.
//
// Source: as [Suction.Pull]; the integral is the balance of volume.
func (e Emptying) Time() (Emptied, error) {
	w, air, err := e.Suction.checked()
	var faults manway.InputErrors
	faults.Under("Suction", err)
	var of manway.InputErrors
	e.Compartment.validate(&of, e.From)
	faults.Under("Compartment", of.Err())
	manway.Within(&faults, "To", e.To, 0, e.From)
	manway.Within(&faults, "Inflow", e.Inflow, 0, 1000*manway.GallonPerMinute)
	if err := faults.Err(); err != nil {
		return Emptied{}, err
	}
	pull := func(level float64) Pull {
		s := e.Suction
		s.Lift += e.From - manway.Length(level)
		return s.pull(w, air)
	}
	high, low := float64(e.From), float64(e.To)
	r := Emptied{First: pull(high), Last: pull(low), Lowest: e.To}
	from, _ := e.Compartment.Shape.Volume(e.From)
	to, _ := e.Compartment.Shape.Volume(e.To)
	r.Volume = from - to
	r.Lifting, r.Missing = r.Last.Lifting, r.Last.Missing
	r.Cautions = r.First.Cautions
	if r.Last.Lifting == CannotLift {
		r.Lowest = min(e.From, e.From+e.Suction.Lift-r.First.Available)
		r.Lowest = max(r.Lowest, e.To)
		return r, nil
	}
	if r.Last.Hose.Flow <= e.Inflow {
		r.KeepsUp = true
		return r, nil
	}
	slice := func(h float64) float64 {
		a, _ := e.Compartment.Shape.Area(manway.Length(h))
		return float64(a) / float64(pull(h).Hose.Flow-e.Inflow)
	}
	t := 0.0
	for i := range emptyPanels {
		a := low + (high-low)*float64(i)/emptyPanels
		b := low + (high-low)*float64(i+1)/emptyPanels
		if b > a {
			t += quad.Fixed(slice, a, b, emptyPoints, quad.Legendre{}, 0)
		}
	}
	if math.IsNaN(t) || math.IsInf(t, 0) {
		r.KeepsUp = true
		return r, nil
	}
	r.Time = Span{true, manway.Duration(t)}
	return r, nil
}

// Basis lists the sources of the time.
func (Emptied) Basis() []manway.Citation { return Pull{}.Basis() }
