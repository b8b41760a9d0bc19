package cost_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Property (symmetric): a grid turned by a right angle has the same bars, and half
// the spacing never fewer than twice as many less one.
func TestBarsTurned(t *testing.T) {
	g := cost.BarGrid{Width: 5 * manway.Foot, Length: 8 * manway.Foot, Cover: 2 * manway.Inch, Spacing: manway.Foot}
	along, across, total, err := g.Bars()
	turned := g
	turned.Width, turned.Length = g.Length, g.Width
	a, b, all, err2 := turned.Bars()
	if err != nil || err2 != nil || a != across || b != along {
		t.Errorf("%d and %d bars, turned %d and %d; %v, %v", along, across, a, b, err, err2)
	}
	same(t, "length", float64(all), float64(total))
	g.Spacing /= 2
	if a, b, _, err := g.Bars(); err != nil || a < 2*along-1 || b < 2*across-1 {
		t.Errorf("at half the spacing %d and %d bars, were %d and %d", a, b, along, across)
	}
}

// Property (scaling): twice the length weighs twice, and bars weigh as their area:
// the printed weights are 3.4 lb/ft for a square inch, by half a unit of their digits.
// Property (additive): the wire of two areas is that of both.
func TestSteelWeighs(t *testing.T) {
	for _, number := range []int{3, 4, 5, 6, 7, 8} {
		one, two := must(cost.BarWeight(number, manway.Foot))(t), must(cost.BarWeight(number, 2*manway.Foot))(t)
		same(t, "two feet", float64(two), float64(2*one))
		d := float64(number) / 8
		if area := math.Pi / 4 * d * d * 3.4; !(math.Abs(one.In(manway.Pound)/area-1) <= 0.002) {
			t.Errorf("bar %d: %v lb a foot, by its area %v", number, one.In(manway.Pound), area)
		}
	}
	m := cost.Mesh{Spacing: 6 * manway.Inch, Wire: 0.014 * manway.SquareInch}
	a, b := must(m.BareWeight(40*manway.SquareFoot))(t), must(m.BareWeight(60*manway.SquareFoot))(t)
	same(t, "mesh", float64(must(m.BareWeight(100*manway.SquareFoot))(t)), float64(a+b))
}

// Property (scaling): twice the people take half the days, and a crew of one at all
// hours takes a day for eight hours.
func TestCrewDays(t *testing.T) {
	c := cost.Crew{People: 2, Availability: 0.8, Hours: 9}
	days := must(c.Days(12))(t)
	c.People = 4
	same(t, "four people", must(c.Days(12))(t), days/2)
	same(t, "one at all hours", must(cost.Crew{People: 1, Availability: 1, Hours: 8}.Days(96))(t), 12)
	task := cost.Task{Name: "dig-hand", Quantity: 5, Unit: "YDQ", Crew: 2}
	one := must(task.Line())(t)
	task.Crew = 4
	four := must(task.Line())(t)
	same(t, "labour does not depend on the crew", four.Quantity, one.Quantity)
	same(t, "time does", four.Hours()*2, one.Hours())
	task.Unit, task.Quantity = "FTQ", 5*27
	same(t, "in cubic feet", must(task.Line())(t).Quantity, one.Quantity)
	if h := (cost.Line{Class: riser.Material, Quantity: 9, Crew: 2}).Hours(); h != 0 {
		t.Errorf("a material takes %v hours", h)
	}
}

// Property (additive): a wall of two mixes is the volume of both; grout of cement
// and water is that of each.
func TestMixesAddUp(t *testing.T) {
	a, b := must(cost.MixVolume(60*manway.Pound))(t), must(cost.MixVolume(80*manway.Pound))(t)
	same(t, "mix", float64(must(cost.MixVolume(140*manway.Pound))(t)), float64(a+b))
	g := cost.GroutMix{Cement: 94 * manway.Pound, SpecificGravity: 3.15, Water: 5 * manway.Gallon}
	whole := must(g.Volume())(t)
	g.Water = 0
	same(t, "cement alone", float64(must(g.Volume())(t)), float64(whole-5*manway.Gallon))
	g.SpecificGravity /= 2
	same(t, "cement half as dense", float64(must(g.Volume())(t)), 2*float64(whole-5*manway.Gallon))
}

