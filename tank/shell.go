package tank

import (
	"math"

	"manway.example/manway"
)

// Shell is the empty tank: what its parts hold and weigh, and where its centre
// of mass is.
type Shell struct {
	Floor, Walls, Roof, Partitions Part
	Openings                       Part // already taken out of Roof (of Walls where the tank has no roof)
	Volume                         manway.Volume
	Mass                           manway.Mass
	Centroid                       Point
	Weighed                        bool // Mass is Spec.EmptyMass, not the sum of the parts
	Assumed                        manway.Assumptions
	Cautions                       manway.Cautions
}

// Part is one part of the shell.
type Part struct {
	Volume manway.Volume
	Mass   manway.Mass
}

// Point is a place in the tank's axes: see the package comment.
type Point struct{ Along, Across, Up manway.Length }

// Densities of shells that are not of concrete, common practice: polyethylene
// 0.94 to 0.96, glass fibre laminate 1.5 to 1.9 (the light end is taken),
// structural steel 490 lb/ft3.
const (
	plasticDensity    = 0.94 * manway.GramPerCubicCentimetre
	fibreglassDensity = 1.5 * manway.GramPerCubicCentimetre
	steelDensity      = 490 * manway.PoundPerCubicFoot
)

// ShellWeight reckons the empty tank without covers and risers:
//
//	walls = outside solid over the inside height - hollow (fillets stay)
//	floor, roof = outside plan x thickness, the roof less its openings
//	partition = its room up to its height, less its transfer opening
//
// A lying tank and a sphere have their wall all round. The centroid is that of
// the parts; of a torispherical head it is taken at 3/8 of its depth. Where
// Spec.EmptyMass is given it is the mass, and the parts only place the
// centroid. Concrete that is not known weighs 150 lb/ft3.
//
// Errors: concrete out of range; a surveyed tank without EmptyMass, since it
// has no sizes.
//
// Source: geometry; 150 lb/ft3 for reinforced concrete is common practice.
func (t *Tank) ShellWeight(concrete manway.Concrete) (Shell, error) {
	var faults manway.InputErrors
	faults.Under("concrete", concrete.Validate())
	if !t.made(&faults) {
		return Shell{}, faults
	}
	surveyed := t.outside == nil
	if surveyed && t.Spec.EmptyMass == 0 {
		faults.Add("EmptyMass", "not given", "the mass of the empty tank: a surveyed tank has no walls to reckon it from")
	}
	if len(faults) > 0 {
		return Shell{}, faults
	}
	s := Shell{Assumed: t.Assumed, Cautions: t.Cautions | manway.LocalCode}
	if surveyed {
		s.Mass, s.Weighed = t.Spec.EmptyMass, true
		return s, nil
	}
	density := t.density(concrete, &s)
	var b balance
	s.Walls = b.add(density, t.wallMoments())
	roofUp := t.height + float64(t.Spec.Roof)/2
	if !lying(t.shape) {
		middle := t.whole.to / 2
		bottom, top := t.outer.area(t.outerWhole, 0), t.outer.area(t.outerWhole, t.height)
		s.Floor = b.add(density, moments{v: bottom * float64(t.Spec.Floor), x: middle, z: -float64(t.Spec.Floor) / 2})
		s.Roof = b.add(density, moments{v: top * float64(t.Spec.Roof), x: middle, z: roofUp})
	}
	for _, a := range t.Spec.Access {
		out := moments{v: -float64(a.Area()) * float64(t.Spec.Roof), x: float64(a.Along), y: float64(a.Across), z: roofUp}
		part := b.add(density, out)
		s.Openings = s.Openings.plus(Part{-part.Volume, -part.Mass})
		if lying(t.shape) {
			s.Walls = s.Walls.plus(part)
		} else {
			s.Roof = s.Roof.plus(part)
		}
	}
	for i, p := range t.partitions[:t.n-1] {
		m := moments{v: t.solid.volume(p.span, p.top), x: (p.from + p.to) / 2, z: middleHeight(t.solid, p.span, p.top)}
		m.v = max(0, m.v-float64(t.Spec.Partitions[i].Opening)*(p.to-p.from))
		s.Partitions = s.Partitions.plus(b.add(density, m))
	}
	s.Volume, s.Mass = manway.Volume(b.v), manway.Mass(b.m)
	s.Centroid = Point{manway.Length(b.x / b.m), manway.Length(b.y / b.m), manway.Length(b.z / b.m)}
	if t.Spec.EmptyMass != 0 {
		s.Mass, s.Weighed = t.Spec.EmptyMass, true
	}
	return s, nil
}

