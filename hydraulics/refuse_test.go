package hydraulics_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/internal/reftable"
	"manway.example/manway/tank"
)

// refusals sets every number of a valid input, one by one, to what no number of
// the trade can be, and wants InputErrors each time.
func refusals[In any](t *testing.T, valid In, call func(In) error) {
	t.Helper()
	name := fmt.Sprintf("%T", valid)
	if err := call(valid); err != nil {
		t.Fatalf("%s: the valid input is refused: %v", name, err)
	}
	n := len(numbers(reflect.ValueOf(&valid).Elem(), ""))
	if n == 0 {
		t.Fatalf("%s has no numbers", name)
	}
	for i := range n {
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9, 1e300} {
			in := valid
			field := numbers(reflect.ValueOf(&in).Elem(), "")[i]
			field.v.SetFloat(bad)
			err := call(in)
			var faults manway.InputErrors
			if !errors.As(err, &faults) {
				t.Errorf("%s%s = %v: %v, want InputErrors", name, field.path, bad, err)
			}
		}
	}
}

type number struct {
	path string
	v    reflect.Value
}

// numbers lists the floating-point fields of a struct, nested ones too.
func numbers(v reflect.Value, path string) (list []number) {
	switch v.Kind() {
	case reflect.Float64:
		return []number{{path, v}}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && v.Type().Field(i).Type != reflect.TypeFor[manway.Citation]() {
				list = append(list, numbers(v.Field(i), path+"."+v.Type().Field(i).Name)...)
			}
		}
	}
	return list
}

func TestRefusals(t *testing.T) {
	w := reftable.Must[hydraulics.Water](t)(hydraulics.WaterAt(sixty))
	hose := hydraulics.Hose{Diameter: 3 * manway.Inch, Length: 100 * manway.Foot, Roughness: 1e-5, Fittings: 1.5, C: 140}
	refusals(t, hose, func(h hydraulics.Hose) error { _, err := h.AtFlow(200*manway.GallonPerMinute, w); return err })
	refusals(t, hose, func(h hydraulics.Hose) error { _, err := h.AtHead(10*manway.Foot, w); return err })
	refusals(t, hose, func(h hydraulics.Hose) error { _, err := h.HazenWilliams(200 * manway.GallonPerMinute); return err })
	refusals(t, hydraulics.Suction{Altitude: 100, Temperature: sixty, Vacuum: 24 * manway.InchMercury, Lift: 9 * manway.Foot, Hose: hose, SpecificGravity: 1.02, UsualRate: 0.01},
		func(s hydraulics.Suction) error { _, err := s.Pull(); return err })
	refusals(t, hydraulics.Drain{Diameter: 4 * manway.Inch, Slope: 0.02, N: 0.013}, func(d hydraulics.Drain) error { _, err := d.AtFlow(0.001); return err })
	refusals(t, hydraulics.Outlet{Diameter: 4 * manway.Inch, Open: 0.3}, func(o hydraulics.Outlet) error { _, err := o.Head(0.001); return err })
	refusals(t, hydraulics.Truck{Capacity: 2500 * manway.Gallon, Aboard: 300 * manway.Gallon, Tare: 15000 * manway.Pound, Limit: 40000 * manway.Pound, Density: 64 * manway.PoundPerCubicFoot},
		func(c hydraulics.Truck) error { _, err := c.Loads(1); return err })
	refusals(t, hydraulics.Chamber{Area: 17.5 * manway.SquareFoot, Off: 10 * manway.Inch, On: 16 * manway.Inch, Alarm: 20 * manway.Inch, Top: 40 * manway.Inch, Drain: manway.Gallon},
		func(c hydraulics.Chamber) error { _, err := c.Dosing(300*manway.GallonPerDay, 0.5); return err })
	refusals(t, hydraulics.Retention{Liquid: 1000 * manway.Gallon, Solids: 300 * manway.Gallon, Average: 300 * manway.GallonPerDay, Peak: 900 * manway.GallonPerDay, LeakIn: manway.GallonPerDay},
		func(r hydraulics.Retention) error { _, err := r.Times(); return err })
	refusals(t, hydraulics.WaterTest{Area: 30 * manway.SquareFoot, Liquid: 1000 * manway.Gallon, Wetted: 10, Change: manway.Inch, Over: manway.Day, Design: 300 * manway.GallonPerDay},
		func(w hydraulics.WaterTest) error { _, err := w.Result(); return err })
	refusals(t, hydraulics.Served{People: 5, PerPerson: 180 * manway.LitrePerDay, Years: 1}, func(s hydraulics.Served) error { _, err := s.PeruSizing(); return err })
	refusals(t, hydraulics.Solids{Outlet: 48 * manway.Inch, DeviceBottom: manway.Read(1), DeviceTop: manway.Read(1.3), Level: manway.Read(1.2), Sludge: manway.Read(0.2), Scum: manway.Read(0.1), Share: hydraulics.Fraction{Known: true, Value: 0.2}},
		func(s hydraulics.Solids) error { _, err := hydraulics.RuleNebraska.Trigger(s); return err })
	refusals(t, hydraulics.Found{Outlet: 1.2, Inlet: manway.Read(1.3), Level: manway.Read(1.3), Area: 3, Runback: hydraulics.Runback{Seen: manway.Yes, Rise: 0.1, Over: 600}, SincePumped: hydraulics.Span{Known: true, Time: 1e8}},
		func(f hydraulics.Found) error { _, err := f.Arrival(); return err })
}

// Partitions, compartments and routes name the one that is wrong.
func TestRefusalsByPath(t *testing.T) {
	made := boxTank(t, 1)
	c := twoCompartments(t, made)
	c.Outlet = 70 * manway.Inch
	c.Compartments[1].Shape = nil
	c.Dividers[0] = hydraulics.Divider{Judged: true, Difference: -1}
	c.Keeps = []hydraulics.Keep{{Judged: true, Level: manway.Length(math.NaN())}}
	_, err := c.PumpOut()
	fields(t, err, "Compartments[0].Shape", "Compartments[1].Shape", "Dividers[0].Difference", "Keeps[0].Level")
	r := dayRoute(t, made)
	r.Slots[0].Area, r.Outlet.Open, r.Compartments = -1, 2, []*tank.Compartment{r.Compartments[0], nil}
	_, err = r.Route()
	fields(t, err, "Compartments[1]", "Slots[0].Area", "Outlet.Open")
	_, err = hydraulics.Truck{Capacity: 1}.Day([]manway.Volume{1, -1})
	fields(t, err, "Stops[1]")
	_, err = hydraulics.Household{People: 4, Months: 13, Grinder: 9}.Interval(1)
	fields(t, err, "PeopleKnown", "Grinder", "Months")
}

// fields wants a fault in each of the fields.
func fields(t *testing.T, err error, want ...string) {
	t.Helper()
	var faults manway.InputErrors
	if !errors.As(err, &faults) {
		t.Fatalf("%v: want InputErrors", err)
	}
	for _, field := range want {
		found := false
		for _, f := range faults {
			found = found || f.Field == field
		}
		if !found {
			t.Errorf("no fault in %s: %v", field, err)
		}
	}
}
