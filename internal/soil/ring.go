package soil

import (
	"math"

	"manway.example/manway"
)

// Trench is soil over a pipe in a trench, part of whose weight the trench's
// walls carry.
type Trench struct {
	Cover    manway.Length  // H over the pipe, 0 to 100 ft
	Width    manway.Length  // B at the top of the pipe, 0.5 to 100 ft
	Density  manway.Density // of the fill
	Friction float64        // K mu', 0.05 to 0.5
}

// Load is the load coefficient and the pressure on the pipe's top:
//
//	Cd = (1 - exp(-2 K mu' H/B))/(2 K mu'),  p = Cd gamma B
//
// Source: Marston; Moser, chapter 2.
func (t Trench) Load() (coefficient float64, p manway.Pressure, err error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Cover", t.Cover, 0, 100*manway.Foot)
	manway.Within(&faults, "Width", t.Width, 0.5*manway.Foot, 100*manway.Foot)
	manway.Within(&faults, "Density", t.Density, 60*manway.PoundPerCubicFoot, 160*manway.PoundPerCubicFoot)
	manway.Within(&faults, "Friction", t.Friction, 0.05, 0.5)
	if len(faults) > 0 {
		return 0, 0, faults
	}
	k := 2 * t.Friction
	cd := -math.Expm1(-k*float64(t.Cover/t.Width)) / k
	return cd, manway.Pressure(cd) * head(t.Density, t.Width), nil
}

// Ring is a round wall of even thickness: a plastic riser, a pipe, a ring.
type Ring struct {
	Diameter  manway.Length   // of the middle of the wall, 4 to 240 in
	Thickness manway.Length   // 0.01 in to a fifth of Diameter
	Modulus   manway.Pressure // E for the time the load lasts, 1,000 psi to 40e6 psi
	Poisson   float64         // 0 to 0.5
}

const leastWall = 0.01 * manway.Inch

// Validate returns the faults of r.
func (r Ring) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Diameter", r.Diameter, 4*manway.Inch, 240*manway.Inch)
	manway.Within(&faults, "Thickness", r.Thickness, leastWall, max(r.Diameter/5, leastWall))
	manway.Within(&faults, "Modulus", r.Modulus, 1000*manway.PSI, 40e6*manway.PSI)
	manway.Within(&faults, "Poisson", r.Poisson, 0, 0.5)
	return faults.Err()
}

// wall is E I per length of wall, in N m, and the radius in m.
func (r Ring) wall() (ei, radius float64) {
	t := float64(r.Thickness)
	return float64(r.Modulus) * t * t * t / 12, float64(r.Diameter) / 2
}

// Stiffness is the pipe stiffness, the load per length that flattens the ring
// over the flattening, at 5 percent:
//
//	PS = E I/(0.149 r^3)
//
// Source: Moser, chapter 3.
func (r Ring) Stiffness() (manway.Pressure, error) {
	if err := r.Validate(); err != nil {
		return 0, err
	}
	ei, radius := r.wall()
	return manway.Pressure(ei / (0.149 * radius * radius * radius)), nil
}

// Buried is what flattens a pipe lying in soil.
type Buried struct {
	Stiffness manway.Pressure // PS, 0.1 to 10,000 psi
	Soil      manway.Pressure // E', modulus of soil reaction, 0 to 10,000 psi
	Load      manway.Pressure // on the plane at the pipe's top, 0 to 1,000 psi
	Lag       float64         // DL, 1 to 2; 0: 1
	Bedding   float64         // K, 0.083 to 0.110; 0: 0.1
}

// Deflection is the flattening over the diameter:
//
//	dx/D = DL K P/(0.149 PS + 0.061 E')
//
// Source: the modified Iowa formula of Spangler and Watkins; Moser, chapter 3.
func (b Buried) Deflection() (float64, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Stiffness", b.Stiffness, 0.1*manway.PSI, 10000*manway.PSI)
	manway.Within(&faults, "Soil", b.Soil, 0, 10000*manway.PSI)
	manway.Within(&faults, "Load", b.Load, 0, 1000*manway.PSI)
	if b.Lag == 0 {
		b.Lag = 1
	}
	if b.Bedding == 0 {
		b.Bedding = 0.1
	}
	manway.Within(&faults, "Lag", b.Lag, 1, 2)
	manway.Within(&faults, "Bedding", b.Bedding, 0.083, 0.110)
	if len(faults) > 0 {
		return 0, faults
	}
	return b.Lag * b.Bedding * float64(b.Load) / (0.149*float64(b.Stiffness) + 0.061*float64(b.Soil)), nil
}