// density is that of the shell's material.
func (t *Tank) density(concrete manway.Concrete, s *Shell) manway.Density {
	switch t.Spec.Material {
	case PlasticShell:
		s.Cautions |= manway.EstimateOnly | manway.KeepOffRoof | manway.VacuumOnTank
		return plasticDensity
	case FibreglassShell:
		s.Cautions |= manway.EstimateOnly | manway.KeepOffRoof | manway.VacuumOnTank
		return fibreglassDensity
	case SteelShell:
		s.Cautions |= manway.KeepOffRoof | manway.VacuumOnTank
		return steelDensity
	}
	filled, made := concrete.Filled()
	if t.Spec.EmptyMass == 0 {
		s.Assumed |= made & manway.AssumedConcreteDensity
	}
	return filled.Density
}

// outsideOf is the outside of a hollow with walls round it.
func outsideOf(hollow Shape, wall manway.Length) Shape {
	switch s := hollow.(type) {
	case Surveyed:
		return nil
	case Box:
		s.Fillet = 0
		return s.shrunk(-wall, 0, 0)
	}
	return hollow.shrunk(-wall, 0, 0)
}

// moments is a volume and where its centre lies.
type moments struct{ v, x, y, z float64 }

// wallMoments is the outside solid less the hollow.
func (t *Tank) wallMoments() moments {
	o, in := t.outside, t.shape
	high, shift := t.height, 0.0
	if lying(in) {
		high, shift = float64(o.Inside().Height), float64(t.Spec.Wall)
	}
	vo, vi := t.outer.volume(t.outerWhole, high), t.solid.volume(t.whole, t.height)
	zo, zi := middleHeight(t.outer, t.outerWhole, high)-shift, middleHeight(t.solid, t.whole, t.height)
	xo, xi := middleAlong(o), middleAlong(in)
	// The outside of a flat end, or of an upright tank, begins a wall before the
	// inside.
	switch c := in.(type) {
	case HorizontalCylinder:
		if c.Inlet.Form == Flat {
			xo -= float64(t.Spec.Wall)
		}
	default:
		xo -= (t.outerWhole.to - t.whole.to) / 2
	}
	v := vo - vi
	return moments{v: v, x: (vo*xo - vi*xi) / v, z: (vo*zo - vi*zi) / v}
}

// middleHeight is the height of the centre of the liquid of a span:
//
//	int z A dz = H V(H) - int V dz
//
// A tank that is its own mirror has it in the middle; else the integral is
// summed, to about 1e-7 of the height.
func middleHeight(b solid, s span, height float64) float64 {
	full := b.volume(s, height)
	switch b.(type) {
	case *prism, *column, *ball:
		return height / 2
	case *barrel:
		if mirror := 2 * b.volume(s, height/2); math.Abs(mirror-full) < 1e-12*full {
			return height / 2
		}
	}
	below := 0.0
	for i, x := range gauss.x {
		below += gauss.w[i] * b.volume(s, x*height)
	}
	return height * (1 - below/full)
}

// middleAlong is the position of the centre of the full hollow along its
// length.
func middleAlong(s Shape) float64 {
	l := float64(s.Inside().Length)
	c, ok := s.(HorizontalCylinder)
	if !ok {
		return l / 2
	}
	r := float64(c.Diameter) / 2
	in, out := c.Inlet.full(r), c.Outlet.full(r)
	body := math.Pi * r * r * l
	return (body*l/2 - in*c.Inlet.centre(r) + out*(l+c.Outlet.centre(r))) / (body + in + out)
}

// full is the volume of a head, near enough to weigh its place: of a
// torispherical one that of half an ellipsoid of its depth.
func (h Head) full(r float64) float64 {
	a := h.reach(r)
	if h.Form == SphericalCap {
		return math.Pi * a * (3*r*r + a*a) / 6
	}
	return 2 * math.Pi / 3 * r * r * a
}

// centre is how far the centre of a full head lies beyond the straight part.
func (h Head) centre(r float64) float64 {
	a := h.reach(r)
	if h.Form == SphericalCap {
		rho := (a*a + r*r) / (2 * a)
		return a * (4*rho - a) / (4 * (3*rho - a))
	}
	return 3 * a / 8
}

// balance sums masses and their moments.
type balance struct{ v, m, x, y, z float64 }

func (b *balance) add(d manway.Density, of moments) Part {
	m := of.v * float64(d)
	b.v += of.v
	b.m += m
	b.x += m * of.x
	b.y += m * of.y
	b.z += m * of.z
	return Part{manway.Volume(of.v), manway.Mass(m)}
}

func (p Part) plus(q Part) Part { return Part{p.Volume + q.Volume, p.Mass + q.Mass} }
