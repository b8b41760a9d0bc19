package concrete

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// mesh is a layer of known steel.
func mesh(diameter, spacing, cover float64) manway.Reinforcement {
	return manway.Reinforcement{
		State: manway.SteelKnown, Diameter: manway.Length(diameter) * inch,
		Spacing: manway.Length(spacing) * inch, Cover: manway.Length(cover) * inch, Yield: 60000 * manway.PSI,
	}
}

// strengths gives the three strengths of a strip.
func strengths(t *testing.T, s Strip) map[string]Standing {
	t.Helper()
	m := reftable.Must[Standing](t)
	return map[string]Standing{
		"bending": m(s.Bending()), "shear": m(s.Shear()), "punching": m(s.Punching(10*inch, 20*inch, Interior)),
	}
}

// Unknown steel never beats known steel, whatever is known: neither in what it
// is allowed to show nor in the figure.
func TestUnknownNeverBeatsKnown(t *testing.T) {
	for _, h := range []float64{2, 3, 4, 6, 8} {
		for _, lost := range []float64{0, 0.25, 0.75, 1.5} {
			for _, supported := range []bool{false, true} {
				for _, fc := range []manway.Pressure{0, 2000 * manway.PSI, 4000 * manway.PSI} {
					base := Strip{Concrete: manway.Concrete{Strength: fc}, Thickness: manway.Length(h) * inch, Lost: manway.Length(lost) * inch, Supported: supported}
					unknown := strengths(t, base)
					for _, steel := range []manway.Reinforcement{
						{State: manway.SteelNone}, mesh(0.135, 6, 0.75), mesh(0.192, 6, 1), mesh(0.375, 12, 1), mesh(0.5, 6, 0.75), mesh(0.5, 36, 1), mesh(0.625, 4, 1.5), mesh(0.2, 4, 5),
					} {
						known := base
						known.Steel = steel
						for name, k := range strengths(t, known) {
							u := unknown[name]
							if u.Design > k.Design {
								t.Errorf("%s %+v: unknown %g beats known %g", name, known, u.Design, k.Design)
							}
							if u.Counts == manway.Pass && k.Counts != manway.Pass {
								t.Errorf("%s %+v: unknown counts, known does not: %s", name, known, k.Reason)
							}
							if !supported && u.Counts != manway.NotShown {
								t.Errorf("%s: unknown steel is %v, want not shown", name, u.Counts)
							}
						}
					}
				}
			}
		}
	}
}

func TestStandingByState(t *testing.T) {
	fc := manway.Concrete{Strength: 4000 * manway.PSI, Density: 150 * manway.PoundPerCubicFoot}
	for _, c := range []struct {
		name   string
		strip  Strip
		counts manway.Status
		plain  bool
		reason string
	}{
		{"steel enough", Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(0.5, 8, 0.75)}, manway.Pass, false, ""},
		{"steel at the least", Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(math.Sqrt(4*0.0018*4*10/math.Pi), 10, 0.75)}, manway.Pass, false, ""},
		{"steel below the least", Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(0.135, 6, 0.75)}, manway.NotPermitted, true, ReasonFew},
		{"bars too far apart", Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(0.75, 14, 0.75)}, manway.NotPermitted, true, ReasonFew},
		{"cover gone", Strip{Concrete: fc, Thickness: 4 * inch, Lost: 0.75 * inch, Steel: mesh(0.5, 8, 0.75)}, manway.NotShown, true, ReasonBare},
		{"steel outside", Strip{Concrete: fc, Thickness: 2 * inch, Steel: mesh(0.5, 8, 3)}, manway.NotShown, true, ReasonDepth},
		{"no steel", Strip{Concrete: fc, Thickness: 4 * inch, Steel: manway.Reinforcement{State: manway.SteelNone}}, manway.NotPermitted, true, ReasonPlain},
		{"no steel on the ground", Strip{Concrete: fc, Thickness: 4 * inch, Supported: true, Steel: manway.Reinforcement{State: manway.SteelNone}}, manway.Pass, true, ""},
		{"unknown", Strip{Concrete: fc, Thickness: 4 * inch}, manway.NotShown, true, ReasonUnknown},
		{"weak", Strip{Concrete: manway.Concrete{Strength: 2000 * manway.PSI}, Thickness: 4 * inch, Steel: mesh(0.5, 8, 0.75)}, manway.NotPermitted, false, ReasonWeak},
	} {
		for name, st := range strengths(t, c.strip) {
			if st.Counts != c.counts || st.Plain != c.plain || st.Reason != c.reason {
				t.Errorf("%s, %s: %v plain=%v %q", c.name, name, st.Counts, st.Plain, st.Reason)
			}
			check := st.Judge(manway.Check{Demand: st.Design / 2})
			if c.counts != manway.Pass && check.Status != c.counts {
				t.Errorf("%s, %s: judged %v, want %v", c.name, name, check.Status, c.counts)
			}
			if c.counts == manway.Pass && (check.Status != manway.Pass || st.Judge(manway.Check{Demand: st.Design * 1.001}).Status != manway.Fail) {
				t.Errorf("%s, %s: half the strength %v", c.name, name, check.Status)
			}
		}
	}
}

