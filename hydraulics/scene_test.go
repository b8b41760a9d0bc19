package hydraulics_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
	"manway.example/manway/tank"
)

// boxTank is a plain box of 8 by 4 ft, 5 ft high, with so many partitions.
func boxTank(t testing.TB, partitions int) *tank.Tank {
	t.Helper()
	spec := tank.Spec{Shape: tank.Box{Length: 8 * manway.Foot, Width: 4 * manway.Foot, Height: 5 * manway.Foot}, OutletInvert: 48 * manway.Inch}
	for i := range partitions {
		spec.Partitions = append(spec.Partitions, tank.Partition{At: manway.Length(5-i) * manway.Foot, Thickness: 3 * manway.Inch})
	}
	for i, j := 0, len(spec.Partitions)-1; i < j; i, j = i+1, j-1 {
		spec.Partitions[i], spec.Partitions[j] = spec.Partitions[j], spec.Partitions[i]
	}
	made, err := tank.New(spec)
	if err != nil {
		t.Fatal(err)
	}
	return &made
}

// lyingTank is a cylinder on its side, 5 ft across and 9 ft long.
func lyingTank(t testing.TB) *tank.Tank {
	t.Helper()
	made, err := tank.New(tank.Spec{Shape: tank.HorizontalCylinder{Diameter: 5 * manway.Foot, Length: 9 * manway.Foot}, OutletInvert: 48 * manway.Inch,
		Partitions: []tank.Partition{{At: 6 * manway.Foot, Thickness: 3 * manway.Inch}}})
	if err != nil {
		t.Fatal(err)
	}
	return &made
}

// twoCompartments is a case with both compartments opened and measured.
func twoCompartments(t testing.TB, made *tank.Tank) hydraulics.Case {
	c := made.Compartments()
	return hydraulics.Case{
		Outlet: 48 * manway.Inch,
		Compartments: []hydraulics.Compartment{
			{Name: "front", Shape: &c[0], State: hydraulics.Opened, Level: manway.Read(49 * manway.Inch), Sludge: manway.Read(14 * manway.Inch), Scum: manway.Read(4 * manway.Inch)},
			{Name: "rear", Shape: &c[1], State: hydraulics.Opened, Level: manway.Read(48 * manway.Inch), Sludge: manway.Read(5 * manway.Inch), Scum: manway.Read(0)},
		},
		Dividers: make([]hydraulics.Divider, 1),
	}
}
