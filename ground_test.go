package manway_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
)

// Property (bounded): whatever is known of a soil, as a load it is never lighter
// than as ballast, and what is known stays as it is.
func TestLoadIsNotLighterThanBallast(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	known := func(lo, hi manway.Density) manway.Density {
		if rng.IntN(2) == 0 {
			return 0
		}
		return lo + (hi-lo)*manway.Density(rng.Float64())
	}
	for range 500 {
		s := manway.Soil{Moist: known(60, 150) * manway.PoundPerCubicFoot, Saturated: known(80, 160) * manway.PoundPerCubicFoot}
		load, made := s.AsLoad()
		ballast, made2 := s.AsBallast()
		if load.Moist < ballast.Moist || load.Saturated < ballast.Saturated || made != made2 {
			t.Fatalf("%+v: as load %+v, as ballast %+v", s, load, ballast)
		}
		if s.Moist != 0 && load.Moist != s.Moist || s.Saturated != 0 && ballast.Saturated != s.Saturated {
			t.Fatalf("%+v became %+v and %+v", s, load, ballast)
		}
	}
}

// Property (scaling): demand and capacity twice as great are judged alike.
// Property (invariant): the order of checks does not change which one governs.
func TestJudgingScales(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 9))
	var list []manway.Check
	for i := range 40 {
		c := manway.Check{Name: string(rune('a' + i)), Demand: rng.Float64(), Capacity: rng.Float64() * 1.5}.Judge()
		big := manway.Check{Demand: 1e6 * c.Demand, Capacity: 1e6 * c.Capacity}.Judge()
		a, _ := c.Use()
		b, _ := big.Use()
		if big.Status != c.Status || !(math.Abs(a-b) <= 1e-12*a) {
			t.Errorf("%+v is %v at %v, a million times as great %v at %v", c, c.Status, a, big.Status, b)
		}
		list = append(list, c)
	}
	want := list[manway.Governing(list)].Name
	for range 50 {
		rng.Shuffle(len(list), func(i, k int) { list[i], list[k] = list[k], list[i] })
		if got := list[manway.Governing(list)].Name; got != want {
			t.Errorf("%s governs, was %s", got, want)
		}
	}
}

// Property (bounded): the pieces make up the total, and one less does not.
func TestPiecesAreEnough(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 1000 {
		total, each := manway.Length(10*rng.Float64()), manway.Length(0.01+rng.Float64())
		n, err := manway.Pieces(total, each)
		if err != nil || !manway.Reached(manway.Length(n)*each, total) || n > 0 && manway.Length(n-1)*each >= total {
			t.Fatalf("%d of %v for %v, %v", n, each, total, err)
		}
	}
}

// Property (inverse): days there and back are the same day, a weight is the weight
// of its mass, and a prism over its base is its height. Property (additive): days
// by way of a third day add up.
func TestThereAndBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	day := manway.Date{Year: 2026, Month: 11, Day: 25}
	for range 500 {
		a, b := rng.IntN(40000)-20000, rng.IntN(40000)-20000
		if day.AddDays(a).AddDays(-a) != day || day.AddDays(a).AddDays(b) != day.AddDays(a+b) || day.DaysUntil(day.AddDays(a)) != a || day.Before(day.AddDays(a)) != (a > 0) {
			t.Fatalf("%d and %d days from %v", a, b, day)
		}
		m, area, h := manway.Mass(rng.Float64()), manway.Area(0.1+rng.Float64()), manway.Length(rng.Float64())
		if got := m.Weight().Mass(); !(math.Abs(float64(got-m)) <= 1e-15) {
			t.Fatalf("%v weighs as %v", m, got)
		}
		if got := area.Times(h).Over(area); !(math.Abs(float64(got-h)) <= 1e-15) {
			t.Fatalf("%v over %v is %v high", area.Times(h), area, got)
		}
	}
}

// The load factors by a worked slab: 1.2 of its own weight and 1.6 of what is on it.
// Property (bounded): no strength combination is below the loads as they are,
// but that which counts on weight to hold something down.
func TestCombinationByExample(t *testing.T) {
	rows := reftable.Load(t, "concrete.csv").With("quantity", "factored load")
	rows.Each(t, func(t *testing.T, row reftable.Row) {
		var thickness manway.Length
		var density manway.Density
		var live manway.Pressure
		row.Read(t, "h", &thickness)
		row.Read(t, "density", &density)
		row.Read(t, "live", &live)
		f := manway.DeadLive.Factors()
		dead := manway.Pressure(float64(density) * manway.StandardGravity * float64(thickness))
		row.Check(t, (manway.Pressure(f.Dead)*dead + manway.Pressure(f.Live)*live).In(manway.PSF))
	})
	if len(rows) == 0 {
		t.Error("no row")
	}
	service := manway.Service.Factors()
	for _, c := range []manway.Combination{manway.Dead, manway.DeadLive} {
		if f := c.Factors(); f.Dead < service.Dead || f.Fluid < service.Fluid {
			t.Errorf("%v is below the loads as they are", c)
		}
	}
	if f := manway.DeadResisting.Factors(); f.Dead >= service.Dead || f.Live != 0 {
		t.Errorf("%v counts on more than is there", f)
	}
}

