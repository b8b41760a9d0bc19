package cost_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/internal/reftable"
)

// feet are sizes in feet written 12.5x15.25.
func feet(t testing.TB, text string) (a, b manway.Length) {
	t.Helper()
	x, y, _ := strings.Cut(text, "x")
	return manway.Length(must(strconv.ParseFloat(x, 64))(t)) * manway.Foot, manway.Length(must(strconv.ParseFloat(y, 64))(t)) * manway.Foot
}

// in is a volume in the unit of the row.
func in(t testing.TB, row reftable.Row, v manway.Volume) float64 {
	t.Helper()
	switch row.Unit {
	case "yd3":
		return v.In(manway.CubicYard)
	case "ft3":
		return v.In(manway.CubicFoot)
	}
	t.Fatalf("unit %q", row.Unit)
	return 0
}

func TestPublishedQuantities(t *testing.T) {
	rows(t, "qty-").Each(t, func(t *testing.T, row reftable.Row) {
		switch row.Quantity {
		case "needed", "packs", "amount":
			checkPlaced(t, row)
		case "prismoidal", "average sides", "end areas":
			checkPit(t, row)
		case "loose", "loads":
			var h cost.Haul
			row.Read(t, "bank", &h.Bank)
			row.Read(t, "truck", &h.Truck)
			h.SwellPercent = row.Float(t, "swell")
			loose, loads, err := h.Loads()
			if err != nil {
				t.Fatal(err)
			}
			if row.Quantity == "loads" {
				row.Check(t, float64(loads))
			} else {
				row.Check(t, in(t, row, loose))
			}
		case "disc":
			var d, thick manway.Length
			row.Read(t, "diameter", &d)
			row.Read(t, "depth", &thick)
			v := manway.Volume(math.Pi / 4 * float64(d*d*thick))
			if part := number(t, row, "part"); part > 0 {
				v *= manway.Volume(part)
			}
			needed, _, err := cost.Placed{Volume: v}.Order()
			if err != nil {
				t.Fatal(err)
			}
			row.Check(t, in(t, row, needed))
		case "rolls":
			s := cost.Supply{Code: "mesh", NetUnit: "FTK", Unit: "EA", WastePercent: row.Float(t, "waste"), Pack: row.Float(t, "roll"), Whole: true}
			row.Check(t, takenOff(t, "mesh", row.Float(t, "area"), "FTK", s).Quantity)
		case "bars", "weight":
			checkBars(t, row)
		case "grout":
			g := cost.GroutMix{SpecificGravity: 3.15}
			row.Read(t, "cement", &g.Cement)
			row.Read(t, "water", &g.Water)
			row.Check(t, in(t, row, must(g.Volume())(t)))
		default:
			checkWeights(t, row)
		}
	})
}

func checkPlaced(t *testing.T, row reftable.Row) {
	var p cost.Placed
	row.Read(t, "volume", &p.Volume)
	p.WastePercent = row.Float(t, "waste")
	if _, ok := row.Lookup("pack"); ok {
		row.Read(t, "pack", &p.Pack)
	}
	needed, packs, err := p.Order()
	if err != nil {
		t.Fatal(err)
	}
	switch row.Quantity {
	case "packs":
		row.Check(t, float64(packs))
	case "amount": // a price a cubic yard, multiplied without rounding before
		book := must(cost.ReadPriceBook(strings.NewReader(cost.BookHeader + "\nx,mix,YDQ," + row.Input(t, "price") + ",USD,2026-01-01,\n")))(t)
		job := cost.Job{Lines: []cost.Line{{Code: "x", Quantity: needed.In(manway.CubicYard), Unit: "YDQ"}}, Book: book, On: manway.Date{Year: 2026, Month: 1, Day: 1}, Terms: cost.Terms{Currency: "USD"}}
		row.Check(t, must(job.Estimate())(t).Total.InexactFloat64())
	default:
		row.Check(t, in(t, row, needed))
	}
}

