package concrete

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
)

// second is the error of a calculation.
func second[T any](_ T, err error) error { return err }

const (
	ft       = manway.Foot
	leastFy  = 24000 * manway.PSI
	most1000 = 1000 * ft
)

func TestLimitsOfSections(t *testing.T) {
	c := manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot}
	limit.Check(t, Section{c, ft, 5 * inch, 0.24 * manway.SquareInch, 60000 * manway.PSI}, Section.Validate,
		limit.Between("Width", inch, most1000), limit.Between("Depth", 0.25*inch, 20*ft), limit.Above("Steel", manway.Area(0)),
		limit.AtMost("Steel", 6*manway.SquareInch), limit.Between("Yield", leastFy, 100000*manway.PSI),
		limit.Between("Concrete.Strength", 1000*manway.PSI, 15000*manway.PSI))
	limit.Check(t, 60000*manway.PSI, func(fy manway.Pressure) error { return second(RatioAtStrain(c, fy, 0.005)) }, limit.Between("Yield", leastFy, 100000*manway.PSI))
	limit.Check(t, 0.005, func(e float64) error { return second(RatioAtStrain(c, 60000*manway.PSI, e)) }, limit.Between("Strain", 0.001, 0.1))
	limit.Check(t, 60000*manway.PSI, func(fy manway.Pressure) error { return second(LeastBeamRatio(c, fy)) }, limit.Between("Yield", leastFy, 100000*manway.PSI))
	limit.Check(t, Plain{c, ft, 5 * inch, false}, Plain.Validate, limit.Between("Width", inch, most1000), limit.Between("Thickness", 0.25*inch, 20*ft))
	limit.Check(t, Plain{c, ft, 5 * inch, true}, Plain.Validate, limit.AtLeast("Thickness", 2.25*inch))
	limit.Check(t, Strip{Thickness: 4 * inch, Steel: mesh(0.25, 4, 0.75)}, Strip.Validate, limit.Between("Thickness", 0.5*inch, 60*inch),
		limit.Between("Lost", manway.Length(0), 24*inch), limit.AtMost("Steel.State", manway.SteelKnown))
	limit.Check(t, Strip{Thickness: 4 * inch, AgainstSoil: true}, Strip.Validate, limit.AtLeast("Thickness", 2.5*inch))
	limit.Refuses(t, Strip{Thickness: 4 * inch}, Strip.Validate, "Concrete.Strength", func(s *Strip) { s.Concrete.Strength = -1 })
	limit.Check(t, 0.5, func(w float64) error { return second(WireOf(w)) }, limit.Between("W", 0.5, 45.0))
}

func TestLimitsOfLoads(t *testing.T) {
	limit.Check(t, Punching{Length: 10 * inch, Width: 20 * inch, Depth: 4 * inch}, Punching.Validate, limit.Between("Length", 0.25*inch, 20*ft),
		limit.Between("Width", 0.25*inch, 20*ft), limit.Between("Depth", 0.25*inch, 10*ft), limit.AtMost("Position", AtCorner))
	limit.Check(t, Bearing{Loaded: manway.SquareInch, Support: 2 * manway.SquareInch}, func(b Bearing) error { return second(b.Strength()) },
		limit.AtLeast("Loaded", 1e-3*manway.SquareInch), limit.Between("Support", manway.SquareInch, 1e9*manway.SquareFoot))
	limit.Check(t, Bearing{Loaded: manway.SquareInch}, func(b Bearing) error { return second(b.Strength()) }, limit.AtMost("Loaded", 1e6*manway.SquareFoot))
	limit.Check(t, Breakout{Embedment: 2 * inch, Coefficient: 20}, Breakout.Validate, limit.Between("Embedment", 0.5*inch, 25*inch),
		limit.Between("Edge", manway.Length(0), 100*ft), limit.Between("Area", manway.Area(0), 1000*manway.SquareFoot),
		limit.Between("Coefficient", 17.0, 24.0), limit.Between("Eccentricity", manway.Length(0), 100*ft))
	limit.Check(t, EdgeBreakout{Bearing: 2 * inch, Diameter: 0.5 * inch, Edge: 4 * inch, Thickness: 4 * inch},
		func(b EdgeBreakout) error { return second(b.Strength()) }, limit.Between("Bearing", 0.5*inch, 25*inch), limit.Between("Diameter", 0.1*inch, 2.5*inch),
		limit.Between("Edge", 0.5*inch, 10*ft), limit.Between("Thickness", 0.25*inch, 20*ft))
	for _, style := range []string{"6x6-W2.9", "6x6W2.9xW2.9", "66-W2.9xW2.9", "6x6-xW2.9", "6x6-W2.9x", "6x6-A2.9xW2.9", "6x6-W2.9x2.9", "ax6-W2.9xW2.9",
		"6xa-W2.9xW2.9", "6x6-WaxW2.9", "6x6-W46xW2.9", "6x6-W2.9xW0.4", "0.9x6-W2.9xW2.9", "6x18.1-W2.9xW2.9"} {
		if m, err := ReadMesh(style); err == nil {
			t.Errorf("%s reads as %+v, want it refused", style, m)
		}
	}
	for _, style := range []string{"1x18-W45xW0.5", "6 x 6 - d2.9 x w2.9"} {
		if _, err := ReadMesh(style); err != nil {
			t.Error(err)
		}
	}
}