// Property (bounded): the loads and packs ordered carry all of it, and one less
// does not.
func TestOrderedIsEnough(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for range 300 {
		h := cost.Haul{Bank: manway.Volume(rng.Float64()*40) * manway.CubicYard, SwellPercent: 60 * rng.Float64(), Truck: 5 * manway.CubicYard}
		loose, loads, err := h.Loads()
		if err != nil || loose < h.Bank || manway.Volume(loads)*h.Truck < loose*(1-1e-9) || loads > 0 && manway.Volume(loads-1)*h.Truck >= loose {
			t.Fatalf("%+v: %v in %d loads, %v", h, loose, loads, err)
		}
		p := cost.Placed{Volume: h.Bank, WastePercent: 10 * rng.Float64(), Pack: 0.6 * manway.CubicFoot}
		needed, packs, err := p.Order()
		if err != nil || needed < p.Volume || manway.Volume(packs)*p.Pack < needed*(1-1e-9) || packs > 0 && manway.Volume(packs-1)*p.Pack >= needed {
			t.Fatalf("%+v: %v in %d packs, %v", p, needed, packs, err)
		}
	}
}

// Property (scaling): twice the volume weighs twice. Property (inverse): a bank
// volume swells and comes back by the load factor.
func TestSoilGoesAndComes(t *testing.T) {
	for _, b := range cost.Bulks() {
		one, two := must(b.Haul(manway.CubicYard))(t), must(b.Haul(2*manway.CubicYard))(t)
		same(t, b.Name, float64(two), float64(2*one))
	}
	c := must(cost.UnitWeights{Bank: 1900, Loose: 1500, Compacted: 2050}.Conversion())(t)
	same(t, "load factor", (1+c.SwellPercent/100)*c.LoadFactor, 1)
	same(t, "shrinkage", c.ShrinkageFactor+c.ShrinkagePercent/100, 1)
}

// Property (bounded): the exact volume lies between the two rules of books, and
// all three are one where the sides are plumb.
func TestPitRulesBracket(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for range 300 {
		p := cost.SlopedPit{BottomWidth: manway.Length(rng.Float64() * 3), BottomLength: manway.Length(rng.Float64() * 3), Depth: manway.Length(rng.Float64() * 3)}
		out := manway.Length(rng.Float64() * 4)
		p.TopWidth, p.TopLength = p.BottomWidth+out, p.BottomLength+out
		v := must(p.Volumes())(t)
		if v.AverageSides > v.Prismoidal*(1+1e-12) || v.Prismoidal > v.AverageEndArea*(1+1e-12) {
			t.Fatalf("%+v: %+v", p, v)
		}
		p.TopWidth, p.TopLength = p.BottomWidth, p.BottomLength
		v = must(p.Volumes())(t)
		same(t, "plumb", float64(v.AverageSides), float64(v.AverageEndArea))
		same(t, "plumb", float64(v.Prismoidal), float64(v.AverageEndArea))
	}
}

// Property (inverse): there and back is the same quantity, by way of any third unit.
func TestUnitsThereAndBack(t *testing.T) {
	for _, list := range [][]cost.Unit{{"FOT", "INH", "YRD", "MTR"}, {"FTK", "YDK", "MTK", "INK"}, {"FTQ", "YDQ", "GLL", "LTR", "MTQ"}, {"LBR", "KGM", "STN", "TNE"}, {"MIN", "HUR", "DAY"}} {
		for _, a := range list {
			for _, b := range list {
				there := must(a.Per(b))(t)
				same(t, string(a+" "+b), there*must(b.Per(a))(t), 1)
				same(t, string(a+" by "+list[0]+" "+b), must(a.Per(list[0]))(t)*must(list[0].Per(b))(t), there)
			}
		}
	}
}

