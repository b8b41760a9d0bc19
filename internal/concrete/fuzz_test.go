package concrete

import (
	"math"
	"testing"

	"manway.example/manway"
)

// No input makes a strip panic or gives a figure that is not finite with a nil
// error.
func FuzzStrip(f *testing.F) {
	f.Add(4000.0, 4.0, 0.0, 0.5, 8.0, 0.75, 60000.0, uint8(2)) // an ordinary slab
	f.Add(2500.0, 3.0, 1.0, 0.135, 6.0, 0.75, 0.0, uint8(2))   // light mesh, cover gone
	f.Add(0.0, 0.5, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(0))         // nothing known, thinnest
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 0.0, 0.0, 0.0, uint8(9))
	f.Fuzz(func(t *testing.T, fc, h, lost, db, spacing, cover, fy float64, flags uint8) {
		in := func(x float64) manway.Length { return manway.Length(x) * manway.Inch }
		s := Strip{
			Concrete: manway.Concrete{Strength: manway.Pressure(fc) * manway.PSI}, Thickness: in(h), Lost: in(lost),
			Steel: manway.Reinforcement{State: manway.SteelState(flags % 4), Diameter: in(db), Spacing: in(spacing), Cover: in(cover), Yield: manway.Pressure(fy) * manway.PSI},
			Inner: flags&16 != 0, Supported: flags&32 != 0, AgainstSoil: flags&64 != 0,
		}
		for _, strength := range []func() (Standing, error){s.Bending, s.Shear, func() (Standing, error) { return s.Punching(in(h), in(spacing), Position(flags%3)) }} {
			st, err := strength()
			if err != nil {
				continue
			}
			for _, x := range []float64{st.Design, st.AsPlain, st.Phi} {
				if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
					t.Fatalf("%+v: %+v", s, st)
				}
			}
			if st.Counts == manway.Pass && st.Design <= 0 {
				t.Fatalf("%+v counts with no strength: %+v", s, st)
			}
		}
	})
}

// ReadMesh reads what it is given or refuses it.
func FuzzReadMesh(f *testing.F) {
	f.Add("6x6-W2.9xW2.9")
	f.Add("4 x 4 - W1.4 x W1.4")
	f.Add("x-x")
	f.Fuzz(func(t *testing.T, style string) {
		m, err := ReadMesh(style)
		if err == nil && !(m.Along.Area > 0 && m.Across.Area > 0 && m.AlongSpacing >= manway.Inch && m.AcrossSpacing <= 18*manway.Inch) {
			t.Fatalf("%q: %+v", style, m)
		}
	})
}
