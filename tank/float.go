package tank

import (
	"fmt"

	"manway.example/manway"
)

// FloatCase is one state of a buried tank in groundwater.
type FloatCase struct {
	Cover       manway.Length      // soil over the roof, over the crown of a lying tank; 0 to 20 ft
	Groundwater manway.Groundwater // unknown: taken at grade
	Liquid      manway.Length      // depth left in every compartment; 0: empty
	Soil        manway.Soil        // not known: taken light
	Concrete    manway.Concrete    // density not known: taken light, 135 lb/ft3
	Lids        manway.Mass        // that stay on
	Risers      manway.Mass
	RiserArea   manway.Area   // outside plan of all risers, which hold no water; 0: no riser
	Dug         manway.Volume // soil over the tank that has been dug away
	Flange      manway.Length // ledge of the floor beyond the walls all round, upright tanks only
	Wedge       Wedge
	Ballast     []Ballast
	Required    RequiredFactor // the zero value is 1.2: see SanJoaquinFactor
}

// Wedge is a choice to count soil beside the tank too: the body of soil widens
// by Slope for each unit of height, from the flange, or from the bottom of a
// tank without one. The zero value counts only soil straight above.
type Wedge struct {
	Slope float64 // horizontal to vertical, 0 to 0.6; 0.25 and tan 30 deg are met in permit calculations
	Ends  bool    // at the ends too, not only along the sides; a round upright tank widens all round
}

// Ballast is a weight fixed to the tank. It counts with what is left of it
// under water: Mass (1 - water/Density).
type Ballast struct {
	Mass    manway.Mass
	Density manway.Density
	InSoil  bool // it takes the place of soil that would count
}

// RequiredFactor is a factor of safety against flotation, and who asks for it.
type RequiredFactor struct {
	Value  float64
	Source manway.Citation
}

// FloatState is the outcome of a flotation case.
type FloatState uint8

// The outcomes, worst last.
const (
	NoUplift  FloatState = iota // the water stands below the tank
	StaysDown                   // at or above the required factor
	Short                       // above 1, below the required factor
	Floats                      // the uplift is at least what holds it down
)

var floatStates = [...]string{"no uplift", "reaches the required factor", "short of the required factor", "floats"}

// String is the outcome in words.
func (s FloatState) String() string { return manway.Word(floatStates[:], s) }

