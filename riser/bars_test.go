package riser

import (
	"slices"
	"testing"

	"manway.example/manway"
)

// ruledOut is the remedies that are ruled out, in order.
func ruledOut(c Condition, s Site) (list []RemedyKind) {
	for _, r := range must(Remedies(c, s)) {
		if r.RuledOut != "" {
			list = append(list, r.Kind)
		}
	}
	slices.Sort(list)
	return list
}

// What rules a remedy out rules out that remedy and no other, from its limit on:
// a lid that is not sound holds no fastener and no handle, one above what the crew
// may move wants no handle, a chipped rim or half a ring holds nothing, a joint
// deeper than 2 ft is out of an arm's reach, nothing is set on a roof that is not
// shown to carry unless it is supported, and so on.
func TestWhatRulesOut(t *testing.T) {
	const in = manway.Inch
	sound := func() (Condition, Site) {
		c := worn()
		c.CoverDrops, c.RoofStrength, c.Size = manway.No, manway.Pass, manway.Read(24*in)
		c.CoverMass, c.CrewLimit = 60*manway.Pound, 60*manway.Pound
		c.Bearing, c.RimGap = manway.Read(1*in), manway.Read(in/2)
		c.Thickness, c.SpallDepth = manway.Read(3*in), manway.Read(1.4*in)
		return c, measured()
	}
	holdsNothing := []RemedyKind{Fasteners, NewHandle}
	seat := []RemedyKind{FitAdapter, Fasteners, NewCover, OutsideCollar, RaiseToGrade, RebedRing, SecondaryGuard}
	onRoof := []RemedyKind{FitAdapter, OutsideCollar, PatchFromInside, RaiseToGrade, RebedRing, ReplaceConcrete, ReplacePlastic}
	for _, x := range []struct {
		what string
		set  func(*Condition, *Site)
		want []RemedyKind
	}{
		{"nothing", func(c *Condition, s *Site) {}, nil},
		{"no lid", func(c *Condition, s *Site) { c.CoverPresent = manway.No }, holdsNothing},
		{"lid not looked for", func(c *Condition, s *Site) { c.CoverPresent = manway.Unknown }, nil},
		{"lid cracked", func(c *Condition, s *Site) { c.CoverCracked = manway.Yes }, holdsNothing},
		{"lid drops", func(c *Condition, s *Site) { c.CoverDrops = manway.Yes }, holdsNothing},
		{"lid fails", func(c *Condition, s *Site) { c.CoverStrength = manway.Fail }, holdsNothing},
		{"lid not shown", func(c *Condition, s *Site) { c.CoverStrength = manway.NotShown }, nil},
		{"heavy", func(c *Condition, s *Site) { c.CoverMass = 60.1 * manway.Pound }, []RemedyKind{NewHandle}},
		{"crew not said", func(c *Condition, s *Site) { c.CrewLimit, c.CoverMass = 0, 900*manway.Pound }, nil},
		{"weight not known", func(c *Condition, s *Site) { c.CoverMass = 0 }, nil},
		{"bearing", func(c *Condition, s *Site) { c.Bearing = manway.Read(0.99 * in) }, []RemedyKind{Fasteners}},
		{"wide gap", func(c *Condition, s *Site) { c.RimGap = manway.Read(1.99 * in) }, nil},
		{"hole", func(c *Condition, s *Site) { c.RimGap = manway.Read(2 * in) }, []RemedyKind{Fasteners}},
		{"less than half gone", func(c *Condition, s *Site) { c.SpallDepth = manway.Read(1.49 * in) }, nil},
		{"half gone", func(c *Condition, s *Site) { c.SpallDepth = manway.Read(1.5 * in) }, seat},
		{"loss not measured", func(c *Condition, s *Site) { c.SpallDepth = manway.Reading{} }, nil},
		{"of an unknown whole", func(c *Condition, s *Site) { c.Thickness = manway.Reading{} }, nil},
		{"2 ft down", func(c *Condition, s *Site) { s.JointDown = manway.Read(24 * in) }, nil},
		{"out of reach", func(c *Condition, s *Site) { s.JointDown = manway.Read(24.1 * in) }, []RemedyKind{ResealFromGrade}},
		{"unknown depth", func(c *Condition, s *Site) { s.JointDown = manway.Reading{} }, nil},
		{"roof fails", func(c *Condition, s *Site) { c.RoofStrength = manway.Fail }, onRoof},
		{"roof not shown", func(c *Condition, s *Site) { c.RoofStrength = manway.NotShown }, onRoof},
		{"roof not permitted", func(c *Condition, s *Site) { c.RoofStrength = manway.NotPermitted }, onRoof},
		{"roof not judged", func(c *Condition, s *Site) { c.RoofStrength = manway.NotJudged }, nil},
		{"roof not seen", func(c *Condition, s *Site) { c.RoofStrength, c.RoofSeen = manway.Fail, false }, nil},
		{"roof supported", func(c *Condition, s *Site) { c.RoofStrength, s.Supported = manway.Fail, true }, nil},
		{"water in the pit", func(c *Condition, s *Site) { s.Water = manway.GroundwaterAt(17.9 * in) }, []RemedyKind{FitAdapter, OutsideCollar}},
		{"water at its bottom", func(c *Condition, s *Site) { s.Water = manway.GroundwaterAt(18 * in) }, nil},
		{"water and no pit", func(c *Condition, s *Site) { s.Water, s.Pit = manway.GroundwaterAt(0), Pit{} }, nil},
		{"not to be emptied", func(c *Condition, s *Site) { s.Emptying = manway.No }, []RemedyKind{PatchFromInside}},
		{"may be emptied", func(c *Condition, s *Site) { s.Emptying = manway.Yes }, nil},
		{"tight hole", func(c *Condition, s *Site) { c.Size = manway.Read(23.9 * in) }, []RemedyKind{PatchFromInside}},
		{"size not known", func(c *Condition, s *Site) { c.Size = manway.Reading{} }, nil},
		{"no rings", func(c *Condition, s *Site) { s.Standing = 0 }, []RemedyKind{RebedRing}},
		{"small and full", func(c *Condition, s *Site) { c.Size, s.Emptying = manway.Read(17*in), manway.No }, []RemedyKind{CutAccess, PatchFromInside}},
	} {
		c, s := sound()
		x.set(&c, &s)
		if got := ruledOut(c, s); !slices.Equal(got, slices.Sorted(slices.Values(x.want))) {
			t.Errorf("%s: ruled out are %v, want %v", x.what, got, x.want)
		}
	}
}