// A strip that wears never grows stronger.
func TestWearWeakens(t *testing.T) {
	for _, steel := range []manway.Reinforcement{{State: manway.SteelNone}, mesh(0.5, 8, 1), mesh(0.135, 6, 1)} {
		last := math.Inf(1)
		for lost := 0.0; lost < 0.95; lost += 0.05 {
			s := Strip{Thickness: manway.Length(4-lost) * inch, Lost: manway.Length(lost) * inch, Steel: steel}
			st := reftable.Must[Standing](t)(s.Bending())
			if !(st.Design <= last*(1+1e-12)) {
				t.Errorf("%v lost %g in: %g above %g", steel.State, lost, st.Design, last)
			}
			last = st.Design
		}
	}
}

// Where the steel does not yield, its stress and strain agree with Hooke's law
// and the forces balance.
func TestOverReinforced(t *testing.T) {
	s := Section{Concrete: manway.Concrete{Strength: 3000 * manway.PSI}, Width: 12 * inch, Depth: 10 * inch, Steel: 8 * manway.SquareInch, Yield: 60000 * manway.PSI}
	f := reftable.Must[Flexure](t)(s.Flexure())
	if f.Strain >= 60000.0/29e6 || f.Phi != 0.65 {
		t.Fatalf("strain %g, phi %g: want steel that does not yield", f.Strain, f.Phi)
	}
	pull := float64(f.Stress) * float64(s.Steel)
	press := 0.85 * float64(s.Concrete.Strength) * float64(s.Width.Times(f.StressBlock))
	if !(math.Abs(pull-press) <= 1e-9*press) || !(math.Abs(float64(f.Stress)-f.Strain*float64(SteelModulus)) <= 1e-6*float64(f.Stress)) {
		t.Errorf("pull %g, press %g, stress %v at strain %g", pull, press, f.Stress, f.Strain)
	}
}

// phi of ACI 318-19 is 0.65 to the yield strain and 0.9 from 0.003 above it.
func TestPhi(t *testing.T) {
	c := manway.Concrete{Strength: 4000 * manway.PSI}
	for _, want := range []struct{ over, phi float64 }{{0.0001, 0.65 + 0.25/30}, {0.0015, 0.775}, {0.003, 0.9}, {0.01, 0.9}} {
		rho := reftable.Must[float64](t)(RatioAtStrain(c, 60000*manway.PSI, 60.0/29000+want.over))
		b, d := 12*inch, 10*inch
		f := reftable.Must[Flexure](t)(Section{c, b, d, manway.Area(rho) * b.Times(d), 60000 * manway.PSI}.Flexure())
		if !(math.Abs(f.Phi-want.phi) <= 1e-9) {
			t.Errorf("%g over yield: phi %g, want %g", want.over, f.Phi, want.phi)
		}
	}
}

// Known values of Table 22.2.2.4.3 and 19.2.4.1.
func TestFactors(t *testing.T) {
	for _, c := range []struct{ fc, beta float64 }{{2500, 0.85}, {4000, 0.85}, {5000, 0.8}, {8000, 0.65}, {12000, 0.65}} {
		if got := beta1(c.fc); !(math.Abs(got-c.beta) <= 1e-12) {
			t.Errorf("beta1(%g) = %g, want %g", c.fc, got, c.beta)
		}
	}
	for _, c := range []struct{ w, lambda float64 }{{95, 0.75}, {100, 0.75}, {120, 0.9}, {135, 1}, {150, 1}} {
		if got := lightness(manway.Density(c.w) * manway.PoundPerCubicFoot); !(math.Abs(got-c.lambda) <= 1e-12) {
			t.Errorf("lambda(%g) = %g, want %g", c.w, got, c.lambda)
		}
	}
}

