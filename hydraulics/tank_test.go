package hydraulics_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/tank"
)

// Property (monotone): more people or less tank never lengthens the interval; between two rows it
// stays between them.
func TestIntervalIsMonotone(t *testing.T) {
	for people := 1; people <= 9; people++ {
		last := manway.Duration(0)
		for gal := 500.0; gal <= 2500; gal += 10 {
			tank := manway.Volume(gal) * manway.Gallon
			at := reftable.Must[manway.Duration](t)(hydraulics.Interval(people, tank))
			if at < last {
				t.Fatalf("%d people, %v gal: %v after %v", people, gal, at, last)
			}
			last = at
			if people > 1 {
				if fewer := reftable.Must[manway.Duration](t)(hydraulics.Interval(people-1, tank)); fewer < at {
					t.Fatalf("%v gal: %d people %v, one fewer %v", gal, people, at, fewer)
				}
			}
		}
	}
}

// Outside the table there is no answer.
func TestIntervalEnds(t *testing.T) {
	for _, c := range []struct {
		people int
		gal    float64
	}{{0, 1000}, {11, 1000}, {4, 499}, {4, 2501}, {10, 500}, {10, 700}, {4, math.NaN()}, {4, math.Inf(1)}, {-1, 1000}} {
		_, err := hydraulics.Interval(c.people, manway.Volume(c.gal)*manway.Gallon)
		var faults manway.InputErrors
		if !errors.As(err, &faults) {
			t.Errorf("%d people, %v gal: %v, want InputErrors", c.people, c.gal, err)
		}
	}
}

func TestHousehold(t *testing.T) {
	const gal = 1000 * manway.Gallon
	years := func(s hydraulics.Span) float64 { return math.Round(100*s.Time.In(manway.Year)) / 100 }
	for _, c := range []struct {
		name              string
		house             hydraulics.Household
		low, likely, high float64 // 0: no answer
	}{
		{"counted, no grinder", hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Grinder: manway.No}, 2.6, 2.6, 2.6},
		{"grinder", hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Grinder: manway.Yes}, 1.73, 2.0, 2.0},
		{"grinder unknown", hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted}, 1.73, 2.6, 2.6},
		{"about", hydraulics.Household{People: 4, PeopleKnown: hydraulics.About, Grinder: manway.No}, 2.0, 2.6, 3.7},
		{"half the year", hydraulics.Household{People: 4, PeopleKnown: hydraulics.Counted, Grinder: manway.No, Months: 6}, 5.2, 5.2, 5.2},
		{"bedrooms", hydraulics.Household{Bedrooms: 3, Grinder: manway.No}, 1.5, 1.5, 3.7},
		{"unknown", hydraulics.Household{}, 0, 0, 0},
		{"owner says ten", hydraulics.Household{People: 10, PeopleKnown: hydraulics.OwnerSays, Grinder: manway.No}, 0, 0.7, 0.8},
	} {
		r, err := c.house.Interval(gal)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if years(r.Low) != c.low || years(r.Likely) != c.likely || years(r.High) != c.high || r.Answered != (c.likely > 0) {
			t.Errorf("%s: %v %v %v, want %v %v %v", c.name, years(r.Low), years(r.Likely), years(r.High), c.low, c.likely, c.high)
		}
	}
}

func TestNextDate(t *testing.T) {
	jan31 := manway.Date{Year: 2023, Month: time.January, Day: 31}
	for _, c := range []struct {
		interval manway.Duration
		want     string
	}{
		{1 * manway.Month, "2023-02-28"}, {13 * manway.Month, "2024-02-29"}, {3 * manway.Month, "2023-04-30"},
		{2.6 * manway.Year, "2025-08-31"}, {10 * manway.Day, "2023-02-10"}, {0, "2023-01-31"}, {1 * manway.Year, "2024-01-31"},
	} {
		if got := reftable.Must[manway.Date](t)(hydraulics.Span{Known: true, Time: c.interval}.After(jan31)); got.String() != c.want {
			t.Errorf("%v after %v: %v, want %v", c.interval, jan31, got, c.want)
		}
	}
}