// Property (bounded): rounding moves by half a unit at most, and what is rounded
// stays. Property (symmetric): so it does below 0. The places are those of the currency.
func TestRoundingMovesLittle(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 3))
	for range 300 {
		d := decimal.New(rng.Int64N(2e9)-1e9, -5)
		for _, c := range []cost.Currency{"USD", "JPY", "KWD"} {
			places := must(c.MinorUnit())(t)
			for _, r := range []cost.Rounding{cost.HalfEven, cost.HalfUp} {
				got := must(r.Round(d, places))(t)
				if got.Sub(d).Abs().GreaterThan(decimal.New(5, int32(-places-1))) || !must(r.Round(got, places))(t).Equal(got) || !must(r.Round(d.Neg(), places))(t).Equal(got.Neg()) {
					t.Fatalf("%s to %d places by %v is %s", d, places, r, got)
				}
			}
		}
	}
}

// Property (inverse): at its own rate a project is worth nothing, and so are its
// yearly amount and its end; at rate 0 the payback is where the sum turns.
func TestProjectAtItsRate(t *testing.T) {
	p := cost.Project{-1000, 300, 420, 500, 120}
	i := must(p.InternalRate())(t)
	w := must(p.Worth(i))(t)
	for _, v := range []float64{w.Present, w.Annual, w.Future} {
		if !(math.Abs(v) <= 1e-6) {
			t.Errorf("at %v the project is worth %+v", i, w)
		}
	}
	if a, b := must(p.Payback(0))(t), must(p.Payback(i*(1-1e-9)))(t); a.State != cost.InYears || a.Years >= b.Years || !(math.Abs(b.Years-4) <= 1e-6) {
		t.Errorf("payback in %v years, at its own rate %v, want the last year", a.Years, b.Years)
	}
	twice := make(cost.Project, len(p))
	for t := range p {
		twice[t] = 2 * p[t]
	}
	same(t, "rate of twice the flows", float64(must(twice.InternalRate())(t)), float64(i))
}

// Property (monotone): the dearer the challenger, the longer the defender is kept.
// Property (balance): the marginal costs are worth what is paid.
func TestDefenderIsKept(t *testing.T) {
	d := cost.Defender{Now: 300, Yearly: []float64{100, 180, 260, 400, 700}, Rate: 0.06}
	marginal := must(d.Marginal())(t)
	paid := must(append(cost.Project{d.Now}, d.Yearly...).Worth(d.Rate))(t).Present
	same(t, "worth", must(append(cost.Project{0}, marginal...).Worth(d.Rate))(t).Present, paid)
	last := -1.0
	for challenger := 100.0; challenger <= 650; challenger += 25 {
		w := must(d.KeepFor(challenger))(t)
		if w.State != cost.InYears || w.Years < last {
			t.Errorf("against %v kept for %+v, before for %v", challenger, w, last)
		}
		last = w.Years
	}
	if w := must(d.KeepFor(701))(t); w.State != cost.Never {
		t.Errorf("dearer than any year: %+v", w)
	}
}

// Property (symmetric): two tariffs cross in one place, whichever is asked.
// Property (balance): there both cost the same.
func TestTariffsCross(t *testing.T) {
	a, b := cost.Tariff{Fixed: 50, Each: 12}, cost.Tariff{Fixed: 400, Each: 5}
	x, ok, err := a.EqualTo(b)
	y, ok2, err2 := b.EqualTo(a)
	if err != nil || err2 != nil || !ok || !ok2 {
		t.Fatal(x, ok, err, y, ok2, err2)
	}
	same(t, "quantity", x.Quantity, y.Quantity)
	same(t, "cost", a.Fixed+a.Each*x.Quantity, b.Fixed+b.Each*x.Quantity)
	if _, ok, _ := a.EqualTo(cost.Tariff{Fixed: 60, Each: 13}); ok {
		t.Error("a tariff that is dearer at every quantity is crossed")
	}
}

