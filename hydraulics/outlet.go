package hydraulics

import (
	"math"

	"manway.example/manway"
)

// orificeCoefficient is of a sharp-edged opening under water.
const orificeCoefficient = 0.61

// Outlet is the outlet pipe of a tank, clear or partly blocked.
type Outlet struct {
	Diameter manway.Length // inside, 1 in to 24 in
	Open     float64       // share of its area that is open, declared: 1 clear to 0.001, 0 closed
}

// OutletHead is the head that a flow needs over the outlet invert.
type OutletHead struct {
	Critical manway.Length // depth at which the flow falls over into the pipe
	Velocity manway.Velocity
	Clear    manway.Length // head with the outlet clear
	Rise     manway.Length // head that the blockage adds
	Head     manway.Length // both; meaningful unless Closed
	Closed   bool          // no area is open: no head drives it through
	Cautions manway.Cautions
}

// Head is the head over the invert at a flow of 0 to 10 ft3/s:
//
//	clear  critical depth yc of the round pipe and its velocity head,
//	       Q² T = g A³, h = yc + A/2T; drowned, where it asks for more,
//	       h = D/2 + (Q/(0.61 A_pipe))²/2g
//	rise   (Q/(0.61 × open × A_pipe))²/2g, 0 where the outlet is clear
//
// No published law says what roots, a clogged filter, a fallen baffle or grease
// leave of a pipe: the open share is declared and the rise is an estimate. The
// outfall beyond is free: a field that is full holds the level higher. Source:
// free outfall at critical depth (Maurer, chapter 5); sharp-edged orifice.
func (o Outlet) Head(q manway.Flow) (OutletHead, error) {
	var faults manway.InputErrors
	o.validate(&faults)
	manway.Within(&faults, "Flow", q, 0, 10*manway.CubicFootPerSecond)
	if err := faults.Err(); err != nil {
		return OutletHead{}, err
	}
	h := OutletHead{Cautions: manway.EstimateOnly}
	if q == 0 {
		return h, nil
	}
	d := float64(o.Diameter)
	want := float64(q) / math.Sqrt(g*d*d*d*d*d)
	theta, _ := rising(func(theta float64) float64 { return criticalFlow(theta) - want }, 0, 2*math.Pi-1e-7)
	s := segmentAt(theta)
	h.Critical = manway.Length(s.depth * d)
	h.Velocity = manway.Velocity(float64(q) / (s.area * d * d))
	h.Clear = manway.Length(o.clearHead(theta, float64(q)))
	if o.Open == 0 {
		h.Closed = true
		return h, nil
	}
	h.Rise = manway.Length(o.rise(float64(q)))
	h.Head = h.Clear + h.Rise
	return h, nil
}

// criticalFlow is Q/√(g D⁵) of the flow that is critical at the angle theta.
func criticalFlow(theta float64) float64 {
	s := segmentAt(theta)
	if s.top <= 0 {
		return 0
	}
	return s.area * math.Sqrt(s.area/s.top)
}

// clearHead is the head of a clear outlet: that of critical flow, and from
// three quarters of the diameter up that of the drowned opening where it asks
// for more. The two cross near 0.9 of the diameter.
func (o Outlet) clearHead(theta, q float64) float64 {
	d := float64(o.Diameter)
	s := segmentAt(theta)
	if s.top <= 0 {
		return 0
	}
	critical := d * (s.depth + s.area/(2*s.top))
	if critical < 0.75*d {
		return critical
	}
	return math.Max(critical, o.drownedHead(q))
}

// drownedHead is the head over the invert of an outlet under water.
func (o Outlet) drownedHead(q float64) float64 {
	d := float64(o.Diameter)
	return d/2 + headOf(q, orificeCoefficient*math.Pi/4*d*d)
}

// rise is the head that the blockage adds.
func (o Outlet) rise(q float64) float64 {
	if o.Open >= 1 {
		return 0
	}
	d := float64(o.Diameter)
	return headOf(q, orificeCoefficient*o.Open*math.Pi/4*d*d)
}

// headOf is the head that drives a flow through an effective area.
func headOf(q, area float64) float64 { return q / area * (q / area) / (2 * g) }

