package lid

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// Testdata/handcalc/lid.md is a lid worked out on paper beside what the code
// gives.
func TestLidByHand(t *testing.T) {
	s := strengthOf(t, disc24(), StrengthCase{Seat: onTop(), Steel: quarterInchMesh()})
	foot, pound, perFoot := float64(manway.PoundForceFootPerFoot), float64(manway.PoundForce), float64(manway.PoundForcePerFoot)
	own, person, cover := named(t, s, "bending, own weight"), named(t, s, "bending, a person"), named(t, s, "hole cover: twice people and gear")
	shear, punch := named(t, s, "one-way shear, a person"), named(t, s, "punching, a person")
	reftable.Steps(t, "lid.md").Check(t, map[string]float64{
		"h, in":                 s.Left.In(manway.Inch),
		"span, in":              s.Span.In(manway.Inch),
		"a, ft":                 s.Span.In(manway.Foot) / 2,
		"q, lbf/ft2":            manway.Pressure(s.judged.q).In(manway.PSF),
		"MD, lbf ft/ft":         own.Unfactored / foot,
		"ML, lbf ft/ft":         s.judged.response.person / foot,
		"1.4 MD":                own.Demand / foot,
		"Mu":                    person.Demand / foot,
		"d, in":                 manway.Length(s.judged.depth).In(manway.Inch),
		"phi Mn, lbf ft/ft":     person.Capacity / foot,
		"Use, person":           person.Demand / person.Capacity,
		"Use, hole cover":       cover.Demand / cover.Capacity,
		"phi Mn, plain":         s.judged.bending.AsPlain / foot,
		"v dead, lbf/ft":        (1.6*shear.Unfactored - shear.Demand) / 0.4 / perFoot,
		"Vu, lbf/ft":            shear.Demand / perFoot,
		"phi Vc, lbf/ft":        shear.Capacity / perFoot,
		"phi Vn, punching, lbf": punch.Capacity / pound,
	})
}
