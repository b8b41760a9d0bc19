package tank

import (
	"slices"

	"manway.example/manway"
)

// Tank is a tank whose Spec was validated. It is made by [New] and does not
// change; its methods fail only for their own arguments. Any number of
// goroutines may use it.
type Tank struct {
	// Spec is what the tank was made from, with inside sizes and with the
	// thicknesses that were taken. It is there to be read: changing it changes
	// no result.
	Spec     Spec
	Inside   Extent             // of the hollow
	Assumed  manway.Assumptions // values taken because they were not measured
	Cautions manway.Cautions

	shape        Shape // of the hollow
	outside      Shape // of an upright tank over its inside height, without fillets; nil for a survey
	solid, outer solid // their geometry
	whole        span
	outerWhole   span
	height, full float64
	compartments [maxPartitions + 1]Compartment
	n            int                 // of compartments
	partitions   [maxPartitions]slab // n - 1 of them
	known        known
}

// slab is the room that a partition takes.
type slab struct {
	span
	top float64
}

// known says what the sizes rest on, and so how far a volume may be off.
type known uint8

const (
	insideKnown known = iota
	outsideKnown
	nominalKnown
)

// Thicknesses that are taken where none was measured: the least that codes
// allow for precast concrete (15A NCAC 18E .1403(b)(1): ends and sides 2.5 in,
// top and bottom 3 in), which is the unfavourable side for weight. Plastic,
// fibreglass and steel are taken at 1/4 in, common practice.
const (
	leastWall  = 2.5 * manway.Inch
	leastSlab  = 3 * manway.Inch
	lightShell = 0.25 * manway.Inch
)

// New validates a Spec once and makes the tank.
//
// Errors: [manway.InputErrors] with every fault: a size outside the range of
// its shape, a wall thicker than its tank, partitions out of order or outside,
// an invert above the roof, an access off its tank.
func New(s Spec) (Tank, error) {
	var faults manway.InputErrors
	if s.Shape == nil {
		faults.Add("Shape", "none", "a shape of this package")
		return Tank{}, faults
	}
	t := Tank{Spec: s}
	t.thicknesses(&faults)
	var of manway.InputErrors
	s.Shape.validate(&of)
	faults.Under("Shape", of.Err())
	if len(faults) > 0 {
		return Tank{}, faults
	}
	t.shape = s.Shape
	if shape, ok := s.Shape.(Nominal); ok {
		t.shape, t.known = shape.box(), nominalKnown
		t.Cautions |= manway.EstimateOnly
		if shape.Height == 0 {
			t.Assumed |= manway.AssumedInsideDepth
		}
	}
	if s.OutsideSizes {
		t.shape, t.known = t.shape.shrunk(t.Spec.Wall, t.Spec.Roof, t.Spec.Floor), outsideKnown
		t.shape.validate(&of)
		for _, f := range of {
			faults.Add("Shape."+f.Field, f.Value+" less its walls", f.Want)
		}
		if len(faults) > 0 {
			return Tank{}, faults
		}
	}
	s.validate(&faults, t.shape)
	if len(faults) > 0 {
		return Tank{}, faults
	}
	t.divide()
	return t, nil
}

// thicknesses checks walls, roof and floor and fills in what was not measured.
func (t *Tank) thicknesses(faults *manway.InputErrors) {
	wall, slab := leastWall, leastSlab
	if t.Spec.Material != ConcreteShell {
		wall, slab = lightShell, lightShell
	}
	outside := t.Spec.OutsideSizes
	switch t.Spec.Shape.(type) {
	case Surveyed, Nominal:
		if outside {
			faults.Add("OutsideSizes", "true", "inside sizes for this shape")
		}
	}
	fill := func(field string, x *manway.Length, usual manway.Length, assumed manway.Assumptions) {
		switch {
		case *x != 0:
			manway.Within(faults, field, *x, 0.05*manway.Inch, 3*manway.Foot)
		case outside:
			faults.Add(field, "not given", "a thickness, since the sizes are outside")
		default:
			*x = usual
			t.Assumed |= assumed
		}
	}
	fill("Wall", &t.Spec.Wall, wall, manway.AssumedWallThickness)
	roof, floor := manway.AssumedRoofThickness, manway.AssumedFloorThickness
	if lying(t.Spec.Shape) { // the wall goes all round
		slab, outside, roof, floor = t.Spec.Wall, false, 0, 0
	}
	fill("Roof", &t.Spec.Roof, slab, roof)
	fill("Floor", &t.Spec.Floor, slab, floor)
}

// lying reports whether a shape has its wall all round, without a roof slab or
// a floor.
func lying(s Shape) bool {
	switch s.(type) {
	case HorizontalCylinder, HorizontalEllipse, Sphere:
		return true
	}
	return false
}

// divide parts the tank into its compartments.
func (t *Tank) divide() {
	t.Spec.Shape, t.Spec.OutsideSizes = t.shape, false
	t.Spec.Partitions, t.Spec.Access = slices.Clone(t.Spec.Partitions), slices.Clone(t.Spec.Access)
	t.solid, t.whole = t.shape.solid(), whole(t.shape)
	if t.outside = outsideOf(t.shape, t.Spec.Wall); t.outside != nil {
		t.outer, t.outerWhole = t.outside.solid(), whole(t.outside)
	}
	t.Inside = t.shape.Inside()
	t.height = float64(t.Inside.Height)
	t.n = len(t.Spec.Partitions) + 1
	next := span{inlet: true}
	for i, p := range t.Spec.Partitions {
		next.to = float64(p.At)
		t.compartments[i].span = next
		next = span{from: float64(p.At + p.Thickness)}
		t.partitions[i] = slab{span{from: float64(p.At), to: next.from}, float64(p.Height)}
		if p.Height == 0 {
			t.partitions[i].top = t.height
		}
	}
	next.to, next.outlet = t.whole.to, true
	t.compartments[t.n-1].span = next
	for i := range t.n {
		c := &t.compartments[i]
		c.solid, c.height = t.solid, t.height
		c.From, c.To = manway.Length(c.span.from), manway.Length(c.span.to)
		c.full = c.liquid(t.height)
	}
	t.full = t.liquid(t.height)
}