func TestRefuses(t *testing.T) {
	nan := manway.Length(math.NaN())
	for name, err := range map[string]error{
		"section": func() error {
			_, err := (Section{Width: nan, Depth: nan, Steel: manway.Area(math.NaN()), Yield: 1}).Flexure()
			return err
		}(),
		"too much": func() error {
			_, err := (Section{Width: inch, Depth: inch, Steel: manway.SquareInch}).Flexure()
			return err
		}(),
		"punching": func() error {
			_, err := (Punching{Length: nan, Width: -1, Depth: 0, Position: 7}).Strength()
			return err
		}(),
		"plain": func() error {
			_, err := (Plain{Width: nan, Thickness: 2 * inch, AgainstSoil: true}).Flexure()
			return err
		}(),
		"bearing": func() error {
			_, err := (Bearing{Loaded: manway.SquareFoot, Support: manway.SquareInch}).Strength()
			return err
		}(),
		"breakout": func() error { _, err := (Breakout{Embedment: nan, Coefficient: 99}).Strength(); return err }(),
		"edge":     func() error { _, err := (EdgeBreakout{Bearing: nan, Diameter: 0, Edge: -1}).Strength(); return err }(),
		"strip":    func() error { _, err := (Strip{Thickness: nan}).Bending(); return err }(),
		"state": func() error {
			_, err := (Strip{Thickness: inch, Steel: manway.Reinforcement{State: 9}}).Shear()
			return err
		}(),
		"bar":    func() error { _, err := BarOf(12); return err }(),
		"wire":   func() error { _, err := WireOf(math.NaN()); return err }(),
		"mesh":   func() error { _, err := ReadMesh("6x6-W2.9"); return err }(),
		"strain": func() error { _, err := RatioAtStrain(manway.Concrete{}, 60000*manway.PSI, math.NaN()); return err }(),
	} {
		if _, ok := err.(manway.InputErrors); !ok {
			t.Errorf("%s: %v, want InputErrors", name, err)
		}
	}
	if _, err := (Section{Width: nan, Depth: nan, Steel: manway.Area(math.NaN()), Yield: 1}).Flexure(); len(err.(manway.InputErrors)) != 4 {
		t.Errorf("%v: want four faults at once", err)
	}
}

// The same section in SI and in US units has the same strength.
func TestUnitsAgree(t *testing.T) {
	us := Section{manway.Concrete{Strength: 4000 * manway.PSI}, 12 * inch, 5 * inch, 0.24 * manway.SquareInch, 60000 * manway.PSI}
	si := Section{manway.Concrete{Strength: 27.579029172673447 * manway.Megapascal}, 304.8 * manway.Millimetre, 127 * manway.Millimetre, 154.8384 * manway.SquareMillimetre, 413.68543759010174 * manway.Megapascal}
	a, b := reftable.Must[Flexure](t)(us.Flexure()), reftable.Must[Flexure](t)(si.Flexure())
	if !(math.Abs(float64(a.Design/b.Design)-1) <= 1e-12) {
		t.Errorf("%v and %v", a.Design, b.Design)
	}
}

var allocSink float64

func TestNoAllocation(t *testing.T) {
	fc := manway.Concrete{Strength: 4000 * manway.PSI}
	s := Section{fc, 12 * inch, 5 * inch, 0.24 * manway.SquareInch, 60000 * manway.PSI}
	strip := Strip{Concrete: fc, Thickness: 4 * inch, Steel: mesh(0.5, 8, 0.75)}
	for name, f := range map[string]func(){
		"flexure":  func() { v, _ := s.Flexure(); allocSink += v.Phi },
		"one-way":  func() { v, _ := s.OneWayShear(); allocSink += v.Phi },
		"punching": func() { v, _ := (Punching{fc, 10 * inch, 20 * inch, 3 * inch, AtEdge}).Strength(); allocSink += v.Phi },
		"plain":    func() { v, _ := (Plain{fc, 12 * inch, 4 * inch, false}).Flexure(); allocSink += v.Phi },
		"bearing":  func() { v, _ := (Bearing{Concrete: fc, Loaded: manway.SquareInch}).Strength(); allocSink += v.Phi },
		"breakout": func() { v, _ := (Breakout{Concrete: fc, Embedment: 3 * inch}).Strength(); allocSink += v.Phi },
		"strip":    func() { v, _ := strip.Bending(); allocSink += v.Phi },
		"unknown":  func() { v, _ := (Strip{Thickness: 4 * inch}).Shear(); allocSink += v.Phi },
		"modulus":  func() { v, _ := ElasticModulus(fc); allocSink += float64(v) },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}
