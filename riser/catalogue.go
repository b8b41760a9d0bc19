package riser

import "manway.example/manway"

// entry of the catalogue: all that does not depend on the site.
type proposal struct {
	kind             RemedyKind
	title            string
	cures            []DefectKind
	delays           []DefectKind
	life             [3]float64 // years, low, usual, high
	lasts            manway.Citation
	entry, dig, pump bool
	permit           string
	scope            func(*scoper)
	fits             func(Site) bool                // whether it is a remedy for this site at all; nil: for every one
	bars             []func(Condition, Site) string // each gives a reason that rules the remedy out, or nothing
	extra            manway.Cautions
}

const (
	authority   = "the local on-site sewage authority, where it asks for one"
	entryPermit = "a written entry permit (29 CFR 1910.146)"
)

// tight is what a new sealed riser puts right.
var tight = []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters, OdourEscapes, Spalled, SteelExposed, Cracked, Settled, TooDeep, RimChipped, HandleUnsound, CoverUnsound, CoverUnfastened, GuardMissing, OpenHole}

// catalogue is the remedies in the order in which they are proposed: guard and
// fasteners first.
var catalogue = [...]proposal{
	{kind: GuardNow, title: "Guard the opening now", delays: []DefectKind{OpenHole, CoverUnsound, CoverUnfastened, RoofNotShown, Spalled},
		lasts: practice("bridges the time to the repair, and is looked at daily"),
		scope: func(b *scoper) {
			b.each("barrier", 1, "round the opening")
			b.each("temporary-cover", 1, "fastened, marked HOLE, for twice the load (29 CFR 1926.502(i))")
			b.each("notice", 1, "to the owner, in writing")
			b.labour("guard-opening", 1, "opening")
		}},
	{kind: Fasteners, title: "Fasten the lid so that it needs a tool", cures: []DefectKind{CoverUnfastened},
		life: [3]float64{5, 10, 20}, lasts: practice("stainless screws in sound concrete or plastic"),
		scope: func(b *scoper) { b.fasteners() }, bars: []func(Condition, Site) string{noCover, unsoundCover, chippedRim}},
	{kind: SecondaryGuard, title: "Fit a secondary guard below the lid", cures: []DefectKind{GuardMissing},
		life: [3]float64{10, 15, 25}, lasts: practice("net, grid or plate of a material that does not rust"),
		scope: func(b *scoper) { b.guard() }, bars: []func(Condition, Site) string{spalledSeat}},
	{kind: NewCover, title: "New lid with fasteners and guard, light enough to open", cures: []DefectKind{OpenHole, CoverUnsound, CoverUnfastened, CoverTooHeavy, HandleUnsound, GuardMissing, OdourEscapes},
		life: [3]float64{15, 25, 40}, lasts: practice("cover out of the sun or of stabilized plastic"),
		scope: func(b *scoper) { b.closing("cover-plastic") }, bars: []func(Condition, Site) string{spalledSeat}},
	{kind: NewHandle, title: "New anchored handle", cures: []DefectKind{HandleUnsound},
		life: [3]float64{5, 15, 25}, lasts: practice("galvanized or stainless bar in sound concrete"),
		scope: func(b *scoper) {
			b.each("handle-anchored", 1, "one a lid")
			b.labour("fit-handle", 1, "handle")
		}, bars: []func(Condition, Site) string{noCover, unsoundCover, heavyCover}, extra: manway.CutConcreteDust},
	{kind: ResealFromGrade, title: "Clean and reseal the joint from grade, head outside", cures: []DefectKind{OdourEscapes}, delays: []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters},
		life: [3]float64{2, 5, 10}, lasts: practice("sealant on an old face, water behind it"),
		scope: func(b *scoper) { b.bead(false) }, bars: []func(Condition, Site) string{outOfReach}},
	{kind: OutsideCollar, title: "Dig out and seal the joint outside with wrap and collar", cures: []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters}, delays: []DefectKind{OdourEscapes},
		life: [3]float64{10, 15, 25}, lasts: practice("sealed on the side that the water is on"), dig: true,
		scope: func(b *scoper) { b.dig(); b.bead(true); b.collar() }, bars: []func(Condition, Site) string{wetJoint, weakRoof, rotten}, extra: manway.CementBurns},
	{kind: RebedRing, title: "Lift the ring and set it on a full sealant bed", cures: []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters, OdourEscapes, Settled},
		life: [3]float64{10, 20, 30}, lasts: practice("preformed strip on clean sound faces"), dig: true,
		scope: func(b *scoper) {
			b.dig()
			b.takeOff(false)
			if b.s.Standing > 0 {
				b.labour("set-ring", float64(b.s.Standing), "ring that stands there")
				b.sealant(b.s.Standing)
			} else {
				b.want("number of rings that stand there")
			}
			b.each("hoist", 1, "rings are not lifted by hand")
		}, bars: []func(Condition, Site) string{noRings, weakRoof, rotten}},
	{kind: PatchFromInside, title: "Patch joint and concrete from inside", delays: []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters, OdourEscapes, Spalled, SteelExposed, Cracked, RimChipped},
		life: [3]float64{1, 3, 6}, lasts: practice("cement patch against water from behind, in sewer gas"), entry: true, pump: true, permit: entryPermit,
		scope: func(b *scoper) { b.entry(b.patching()) }, bars: []func(Condition, Site) string{weakRoof, mayNotEmpty, tightHole}, extra: manway.CementBurns},
	{kind: FitAdapter, title: "Adapter from the old opening to the new bore", delays: []DefectKind{RimChipped}, cures: []DefectKind{JointRoots, JointGap, JointUnsealed, WaterEnters},
		life: [3]float64{15, 25, 40}, lasts: practice("adapter bonded and bolted to sound concrete"), dig: true,
		scope: func(b *scoper) {
			b.dig()
			b.each("adapter", 1, "one an access")
			b.labour("fit-adapter", 1, "adapter")
			b.sealant(1)
		}, fits: twoBores, bars: []func(Condition, Site) string{wetJoint, weakRoof, rotten}},
	{kind: RaiseToGrade, title: "Raise the riser to grade", cures: []DefectKind{TooDeep},
		life: [3]float64{10, 20, 30}, lasts: practice("rings on preformed strip"), dig: true, permit: authority,
		scope: func(b *scoper) { b.dig(); b.riser("ring-concrete", anyStack); b.closing("cover-plastic") }, bars: []func(Condition, Site) string{weakRoof, rotten}},
	{kind: ReplacePlastic, title: "Dig out and replace by a sealed plastic riser to grade", cures: append([]DefectKind{CoverTooHeavy}, tight...),
		life: [3]float64{20, 30, 50}, lasts: manway.Citation{Source: marylandLife, Place: "plastic tank 50 years plus; low and usual are practice"}, dig: true, permit: authority,
		scope: func(b *scoper) {
			b.dig()
			b.takeOff(true)
			b.each("adapter", 1, "one an access")
			b.labour("fit-adapter", 1, "adapter")
			b.riser("riser-plastic", plasticStack)
			b.sealant(1) // below the adapter
			b.closing("cover-plastic")
		}, bars: []func(Condition, Site) string{weakRoof}},
	{kind: ReplaceConcrete, title: "Dig out and replace by sealed concrete rings to grade", cures: tight,
		life: [3]float64{20, 30, 50}, lasts: manway.Citation{Source: marylandLife, Place: "concrete tank 50 years plus; low and usual are practice"}, dig: true, permit: authority,
		scope: func(b *scoper) {
			b.dig()
			b.takeOff(true)
			b.riser("ring-concrete", concreteStack)
			b.closing("cover-concrete")
		}, bars: []func(Condition, Site) string{weakRoof}},
	{kind: CutAccess, title: "Cut a new access from above", cures: []DefectKind{AccessMissing, AccessTooSmall},
		life: [3]float64{20, 30, 50}, lasts: manway.Citation{Source: marylandLife, Place: "concrete tank 50 years plus; low and usual are practice"}, dig: true, pump: true, permit: authority,
		scope: func(b *scoper) {
			b.dig()
			b.pump()
			b.each("engineer", 1, "steel of the roof is cut")
			b.each("concrete-saw", 1, "wet cut")
			b.labour("cut-opening", 1, "opening")
			b.riser("ring-concrete", anyStack)
			b.closing("cover-plastic")
		}, bars: []func(Condition, Site) string{weakRoof, mayNotEmpty}, extra: manway.CutConcreteDust | manway.GasAndIgnition},
	{kind: ReplaceTank, title: "Replace the tank", cures: append([]DefectKind{RoofNotShown, CoverTooHeavy, AccessMissing, AccessTooSmall}, tight...),
		life: [3]float64{30, 50, 60}, lasts: manway.Citation{Source: marylandLife, Place: "concrete or plastic tank 50 years plus"}, dig: true, pump: true, permit: authority,
		scope: func(b *scoper) {
			b.machineDig()
			b.pump()
			if b.s.TankVolume == 0 {
				b.want("volume of the new tank")
			}
			b.add("tank", b.s.TankVolume.In(manway.Gallon), "liquid volume", manway.Citation{Source: statics, Place: "volume"})
			b.each("engineer", 1, "excavation beside the house and lifting")
		}},
}