// Compartments are the compartments from the inlet to the outlet. A tank
// without a partition has one.
func (t *Tank) Compartments() []Compartment { return t.compartments[:t.n] }

// Volume is the liquid below a depth in all compartments and over the
// partitions that do not reach the roof.
//
// Errors: a depth below 0 or above the inside height.
//
// Source: geometry of the shape; dished heads after Jones, Calculating Tank
// Volume.
func (t *Tank) Volume(depth manway.Length) (manway.Volume, error) {
	if !(depth >= 0 && float64(depth) <= t.height) || t.n == 0 {
		return 0, outOfRange("depth", depth, manway.Length(t.height))
	}
	return manway.Volume(t.liquid(float64(depth))), nil
}

// Area is the surface of the liquid at a depth: what one unit more of depth
// holds.
//
// Errors: as Volume.
//
// Source: as Volume.
func (t *Tank) Area(depth manway.Length) (manway.Area, error) {
	if !(depth >= 0 && float64(depth) <= t.height) || t.n == 0 {
		return 0, outOfRange("depth", depth, manway.Length(t.height))
	}
	return manway.Area(t.surface(float64(depth))), nil
}

// Depth is the depth at which the tank, all compartments level, holds a volume,
// so that Volume(Depth(v)) is v within 1e-12 of the full volume.
//
// Errors: a volume below 0 or above Full.
//
// Source: Volume, inverted.
func (t *Tank) Depth(v manway.Volume) (manway.Length, error) {
	if !(v >= 0 && float64(v) <= t.full) || t.n == 0 {
		return 0, outOfRange("volume", v, manway.Volume(t.full))
	}
	return manway.Length(invert(t, float64(v), t.full, t.height)), nil
}

// Full is the volume up to the inside of the roof.
func (t *Tank) Full() manway.Volume { return manway.Volume(t.full) }

// AtOutlet is the liquid below the outlet invert; known is false where the
// invert was not measured.
func (t *Tank) AtOutlet() (v manway.Volume, known bool) {
	if t.Spec.OutletInvert == 0 || t.n == 0 {
		return 0, false
	}
	return manway.Volume(t.liquid(float64(t.Spec.OutletInvert))), true
}

func (t *Tank) liquid(depth float64) float64 {
	v := t.solid.volume(t.whole, depth)
	for i := range t.n - 1 {
		p := &t.partitions[i]
		v -= t.solid.volume(p.span, min(depth, p.top))
	}
	return v
}

func (t *Tank) surface(depth float64) float64 {
	a := t.solid.area(t.whole, depth)
	for i := range t.n - 1 {
		if p := &t.partitions[i]; depth < p.top || p.top == t.height {
			a -= t.solid.area(p.span, depth)
		}
	}
	return a
}

// tapeReading is how far a size may be off either way, and each wall the same:
// common practice.
const tapeReading = 0.5 * manway.Inch

// Volumes of nominal tanks against their nominal gallons, from the four sizes
// of 12VAC5-610-815 Table 5.3.
const (
	nominalLeast = 1 - 0.023
	nominalMost  = 1 + 0.113
)

// Range is how much or little the tank may hold below a depth, given what its
// sizes rest on: inside sizes within 1/2 in; outside sizes and each wall within
// 1/2 in; nominal gallons by what such tanks hold. It is false for a survey,
// which has no sizes.
//
// Errors: as Volume.
//
// Source: practice, half an inch for a tape; nominal gallons after the sizes
// printed in 12VAC5-610-815, Table 5.3.
func (t *Tank) Range(depth manway.Length) (low, high manway.Volume, known bool, err error) {
	v, err := t.Volume(depth)
	if err != nil {
		return 0, 0, false, err
	}
	off := tapeReading / 2
	switch t.known {
	case nominalKnown:
		return v * nominalLeast, v * nominalMost, true, nil
	case outsideKnown:
		off *= 3
	}
	if t.outside == nil {
		return 0, 0, false, nil
	}
	off = min(off, t.Inside.Height/8)
	holds := func(s Shape) manway.Volume { return manway.Volume(s.solid().volume(whole(s), float64(depth))) }
	as := holds(t.shape)
	low = v + holds(t.shape.shrunk(off, 0, 0)) - as
	high = v + holds(t.shape.shrunk(-off, 0, 0)) - as
	return max(0, low), high, true, nil
}

// made adds a fault unless t was made by New.
func (t *Tank) made(faults *manway.InputErrors) bool {
	if t.n == 0 {
		faults.Add("Tank", "zero", "a tank made by New")
	}
	return t.n > 0
}

func outOfRange[Q ~float64](field string, v, most Q) error {
	var faults manway.InputErrors
	manway.Within(&faults, field, v, 0, most)
	if len(faults) == 0 {
		faults.Add("Tank", "zero", "a tank made by New")
	}
	return faults
}
