package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Drain is a round gravity pipe.
type Drain struct {
	Diameter manway.Length // inside, 0.5 in to 12 ft
	Slope    float64       // fall over length, 0.0001 to 0.5; 1/4 in a foot is 0.0208
	N        float64       // Manning's n, 0.007 to 0.04
}

// Design values of Manning's n (FHWA 1979; sewer design takes 0.013).
const (
	NPVC        = 0.010
	NHDPE       = 0.011
	NClay       = 0.013
	NCastIron   = 0.013
	NConcrete   = 0.013
	NBrick      = 0.015
	NCorrugated = 0.024
)

// DrainState says how a drain runs.
type DrainState uint8

// How a drain runs.
const (
	PartFull   DrainState = iota
	JustFull              // at the crown
	Surcharged            // the flow is more than the pipe carries without pressure: no depth answers it
)

var drainStates = [...]string{"part full", "full", "surcharged"}

// String is the state in words.
func (d DrainState) String() string { return manway.Word(drainStates[:], d) }

// MarshalText is the same as String.
func (d DrainState) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// DrainFlow is uniform flow in a drain.
type DrainFlow struct {
	State         DrainState
	Flow          manway.Flow
	Depth         manway.Length // of flow; the diameter where full or surcharged
	Share         float64       // depth over diameter
	Area          manway.Area
	Radius        manway.Length // hydraulic: area over wetted perimeter
	Velocity      manway.Velocity
	Full          manway.Flow // of the pipe full, without pressure
	Greatest      manway.Flow // that any depth carries, 1.0757 of Full at 0.938 of the diameter
	SelfCleansing bool        // 2 ft/s or more
	Steps         int         // of the solution for the depth
}

// cleansingVelocity is the least at which a drain keeps itself clean (ASPE).
const cleansingVelocity = 2 * manway.FootPerSecond

// greatestTheta is where Manning's flow in a circle is greatest: the root of
// 5 θ cos θ - 3 θ = 2 sin θ; depth 0.938 of the diameter.
const greatestTheta = 5.27810713800067

// factor turns the conveyance of a circle of diameter 1 into flow: √S/n × D^(8/3).
func (d Drain) factor() float64 {
	return math.Sqrt(d.Slope) / d.N * math.Pow(float64(d.Diameter), 8./3)
}

// conveyance is A R^(2/3) of a unit circle at theta.
func conveyance(theta float64) float64 {
	s := segmentAt(theta)
	if s.perimeter == 0 {
		return 0
	}
	return s.area * math.Cbrt(s.area/s.perimeter*(s.area/s.perimeter))
}

// AtDepth is the flow at a depth of 0 to the diameter, by Manning:
//
//	Q = A R^(2/3) S^(1/2)/n, in m and s; 1.486 of it in ft and s
//
// Uniform flow in a clean, straight pipe. Source: Maurer, equations 5.13-5.17.
func (d Drain) AtDepth(depth manway.Length) (DrainFlow, error) {
	var faults manway.InputErrors
	d.validate(&faults)
	if len(faults) == 0 {
		manway.Within(&faults, "Depth", depth, 0, d.Diameter)
	}
	if err := faults.Err(); err != nil {
		return DrainFlow{}, err
	}
	return d.at(thetaAt(float64(depth/d.Diameter)), 0), nil
}

// AtFlow is the depth at a flow of 0 or more, to 1e-12. Between the full pipe's
// flow and the greatest there are two depths, and the lower one is given: the
// upper one is not stable. More than the greatest flow is surcharged.
//
// Source: as AtDepth, inverted.
func (d Drain) AtFlow(q manway.Flow) (DrainFlow, error) {
	var faults manway.InputErrors
	d.validate(&faults)
	manway.Within(&faults, "Flow", q, 0, 10000*manway.CubicMetrePerSecond)
	if err := faults.Err(); err != nil {
		return DrainFlow{}, err
	}
	want := float64(q) / d.factor()
	greatest := conveyance(greatestTheta)
	if want > greatest*(1+1e-12) {
		r := d.at(2*math.Pi, 0)
		r.State, r.Flow = Surcharged, q
		r.Velocity = manway.Velocity(float64(q) / float64(r.Area))
		r.SelfCleansing = r.Velocity >= cleansingVelocity
		return r, nil
	}
	theta, steps := thetaForConveyance(want)
	r := d.at(theta, steps)
	r.Flow = q
	return r, nil
}

// thetaForConveyance solves the angle for a conveyance of 0 to the greatest.
// Near 0 the conveyance goes as θ^(13/3): its power of 3/13 is nearly straight.
func thetaForConveyance(want float64) (theta float64, steps int) {
	if want <= 0 {
		return 0, 0
	}
	const power = 3. / 13
	target := math.Pow(want, power)
	return rising(func(theta float64) float64 { return math.Pow(conveyance(theta), power) - target }, 0, greatestTheta)
}

func (d Drain) at(theta float64, steps int) DrainFlow {
	s, k := segmentAt(theta), d.factor()
	dia := float64(d.Diameter)
	r := DrainFlow{
		Flow: manway.Flow(k * conveyance(theta)), Depth: manway.Length(s.depth * dia), Share: s.depth,
		Area: manway.Area(s.area * dia * dia), Full: manway.Flow(k * conveyance(2*math.Pi)),
		Greatest: manway.Flow(k * conveyance(greatestTheta)), Steps: steps,
	}
	if s.perimeter > 0 {
		r.Radius = manway.Length(s.area / s.perimeter * dia)
	}
	if r.Area > 0 {
		r.Velocity = manway.Velocity(float64(r.Flow) / float64(r.Area))
	}
	if manway.Reached(r.Share, 1) {
		r.State = JustFull
	}
	r.SelfCleansing = manway.Reached(r.Velocity, cleansingVelocity)
	return r
}

// Basis lists the sources of drain flow.
func (DrainFlow) Basis() []manway.Citation {
	return []manway.Citation{{Source: maurer2023, Place: "equations 5.13-5.17"}, {Source: fhwa1979, Place: "values of n"}, {Source: aspe2, Place: "self-cleansing velocity"}}
}

// Working is the flow step by step.
func (r DrainFlow) Working(d Drain, sys manway.System) manway.Working {
	return manway.Working{
		{Symbol: "A", Formula: "D² (θ - sin θ)/8", Numbers: "depth " + r.Depth.Text(sys) + " in " + d.Diameter.Text(sys), Value: r.Area.Text(sys)},
		{Symbol: "R", Formula: "A/(D θ/2)", Value: r.Radius.Text(sys)},
		{Symbol: "v", Formula: "R^(2/3) S^(1/2)/n", Value: r.Velocity.Text(sys)},
		{Symbol: "Q", Formula: "v A", Value: r.Flow.Text(sys)},
	}
}

func (d Drain) validate(faults *manway.InputErrors) {
	manway.Within(faults, "Diameter", d.Diameter, 0.5*manway.Inch, 12*manway.Foot)
	manway.Within(faults, "Slope", d.Slope, 0.0001, 0.5)
	manway.Within(faults, "N", d.N, 0.007, 0.04)
}