// Property (bounded): mean and deviation lie within the range, and the sum of parts
// has the sum of the means and a spread between root-sum-square and plain sum.
func TestMomentsAreWithin(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	var parts []cost.Moments
	var mean, squares, sum float64
	for range 20 {
		r := cost.Range{Low: 10 * rng.Float64()}
		r.Likely = r.Low + 10*rng.Float64()
		r.High = r.Likely + 10*rng.Float64()
		m := must(r.ThreePoint())(t)
		if !(m.Mean >= r.Low && m.Mean <= r.High && m.SD >= 0 && m.SD <= (r.High-r.Low)/2) {
			t.Errorf("%+v: %+v", r, m)
		}
		parts = append(parts, m)
		mean, squares, sum = mean+m.Mean, squares+m.SD*m.SD, sum+m.SD
	}
	last := 0.0
	for _, rho := range []float64{0, 0.3, 0.7, 1} {
		m := must(cost.SumOf(parts, rho))(t)
		same(t, "mean", m.Mean, mean)
		if m.SD < last {
			t.Errorf("with a correlation of %v the spread falls to %v", rho, m.SD)
		}
		last = m.SD
	}
	same(t, "independent", must(cost.SumOf(parts, 0))(t).SD, math.Sqrt(squares))
	same(t, "together", must(cost.SumOf(parts, 1))(t).SD, sum)
}

// Property (scaling): a remedy twice as dear makes waiting twice as dear. Property
// (inverse): where money and prices rise alike waiting costs the damage alone.
func TestWaitingScales(t *testing.T) {
	w := cost.WaitingCost{Now: usd(2400), Years: 3, Escalation: 0.04, Damage: usd(600), Meanwhile: usd(50), Rate: 0.03}
	a := must(w.Price())(t)
	w.Now, w.Damage, w.Meanwhile = usd(4800), usd(1200), usd(100)
	b := must(w.Price())(t)
	same(t, "extra", b.Extra, 2*a.Extra)
	same(t, "later", b.Later, 2*a.Later)
	w.Years, w.Damage, w.Meanwhile = 0, usd(0), usd(0)
	same(t, "not waiting", must(w.Price())(t).Extra, 0)
}

// Property (additive): two tanks at one stop take no more base prices than two
// visits, and as much beyond them; the gallons of a truck are those of its loads.
func TestPumpOutsAddUp(t *testing.T) {
	band := cost.Band{Gallons: 1000 * manway.Gallon, Lids: 1, Cover: 6 * manway.Inch, Hose: 100 * manway.Foot}
	total := func(p cost.PumpOut, code string) (sum float64) {
		for _, l := range must(p.Lines(band))(t) {
			if l.Code == code {
				sum += l.Quantity
			}
		}
		return sum
	}
	a := cost.PumpOut{Gallons: 1300 * manway.Gallon, Covers: []manway.Length{manway.Foot}}
	b := cost.PumpOut{Gallons: 1300 * manway.Gallon, Covers: []manway.Length{manway.Foot, 2 * manway.Foot}}
	same(t, "gallons over", total(a, "pump-over"), 300)
	same(t, "deeper lids", total(b, "lid-deeper")-total(a, "lid-deeper"), 1.5)
	same(t, "more lids", total(b, "lid-more")-total(a, "lid-more"), 1)
	truck := cost.Truck{Capacity: 2000 * manway.Gallon, Rate: 100 * manway.GallonPerMinute, RoundTrip: manway.Hour, Crew: 2}
	one, two := must(truck.Lines(2000*manway.Gallon))(t), must(truck.Lines(4000*manway.Gallon))(t)
	for k := range one {
		same(t, one[k].Code, two[k].Quantity, 2*one[k].Quantity)
	}
}

// Property (invariant): the order of its rows does not matter to a price book.
func TestBookInAnyOrder(t *testing.T) {
	rows := []string{"a,thing,EA,1.00,USD,2026-01-01,", "a,thing,EA,2.00,USD,2026-06-01,", "b,other,FTK,3.50,USD,2026-01-01,x"}
	on := manway.Date{Year: 2026, Month: 7, Day: 1}
	read := func(order ...int) string {
		text := cost.BookHeader
		for _, i := range order {
			text += "\n" + rows[i]
		}
		book := must(cost.ReadPriceBook(strings.NewReader(text + "\n")))(t)
		a, _ := book.Price("a", on)
		b, _ := book.Price("b", on)
		return a.Price.String() + " " + b.Price.String()
	}
	for _, order := range [][]int{{0, 1, 2}, {2, 1, 0}, {1, 0, 2}} {
		if got := read(order...); got != "2 3.5" {
			t.Errorf("rows %v: %s", order, got)
		}
	}
}