func (o Outlet) validate(faults *manway.InputErrors) {
	manway.Within(faults, "Diameter", o.Diameter, 1*manway.Inch, 24*manway.Inch)
	if o.Open != 0 {
		manway.Within(faults, "Open", o.Open, 0.001, 1)
	}
}

// Basis lists the sources of the head.
func (OutletHead) Basis() []manway.Citation {
	return []manway.Citation{{Source: maurer2023, Place: "chapter 5, critical flow"}, {Source: manway.Practice, Place: "open share declared on site"}}
}

// Orifice is a sharp-edged opening under water. C is 0.5 to 1: 0.60 to 0.62 sharp,
// 0.80 a short tube.
type Orifice struct {
	Area        manway.Area // up to 100 ft2
	Coefficient float64     // C
}

// Flow is the flow through the opening under a head of up to 100 ft:
//
//	Q = C A √(2 g h)
//
// Of a crack in the ground it is an upper bound: the soil governs.
//
// Source: Torricelli; the coefficients are those of the usual handbooks.
func (o Orifice) Flow(head manway.Length) (manway.Flow, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Area", o.Area, 0, 100*manway.SquareFoot)
	manway.Within(&faults, "Head", head, 0, 100*manway.Foot)
	manway.Within(&faults, "Coefficient", o.Coefficient, 0.5, 1)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return manway.Flow(o.Coefficient * float64(o.Area) * math.Sqrt(2*g*float64(head))), nil
}

// DrainTime is how long a vessel of constant plan area takes to fall from one
// head to another through the opening:
//
//	t = 2 A/(C a √(2g)) × (√h1 - √h2)
//
// Source: Flow, integrated.
func (o Orifice) DrainTime(plan manway.Area, from, to manway.Length) (manway.Duration, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Plan", plan, 0.01*manway.SquareFoot, 100000*manway.SquareFoot)
	manway.Within(&faults, "Area", o.Area, 1e-6*manway.SquareFoot, plan)
	manway.Within(&faults, "From", from, 0, 100*manway.Foot)
	manway.Within(&faults, "To", to, 0, from)
	manway.Within(&faults, "Coefficient", o.Coefficient, 0.5, 1)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	t := 2 * float64(plan) / (o.Coefficient * float64(o.Area) * math.Sqrt(2*g)) * (math.Sqrt(float64(from)) - math.Sqrt(float64(to)))
	return manway.Duration(t), nil
}

// Weir is a sharp-crested weir: a rectangular one by its crest, with two end
// contractions, or a triangular one by the full angle of its notch.
type Weir struct {
	Crest manway.Length // 1 in to 100 ft; 0: a notch
	Notch manway.Angle  // 20 to 100 degrees; 0: a crest
}

// Flow is the flow over the weir under a head:
//
//	crest  Q = 3.33 (L - 0.2 H) H^1.5, ft3/s and ft    head up to half the crest
//	notch  Q = 8/15 × 0.584 √(2g) tan(angle/2) h^2.5    head up to 2 ft
//
// Francis tried a head of up to a third of the crest; the published tables go to a
// half.
//
// Source: Francis, Lowell Hydraulic Experiments, 1883; the usual form of fluid
// mechanics for the notch.
func (w Weir) Flow(head manway.Length) (manway.Flow, error) {
	var faults manway.InputErrors
	if w.Crest != 0 {
		manway.Absent(&faults, "Notch", w.Notch, "there is a crest")
		manway.Within(&faults, "Crest", w.Crest, 1*manway.Inch, 100*manway.Foot)
		manway.Within(&faults, "Head", head, 0, w.Crest/2)
	} else {
		manway.Within(&faults, "Notch", w.Notch, 20*manway.Degree, 100*manway.Degree)
		manway.Within(&faults, "Head", head, 0, 2*manway.Foot)
	}
	if err := faults.Err(); err != nil {
		return 0, err
	}
	if w.Crest != 0 {
		l, h := w.Crest.In(manway.Foot), head.In(manway.Foot)
		return manway.Flow(3.33*(l-0.2*h)*h*math.Sqrt(h)) * manway.CubicFootPerSecond, nil
	}
	const coefficient = 0.584
	h := float64(head)
	return manway.Flow(8. / 15 * coefficient * math.Sqrt(2*g) * math.Tan(float64(w.Notch)/2) * h * h * math.Sqrt(h)), nil
}