// What rules a remedy out. Each gives its reason, or nothing.

func noCover(c Condition, _ Site) string {
	if c.CoverPresent == manway.No {
		return "there is no lid"
	}
	return ""
}

func unsoundCover(c Condition, _ Site) string {
	if c.CoverCracked == manway.Yes || c.CoverDrops == manway.Yes || c.CoverStrength == manway.Fail {
		return "the lid is not sound: nothing holds in it, it is replaced"
	}
	return ""
}

func heavyCover(c Condition, _ Site) string {
	if c.aboveCrew() {
		return "a handle does not make the lid lighter: it is above what the crew may move"
	}
	return ""
}

func chippedRim(c Condition, _ Site) string {
	if c.Bearing.Below(goodBearing) || c.RimGap.AtLeast(holeSize) {
		return "the rim is chipped: there is nothing sound to screw into"
	}
	return spalledSeat(c, Site{})
}

// spalledSeat: half of the ring's thickness is gone.
func spalledSeat(c Condition, _ Site) string {
	if c.SpallDepth.Taken && c.Thickness.Taken && manway.Reached(float64(c.SpallDepth.Length/c.Thickness.Length), 0.5) {
		return "half of the ring or neck is gone: nothing holds in it"
	}
	return ""
}

// rotten: the ring that would be kept is not worth keeping.
func rotten(c Condition, s Site) string { return spalledSeat(c, s) }

