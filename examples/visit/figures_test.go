package visit_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/examples/visit"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// data is a visit as programs read it.
func data(t testing.TB, v visit.Visit) map[string]any {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]any
	if err := json.NewDecoder(bytes.NewReader(b)).Decode(&all); err != nil {
		t.Fatal(err)
	}
	return all
}

// number is the number under keys; a row of a list is found by its place.
func number(all any, keys ...any) (float64, bool) {
	for _, k := range keys {
		switch k := k.(type) {
		case string:
			m, _ := all.(map[string]any)
			all = m[k]
		case int:
			list, _ := all.([]any)
			if k >= len(list) {
				return 0, false
			}
			all = list[k]
		}
	}
	x, ok := all.(float64)
	return x, ok
}

// rows are the rows of a table.
func rows(all map[string]any, section, table string) []any {
	m, _ := all[section].(map[string]any)
	list, _ := m[table].([]any)
	return list
}

// near compares to the twelve digits that leave.
func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-11*max(math.Abs(want), 1e-3)) {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// Every figure of the sections about the tank and its pump-out is what the rooms
// give for the survey when they are asked directly.
func TestFiguresAreThoseOfTheRooms(t *testing.T) {
	for name, v := range answered(t) {
		all, s := data(t, v), v.Survey
		has := func(want float64, keys ...any) {
			t.Helper()
			got, ok := number(all, keys...)
			if !ok {
				t.Errorf("%s: no figure at %v", name, keys)
				return
			}
			near(t, name+": "+keys[len(keys)-1].(string), got, want)
		}
		outlet := s.Tank.OutletInvert
		full, _ := v.Tank.Volume(outlet)
		gal := full.In(manway.Gallon)
		has(gal, "glance", "liquid_gal")
		has(gal, "tank", "liquid_gal")
		has(v.Tank.Inside.Length.In(manway.Inch), "tank", "inside_length_in")
		has(v.Tank.Inside.Width.In(manway.Inch), "tank", "inside_width_in")
		has(v.Tank.Inside.Height.In(manway.Inch), "tank", "inside_height_in")
		has(outlet.In(manway.Inch), "tank", "outlet_in")
		shares := 0.0
		for i, c := range v.Tank.Compartments() {
			own, _ := c.Volume(outlet)
			area, _ := c.Area(outlet)
			has(float64(i+1), "tank", "compartments", i, "compartment")
			has(float64(i+1), "pump_out", "compartments", i, "compartment")
			has(own.In(manway.Gallon), "tank", "compartments", i, "liquid_gal")
			has(float64(own)/float64(full), "tank", "compartments", i, "share")
			has(float64(area)*0.0254/0.003785411784, "tank", "compartments", i, "gal_per_in") // square metres by an inch, a gallon of 231 in3
			has(v.Pump.Compartments[i].Remove.In(manway.Gallon), "pump_out", "compartments", i, "pump_gal")
			has(v.Pump.Compartments[i].Stays.In(manway.Gallon), "pump_out", "compartments", i, "stays_gal")
			share, _ := number(all, "tank", "compartments", i, "share")
			shares += share
		}
		near(t, name+": all shares", shares, 1)
		for i, row := range v.Tank.Compartments() {
			for _, step := range rows(all, "dip_chart", "chart") {
				depth, _ := number(step, "depth_in")
				want, _ := row.Volume(min(manway.Length(depth)*manway.Inch, v.Tank.Inside.Height))
				got, _ := number(step, "compartment_"+string(rune('1'+i))+"_gal")
				if !(math.Abs(got-want.In(manway.Gallon)) <= 1e-6) {
					t.Errorf("%s: compartment %d at %v in is %v gal, want %v", name, i+1, depth, got, want.In(manway.Gallon))
				}
			}
		}
		removed := 0.0
		for _, row := range rows(all, "pump_out", "compartments") {
			x, _ := number(row, "pump_gal")
			removed += x
			if total, ok := number(row, "now_gal"); ok {
				if scum, ok := number(row, "scum_gal"); ok {
					clear, _ := number(row, "clear_gal")
					sludge, _ := number(row, "sludge_gal")
					near(t, name+": scum, clear and sludge", scum+clear+sludge, total)
				}
				stays, _ := number(row, "stays_gal")
				near(t, name+": what is pumped and what stays", x+stays, total)
			}
		}
		has(removed, "pump_out", "pump_gal")
		has(removed, "glance", "pump_gal")
		if s.Truck.Capacity > 0 {
			loads, err := hydraulics.Truck{Capacity: s.Truck.Capacity, Aboard: s.Truck.Aboard}.Loads(v.Pump.Remove)
			if err != nil {
				t.Fatal(err)
			}
			has((s.Truck.Capacity - s.Truck.Aboard).In(manway.Gallon), "pump_out", "truck_room_gal")
			has(float64(loads.Loads), "pump_out", "truck_loads")
			has(float64(loads.Trips), "pump_out", "disposal_trips")
		}
		floats(t, name, v, all)
	}
}

// floats compares what holds the emptied tank down and what lifts it: the least
// soil that was measured lies on it, and what lifts it is groundwater alone.
func floats(t *testing.T, name string, v visit.Visit, all map[string]any) {
	t.Helper()
	s := v.Survey
	least := s.Accesses[0].Cover
	for _, a := range s.Accesses {
		least = min(least, a.Cover)
	}
	f, err := v.Tank.Float(tank.FloatCase{Cover: least, Groundwater: s.Ground.Groundwater, Soil: manway.Soil{Moist: s.Ground.Moist, Saturated: s.Ground.Saturated},
		Concrete: manway.Concrete{Strength: s.Tank.Strength, Density: s.Tank.Density}})
	if err != nil {
		t.Fatal(err)
	}
	down, _ := number(all, "flotation", "down_lbf")
	up, _ := number(all, "flotation", "uplift_lbf")
	near(t, name+": down", down, f.Down.In(manway.PoundForce))
	near(t, name+": uplift", up, f.Uplift.In(manway.PoundForce))
	factor, told := number(all, "flotation", "factor")
	if told != (up > 0) {
		t.Errorf("%s: a factor is told: %v, with %v lbf of uplift", name, told, up)
	}
	if told && !(math.Abs(factor-down/up) <= 1e-9*factor) {
		t.Errorf("%s: factor %v, %v over %v", name, factor, down, up)
	}
	if limit, ok := number(all, "flotation", "water_limit_in"); ok {
		// With the groundwater at that depth, and no higher, the tank stays.
		for off, stays := range map[manway.Length]bool{1e-6: true, -1e-3: false} {
			w := s
			w.Ground.Groundwater = manway.GroundwaterAt(manway.Length(limit)*manway.Inch + off)
			other, _ := page(t, w, demoBook(t))
			if stays != (other.Float.Check.Status == manway.Pass) {
				t.Errorf("%s: groundwater %v off the limit of %v in: %v", name, off, limit, other.Float.Check.Status)
			}
		}
	}
}

// Each lid weighs what the room of lids gives for it, wet and dry, and the crew's
// limit stands beside it as it was said.
func TestLidsAreThoseOfTheRoom(t *testing.T) {
	for name, v := range answered(t) {
		all, at := data(t, v), 0
		for i, a := range v.Survey.Accesses {
			if a.Lid.Shape == 0 {
				continue
			}
			w := v.Accesses[i].Moves.Weight
			for key, want := range map[string]manway.Mass{"dry_lb": w.Dry, "soaked_lb": w.Soaked, "crew_limit_lb": v.Survey.Crew.Limit} {
				if got, ok := number(all, "lids", "lids", at, key); ok != (want > 0) || ok && !(math.Abs(got-want.In(manway.Pound)) <= 1e-9*got) {
					t.Errorf("%s, %s: %s is %v, %v; want %v", name, a.Name, key, got, ok, want)
				}
			}
			if a.Lid.Measured == 0 && a.Lid.Shape == lid.Disc && a.Lid.Material == lid.OfConcrete {
				// As made: a disc of its concrete, 150 lb/ft3 where that is not known.
				density := v.Survey.Tank.Density
				if density == 0 {
					density = manway.UsualConcreteDensity
				}
				d := float64(a.Lid.Diameter)
				near(t, name+": "+a.Name, float64(w.Dry), math.Pi/4*d*d*float64(a.Lid.Thickness)*float64(density))
			}
			at++
		}
	}
}

// The money of a visit adds up: each line is its quantity at its price to the
// cent, a price is the sum of its lines, and the yearly cost of a remedy is the
// same where it is offered and where it is set out over the years.
func TestMoneyAddsUp(t *testing.T) {
	for name, v := range answered(t) {
		all := data(t, v)
		materials, _ := all["materials"].(map[string]any)
		sums := map[string]float64{}
		for table, list := range materials {
			if !strings.HasPrefix(table, "lines_") {
				continue
			}
			for i := range list.([]any) {
				quantity, _ := number(list, i, "quantity")
				each, priced := number(list, i, "each_usd")
				amount, _ := number(list, i, "amount_usd")
				if priced && !(math.Abs(amount-quantity*each) <= 0.0051) {
					t.Errorf("%s, %s: %v of %v are %v", name, table, quantity, each, amount)
				}
				sums[strings.TrimPrefix(table, "lines_")] += amount
			}
		}
		if price, ok := number(all, "pump_out", "price_usd"); ok != (name != "bare") || math.Abs(price-sums["pump_out"]) > 1e-6 {
			t.Errorf("%s: the pump-out costs %v, its lines %v", name, price, sums["pump_out"])
		}
		for i, a := range v.Survey.Accesses {
			for _, p := range v.Options.Accesses[i].Priced {
				key := strings.ReplaceAll(strings.ReplaceAll(a.Name, " ", "_")+"_"+string(p.Kind), "-", "_")
				if total := p.Estimate.Total.InexactFloat64(); p.Estimate.Complete && math.Abs(total-sums[key]) > 1e-6 {
					t.Errorf("%s, %s: %v, its lines %v", name, key, total, sums[key])
				}
			}
			yearly := map[any]any{}
			for _, row := range rows(all, "paid", "years_"+strings.ReplaceAll(a.Name, " ", "_")) {
				yearly[row.(map[string]any)["remedy"]] = row.(map[string]any)["annual_usd"]
			}
			for _, row := range rows(all, "remedies", "remedies_"+strings.ReplaceAll(a.Name, " ", "_")) {
				row := row.(map[string]any)
				if got, want := row["annual_usd"], yearly[row["remedy"]]; got != want {
					t.Errorf("%s, %s: %v costs %v a year where it is offered, %v over the years", name, a.Name, row["remedy"], got, want)
				}
			}
		}
	}
}

// Remedies are compared over 20 years at 3 % where the survey does not say.
func TestYearsThatAreTaken(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	s.Money.Years, s.Money.Rate = 0, ""
	v, _ := page(t, s, book)
	if h := v.Options.Accesses[0].Comparison.Horizon; !v.Options.Accesses[0].Compared || h.Years != 20 || h.Rate != 0.03 || h.Currency != "USD" {
		t.Errorf("compared over %+v", h)
	}
	s.Money.Years, s.Money.Rate = 7, "0.05"
	v, _ = page(t, s, book)
	if h := v.Options.Accesses[0].Comparison.Horizon; h.Years != 7 || h.Rate != 0.05 {
		t.Errorf("compared over %+v", h)
	}
}

// Where one stack alone fits it is the one that is weighed, set down and priced: 18
// in of 6 in rings on joints of 1/2 in are three, 19 1/2 in, and with two in the yard
// there is none.
func TestTheOnlyStack(t *testing.T) {
	_, book := read(t, "rusted-handle.json")
	s := readText(t, fifteen)
	for count, want := range map[int]int{3: 1, 2: 0} {
		s.Rings = []visit.Ring{{Code: "ring-24x6", Height: 6 * manway.Inch, Bore: 20 * manway.Inch, Weight: 100 * manway.Pound, Count: count}}
		v, _ := page(t, s, book)
		all := data(t, v)
		weight, has := number(all, "reach", "accesses", 0, "ring_lb")
		if got := len(v.Accesses[0].Stacks.Best); got != want || has != (want == 1) || has && math.Abs(weight-300) > 1e-9 {
			t.Fatalf("%d rings: %d stacks, %v lb", count, got, weight)
		}
		rings := 0.0
		for _, p := range v.Options.Accesses[0].Priced {
			for _, item := range p.Scope {
				if item.Code == "ring-24x6" {
					rings += item.Quantity
				}
			}
		}
		if (rings > 0) != (want == 1) || math.Mod(rings, 3) != 0 {
			t.Errorf("%d rings: %v in the scopes", count, rings)
		}
		// And it stands on the roof that is screened for it.
		if known := v.Roof.Change.Known; known && (v.Roof.Change.After > v.Roof.Change.Now) != (want == 1) {
			t.Errorf("%d rings: the roof carries %v now and %v then", count, v.Roof.Change.Now, v.Roof.Change.After)
		}
	}
}
