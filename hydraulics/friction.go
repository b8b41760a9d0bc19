package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Regime is the kind of flow in a full pipe.
type Regime uint8

// The kinds of flow, by Reynolds number: below 2,000, 2,000 to 4,000, above.
const (
	Laminar Regime = iota
	Transition
	Turbulent
)

var regimes = [...]string{"laminar", "transition", "turbulent"}

// String is the kind of flow in a word.
func (r Regime) String() string { return manway.Word(regimes[:], r) }

// MarshalText is the same as String.
func (r Regime) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// Limits of the friction law.
const (
	laminarReynolds   = 2000
	turbulentReynolds = 4000
	greatestReynolds  = 1e9
	greatestRoughness = 0.05 // e/D, the end of Moody's diagram
)

// Friction is the Darcy friction factor of a full pipe.
type Friction struct {
	Factor     float64 // Darcy's f, four times Fanning's
	Regime     Regime
	Iterations int // of the solution of Colebrook's equation
}

// Friction solves the friction factor for a Reynolds number of more than 0 to 1e9,
// outside of which it is an error, and the relative roughness e/D of the hose:
//
//	Re <= 2000   f = 64/Re
//	Re >= 4000   1/√f = -2 log10((e/D)/3.7 + 2.51/(Re √f))   (Colebrook)
//	between      the cubic in Re that meets both ends in value and slope
//
// Colebrook's equation is solved by Newton's method for 1/√f until it moves by
// less than 1e-14; three or four iterations do. Between 2000 and 4000 flow is
// unsteady and the figure is a convention. Source: Colebrook 1939; EPANET 2.2
// User Manual, chapter 3, for the regimes.
func (h Hose) Friction(reynolds float64) (Friction, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Reynolds", reynolds, math.SmallestNonzeroFloat64, greatestReynolds)
	h.validate(&faults)
	if err := faults.Err(); err != nil {
		return Friction{}, err
	}
	f := friction(reynolds, float64(h.Roughness)/float64(h.Diameter))
	if math.IsInf(f.Factor, 0) {
		faults.Add("Reynolds", "a value near 0", "a flow that moves")
		return Friction{}, faults.Err()
	}
	return f, nil
}

// friction is Friction for checked input.
func friction(re, rough float64) Friction {
	switch {
	case re <= laminarReynolds:
		return Friction{Factor: 64 / re, Regime: Laminar}
	case re >= turbulentReynolds:
		f, _, n := colebrook(re, rough)
		return Friction{f, Turbulent, n}
	}
	const width = turbulentReynolds - laminarReynolds
	f1, s1, n := colebrook(turbulentReynolds, rough)
	f0, s0 := 64./laminarReynolds, -64./(laminarReynolds*laminarReynolds)
	t := (re - laminarReynolds) / width
	u := 1 - t
	return Friction{f0*u*u*(1+2*t) + s0*width*t*u*u + f1*t*t*(3-2*t) - s1*width*t*t*u, Transition, n}
}

// colebrook solves Colebrook's equation and gives the slope df/dRe too.
func colebrook(re, rough float64) (f, slope float64, iterations int) {
	const log10 = 2 / math.Ln10
	a, b := rough/3.7, 2.51/re
	x := -1.8 * math.Log10(math.Pow(a, 1.11)+6.9/re) // Haaland's explicit estimate
	for iterations = 1; iterations < 50; iterations++ {
		arg := a + b*x
		step := (x + log10*math.Log(arg)) / (1 + log10*b/arg)
		x -= step
		if math.Abs(step) <= 1e-14*x {
			break
		}
	}
	arg := a + b*x
	dx := log10 * (b * x / re) / arg / (1 + log10*b/arg)
	return 1 / (x * x), -2 * dx / (x * x * x), iterations
}

// Basis lists the sources of the friction factor.
func (Friction) Basis() []manway.Citation {
	return []manway.Citation{{Source: colebrook1939, Place: "equation 10"}, {Source: epanet22, Place: "chapter 3, head loss"}}
}
