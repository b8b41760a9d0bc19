package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Hose is a full pipe or hose with its fittings.
type Hose struct {
	Diameter  manway.Length // inside, 0.25 in to 24 in
	Length    manway.Length // 0 to 10 miles
	Roughness manway.Length // equivalent sand roughness, 0 to 5 % of the diameter; 0 is smooth rubber or plastic
	Fittings  float64       // sum of loss coefficients K, entrance and exit among them, 0 to 1,000
	C         float64       // 60 to 160: the pipe's loss is by Hazen-Williams with this C; 0: by Darcy-Weisbach
}

// HoseFlow is the flow in a hose and the head it takes.
type HoseFlow struct {
	Flow         manway.Flow
	Velocity     manway.Velocity
	Reynolds     float64
	Friction     Friction
	VelocityHead manway.Length // v²/2g
	PipeLoss     manway.Length // f L/D × v²/2g
	FittingLoss  manway.Length // K × v²/2g
	Loss         manway.Length // both
	Steps        int           // of the solution for the flow, 0 where the flow was given
	Cautions     manway.Cautions
}

const g = manway.StandardGravity

// AtFlow is the head that a flow of more than 0 to 100 ft3/s takes:
//
//	h = (f L/D + K) v²/2g    (Darcy-Weisbach, f by Colebrook)
//
// Source: EPANET 2.2 User Manual, chapter 3; Colebrook 1939.
func (h Hose) AtFlow(q manway.Flow, w Water) (HoseFlow, error) {
	var faults manway.InputErrors
	h.validate(&faults)
	w.validate(&faults)
	manway.Within(&faults, "Flow", q, 1e-9*manway.CubicMetrePerSecond, 100*manway.CubicFootPerSecond)
	if err := faults.Err(); err != nil {
		return HoseFlow{}, err
	}
	return h.atFlow(float64(q), w), nil
}

func (h Hose) atFlow(q float64, w Water) HoseFlow {
	d := float64(h.Diameter)
	v := q / (math.Pi / 4 * d * d)
	re := v * d / w.Viscosity
	f := friction(re, float64(h.Roughness)/d)
	head := v * v / (2 * g)
	r := HoseFlow{
		Flow: manway.Flow(q), Velocity: manway.Velocity(v), Reynolds: re, Friction: f,
		VelocityHead: manway.Length(head),
		PipeLoss:     manway.Length(f.Factor * float64(h.Length) / d * head),
		FittingLoss:  manway.Length(h.Fittings * head),
	}
	if h.C > 0 {
		r.PipeLoss = h.hazenWilliams(r.Flow)
	}
	r.Loss = r.PipeLoss + r.FittingLoss
	if f.Regime == Transition {
		r.Cautions |= manway.OutsideTested
	}
	return r
}

// AtHead is the flow that a head of 0.0001 in to 1,000 ft drives through the
// hose; the loss rises with the flow, so there is one. A hose of no length and
// no fittings has none and is an error.
//
// Source: as AtFlow, inverted.
func (h Hose) AtHead(head manway.Length, w Water) (HoseFlow, error) {
	var faults manway.InputErrors
	h.validate(&faults)
	w.validate(&faults)
	manway.Within(&faults, "Head", head, 1e-4*manway.Inch, 1000*manway.Foot)
	if h.Length == 0 && h.Fittings == 0 {
		faults.Add("Length", h.Length.String(), "a length or fittings that take head")
	}
	if err := faults.Err(); err != nil {
		return HoseFlow{}, err
	}
	return h.atHead(float64(head), w), nil
}

func (h Hose) atHead(head float64, w Water) HoseFlow {
	area := math.Pi / 4 * float64(h.Diameter) * float64(h.Diameter)
	lo, hi := 1e-12, area*math.Sqrt(2*g*head)
	for h.lossAt(hi, w) < head && hi < 1e6 { // little loss: widen until the flow lies below hi
		hi *= 4
	}
	q, steps := rising(func(q float64) float64 { return h.lossAt(q, w) - head }, lo, hi)
	r := h.atFlow(q, w)
	r.Steps = steps
	return r
}

func (h Hose) lossAt(q float64, w Water) float64 { return float64(h.atFlow(q, w).Loss) }

func (h Hose) validate(faults *manway.InputErrors) {
	manway.Within(faults, "Diameter", h.Diameter, 0.25*manway.Inch, 24*manway.Inch)
	manway.Within(faults, "Length", h.Length, 0, 52800*manway.Foot)
	if h.Diameter > 0 {
		manway.Within(faults, "Roughness", h.Roughness, 0, greatestRoughness*h.Diameter)
	}
	manway.Within(faults, "Fittings", h.Fittings, 0, 1000)
	if h.C != 0 {
		manway.Within(faults, "C", h.C, 60, 160)
	}
}

func (w Water) validate(faults *manway.InputErrors) {
	manway.Within(faults, "Water.Density", w.Density, 500*manway.KilogramPerCubicMetre, 2000*manway.KilogramPerCubicMetre)
	manway.Within(faults, "Water.Viscosity", w.Viscosity, 1e-8, 1e-2)
	manway.Within(faults, "Water.Vapour", w.Vapour, 0, 200*manway.Kilopascal)
}

// Basis lists the sources of the head loss.
func (HoseFlow) Basis() []manway.Citation {
	return []manway.Citation{{Source: colebrook1939, Place: "equation 10"}, {Source: epanet22, Place: "chapter 3, head loss and minor losses"}}
}

// Fittings is the loss coefficients K of v²/2g, by name, of EPANET 2.2 User Manual,
// Table 3.3. Other tables give 1.5 for a threaded elbow and 2 for an angle valve.
func Fittings() map[string]float64 {
	return map[string]float64{
		"globe valve, open": 10, "angle valve, open": 5, "swing check valve, open": 2.5,
		"gate valve, open": 0.2, "elbow, short radius": 0.9, "elbow, medium radius": 0.8,
		"elbow, long radius": 0.6, "elbow, 45 degrees": 0.4, "closed return bend": 2.2,
		"tee, flow through run": 0.6, "tee, flow through branch": 1.8,
		"square entrance": 0.5, "exit": 1.0,
	}
}

// HazenWilliams is the head loss of the pipe alone, with its C, by the formula
// of Hazen and Williams, the alternative to Darcy-Weisbach for water in
// turbulent flow:
//
//	h = 10.4394 L (q/C)^1.852/d^4.8655, h and L alike, q in gal/min, d in in
//
// C is 60 to 160: 140 to 150 plastic, 120 galvanized, 100 old cast iron. The
// constant and the last power differ from text to text, and the loss with them
// by up to 1.5 %: this form lies between 0.2083 × (100/C)^1.852 and the 4.727
// of EPANET in ft and ft3/s. Source: EPANET 2.2 User Manual, Table 3.1, for C.
func (h Hose) HazenWilliams(q manway.Flow) (manway.Length, error) {
	var faults manway.InputErrors
	h.validate(&faults)
	if h.C == 0 {
		faults.Add("C", "0", "60 to 160")
	}
	manway.Within(&faults, "Flow", q, 0, 100*manway.CubicFootPerSecond)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	return h.hazenWilliams(q), nil
}

func (h Hose) hazenWilliams(q manway.Flow) manway.Length {
	const k, flowPower, diameterPower = 10.4394, 1.852, 4.8655
	per := k * math.Pow(q.In(manway.GallonPerMinute)/h.C, flowPower) / math.Pow(h.Diameter.In(manway.Inch), diameterPower)
	return h.Length * manway.Length(per)
}
