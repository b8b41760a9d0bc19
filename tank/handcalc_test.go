package tank

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// Testdata/handcalc/roof.md is a roof worked out on paper beside what the code
// gives.
func TestRoofByHand(t *testing.T) {
	tk, err := New(Spec{Shape: Box{Length: 120 * in, Width: 60 * in, Height: 60 * in}, Wall: 4 * in, Roof: 4 * in, Floor: 4 * in})
	if err != nil {
		t.Fatal(err)
	}
	r := roofOf(t, &tk, RoofCase{
		Concrete: manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot},
		Steel:    Steel{Inside: Mesh(bar(0.375, 6, 0.75))},
		Joints:   []manway.Length{24 * in, 48 * in, 72 * in, 96 * in},
		Now:      RoofLoad{Cover: 12 * in, Wetness: DrySoil}, Soil: manway.Soil{Moist: 120 * manway.PoundPerCubicFoot},
	})
	foot, pound, perFoot := float64(manway.PoundForceFootPerFoot), float64(manway.PoundForce), float64(manway.PoundForcePerFoot)
	dead, crowd, person, pickup := r.Loadings[0], r.Loadings[1], r.Loadings[2], r.Loadings[4]
	section, err := r.strips[1].Bending()
	if err != nil {
		t.Fatal(err)
	}
	steps := reftable.Steps(t, "roof.md")
	steps.Check(t, map[string]float64{
		"span, in":              r.across.In(in),
		"own weight, lbf/ft2":   r.own.In(manway.PSF),
		"soil, lbf/ft2":         r.soil.In(manway.PSF),
		"M, lbf ft/ft":          dead.Checks[0].Unfactored / foot,
		"phi Mn, lbf ft/ft":     dead.Checks[0].Capacity / foot,
		"phi Mn, plain":         section.AsPlain / foot,
		"d, in":                 r.strips[1].EffectiveDepth().In(in),
		"V, lbf/ft":             dead.Checks[1].Unfactored / perFoot,
		"Vu":                    dead.Checks[1].Demand / perFoot,
		"phi Vc, lbf/ft":        dead.Checks[1].Capacity / perFoot,
		"Use, shear":            dead.Checks[1].Demand / dead.Checks[1].Capacity,
		"crowd, Mu":             crowd.Checks[0].Demand / foot,
		"phi Vn, punching, lbf": person.Checks[2].Capacity / pound,
		"Use, punching":         person.Checks[2].Demand / person.Checks[2].Capacity,
		"pickup wheel, lbf":     pickup.Load.In(manway.PoundForce),
	})
}