// Buckling is the pressures at which a ring buckles.
type Buckling struct {
	Ring manway.Pressure // a ring alone, under water: 3 E I/r^3
	Tube manway.Pressure // a long tube, under water: 3 E I/((1 - nu^2) r^3)
	Soil manway.Pressure // held by soil of modulus E': 2 sqrt(E'/(1 - nu^2) E I/r^3)
	// Stiff is by the Scandinavian form, 1.15 sqrt(Pb E') with Pb of the tube.
	Stiff manway.Pressure
}

// Buckling is the pressures all round at which the ring buckles, in water and
// in soil with a modulus of reaction of 0 to 10,000 psi. Water one foot high
// is 0.433 psi. Source: Moser, pp. 111-113.
func (r Ring) Buckling(reaction manway.Pressure) (Buckling, error) {
	var faults manway.InputErrors
	faults.Under("", r.Validate())
	manway.Within(&faults, "Reaction", reaction, 0, 10000*manway.PSI)
	if len(faults) > 0 {
		return Buckling{}, faults
	}
	ei, radius := r.wall()
	bare := ei / (radius * radius * radius)
	stiff := 1 - r.Poisson*r.Poisson
	tube := 3 * bare / stiff
	return Buckling{
		Ring:  manway.Pressure(3 * bare),
		Tube:  manway.Pressure(tube),
		Soil:  manway.Pressure(2 * math.Sqrt(float64(reaction)/stiff*bare)),
		Stiff: manway.Pressure(1.15 * math.Sqrt(tube*float64(reaction))),
	}, nil
}

// Support is how a buried ring is held and drained.
type Support struct {
	Cover    manway.Length   // h, above 0, to 100 ft
	Water    manway.Length   // hw, water over the pipe's top, 0 to Cover
	Reaction manway.Pressure // E', 0 to 10,000 psi
}

// Allowable is the pressure that a ring lying in soil may take:
//
//	qa = 1/FS sqrt(32 Rw B' E' E I/D^3)
//	Rw = 1 - 0.33 hw/h,  B' = 4 (h^2 + D h)/(1.5 (2 h + D)^2)
//	FS = 2.5 where h/D >= 2, else 3
//
// Source: Moser, p. 113.
func (r Ring) Allowable(s Support) (manway.Pressure, error) {
	var faults manway.InputErrors
	faults.Under("", r.Validate())
	manway.Within(&faults, "Cover", s.Cover, 0.1*manway.Inch, 100*manway.Foot)
	manway.Within(&faults, "Water", s.Water, 0, max(s.Cover, 0))
	manway.Within(&faults, "Reaction", s.Reaction, 0, 10000*manway.PSI)
	if len(faults) > 0 {
		return 0, faults
	}
	ei, _ := r.wall()
	h, d := float64(s.Cover), float64(r.Diameter)
	rw := 1 - 0.33*float64(s.Water)/h
	b := 4 * (h*h + d*h) / (1.5 * (2*h + d) * (2*h + d))
	fs := 3.0
	if manway.Reached(h/d, 2) {
		fs = 2.5
	}
	return manway.Pressure(math.Sqrt(32*rw*b*float64(s.Reaction)*ei/(d*d*d)) / fs), nil
}

// arching85 is K of the ring compression formula for fill at 85 percent of
// standard density.
const arching85 = 0.86

// Compression is the force along the wall of a flexible ring, per length, for
// cover of at least its span:
//
//	C = Pv D/2,  Pv = K (dead + live with impact),  K = 0.86 at 85 percent density
//
// Each pressure 0 to 1,000 psi. Source: handbook of civil engineering
// formulas, ring compression method.
func (r Ring) Compression(dead, live manway.Pressure) (manway.LineLoad, error) {
	var faults manway.InputErrors
	faults.Under("", r.Validate())
	manway.Within(&faults, "Dead", dead, 0, 1000*manway.PSI)
	manway.Within(&faults, "Live", live, 0, 1000*manway.PSI)
	if len(faults) > 0 {
		return 0, faults
	}
	return manway.LineLoad(arching85 * float64(dead+live) * float64(r.Diameter) / 2), nil
}