func outOfReach(_ Condition, s Site) string {
	if s.JointDown.Taken && s.JointDown.Length > armReach*(1+1e-9) {
		return "the joint is " + s.JointDown.Length.Text(s.Units) + " down: beyond the " + armReach.Text(s.Units) + " that is reached from grade with the head outside"
	}
	return ""
}

func weakRoof(c Condition, s Site) string {
	bad := c.RoofStrength == manway.Fail || c.RoofStrength == manway.NotShown || c.RoofStrength == manway.NotPermitted
	if c.RoofSeen && bad && !s.Supported {
		return "the roof is not shown to carry: nothing is set on it and nobody works on or under it before an engineer has looked"
	}
	return ""
}

// wetJoint: groundwater is known to stand above the pit's bottom.
func wetJoint(_ Condition, s Site) string {
	if s.Water.Known && s.Pit.Depth > 0 && s.Water.Depth < s.Pit.Depth {
		return "groundwater at " + s.Water.Depth.Text(s.Units) + " stands above the joint: it cannot be kept dry without lowering the water, and a lowered tank may move"
	}
	return ""
}

func mayNotEmpty(_ Condition, s Site) string {
	if s.Emptying == manway.No {
		return "the tank is not shown to stay down and its walls to stand when it is emptied"
	}
	return ""
}

func tightHole(c Condition, _ Site) string {
	if c.Size.Below(leastEntry) {
		return "the opening of " + c.Size.Length.Text(c.Units) + " is too small to be pulled out through: less than " + leastEntry.Text(c.Units)
	}
	return ""
}

func noRings(_ Condition, s Site) string {
	if s.Standing == 0 {
		return "no ring is known to stand there"
	}
	return ""
}

// twoBores: the riser has another bore than the opening it stands on.
func twoBores(s Site) bool { return s.Port > 0 && s.Bore > 0 && !oneBore(s.Port, s.Bore) }