func TestLimitsOfGround(t *testing.T) {
	limit.Check(t, manway.GroundwaterAt(manway.Metre), manway.Groundwater.Validate, limit.Between("Depth", 0, 100*manway.Foot))
	limit.Check(t, manway.Soil{Moist: 1800, Saturated: 2000, Friction: 0.5}, manway.Soil.Validate,
		limit.Between("Moist", 60*manway.PoundPerCubicFoot, 150*manway.PoundPerCubicFoot),
		limit.Between("Saturated", 80*manway.PoundPerCubicFoot, 160*manway.PoundPerCubicFoot),
		limit.Between("Friction", 15*manway.Degree, 45*manway.Degree))
	limit.Check(t, manway.Person{Mass: 90}, manway.Person.Validate, limit.Between("Mass", 50*manway.Pound, 600*manway.Pound))
	limit.Check(t, manway.TruckWheel, manway.Wheel.Validate,
		limit.Between("Load", manway.PoundForce, 100000*manway.PoundForce), limit.Between("Length", manway.Inch, 4*manway.Foot),
		limit.Between("Width", manway.Inch, 4*manway.Foot), limit.Between("Gauge", 0, 20*manway.Foot))
	limit.Check(t, manway.Concrete{Strength: 3000 * manway.PSI, Density: manway.UsualConcreteDensity}, manway.Concrete.Validate,
		limit.Between("Strength", 1000*manway.PSI, 15000*manway.PSI), limit.Between("Density", 90*manway.PoundPerCubicFoot, 200*manway.PoundPerCubicFoot))
	limit.Check(t, manway.Reinforcement{State: manway.SteelKnown, Diameter: manway.Inch / 2, Spacing: manway.Foot, Cover: manway.Inch, Yield: 60000 * manway.PSI}, manway.Reinforcement.Validate,
		limit.Between("Diameter", 0.05*manway.Inch, 1.5*manway.Inch), limit.Between("Spacing", manway.Inch, 36*manway.Inch), limit.Between("Cover", 0, 12*manway.Inch),
		limit.Between("Yield", 24000*manway.PSI, 100000*manway.PSI))
	limit.Check(t, pieces{0.5, 1}, pieces.count, limit.AtLeast("Pieces", manway.Length(0)).In("Total"),
		limit.Above("Pieces", manway.Length(0)).In("Each"))
	limit.Refuses(t, pieces{0.5, 1}, pieces.count, "Pieces", func(p *pieces) { p.Total = 2e9 })
	limit.Refuses(t, written{"2024-02-29"}, written.date, "date", func(w *written) { w.text = "2023-02-29" })
}

type pieces struct{ Total, Each manway.Length }

func (p pieces) count() error {
	_, err := manway.Pieces(p.Total, p.Each)
	return err
}

type written struct{ text string }

func (w written) date() error { return new(manway.Date).UnmarshalText([]byte(w.text)) }

// Bags of mix to the cubic yard, by the yield that is printed on the bag.
func TestPiecesByExample(t *testing.T) {
	rows := reftable.Load(t, "riser.csv")
	yields := map[string]manway.Volume{}
	for _, row := range rows.With("quantity", "bag yield") {
		bag, _ := row.Lookup("bag")
		var yield manway.Volume
		if err := yield.UnmarshalText([]byte(row.Printed + " " + row.Unit)); err != nil {
			t.Fatal(err)
		}
		yields[bag] = yield
	}
	rows.With("quantity", "bags").Each(t, func(t *testing.T, row reftable.Row) {
		var total manway.Volume
		row.Read(t, "volume", &total)
		bag, _ := row.Lookup("bag")
		n, err := manway.Pieces(total, yields[bag])
		if err != nil {
			t.Fatal(err)
		}
		row.Check(t, float64(n))
	})
}

// Property (bounded): water of which nothing is known stands no deeper than any
// that was found.
func TestUnknownWaterStandsHighest(t *testing.T) {
	unknown, assumed := manway.Groundwater{}.Taken()
	if !assumed.Has(manway.AssumedGroundwaterAtGrade) {
		t.Error("unknown water is taken without saying so")
	}
	for depth := manway.Length(0); depth < 30; depth += 0.3 {
		found, made := manway.GroundwaterAt(depth).Taken()
		if found != depth || found < unknown || made != 0 {
			t.Errorf("water at %v is taken at %v, unknown at %v", depth, found, unknown)
		}
	}
}
