package riser

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/hostile"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

func abused(t testing.TB) hostile.Room {
	made, err := tank.New(tank.Spec{Shape: tank.Box{Length: 2.5, Width: 1.4, Height: 1.6}, OutletInvert: 1.3})
	if err != nil {
		t.Fatal(err)
	}
	pit := Pit{Length: 30 * manway.Inch, Working: manway.Foot, Depth: 26 * manway.Inch}
	ring := Ring{Code: "ring-24x6", Height: 6 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, Mass: 60, Cost: 4500}
	low := Ring{Code: "ring-24x4", Count: 3, Height: 4 * manway.Inch, Bore: 24 * manway.Inch, Plastic: true, Mass: 5, Cost: 6000, CutStep: manway.Inch, CutLeast: 2 * manway.Inch}
	need := Need{Port: 24 * manway.Inch, Gap: 24 * manway.Inch, Above: manway.Inch, Joint: manway.Inch / 2, Covers: []Cover{{"cover", 24 * manway.Inch, 2 * manway.Inch, 30, 9000}}}
	return hostile.Room{
		Funcs: []any{Uncover, ItemCodes, MixBag, LeakOf, DigOf, ReachOf, Remedies, Notice, RingMass, Defects, Basis, StackOf, UpliftOf},
		Seeds: []any{
			Access{Cover: 26 * manway.Inch, Slope: 4 * manway.Degree, Span: 30 * manway.Inch, Reveal: 2 * manway.Inch}, ring, low, need, []Ring{ring, low}, []Ring{low},
			benchJoint, benchWall, Strip{manway.Inch, manway.Inch, 14.5 * manway.Foot, 2 * manway.Inch}, Bead{Width: manway.Inch / 2, Depth: manway.Inch / 2, Tube: 0.0003}, MixBag(30),
			OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 16, Wall: 3 * manway.Inch, Depth: 26 * manway.Inch},
			OpenJoint{Length: 7 * manway.Foot, Gap: manway.Inch / 4, Wall: 3 * manway.Inch, Depth: 26 * manway.Inch, Water: manway.GroundwaterAt(manway.Foot), Inside: manway.Read(manway.Foot), Design: 1e-5},
			Light{Outside: 26 * manway.Inch, Bore: 24 * manway.Inch, Flange: 32 * manway.Inch, Base: 3 * manway.Foot, Mass: 20, Anchors: 6},
			Surround{Depth: 3 * manway.Foot, Wheel: manway.PickupWheel, Away: manway.Foot}, Squash{Load: 3e4, Reaction: 5e6}, pit,
			Tie{Corners: 30 * manway.Foot, FromA: 18 * manway.Foot, FromB: 24 * manway.Foot, Tape: manway.Inch}, Buried{Diameter: 24 * manway.Inch, Depth: 8 * manway.Inch},
			Hose{Along: 90 * manway.Foot, Bottom: 8 * manway.Foot, Inlet: 4 * manway.Foot, Section: 25 * manway.Foot}, manway.Reading{}, manway.Read(0.05),
			Condition{}, Condition{JointSealed: manway.No, Roots: manway.Yes, JointGap: manway.Read(manway.Inch / 2), Fastened: manway.No, Guard: manway.No, Handle: lid.HandleRusted},
			Condition{CoverDrops: manway.Yes, CoverMass: 200, CrewLimit: 50, SpallDepth: manway.Read(manway.Inch), Thickness: manway.Read(3 * manway.Inch), SteelExposed: manway.Yes, RoofStrength: manway.Fail, Missing: manway.No},
			Site{}, Site{Port: 24 * manway.Inch, Bore: 24 * manway.Inch, Outside: 30 * manway.Inch, JointClosed: manway.Inch / 2, JointDown: manway.Read(20 * manway.Inch), Standing: 1, StandingMass: 60,
				Height: 26 * manway.Inch, Pit: pit, TankPit: pit, SpallArea: 0.1, SpallDepth: manway.Inch, Liquid: 2, TankVolume: 4, LocateDays: 3},
		},
		Calls:  [][]any{{Dig.While, Dig{Pit: pit}, &made, tank.FloatCase{Cover: 0.6}, tank.WallCase{Cover: 0.6, TopHeld: true}}},
		Slow:   []string{"StackOf", "Dig.While"},
		Sealed: []any{tank.Tank{}},
	}
}

func TestHostile(t *testing.T) { abused(t).Test(t, 1000) }
func FuzzHostile(f *testing.F) { abused(f).Fuzz(f) }
