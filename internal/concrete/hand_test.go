package concrete

import (
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// figures compares figures with those worked out beside them.
func figures(t *testing.T, rows ...struct {
	name      string
	got, want float64
}) {
	t.Helper()
	for _, r := range rows {
		if !(math.Abs(r.got-r.want) <= 1e-9*math.Abs(r.want)) {
			t.Errorf("%s: %.12g, want %.12g", r.name, r.got, r.want)
		}
	}
}

type row = struct {
	name      string
	got, want float64
}

var fc4000 = manway.Concrete{Strength: 4000 * manway.PSI}

func psi(p manway.Pressure) float64 { return p.In(manway.PSI) }
func lbf(f manway.Force) float64    { return f.In(manway.PoundForce) }

// Equations 22.6.5.2 at the three places, by hand. A load of 10 in by 20 in and
// d = 4 in: bo is 2 (14 + 24) = 76 in inside, 10 + 4 + 2 (20 + 2) = 58 in at an
// edge, 10 + 2 + 20 + 2 = 34 in in a corner; beta is 2, so 2 + 4/2 = 4 is no less
// than 4, and 2 + alpha d/bo is 4.105, 4.069, 4.353. On 4 in by 20 in beta is 5
// and 2 + 4/5 = 2.8 governs. With d = 2 in on 40 in square, 2 + 40 x 2/168 =
// 2.476 governs. The size effect at d = 30 in is sqrt(2/4).
func TestPunchingByHand(t *testing.T) {
	root := math.Sqrt(4000)
	for _, c := range []struct {
		length, width, depth float64
		at                   Position
		bo, factor           float64
	}{
		{10, 20, 4, Interior, 76, 4}, {10, 20, 4, AtEdge, 58, 4}, {10, 20, 4, AtCorner, 34, 4},
		{4, 20, 4, Interior, 64, 2.8}, {20, 4, 4, Interior, 64, 2.8},
		{40, 40, 2, Interior, 168, 2 + 40*2.0/168}, {40, 40, 2, AtEdge, 124, 2 + 30*2.0/124}, {40, 40, 2, AtCorner, 82, 2 + 20*2.0/82},
		{30, 30, 30, Interior, 240, 4 * math.Sqrt(0.5)},
	} {
		p := Punching{fc4000, manway.Length(c.length) * inch, manway.Length(c.width) * inch, manway.Length(c.depth) * inch, c.at}
		v := reftable.Must[Shear](t)(p.Strength())
		figures(t, row{"bo", p.Perimeter().In(inch), c.bo}, row{"vc", psi(v.Stress), c.factor * root},
			row{"Vc", lbf(v.Nominal), c.factor * root * c.bo * c.depth}, row{"phi Vc", lbf(v.Design), 0.75 * c.factor * root * c.bo * c.depth})
		// Plain: (1 + 2/beta) 4/3, at most 8/3, times sqrt(f'c) bo h, phi 0.6.
		long, short := max(c.length, c.width), min(c.length, c.width)
		plain := min(1+2*short/long, 2) * 4 / 3 * root * c.bo * c.depth
		v = reftable.Must[Shear](t)(p.PlainStrength())
		figures(t, row{"Vn, plain", lbf(v.Nominal), plain}, row{"phi Vn, plain", lbf(v.Design), 0.6 * plain}, row{"no size effect", v.SizeEffect, 1})
	}
	if bo := (Punching{}).Perimeter(); bo != 0 {
		t.Errorf("the perimeter of nothing is %v", bo)
	}
}

// Chapter 17 by hand for f'c = 4,000 psi. Embedded 2 in: Nb = 24 sqrt(4000)
// 2^1.5, ANc0 = 9 x 2^2 = 36 in2; 1.5 in from an edge psi_ed = 0.7 + 0.3 x 1.5/3 =
// 0.85 and ANc = (3 + 1.5) x 6 = 27 in2; e'N = 0.75 in gives psi_ec = 1/(1 +
// 0.75/3) = 0.8.
func TestBreakoutByHand(t *testing.T) {
	root := math.Sqrt(4000)
	nb := 24 * root * math.Pow(2, 1.5)
	b := Breakout{Concrete: fc4000, Embedment: 2 * inch}
	s := reftable.Must[BreakoutStrength](t)(b.Strength())
	figures(t, row{"Nb", lbf(s.Single), nb}, row{"ANc0", s.Full.In(manway.SquareInch), 36}, row{"Ncb", lbf(s.Nominal), nb}, row{"phi Ncb", lbf(s.Design), 0.7 * nb})
	b.Edge, b.Eccentricity, b.Uncracked = 1.5*inch, 0.75*inch, true
	s = reftable.Must[BreakoutStrength](t)(b.Strength())
	figures(t, row{"ANc", s.Area.In(manway.SquareInch), 27}, row{"psi_ed", s.PsiED, 0.85}, row{"psi_ec", s.PsiEC, 0.8}, row{"psi_c", s.PsiC, 1.25},
		row{"Ncb", lbf(s.Nominal), 27.0 / 36 * 0.85 * 0.8 * 1.25 * nb})
	b.Edge = 3 * inch // no nearer than 1.5 hef
	if s = reftable.Must[BreakoutStrength](t)(b.Strength()); s.PsiED != 1 || !(math.Abs(s.Area.In(manway.SquareInch)-36) <= 1e-9) {
		t.Errorf("an edge 1.5 hef away: psi_ed %g, ANc %v", s.PsiED, s.Area)
	}
	for _, c := range []struct{ embedment, want float64 }{{10.9, 24 * root * math.Pow(10.9, 1.5)}, {11, 16 * root * math.Pow(11, 5.0/3)}, {20, 16 * root * math.Pow(20, 5.0/3)}} {
		s := reftable.Must[BreakoutStrength](t)(Breakout{Concrete: fc4000, Embedment: manway.Length(c.embedment) * inch, Headed: true}.Strength())
		figures(t, row{"Nb of a stud", lbf(s.Single), c.want})
	}
	s = reftable.Must[BreakoutStrength](t)(Breakout{Concrete: fc4000, Embedment: 20 * inch}.Strength())
	figures(t, row{"Nb, no head", lbf(s.Single), 24 * root * math.Pow(20, 1.5)})
}

// The wedge at an edge 4 in away: sqrt(f'c) ca^1.5 = 8 sqrt(4000). A bar of 1/2 in
// bears over 4 in at most (8 da), so (le/da)^0.2 = 8^0.2. In a member of 3 in, half
// of 1.5 ca: Vcb = 3/6 sqrt(6/3) Vb.
func TestEdgeBreakoutByHand(t *testing.T) {
	base := 8 * math.Sqrt(4000)
	s := reftable.Must[EdgeBreakoutStrength](t)(EdgeBreakout{Concrete: fc4000, Bearing: 10 * inch, Diameter: 0.5 * inch, Edge: 4 * inch, Thickness: 3 * inch}.Strength())
	vb := 7 * math.Pow(8, 0.2) * math.Sqrt(0.5) * base
	figures(t, row{"by diameter", lbf(s.ByDiameter), vb}, row{"by edge", lbf(s.ByEdge), 9 * base}, row{"Vb", lbf(s.Basic), vb},
		row{"Vcb", lbf(s.Nominal), 0.5 * math.Sqrt2 * vb}, row{"phi Vcb", lbf(s.Design), 0.7 * 0.5 * math.Sqrt2 * vb})
	s = reftable.Must[EdgeBreakoutStrength](t)(EdgeBreakout{Concrete: fc4000, Bearing: 10 * inch, Diameter: 2 * inch, Edge: 4 * inch, Thickness: 6 * inch}.Strength())
	figures(t, row{"a thick bar", lbf(s.Basic), 9 * base}, row{"a deep member", lbf(s.Nominal), 9 * base})
}

// Moduli at 3,600 psi, whose root is 60: fr = 7.5 x 60 = 450 psi; Ec = 57,000 x 60
// = 3.42e6 psi where the density is not given, 33 x 100^1.5 x 60 = 1.98e6 psi at
// 100 lb/ft3, and 57,000 sqrt(f'c) again above 160.
func TestModuliByHand(t *testing.T) {
	c := manway.Concrete{Strength: 3600 * manway.PSI}
	figures(t, row{"fr", psi(reftable.Must[manway.Pressure](t)(ModulusOfRupture(c))), 450}, row{"Ec", psi(reftable.Must[manway.Pressure](t)(ElasticModulus(c))), 3.42e6})
	for _, d := range []struct{ density, want float64 }{{100, 1.98e6}, {160, 33 * math.Pow(160, 1.5) * 60}, {161, 3.42e6}} {
		c.Density = manway.Density(d.density) * manway.PoundPerCubicFoot
		figures(t, row{"Ec", psi(reftable.Must[manway.Pressure](t)(ElasticModulus(c))), d.want})
	}
	if _, err := ElasticModulus(manway.Concrete{Strength: -1}); err == nil {
		t.Error("Ec of concrete that cannot be")
	}
	figures(t, row{"least rho, 200 psi", reftable.Must[float64](t)(LeastBeamRatio(c, 60000*manway.PSI)), 200.0 / 60000},
		row{"least rho", reftable.Must[float64](t)(LeastBeamRatio(manway.Concrete{Strength: 10000 * manway.PSI}, 60000*manway.PSI)), 300.0 / 60000},
		row{"rho at 0.005", reftable.Must[float64](t)(RatioAtStrain(fc4000, 60000*manway.PSI, 0.005)), 0.85 * 0.85 * 4000 / 60000 * 3 / 8},
		row{"sqrt(f'c) capped", of(manway.Concrete{Strength: 14400 * manway.PSI}).rootCapped(), 100},
		row{"one-way, capped at 5", psi(reftable.Must[Shear](t)(Section{fc4000, ft, 5 * inch, 6 * manway.SquareInch, 0}.OneWayShear()).Stress), min(8*math.Cbrt(0.1), 5) * math.Sqrt(4000)},
		row{"one-way, d 30 in", psi(reftable.Must[Shear](t)(Section{fc4000, ft, 30 * inch, 0.36 * manway.SquareInch, 0}.OneWayShear()).Stress), 8 * math.Sqrt(0.5) * 0.1 * math.Sqrt(4000)},
		row{"steel not known: 40,000 psi", psi(reftable.Must[Flexure](t)(Section{fc4000, ft, 5 * inch, 0.24 * manway.SquareInch, 0}.Flexure()).Stress), 40000},
		row{"bearing, A2/A1 of 9 counts as 4", lbf(reftable.Must[BearingStrength](t)(Bearing{fc4000, manway.SquareInch, 9 * manway.SquareInch}.Strength()).Design), 0.65 * 2 * 0.85 * 4000})
}

// A strip of 4 in with bars of 1/4 in at 0.75 in cover: d = 4 - 0.75 - 0.125 =
// 3.125 in, 2.875 in behind crossing bars, and half an inch more of cover gone
// leaves d as much larger for the same thickness.
func TestStripByHand(t *testing.T) {
	s := Strip{Concrete: fc4000, Thickness: 4 * inch, Steel: mesh(0.25, 4, 0.75)}
	outer := s.EffectiveDepth().In(inch)
	s.Inner = true
	inner := s.EffectiveDepth().In(inch)
	s.Inner, s.Lost = false, 0.5*inch
	figures(t, row{"d", outer, 3.125}, row{"d, inner", inner, 2.875}, row{"d, worn", s.EffectiveDepth().In(inch), 3.625},
		row{"As", AreaPerWidth(0.25*inch, 4*inch).In(inch), math.Pi / 256})
	for _, bad := range [][2]manway.Length{{0, 1}, {1, 0}, {-1, 1}, {manway.Length(math.Inf(1)), 1}} {
		if a := AreaPerWidth(bad[0], bad[1]); a != 0 {
			t.Errorf("area of %v at %v: %v", bad[0], bad[1], a)
		}
	}
}

// Bars 3 h apart, or 18 in, still count; farther they do not (7.7.2.3). The
// steel is well above the least: a bar of 3/4 in every 18 in in 6 in is 0.0041.
func TestSpacingThatCounts(t *testing.T) {
	for _, c := range []struct {
		h, apart float64
		counts   manway.Status
	}{{6, 18, manway.Pass}, {6, 18.1, manway.NotPermitted}, {8, 18.1, manway.NotPermitted}, {4, 12, manway.Pass}, {4, 12.1, manway.NotPermitted}} {
		st := reftable.Must[Standing](t)(Strip{Concrete: fc4000, Thickness: manway.Length(c.h) * inch, Steel: mesh(0.75, c.apart, 0.75)}.Bending())
		if st.Counts != c.counts {
			t.Errorf("bars %g in apart in %g in: %v %s", c.apart, c.h, st.Counts, st.Reason)
		}
	}
}

// A floor on the ground counts at least as plain concrete, and as reinforced
// where that is more: 8 in with bars near the pressed face carry less than plain,
// with bars near the pulled one more.
func TestSupportedTakesTheMore(t *testing.T) {
	for _, cover := range []float64{0.75, 6.5} {
		s := Strip{Concrete: fc4000, Thickness: 8 * inch, Supported: true, Steel: mesh(0.5, 6, cover)}
		st := reftable.Must[Standing](t)(s.Bending())
		reinforced := float64(reftable.Must[Flexure](t)(s.section().Flexure()).Design)
		plain := float64(reftable.Must[PlainFlexure](t)(s.plain().Flexure()).Design)
		if st.Design != max(reinforced, plain) || st.Plain != (plain > reinforced) || st.Counts != manway.Pass || st.AsPlain != plain {
			t.Errorf("cover %g in: %+v; reinforced %g, plain %g", cover, st, reinforced, plain)
		}
	}
}

// Plain concrete a foot wide and 6 in thick: S = 12 x 6^2/6 = 72 in3, Mn = 5
// sqrt(4000) 72 lbf in, Vn = 4/3 sqrt(4000) 72 lbf; against soil 4 in count, S = 32.
func TestPlainByHand(t *testing.T) {
	root := math.Sqrt(4000)
	f := reftable.Must[PlainFlexure](t)(Plain{fc4000, ft, 6 * inch, false}.Flexure())
	soil := reftable.Must[PlainFlexure](t)(Plain{fc4000, ft, 6 * inch, true}.Flexure())
	v := reftable.Must[Shear](t)(Plain{fc4000, ft, 6 * inch, false}.Shear())
	figures(t, row{"Mn", f.Nominal.In(manway.PoundForceInch), 5 * root * 72}, row{"phi Mn", f.Design.In(manway.PoundForceInch), 0.6 * 5 * root * 72},
		row{"against soil", soil.Nominal.In(manway.PoundForceInch), 5 * root * 32}, row{"Vn", lbf(v.Nominal), 4.0 / 3 * root * 72}, row{"phi Vn", lbf(v.Design), 0.8 * root * 72})
}

// The working of a worn strip by hand: 12 pi 0.25^2/4/4 = 0.14726 in2/ft, least
// 0.0018 x 48 = 0.0864, d = 4 - (0.75 - 0.25) - 0.125 = 3.375 in, a = 0.14726 x
// 60000/(0.85 x 4000 x 12) = 0.21656 in, c = a/0.85 = 0.25478 in, eps_t = 0.003
// (3.375 - 0.25478)/0.25478 = 0.03674, phi Mn = 0.9 x 0.14726 x 60000 (3.375 -
// 0.10828)/12 = 2164.8 lbf ft/ft; plain S = 2 x 16 = 32 in3, 0.6 x 5 x 63.246 x
// 32/12 = 505.96 lbf ft/ft.
func TestWorkingByHand(t *testing.T) {
	w, err := Strip{Concrete: fc4000, Thickness: 4 * inch, Lost: 0.25 * inch, Steel: mesh(0.25, 4, 0.75)}.BendingWorking()
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{"As": "0.14726 in2/ft", "As least": "0.0864 in2/ft", "d": "3.375 in", "a": "0.21656 in", "eps_t": "0.03674", "phi": "0.9",
		"phi Mn, reinforced": "2164.8 lbf ft/ft", "S": "32 in3/ft", "phi Mn, plain": "505.96 lbf ft/ft", "phi Mn": "2164.8 lbf ft/ft"}
	for _, s := range w {
		if !strings.HasPrefix(s.Value, want[s.Symbol]) || want[s.Symbol] == "" {
			t.Errorf("%s = %s, want %s", s.Symbol, s.Value, want[s.Symbol])
		}
		delete(want, s.Symbol)
	}
	if len(want) != 0 {
		t.Errorf("not shown: %v", want)
	}
	for _, steel := range []manway.Reinforcement{{}, {State: manway.SteelNone}, mesh(0.25, 4, 5)} {
		w, err := Strip{Concrete: fc4000, Thickness: 4 * inch, Steel: steel}.BendingWorking()
		if err != nil || len(w) != 3 {
			t.Errorf("%v: %d steps, want the three of plain concrete; %v", steel.State, len(w), err)
		}
	}
}
