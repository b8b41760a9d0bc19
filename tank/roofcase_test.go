package tank

import (
	"math"
	"testing"

	"manway.example/manway"
)

// A foot of soil of 115 lb/ft3, 125 soaked, weighs 115 or 125 lb/ft2, soaked where
// nobody saw how wet it is; what is not known is taken at 120 and 130 lb/ft3, and
// said. No soil is assumed where none lies.
func TestSoilOnTheRoof(t *testing.T) {
	known := manway.Soil{Moist: 115 * manway.PoundPerCubicFoot, Saturated: 125 * manway.PoundPerCubicFoot}
	for _, c := range []struct {
		load    RoofLoad
		soil    manway.Soil
		psf     float64
		assumed bool
	}{
		{RoofLoad{Cover: manway.Foot, Wetness: DrySoil}, known, 115, false},
		{RoofLoad{Cover: manway.Foot, Wetness: SoakedSoil}, known, 125, false},
		{RoofLoad{Cover: manway.Foot}, known, 125, true},
		{RoofLoad{Cover: 2 * manway.Foot, Wetness: DrySoil}, manway.Soil{}, 240, true},
		{RoofLoad{Cover: 2 * manway.Foot, Wetness: SoakedSoil}, manway.Soil{}, 260, true},
		{RoofLoad{Cover: manway.Foot, Wetness: DrySoil}, manway.Soil{Moist: known.Moist}, 115, false},
		{RoofLoad{Cover: manway.Foot, Wetness: SoakedSoil}, manway.Soil{Moist: known.Moist}, 130, true},
		{RoofLoad{Wetness: SoakedSoil}, manway.Soil{}, 0, false},
		{RoofLoad{}, manway.Soil{}, 0, false},
	} {
		pressure, made := c.load.soil(c.soil)
		if got := pressure.In(manway.PSF); math.Abs(got-c.psf) > 1e-9 || made.Has(manway.AssumedSoil) != c.assumed {
			t.Errorf("%+v on %+v: %v lb/ft2, assumed %v; want %v, %v", c.load, c.soil, got, made.List(), c.psf, c.assumed)
		}
	}
}
