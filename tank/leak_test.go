package tank

import (
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

func standard(t *testing.T, id string) LeakStandard {
	t.Helper()
	for _, s := range LeakStandards() {
		if s.ID == id {
			return s
		}
	}
	t.Fatalf("no standard %q", id)
	return LeakStandard{}
}

func TestLeakStandardRows(t *testing.T) {
	reftable.Load(t, "tank.csv").Under("leak-").Each(t, func(t *testing.T, row reftable.Row) {
		s := standard(t, row.Input(t, "standard"))
		if s.Source.Place != row.Place || s.Source.Source.ID != row.Source || s.Mark.String() != row.Status {
			t.Errorf("standard cites %v, marked %v", s.Source, s.Mark)
		}
		got := map[string]float64{"gal": float64(s.Loss), "inHg": float64(s.Vacuum), "min": float64(s.Hold), "h": float64(s.Hold), "%": s.Keep}[row.Unit]
		row.Check(t, got/unitOf(t, row.Unit))
	})
}

func TestLeakJudge(t *testing.T) {
	hour, inHg := manway.Hour, manway.InchMercury
	for _, c := range []struct {
		name string
		test LeakTest
		want manway.Status
	}{
		// 1 gal over 4 ft2 is 0.401 in.
		{"0.4 in in 24 h in the risers", LeakTest{Standard: standard(t, "oregon"), Time: 24 * hour, Drop: 0.4 * manway.Inch, Surface: 4 * manway.SquareFoot}, manway.Pass},
		{"0.41 in", LeakTest{Standard: standard(t, "oregon"), Time: 24 * hour, Drop: 0.41 * manway.Inch, Surface: 4 * manway.SquareFoot}, manway.Fail},
		{"0.41 in in 48 h", LeakTest{Standard: standard(t, "oregon"), Time: 48 * hour, Drop: 0.41 * manway.Inch, Surface: 4 * manway.SquareFoot}, manway.Pass},
		{"too short", LeakTest{Standard: standard(t, "oregon"), Time: 2 * hour, Surface: 4 * manway.SquareFoot}, manway.NotJudged},
		{"fails early", LeakTest{Standard: standard(t, "oregon"), Time: 2 * hour, Drop: 3 * manway.Inch, Surface: 4 * manway.SquareFoot}, manway.Fail},
		{"no loss allowed, none seen", LeakTest{Standard: standard(t, "wisconsin-water"), Time: hour, Surface: 4 * manway.SquareFoot}, manway.Pass},
		{"no loss allowed, some seen", LeakTest{Standard: standard(t, "wisconsin-water"), Time: hour, Drop: 0.01 * manway.Inch, Surface: 4 * manway.SquareFoot}, manway.Fail},
		{"vacuum kept", LeakTest{Standard: standard(t, "washington-vacuum"), Time: 2 * manway.Minute, Start: 4 * inHg, End: 3.6 * inHg}, manway.Pass},
		{"vacuum lost", LeakTest{Standard: standard(t, "washington-vacuum"), Time: 2 * manway.Minute, Start: 4 * inHg, End: 3.5 * inHg}, manway.Fail},
		{"little vacuum", LeakTest{Standard: standard(t, "washington-vacuum"), Time: 2 * manway.Minute, Start: 3 * inHg, End: 3 * inHg}, manway.NotJudged},
		{"remembered", LeakTest{Standard: standard(t, "astm-c1227-vacuum"), Time: 5 * manway.Minute, Start: 4 * inHg, End: 3 * inHg}, manway.NotJudged},
	} {
		r, err := c.test.Judge()
		if err != nil || r.Check.Status != c.want {
			t.Errorf("%s: %v (%s), want %v; %v", c.name, r.Check.Status, r.Check.Reason, c.want, err)
		}
	}
}

func TestLeakRefuses(t *testing.T) {
	for _, l := range []LeakTest{
		{}, {Standard: standard(t, "oregon"), Time: -1},
		{Standard: standard(t, "oregon"), Time: manway.Hour, Drop: manway.Length(math.NaN()), Surface: 1},
		{Standard: standard(t, "wisconsin-vacuum"), Time: manway.Hour, Start: 5000, End: 6000},
	} {
		if r, err := l.Judge(); err == nil {
			t.Errorf("%+v: taken, %+v", l, r)
		}
	}
}

func TestLossOf(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 2, Width: 1, Height: 1.5}})
	if v, err := x.LossOf(1.2, 0.01); err != nil || !(math.Abs(float64(v)-0.02) <= 1e-12) {
		t.Errorf("%v, %v", v, err)
	}
	if _, err := x.LossOf(0.1, 0.2); err == nil {
		t.Error("a level below the floor was taken")
	}
}
