package manway_test

import (
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/reftable"
)

// Published conversion factors, read as text and given back in the printed unit.
func TestPublishedUnits(t *testing.T) {
	reftable.Load(t, "units.csv").Each(t, func(t *testing.T, row reftable.Row) {
		switch row.Unit {
		case "Pa":
			var x manway.Pressure
			row.Read(t, "text", &x)
			row.Check(t, float64(x))
		case "m3/s":
			var x manway.Flow
			row.Read(t, "text", &x)
			row.Check(t, float64(x))
		case "in3":
			var x manway.Volume
			row.Read(t, "text", &x)
			row.Check(t, x.In(manway.CubicInch))
		case "gal":
			var x manway.Volume
			row.Read(t, "text", &x)
			row.Check(t, x.In(manway.Gallon))
		case "lb/gal":
			var x manway.Density
			row.Read(t, "text", &x)
			row.Check(t, x.In(manway.PoundPerGallon))
		case "kg":
			var x manway.Mass
			row.Read(t, "text", &x)
			row.Check(t, float64(x))
		default:
			t.Fatalf("no quantity for unit %q", row.Unit)
		}
	})
}