// Property (additive): layers add up to the whole, and what leaves and stays too, in any shape.
func TestGallonsAddUp(t *testing.T) {
	for name, made := range map[string]*tank.Tank{"box": boxTank(t, 1), "cylinder": lyingTank(t)} {
		p := reftable.Must[hydraulics.Plan](t)(twoCompartments(t, made).PumpOut())
		sum := manway.Volume(0)
		for _, c := range p.Compartments {
			if off := c.Now.Scum + c.Now.Clear + c.Now.Sludge - c.Now.Total; !(math.Abs(float64(off)) <= 1e-12) {
				t.Errorf("%s %s: layers off by %v", name, c.Name, off)
			}
			if off := c.Remove + c.Stays - c.Now.Total; !(math.Abs(float64(off)) <= 1e-12) {
				t.Errorf("%s %s: removed and left off by %v", name, c.Name, off)
			}
			sum += c.Remove
		}
		if sum != p.Remove || p.Stays > 1e-12 {
			t.Errorf("%s: remove %v of %v, stays %v", name, p.Remove, sum, p.Stays)
		}
	}
}

// The draw-down keeps to what the partition carries, and to the keep, at every
// step.
func TestDrawDownKeepsToItsLimits(t *testing.T) {
	for _, apart := range []manway.Length{1 * manway.Inch, 2 * manway.Inch, 6 * manway.Inch, 20 * manway.Inch, 60 * manway.Inch} {
		for _, keep := range []manway.Length{0, 10 * manway.Inch} {
			c := twoCompartments(t, lyingTank(t))
			c.Dividers[0] = hydraulics.Divider{Judged: true, Difference: apart}
			c.Keeps = []hydraulics.Keep{{Name: "flotation", Judged: true, Level: keep}}
			p := reftable.Must[hydraulics.Plan](t)(c.PumpOut())
			if p.Apart > max(apart, manway.Inch)+1e-9 { // they stood an inch apart on arrival
				t.Errorf("carries %v: planned %v apart", apart, p.Apart)
			}
			for _, step := range p.Steps {
				if step.To < keep-1e-9 || step.To > step.From {
					t.Errorf("keep %v: step %+v", keep, step)
				}
			}
			for _, done := range p.Compartments {
				if !(math.Abs(float64(done.To-keep)) <= 0.002) {
					t.Errorf("keep %v, carries %v: %s ends at %v", keep, apart, done.Name, done.To)
				}
			}
			if p.Together != (len(p.Steps) == 0) || p.Together && apart > 2*manway.Inch || !p.Together && apart < 2*manway.Inch {
				t.Errorf("carries %v: together %v with %d steps", apart, p.Together, len(p.Steps))
			}
		}
	}
}

