package tank

import (
	"manway.example/manway"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// WallCase is the walls of a tank as they stand today, in the ground. The zero
// value is whole walls of which nothing is known, with no soil over the roof and
// groundwater taken at grade.
type WallCase struct {
	Concrete manway.Concrete
	Steel    Steel         // Along runs level, Across upright
	Loss     manway.Length // worn off the inside face all over, out of Spec.Wall
	// TopHeld says that the roof was seen to hold the heads of the walls, keyed or
	// cast together. Unknown is taken as not: the head is free.
	TopHeld bool
	// Braced says, for each partition, that it was seen to be cast with the side
	// walls; then they are run with it as a support too.
	Braced      []bool
	Cover       manway.Length // soil over the roof
	Soil        manway.Soil   // as a load; not known: taken heavy and loose
	Groundwater manway.Groundwater
	Liquid      manway.Length // level of the full tank over the floor; 0: the outlet invert, or the roof where that is not known
	// Vehicle is how near the wheels of a truck or machine come to the walls, and
	// whether it drives at them rather than along. The zero value is right beside.
	Vehicle Vehicle
}

// Vehicle is a truck beside a tank.
type Vehicle struct {
	Distance manway.Length // from the wall to its wheels
	Towards  bool          // it drives at the wall
}

// WallStrength is an unreviewed screening of the walls of a tank.
type WallStrength struct {
	Loadings []Loading // side and end wall: full with the soil dug away, empty, empty with a truck beside
	Governs  int       // index of the one that governs, -1 where no check ran
	// Groundwater is how high groundwater may stand over the bottom of the walls
	// before the empty tank is no longer shown to stand.
	Groundwater Limit
	Liquid      manway.Length // level taken for the full tank
	WaterHeight manway.Length // groundwater over the inside of the floor, as taken
	NotJudged   []manway.Check
	Assumed     manway.Assumptions
	Cautions    manway.Cautions
	Case        WallCase

	strips strips
}

// Checks is every check of the walls in one list, and then what is not judged.
func (w WallStrength) Checks() []manway.Check { return flat(w.Loadings, w.NotJudged) }

func flat(loadings []Loading, open []manway.Check) []manway.Check {
	var list []manway.Check
	for _, l := range loadings {
		for _, c := range l.Checks {
			c.Name = l.Name + ", " + c.Name
			if l.Edges != "" {
				c.Name += ", edges " + l.Edges
			}
			list = append(list, c)
		}
	}
	return append(list, open...)
}

// Wall screens the side and the end wall of a rectangular concrete tank as
// plates on three sides, free at the head unless TopHeld:
//
//	full      1.4 F, liquid to its level, the soil dug away outside
//	empty     1.6 H, soil at rest (K0 = 1 - sin phi) and groundwater outside
//	truck     the same and a truck beside, as a height of soil (AASHTO LRFD
//	          3.11.6.4, remembered)
//
// Whether the edges turn is not known: both ways are run. Where the steel counts
// and stretches (phi 0.90) in all that is pulled, one way that carries is enough (the lower bound theorem;
// ACI 318-19 8.2.1) and the way that asks less is given, named in Edges; else the
// way that asks more. Then the height of groundwater is found at which the empty tank
// is no longer shown to stand. What counts follows from the steel, as in Roof.
//
// Errors: [manway.InputErrors], every fault at once. Other shapes and materials,
// and a wall of more than half its length or height, are NotJudged.
//
// Source: thin plates after Timoshenko and Woinowsky-Krieger; strength and load
// combinations of ACI 318-19; earth at rest after Das.
func (t *Tank) Wall(c WallCase) (WallStrength, error) {
	var faults manway.InputErrors
	c.validate(&faults, t)
	if len(faults) > 0 {
		return WallStrength{}, faults
	}
	w := WallStrength{
		Governs: -1, Case: c, Assumed: t.Assumed & manway.AssumedWallThickness,
		Cautions: t.Cautions | manway.Screening | manway.LocalCode | manway.NeverEnter | manway.MayCave | manway.VehicleOverTank,
	}
	if reason := t.noSlabs(); reason != "" {
		w.NotJudged = []manway.Check{{Name: "walls", Reason: reason}}
		return w, nil
	}
	j := wallJudge{t: t, c: &c, w: &w}
	if err := j.run(); err != nil {
		return WallStrength{}, err
	}
	return w, nil
}

func (c WallCase) validate(faults *manway.InputErrors, t *Tank) {
	if !t.made(faults) {
		return
	}
	faults.Under("Concrete", c.Concrete.Validate())
	faults.Under("Steel", c.Steel.Validate())
	faults.Under("Soil", c.Soil.Validate())
	faults.Under("Groundwater", c.Groundwater.Validate())
	manway.Within(faults, "Loss", c.Loss, 0, max(t.Spec.Wall-thinnest, 0))
	manway.Within(faults, "Braced", len(c.Braced), 0, t.n-1)
	manway.Within(faults, "Cover", c.Cover, 0, 20*manway.Foot)
	manway.Within(faults, "Liquid", c.Liquid, 0, t.Inside.Height)
	manway.Within(faults, "Vehicle.Distance", c.Vehicle.Distance, 0, 1000*manway.Foot)
}

// wallJudge works the walls out.
type wallJudge struct {
	t      *Tank
	c      *WallCase
	w      *WallStrength
	ground ground
	panels [2]*panel
	lift   float64 // of the inside of the floor over the foot of the panels, m
}

func (j *wallJudge) run() error {
	t, c, w := j.t, j.c, j.w
	var made manway.Assumptions
	if w.Liquid, made = t.fullLevel(c.Liquid); made != 0 {
		w.Assumed |= made
	}
	j.ground, made = t.groundRound(c.Soil, c.Groundwater, c.Cover)
	w.Assumed |= made
	if !c.Groundwater.Known {
		w.Cautions |= manway.GroundwaterUnknown
	}
	w.WaterHeight = manway.Length(max(j.ground.water, 0))
	var err error
	if j.ground.surcharge, err = j.truck(); err != nil {
		return err
	}
	if err := j.makePanels(); err != nil {
		return err
	}
	made, warn := j.panels[0].strength.made()
	w.strips = j.panels[0].strength.member.strips()
	w.Assumed |= made
	w.Cautions |= warn | manway.RememberedFigure
	for _, p := range j.panels {
		if p.open != "" {
			w.NotJudged = append(w.NotJudged, p.unjudged())
			continue
		}
		for _, b := range j.cases() {
			l, err := p.judge(b)
			if err != nil {
				return err
			}
			w.Loadings = append(w.Loadings, l)
		}
	}
	w.Governs = governing(w.Loadings)
	w.Groundwater = limitOf(j.ground.grade, func(water float64) (float64, bool) {
		g := j.ground
		g.water = water
		most, all := 0.0, true
		for _, p := range j.panels {
			u, ok := p.use(g.push("", false, j.lift))
			most, all = max(most, u), all && ok
		}
		return most, all
	})
	if w.Groundwater.State != LimitNone || manway.Length(j.ground.water) > 0 && w.Governs >= 0 && w.Loadings[w.Governs].Status() != manway.Pass {
		w.Cautions |= manway.DoNotEmpty
	}
	j.open()
	return nil
}

// governing is the index of the loading that governs among those that ran, -1
// where none did.
func governing(list []Loading) int {
	worst := -1
	for k := range list {
		if list[k].Governs >= 0 && (worst < 0 || list[k].worseThan(&list[worst])) {
			worst = k
		}
	}
	return worst
}

// makePanels models side and end wall, spans from the middle of one bearing to
// the next.
func (j *wallJudge) makePanels() error {
	t, c := j.t, j.c
	thickness := t.Spec.Wall - c.Loss
	m := member{c.Concrete, thickness, c.Loss, c.Steel}
	j.lift = float64(min(t.Spec.Floor, thickness)) / 2
	height := float64(t.Inside.Height) + j.lift
	edges := [4]plate.Edge{plate.SideY1: plate.Free}
	if c.TopHeld {
		edges[plate.SideY1] = plate.Simple
	}
	sides := [][]plate.Line{nil}
	var lines []plate.Line
	half := float64(thickness) / 2
	for i, braced := range c.Braced {
		if braced {
			lines = append(lines, plate.Line{Axis: plate.X, At: (t.partitions[i].from+t.partitions[i].to)/2 + half})
		}
	}
	if lines != nil {
		sides = append(sides, lines)
	}
	var err error
	if j.panels[0], err = newPanel("side wall", m, float64(t.Inside.Length)+2*half, height, edges, sides...); err != nil {
		return err
	}
	j.panels[1], err = newPanel("end wall", m, float64(t.Inside.Width)+2*half, height, edges, nil)
	return err
}

// cases are the three states of the walls.
func (j *wallJudge) cases() []pushed {
	return []pushed{
		liquidPush("full, soil dug away", float64(j.w.Liquid)+j.lift, outsideFace),
		j.ground.push("empty", false, j.lift), j.ground.push("empty, a truck beside", true, j.lift),
	}
}

// truck is the pressure on the surface that stands for a truck beside the walls.
func (j *wallJudge) truck() (float64, error) {
	wall := j.t.Inside.Height + j.t.Spec.Roof + j.c.Cover
	filled, _ := j.c.Soil.AsLoad()
	q, err := soil.Beside{Wall: wall, Distance: j.c.Vehicle.Distance, Across: j.c.Vehicle.Towards}.Pressure(filled.Moist)
	return float64(q), err
}

// open lists what the screening of the walls leaves open.
func (j *wallJudge) open() {
	leave := func(name, reason string) {
		j.w.NotJudged = append(j.w.NotJudged, manway.Check{Name: name, Reason: reason})
	}
	leave("joints between walls, floor and roof", "not visible: where the edges are taken as held, the joint and the wall or floor beyond it must carry the moment there")
	leave("anchorage and laps of the steel", "not visible")
	leave("holes for pipes in the walls", "not in the plate")
	if !j.c.TopHeld {
		leave("support of the heads by the roof", "not seen: not counted")
	}
	if b, ok := j.t.shape.(Box); ok && !b.plumb() {
		leave("draft and fillets of the walls", "taken plumb and of even thickness")
	}
}

// fullLevel is the level of the full tank over the floor.
func (t *Tank) fullLevel(given manway.Length) (manway.Length, manway.Assumptions) {
	switch {
	case given > 0:
		return given, 0
	case t.Spec.OutletInvert > 0:
		return t.Spec.OutletInvert, 0
	default:
		return t.Inside.Height, manway.AssumedFullTank
	}
}

// ground is the ground round the tank, its heights over the inside of the floor.
type ground struct {
	grade, water    float64 // m
	moist, buoyant  float64 // unit weights, N/m3
	k               float64 // lateral over vertical
	surcharge       float64 // Pa on the surface, of a vehicle
	waterUnitWeight float64
}

// groundRound is the ground with what is not known of it taken heavy, loose and
// wet.
func (t *Tank) groundRound(s manway.Soil, water manway.Groundwater, cover manway.Length) (ground, manway.Assumptions) {
	filled, made := s.AsLoad()
	depth, taken := water.Taken()
	const g = manway.StandardGravity
	grade := float64(t.Inside.Height + t.Spec.Roof + cover)
	k, err := soil.AtRest.Coefficient(filled.Friction)
	if err != nil {
		k = 1 // cannot be: the soil was validated
	}
	return ground{
		grade: grade, water: grade - float64(depth), k: k,
		moist:           float64(filled.Moist) * g,
		buoyant:         max(float64(filled.Saturated-manway.WaterDensity), 0) * g,
		waterUnitWeight: float64(manway.WaterDensity) * g,
	}, made | taken
}

// push is soil and groundwater on an empty tank, as the sum of triangles: moist
// soil from grade, and below the water table what water adds and buoyancy
// takes away. The foot of the panel that they press lies lift below the inside of
// the floor.
func (g ground) push(name string, vehicle bool, lift float64) pushed {
	f := manway.DeadLive.Factors().Earth
	return pushed{
		name: name, far: insideFace, combination: manway.DeadLive, factor: f,
		source: manway.Citation{Source: soil.Das, Place: "chapter 13, earth pressure at rest"},
		loads: func(factor float64) []plate.Load {
			list := []plate.Load{
				plate.Liquid{Level: g.grade + lift, UnitWeight: factor * g.k * g.moist},
				plate.Liquid{Level: g.water + lift, UnitWeight: factor * (g.waterUnitWeight - g.k*(g.moist-g.buoyant))},
			}
			if vehicle {
				list = append(list, plate.Uniform{Pressure: factor * g.k * g.surcharge})
			}
			return list
		},
	}
}

// liquidPush is liquid of a level on one side, pushing towards the face far.
func liquidPush(name string, level float64, far int) pushed {
	return pushed{
		name: name, far: far, combination: manway.Dead, factor: manway.Dead.Factors().Fluid,
		source: manway.Citation{Source: manway.ACI318_19, Place: "5.3.7, fluid of known level"},
		loads: func(factor float64) []plate.Load {
			return []plate.Load{plate.Liquid{Level: level, UnitWeight: factor * float64(manway.WaterDensity) * manway.StandardGravity}}
		},
	}
}
