package visit_test

import (
	"math"
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/riser"
	"manway.example/manway/tank"
)

// same compares two results of a room, but for what they keep to themselves and
// for the last digits of 30 in, which are 24 and twice 3 or 30.
func same(t *testing.T, what string, got, want any) {
	t.Helper()
	hidden := cmp.FilterPath(func(p cmp.Path) bool {
		f, ok := p.Last().(cmp.StructField)
		return ok && f.Name() != "" && f.Name()[0] >= 'a' && f.Name()[0] <= 'z'
	}, cmp.Ignore())
	near := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().Type().Kind() == reflect.Float64 }, cmp.Comparer(func(a, b any) bool {
		x, y := reflect.ValueOf(a).Float(), reflect.ValueOf(b).Float()
		return math.Abs(x-y) <= 1e-9*math.Max(math.Abs(x), 1e-6)
	}))
	if diff := cmp.Diff(want, got, hidden, near, cmpopts.EquateEmpty(), cmp.Comparer(func(a, b *manway.Source) bool { return a == b })); diff != "" {
		t.Errorf("%s is not what the room gives:\n%s", what, diff)
	}
}

// The rooms are asked what the survey of the rusted handle says, and where it says
// nothing what the trade takes: rings 3 in thick on strip of 1 by 1 in that closes to
// 1/2 in, 1 ft of working space, 2 in more or less of height; a truck of 25 inHg with
// 3 in hose, bends and ends of K 3, its inlet 4 ft up, hose in lengths of 25 ft,
// water of 15 C; a pump-out whose base price covers 1,000 gal, one lid under 1 ft and
// 100 ft of hose, open for 30 days.
func TestRoomsAreAskedByHand(t *testing.T) {
	const in, ft, gal = manway.Inch, manway.Foot, manway.Gallon
	s, book := read(t, "rusted-handle.json")
	v, _ := page(t, s, book)
	unknown := manway.Groundwater{}
	for i, c := range []struct {
		bore, outside, reveal manway.Length
	}{{24 * in, 30 * in, 2 * in}, {20 * in, 26 * in, 2 * in}} {
		r := v.Accesses[i]
		reach := must(riser.ReachOf(riser.Access{Cover: 18 * in, Slope: 4 * manway.Degree, Span: c.outside, Reveal: c.reveal, RoofThickness: 4 * in}))(t)
		same(t, "reach", r.Reach, reach)
		joint := riser.Joint{Inside: c.bore, Outside: c.outside, Closed: in / 2}
		same(t, "joint", r.Joint, joint)
		same(t, "strip", r.Strip, must(joint.Strip(riser.Strip{Width: in, Height: in, Roll: 14.5 * ft, Overlap: 2 * in}))(t))
		same(t, "dig", r.Dig, must(riser.DigOf(riser.Pit{Length: c.outside, Working: ft, Depth: 18 * in, Water: unknown}))(t))
		rings := []riser.Ring{{Code: "ring-24x6", Height: 6 * in, Bore: 24 * in, Outside: 30 * in, Count: 6}, {Code: "ring-24x12", Height: 12 * in, Bore: 24 * in, Outside: 30 * in, Count: 2}}
		same(t, "stacks", r.Stacks, must(riser.StackOf(rings, riser.Need{Port: 20 * in, Gap: reach.Height, Below: 2 * in, Above: 2 * in, Joint: in / 2}))(t))
	}
	same(t, "leak", v.Accesses[0].Leak, must(riser.LeakOf(riser.OpenJoint{Length: riser.Joint{Inside: 24 * in, Outside: 30 * in}.Length(), Gap: 0.375 * in, Wall: 3 * in, Depth: 18 * in}))(t))
	plug := lid.Lid{Shape: lid.BevelledPlug, Diameter: 24 * in, BottomDiameter: 21 * in, Thickness: 4 * in, Loss: 0.75 * in}
	seat := lid.Seat{Fit: lid.Bevel, Opening: 20 * in, Depth: 4 * in}
	crew := lid.Crew{People: 1, Limit: 60 * manway.Pound}
	same(t, "moves", v.Accesses[0].Moves, must(plug.Move(lid.MoveCase{Seat: seat, Crew: crew}))(t))
	same(t, "strength", v.Accesses[0].Strength, must(plug.Strength(lid.StrengthCase{Seat: seat}))(t))
	same(t, "handle", v.Accesses[0].Handle, must(plug.CheckHandle(lid.Handle{State: lid.HandleRusted, Waist: 0.3125 * in, AsMade: in / 2}))(t))
	same(t, "guard", v.Accesses[0].Guard, must(plug.CheckGuard(lid.Guard{Opening: 20 * in, Depth: 6 * in, DepthKnown: true, Fastened: manway.No, Secondary: manway.No, Crew: crew}, lid.GuardRules()))(t))
	float := tank.FloatCase{Cover: 18 * in}
	same(t, "flotation", v.Float.Flotation, must(v.Tank.Float(float))(t))
	same(t, "limit of the water", v.Float.Limit, must(v.Tank.WaterLimit(float))(t))
	same(t, "loads", v.Pump.Loads, must(hydraulics.Truck{Capacity: 1500 * gal, Aboard: 650 * gal}.Loads(v.Pump.Remove))(t))
	run := must(riser.Hose{Along: 110 * ft, Fall: -4 * ft, Inlet: 4 * ft, Bottom: (18 + 4 + 60) * in, Section: 25 * ft}.Run())(t)
	same(t, "hose", v.Pump.Hose, run)
	same(t, "pull", v.Pump.Pull, must(hydraulics.Suction{Altitude: 1200 * ft, Temperature: manway.Temperature(288.15), Vacuum: 25 * manway.InchMercury, Lift: run.Lift,
		Hose: hydraulics.Hose{Diameter: 3 * in, Length: run.Length, Fittings: 3}}.Pull())(t))
	arrived := hydraulics.Found{Outlet: 48 * in, Inlet: manway.Read(51 * in), Level: manway.Read(49.5 * in), Area: must(v.Tank.Area(48 * in))(t), Runback: hydraulics.Runback{Seen: manway.No},
		Devices: hydraulics.Devices{Inlet: s.Arrival.Inlet, Outlet: s.Arrival.Outlet, Filter: s.Arrival.Filter}, SincePumped: hydraulics.Span{Known: true, Time: manway.Duration(manway.Date{Year: 2022, Month: 5, Day: 15}.DaysUntil(s.Date)) * manway.Day}}
	same(t, "arrival", v.Pump.Found, must(arrived.Arrival())(t))
	lines := must(cost.PumpOut{Gallons: v.Pump.Remove, Loads: v.Pump.Loads.Loads, Disposal: true, Hose: run.Length, Covers: []manway.Length{6 * in}}.Lines(cost.Band{Gallons: 1000 * gal, Lids: 1, Cover: ft, Hose: 100 * ft}))(t)
	price := must(cost.Job{Title: "Pump-out", Lines: cost.Merge(lines), Book: book, On: s.Date, Terms: cost.Terms{Currency: "USD", ValidDays: 30}}.Estimate())(t)
	if got := v.Options.PumpOut; !got.Total.Equal(price.Total) || got.ValidUntil != price.ValidUntil || len(got.Lines) != len(price.Lines) || price.Total.IsZero() {
		t.Errorf("the pump-out costs %v until %v, by hand %v until %v", got.Total, got.ValidUntil, price.Total, price.ValidUntil)
	}
}

// must is the result of a calculation that does not fail.
func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