// A compartment that was not opened has no gallons of its own, drains to its
// port, and holds the other one back.
func TestNotOpened(t *testing.T) {
	c := twoCompartments(t, boxTank(t, 1))
	rear := hydraulics.Compartment{Name: "rear", Shape: c.Compartments[1].Shape, Reason: "lid too heavy"}
	c.Compartments[1] = rear
	p := reftable.Must[hydraulics.Plan](t)(c.PumpOut())
	if p.Compartments[1].Now.Known || p.Now != p.Compartments[0].Now {
		t.Error("gallons of a compartment that was not opened are known or counted")
	}
	if front := p.Compartments[0]; front.HeldBy != hydraulics.HeldByPartition || !(math.Abs(float64(front.To-36*manway.Inch)) <= 1e-9) {
		t.Errorf("partition not judged, no port: front to %v, held by %v; want 3 ft", front.To, front.HeldBy)
	}
	sludge := manway.Volume(20*14./12) * manway.CubicFoot // 5 ft by 4 ft
	if want := p.Compartments[0].Capacity - sludge; !(math.Abs(float64(p.Clean-want)) <= 1e-9) {
		t.Errorf("next interval counts on %v, want the front's %v less its sludge", p.Clean, want)
	}
	c.Dividers[0].Port = manway.Read(20 * manway.Inch)
	p = reftable.Must[hydraulics.Plan](t)(c.PumpOut())
	if front, back := p.Compartments[0], p.Compartments[1]; !(math.Abs(float64(front.To-8*manway.Inch)) <= 1e-9) || !(math.Abs(float64(back.To-20*manway.Inch)) <= 1e-9) {
		t.Errorf("port at 20 in: front to %v, rear to %v; want 8 in and 20 in", front.To, back.To)
	}
	if !p.Cautions.Has(manway.UnequalLevels | manway.MayFloat | manway.MayCave) {
		t.Errorf("cautions %v", p.Cautions)
	}
	c.Compartments[1].Sludge = manway.Read(3 * manway.Inch)
	if _, err := c.PumpOut(); err == nil {
		t.Error("sludge read in a compartment that was not opened is accepted")
	}
}

func TestArrivalPointsTo(t *testing.T) {
	base := hydraulics.Found{Outlet: 48 * manway.Inch, Area: 32 * manway.SquareFoot}
	ran := hydraulics.Runback{Seen: manway.Yes, Rise: 3 * manway.Inch, Over: 10 * manway.Minute}
	for _, c := range []struct {
		name  string
		level manway.Reading
		run   hydraulics.Runback
		since hydraulics.Span
		want  hydraulics.PointsTo
	}{
		{"not read", manway.Reading{}, ran, hydraulics.Span{}, hydraulics.LevelNotRead},
		{"at the outlet", manway.Read(49 * manway.Inch), ran, hydraulics.Span{}, hydraulics.AtOutlet},
		{"low", manway.Read(40 * manway.Inch), hydraulics.Runback{}, hydraulics.Span{}, hydraulics.LeakOut},
		{"low, pumped yesterday", manway.Read(40 * manway.Inch), hydraulics.Runback{}, hydraulics.Span{Known: true, Time: manway.Day}, hydraulics.StillFilling},
		{"low, pumped last year", manway.Read(40 * manway.Inch), hydraulics.Runback{}, hydraulics.Span{Known: true, Time: manway.Year}, hydraulics.LeakOut},
		{"high with runback", manway.Read(53 * manway.Inch), ran, hydraulics.Span{}, hydraulics.FieldNotTaking},
		{"high without", manway.Read(53 * manway.Inch), hydraulics.Runback{Seen: manway.No}, hydraulics.Span{}, hydraulics.OutletHeldUp},
		{"high, not watched", manway.Read(53 * manway.Inch), hydraulics.Runback{}, hydraulics.Span{}, hydraulics.HighNotDecided},
	} {
		f := base
		f.Level, f.Runback, f.SincePumped = c.level, c.run, c.since
		r := reftable.Must[hydraulics.Finding](t)(f.Arrival())
		if r.PointsTo != c.want {
			t.Errorf("%s: %v, want %v", c.name, r.PointsTo, c.want)
		}
		if c.want != hydraulics.AtOutlet && len(r.Next()) < 4 {
			t.Errorf("%s: nothing to check next", c.name)
		}
	}
	f := base
	f.Level, f.Runback = manway.Read(53*manway.Inch), ran
	r := reftable.Must[hydraulics.Finding](t)(f.Arrival())
	perInch := 32. * 1728 / 12 / 231 // gal
	if got := r.Over.In(manway.Gallon); !(math.Abs(got-5*perInch) <= 1e-9) {
		t.Errorf("5 in over: %v gal, want %v", got, 5*perInch)
	}
	if got := r.RanBack.In(manway.Gallon); !(math.Abs(got-3*perInch) <= 1e-9) {
		t.Errorf("3 in back: %v gal, want %v", got, 3*perInch)
	}
}
