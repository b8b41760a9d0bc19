package manway_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"manway.example/manway"
)

func ExampleLength() {
	reach := 2*manway.Foot + 4*manway.Inch
	fmt.Printf("%v, %.6g in", reach, reach.In(manway.Inch))
	// Output: 2 ft 4 in, 28 in
}

func ExampleLength_UnmarshalText() {
	var l manway.Length
	for _, text := range []string{`8'-4 1/2"`, "100.5 in", "2.5527 m", "100.5"} {
		if err := l.UnmarshalText([]byte(text)); err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l, "or", l.Text(manway.SI))
	}
	// Output:
	// 8 ft 4 1/2 in or 2.553 m
	// 8 ft 4 1/2 in or 2.553 m
	// 8 ft 4 1/2 in or 2.553 m
	// length "100.5": want a number with a unit: in, ft, yd, mm, cm, m
}

func ExampleLength_Times() {
	length, width, depth := 8*manway.Foot, 5*manway.Foot, 4*manway.Foot
	water := length.Times(width).Times(depth)
	fmt.Println(water, "weighs", water.Times(manway.WaterDensity).Weight())
	// Output: 1,197 gal weighs 9,984 lbf
}

func ExampleVolume_json() {
	var tank struct{ Liquid manway.Volume }
	err := json.Unmarshal([]byte(`{"Liquid": "1,250 gal"}`), &tank)
	fmt.Println(tank.Liquid, err)
	// Output: 1,250 gal <nil>
}

func ExampleLength_flag() {
	fs := flag.NewFlagSet("reach", flag.ContinueOnError)
	var cover manway.Length
	fs.TextVar(&cover, "cover", manway.Length(0), "soil over the roof")
	err := fs.Parse([]string{"-cover", "450 mm"})
	fmt.Println(cover, err)
	// Output: 1 ft 5 3/4 in <nil>
}

func ExampleInputErrors() {
	err := manway.Soil{Moist: 10 * manway.PoundPerCubicFoot, Friction: 60 * manway.Degree}.Validate()
	var faults manway.InputErrors
	if errors.As(err, &faults) {
		for _, f := range faults {
			fmt.Printf("%s is %s, want %s\n", f.Field, f.Value, f.Want)
		}
	}
	// Output:
	// Moist is 10 lb/ft3, want 60 lb/ft3 to 150 lb/ft3
	// Friction is 60 deg, want 15 deg to 45 deg
}

func ExampleCheck() {
	c := manway.Check{
		Name: "bending of the lid", Kind: manway.KindMoment,
		Demand: float64(300 * manway.PoundForceFoot), Capacity: float64(400 * manway.PoundForceFoot),
		Combination: manway.DeadLive,
	}.Judge()
	use, _ := c.Use()
	fmt.Println(c.Name, c.Status, use, c.Combination)
	// Output: bending of the lid pass 0.75 1.2 D + 1.6 L + 1.6 H + 1.2 F
}

func ExampleGroundwater() {
	var site struct{ Water manway.Groundwater }
	_ = json.Unmarshal([]byte(`{"Water": "unknown"}`), &site)
	depth, assumed := site.Water.Taken()
	fmt.Println(depth, assumed.List()[0].Taken)
	// Output: 0 in groundwater at grade
}

func ExamplePieces() {
	fmt.Println(manway.Pieces(18*manway.Inch, 6*manway.Inch))
	fmt.Println(manway.Pieces(19*manway.Inch, 6*manway.Inch))
	// Output:
	// 3 <nil>
	// 4 <nil>
}

func ExampleDate_AddMonths() {
	fmt.Println(manway.Date{Year: 2026, Month: 1, Day: 31}.AddMonths(1))
	// Output: 2026-02-28
}
