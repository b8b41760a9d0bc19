package soil

import (
	"math"

	"manway.example/manway"
)

// State is how far the wall has given way to the soil, or pushes into it.
type State uint8

// The states. A tank's wall is stiff and held at its edges: at rest.
const (
	AtRest  State = iota // K0 = 1 - sin phi (Jaky)
	Active               // Ka = tan2(45 - phi/2) (Rankine, level ground)
	Passive              // Kp = tan2(45 + phi/2)
)

// Coefficient is the lateral over the vertical effective pressure of level
// ground of friction angle phi, 0 to 50 deg:
//
//	K0 = 1 - sin phi,  Ka = (1 - sin phi)/(1 + sin phi),  Kp = 1/Ka
//
// Source: Das, chapter 13.
func (s State) Coefficient(friction manway.Angle) (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Friction", friction, 0, 50*manway.Degree)
	manway.Within(&faults, "State", int(s), int(AtRest), int(Passive))
	if len(faults) > 0 {
		return 0, faults
	}
	return s.coefficient(friction), nil
}

func (s State) coefficient(friction manway.Angle) float64 {
	sin := math.Sin(float64(friction))
	switch s {
	case Active:
		return (1 - sin) / (1 + sin)
	case Passive:
		return (1 + sin) / (1 - sin)
	default:
		return 1 - sin
	}
}

// Layer is one layer of ground. Its soil is filled by the caller: what is 0
// weighs nothing.
type Layer struct {
	Thickness manway.Length // 0 in the last layer: down without end
	Soil      manway.Soil
}

// Ground is level layered ground on one side of a wall.
type Ground struct {
	Layers    []Layer // from grade down, 1 to 8
	Water     manway.Length
	HasWater  bool            // whether there is a water table at depth Water
	Surcharge manway.Pressure // on the surface, spread without end
	State     State
}

// At is the pressure at one depth.
type At struct {
	Vertical  manway.Pressure // effective, with the surcharge
	Effective manway.Pressure // lateral, of the soil and the surcharge
	Water     manway.Pressure
}

// Lateral is all that presses on the wall.
func (a At) Lateral() manway.Pressure { return a.Effective + a.Water }

// Validate returns the faults of g.
func (g Ground) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Layers", len(g.Layers), 1, 8)
	for i, l := range g.Layers {
		bad := func() bool { return l.Soil.Validate() != nil || !(l.Soil.Friction >= 0) }()
		if bad || !(l.Thickness >= 0 && l.Thickness <= 1000*manway.Foot) || l.Thickness == 0 && i < len(g.Layers)-1 {
			faults.Add("Layers", l.Thickness.String(), "thicknesses above 0 (0 in the last) and valid soils")
		}
	}
	if g.HasWater {
		manway.Within(&faults, "Water", g.Water, 0, 1000*manway.Foot)
	}
	manway.Within(&faults, "Surcharge", g.Surcharge, 0, 100000*manway.PSF)
	manway.Within(&faults, "State", int(g.State), int(AtRest), int(Passive))
	return faults.Err()
}

// LateralAt is the pressure on the wall at a depth, just below the boundary
// where a layer begins there:
//
//	vertical = surcharge + sum of unit weights, submerged below the water table
//	lateral  = K vertical + water
//
// Source: Das, chapters 9 and 13.
func (g Ground) LateralAt(depth manway.Length) (At, error) {
	err := g.Validate()
	var faults manway.InputErrors
	if err != nil {
		faults = append(faults, err.(manway.InputErrors)...)
	}
	manway.Within(&faults, "Depth", depth, 0, 1000*manway.Foot)
	if len(faults) > 0 {
		return At{}, faults
	}
	return g.lateralAt(depth, false), nil
}

// lateralAt is the pressure at a depth, just above or just below it.
func (g Ground) lateralAt(depth manway.Length, above bool) At {
	at := At{Vertical: g.Surcharge}
	var top manway.Length
	for i, l := range g.Layers {
		bottom := top + l.Thickness
		last := i == len(g.Layers)-1 || depth < bottom || above && depth == bottom
		if last {
			bottom = depth
		}
		at.Vertical += g.weight(l.Soil, top, bottom)
		if last {
			at.Effective = manway.Pressure(g.State.coefficient(l.Soil.Friction)) * at.Vertical
			break
		}
		top = bottom
	}
	if g.HasWater && depth > g.Water {
		at.Water = head(manway.WaterDensity, depth-g.Water)
	}
	return at
}

// weight is the effective weight per area of soil between two depths.
func (g Ground) weight(s manway.Soil, top, bottom manway.Length) manway.Pressure {
	if !g.HasWater || bottom <= g.Water {
		return head(s.Moist, bottom-top)
	}
	wet := max(top, g.Water)
	return head(s.Moist, wet-top) + head(s.Saturated-manway.WaterDensity, bottom-wet)
}

// Thrust is the force on a wall per length of it.
type Thrust struct {
	Force  manway.LineLoad
	Height manway.Length // of the force above the wall's foot
	Moment manway.Force  // about the foot, per length of wall: N m/m
}

// Thrust is the force on a wall from one depth to another, the sum of the
// trapezoids between the places where the pressure bends. Source: Das, chapter
// 13.
func (g Ground) Thrust(top, foot manway.Length) (Thrust, error) {
	var faults manway.InputErrors
	faults.Under("", g.Validate())
	manway.Within(&faults, "Top", top, 0, 1000*manway.Foot)
	manway.Within(&faults, "Foot", foot, top, 1000*manway.Foot)
	if len(faults) > 0 {
		return Thrust{}, faults
	}
	var t Thrust
	for a := top; a < foot; {
		b := g.nextBend(a, foot)
		pa, pb := float64(g.lateralAt(a, false).Lateral()), float64(g.lateralAt(b, true).Lateral())
		h := float64(b - a)
		force := (pa + pb) / 2 * h
		t.Force += manway.LineLoad(force)
		t.Moment += manway.Force(force*float64(foot-b) + h*h*(2*pa+pb)/6)
		a = b
	}
	if t.Force > 0 {
		t.Height = manway.Length(float64(t.Moment) / float64(t.Force))
	}
	return t, nil
}

// nextBend is the next depth below a, foot at most, where a layer ends or the
// water stands.
func (g Ground) nextBend(a, foot manway.Length) manway.Length {
	next := foot
	if g.HasWater && g.Water > a && g.Water < next {
		next = g.Water
	}
	var bottom manway.Length
	for _, l := range g.Layers[:len(g.Layers)-1] {
		bottom += l.Thickness
		if bottom > a && bottom < next {
			next = bottom
		}
	}
	return next
}

// head is the pressure under a height of something.
func head(d manway.Density, h manway.Length) manway.Pressure {
	return manway.Pressure(float64(d) * manway.StandardGravity * float64(h))
}