func checkPit(t *testing.T, row reftable.Row) {
	var p cost.SlopedPit
	p.BottomWidth, p.BottomLength = feet(t, row.Input(t, "bottom"))
	p.TopWidth, p.TopLength = feet(t, row.Input(t, "top"))
	p.Depth = manway.Length(row.Float(t, "depth")) * manway.Foot
	v := must(p.Volumes())(t)
	row.Check(t, in(t, row, map[string]manway.Volume{"prismoidal": v.Prismoidal, "average sides": v.AverageSides, "end areas": v.AverageEndArea}[row.Quantity]))
}

func checkBars(t *testing.T, row reftable.Row) {
	var g cost.BarGrid
	row.Read(t, "width", &g.Width)
	row.Read(t, "length", &g.Length)
	row.Read(t, "cover", &g.Cover)
	row.Read(t, "spacing", &g.Spacing)
	along, _, total, err := g.Bars()
	if err != nil {
		t.Fatal(err)
	}
	if row.Quantity == "bars" {
		row.Check(t, float64(along))
		return
	}
	total *= manway.Length(1 + row.Float(t, "waste")/100)
	row.Check(t, must(cost.BarWeight(int(row.Float(t, "bar")), total))(t).In(manway.Pound))
}

func checkWeights(t *testing.T, row reftable.Row) {
	perYard := func(key string) manway.Density {
		return manway.Density(row.Float(t, key) * float64(manway.Pound) / float64(manway.CubicYard))
	}
	c := must(cost.UnitWeights{Bank: perYard("bank"), Loose: perYard("loose"), Compacted: perYard("compacted")}.Conversion())(t)
	got, ok := map[string]float64{"swell": c.SwellPercent, "load factor": c.LoadFactor, "shrinkage": c.ShrinkagePercent, "shrinkage factor": c.ShrinkageFactor}[row.Quantity]
	if !ok {
		t.Fatalf("no quantity %q", row.Quantity)
	}
	row.Check(t, got)
}

func TestPublishedSteel(t *testing.T) {
	rows(t, "bar-").Each(t, func(t *testing.T, row reftable.Row) {
		row.Check(t, must(cost.BarWeight(int(row.Float(t, "bar")), manway.Foot))(t).In(manway.Pound))
	})
	rows(t, "mesh-").Each(t, func(t *testing.T, row reftable.Row) {
		var m cost.Mesh
		row.Read(t, "spacing", &m.Spacing)
		m.Wire = manway.Area(row.Float(t, "wire")/100) * manway.SquareInch
		row.Check(t, must(m.BareWeight(100*manway.SquareFoot))(t).In(manway.Pound))
	})
	// Nominal weights stand near 3.4 lb/ft for each square inch of a round bar.
	for number, diameter := range map[int]float64{3: 0.375, 4: 0.5, 5: 0.625, 6: 0.75, 7: 0.875, 8: 1, 9: 1.128, 10: 1.27, 11: 1.41, 14: 1.693, 18: 2.257} {
		w := must(cost.BarWeight(number, manway.Foot))(t).In(manway.Pound)
		if round := math.Pi / 4 * diameter * diameter * 3.4; !(math.Abs(w/round-1) <= 0.002) {
			t.Errorf("bar %d: %v lb/ft, a round bar %v", number, w, round)
		}
	}
}

func TestPublishedBulkWeights(t *testing.T) {
	rows(t, "haul-").Each(t, func(t *testing.T, row reftable.Row) {
		of := slices.IndexFunc(cost.Bulks(), func(b cost.Bulk) bool { return b.Name == row.Input(t, "material") })
		if of < 0 {
			t.Fatal("no such material")
		}
		row.Check(t, must(cost.Bulks()[of].Haul(manway.CubicYard))(t).In(manway.Pound))
	})
	if got, want := len(cost.Bulks()), len(rows(t, "haul-")); got != want {
		t.Errorf("%d materials, %d of them published", got, want)
	}
}