// MarshalText is the same as String.
func (s FloatState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// LeaveState says whether a tank may be pumped dry in a flotation case.
type LeaveState uint8

// The answers.
const (
	LeaveNone     LeaveState = iota // pumped dry it still has the required factor
	LeaveAtLeast                    // not below the depth given
	LeaveNotShown                   // not even a full tank has the required factor
)

var leaveStates = [...]string{"factor kept when empty", "leave at least", "not even full"}

// String is the answer in words.
func (s LeaveState) String() string { return manway.Word(leaveStates[:], s) }

// MarshalText is the same as String.
func (s LeaveState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Flotation is what holds a tank down and what lifts it.
type Flotation struct {
	Shell, Lids, Risers, Contents manway.Force // down
	MoistSoil, SubmergedSoil      manway.Force
	Ballast                       manway.Force
	Down, Uplift                  manway.Force
	Displaced                     manway.Volume // below the water table: tank, ledge and risers
	WaterLevel                    manway.Length // over the outside of the bottom; 0: at or below it
	State                         FloatState
	Factor                        float64 // Down/Uplift; 0 where State is NoUplift
	Required                      RequiredFactor
	Check                         manway.Check
	Leave                         LeaveState
	LeastLiquid                   manway.Length // level in all compartments, where Leave is LeaveAtLeast
	Assumed                       manway.Assumptions
	Cautions                      manway.Cautions
	Case                          FloatCase // as reckoned: soil, concrete and factor filled in
}

// Float sets the weight that holds the tank down against the water it
// displaces:
//
//	factor = (shell + covers + risers + soil + contents + ballast) / (water x displaced volume)
//
// Soil counts straight above the tank (and its ledge), moist above the water
// table and less the weight of water below it; a wedge beside the tank counts
// only where Wedge asks for it, and friction on the walls never does. Water in
// the tank counts as water whatever it carries. Concrete of unknown density is
// taken at the light end of normal weight. Groundwater stands at most at
// grade: flooding above it is not reckoned.
//
// Errors: [manway.InputErrors] for a depth, mass or factor out of range, and
// for a surveyed tank, whose outside is not known.
//
// Source: the form of the US Army Corps of Engineers, EM 1110-2-2100; permit
// calculations as tested.
func (t *Tank) Float(c FloatCase) (Flotation, error) {
	b, err := t.buried(&c)
	if err != nil {
		return Flotation{}, err
	}
	return b.float(), nil
}

// buried is a tank in the ground, all in SI.
type buried struct {
	t             *Tank
	c             FloatCase
	shell         Shell
	floor, height float64 // thickness of the floor; outside height of the tank
	grade, water  float64 // over the outside of the bottom
	ledge         float64 // area of the flange
	assumed       manway.Assumptions
	cautions      manway.Cautions
}

// buried validates a case and fills in what was not measured.
func (t *Tank) buried(c *FloatCase) (buried, error) {
	var faults manway.InputErrors
	c.validate(&faults, t)
	if len(faults) > 0 {
		return buried{}, faults
	}
	concrete, light := c.Concrete.AsBallast()
	shell, err := t.ShellWeight(concrete)
	if err != nil {
		return buried{}, err
	}
	b := buried{t: t, shell: shell, assumed: shell.Assumed}
	if t.Spec.Material == ConcreteShell && (!shell.Weighed || c.Flange > 0) {
		c.Concrete = concrete
		b.assumed |= light
	}
	b.cautions = shell.Cautions | manway.MayFloat | manway.MayCave | manway.Screening | manway.LocalCode
	soil, _ := c.Soil.AsBallast()
	depth, made := c.Groundwater.Taken()
	if made != 0 {
		b.assumed |= made
		b.cautions |= manway.GroundwaterUnknown
	}
	if c.Soil.Moist == 0 || c.Soil.Saturated == 0 {
		b.assumed |= manway.AssumedSoil
	}
	c.Soil = soil
	if c.Required.Value == 0 {
		c.Required = SanJoaquinFactor
	}
	b.c = *c
	b.height = float64(t.outside.Inside().Height)
	if !lying(t.shape) {
		b.floor = float64(t.Spec.Floor)
		b.height += b.floor + float64(t.Spec.Roof)
	}
	b.grade = b.height + float64(c.Cover)
	b.water = max(0, b.grade-float64(depth))
	b.ledge = b.spread(float64(c.Flange)) - b.spread(0)
	return b, nil
}

// mostDug bounds the soil that a crew may have dug away over a tank.
const mostDug = 10000 * manway.CubicFoot

func (c *FloatCase) validate(faults *manway.InputErrors, t *Tank) {
	if !t.made(faults) {
		return
	}
	if t.outside == nil {
		faults.Add("Tank.Shape", "surveyed", "a shape whose outside is known")
	}
	manway.Within(faults, "Cover", c.Cover, 0, 20*manway.Foot)
	faults.Under("Groundwater", c.Groundwater.Validate())
	manway.Within(faults, "Liquid", c.Liquid, 0, manway.Length(t.height))
	faults.Under("Soil", c.Soil.Validate())
	faults.Under("Concrete", c.Concrete.Validate())
	manway.Within(faults, "Lids", c.Lids, 0, 50000*manway.Pound)
	manway.Within(faults, "Risers", c.Risers, 0, 100000*manway.Pound)
	in := t.Inside
	plan := (in.Length + in.InletHead + in.OutletHead).Times(in.Width)
	manway.Within(faults, "RiserArea", c.RiserArea, 0, plan)
	manway.Within(faults, "Dug", c.Dug, 0, mostDug)
	manway.Within(faults, "Flange", c.Flange, 0, 5*manway.Foot)
	if c.Flange > 0 && lying(t.shape) {
		faults.Add("Flange", c.Flange.String(), "no flange on a lying tank")
	}
	manway.Within(faults, "Wedge.Slope", c.Wedge.Slope, 0, 0.6)
	for i, x := range c.Ballast {
		manway.Within(faults, fmt.Sprintf("Ballast[%d].Mass", i), x.Mass, 0, 500000*manway.Pound)
		manway.Within(faults, fmt.Sprintf("Ballast[%d].Density", i), x.Density, 63*manway.PoundPerCubicFoot, 800*manway.PoundPerCubicFoot)
	}
	if c.Required.Value != 0 {
		manway.Within(faults, "Required.Value", c.Required.Value, 1, 3)
	}
}

// weights are the forces of one state of the water, in N, and the volume it
// displaces.
type weights struct{ moist, submerged, ballast, displaced, others float64 }

func (w weights) down() float64 { return w.moist + w.submerged + w.ballast + w.others }
func (w weights) uplift() float64 {
	return w.displaced * float64(manway.WaterDensity) * manway.StandardGravity
}

// at reckons all but the contents for water at a height over the bottom.
func (b *buried) at(water float64) weights {
	const g, rho = manway.StandardGravity, float64(manway.WaterDensity)
	c := &b.c
	start := b.start()
	level := min(max(water, start), b.grade)
	submerged, moist := b.soil(start, level), b.soil(level, b.grade)
	gone := float64(c.Dug)
	var w weights
	for _, x := range c.Ballast {
		v := float64(x.Mass) / float64(x.Density)
		w.ballast += (float64(x.Mass) - rho*v) * g
		if x.InSoil {
			gone += v
		}
	}
	// What is gone is taken from the moist soil first, which weighs more.
	moist, gone = max(0, moist-gone), max(0, gone-moist)
	submerged = max(0, submerged-gone)
	w.moist = moist * float64(c.Soil.Moist) * g
	w.submerged = submerged * max(0, float64(c.Soil.Saturated)-rho) * g
	w.displaced = b.solid(min(water, b.height)) + b.ledge*min(water, b.floor) +
		float64(c.RiserArea)*max(0, min(water, b.grade)-b.height)
	w.others = (float64(b.shell.Mass+c.Lids+c.Risers) + b.ledge*b.floor*float64(b.ledgeDensity())) * g
	return w
}

// ledgeDensity is that of the flange, which is part of the floor.
func (b *buried) ledgeDensity() manway.Density {
	var ignored Shell
	return b.t.density(b.c.Concrete, &ignored)
}

func (b *buried) float() Flotation {
	const g, rho = manway.StandardGravity, float64(manway.WaterDensity)
	w := b.at(b.water)
	contents := b.t.liquid(float64(b.c.Liquid)) * rho * g
	f := Flotation{
		Lids: manway.Force(float64(b.c.Lids) * g), Risers: manway.Force(float64(b.c.Risers) * g),
		Contents: manway.Force(contents), MoistSoil: manway.Force(w.moist), SubmergedSoil: manway.Force(w.submerged),
		Ballast: manway.Force(w.ballast), Down: manway.Force(w.down() + contents), Uplift: manway.Force(w.uplift()),
		Displaced: manway.Volume(w.displaced), WaterLevel: manway.Length(b.water), Required: b.c.Required,
		Assumed: b.assumed, Cautions: b.cautions, Case: b.c,
	}
	f.Shell = manway.Force(w.others) - f.Lids - f.Risers
	need := b.c.Required.Value * w.uplift()
	f.Check = manway.Check{
		Name: "flotation", Kind: manway.KindForce, Demand: need, Capacity: float64(f.Down), Unfactored: w.uplift(),
		Combination: manway.Service, Source: b.c.Required.Source,
	}.Judge()
	switch {
	case w.uplift() == 0:
		f.State = NoUplift
	case f.Check.Status == manway.Pass:
		f.State = StaysDown
	case w.uplift() < float64(f.Down):
		f.State = Short
	default:
		f.State = Floats
	}
	if f.State != NoUplift {
		f.Factor = float64(f.Down) / w.uplift()
	}
	f.Leave, f.LeastLiquid = b.leave(w, need)
	if f.Check.Status != manway.Pass {
		f.Cautions |= manway.DoNotEmpty
	}
	if f.Leave != LeaveNone {
		f.Cautions |= manway.DoNotEmpty
	}
	return f
}

// leave finds the liquid that has to stay.
func (b *buried) leave(w weights, need float64) (LeaveState, manway.Length) {
	missing := (need - w.down()) / (float64(manway.WaterDensity) * manway.StandardGravity)
	switch {
	case missing <= 1e-9*b.t.full:
		return LeaveNone, 0
	case missing > b.t.full:
		return LeaveNotShown, 0
	}
	return LeaveAtLeast, manway.Length(invert(b.t, missing, b.t.full, b.t.height))
}
