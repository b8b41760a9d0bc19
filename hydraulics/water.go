package hydraulics

import (
	"math"

	"manway.example/manway"
)

// Water is water at one temperature, as far as flow needs it.
type Water struct {
	Temperature manway.Temperature
	Density     manway.Density
	Viscosity   float64         // kinematic, m2/s
	Vapour      manway.Pressure // absolute, at which it boils
}

const freezing manway.Temperature = 273.15 * manway.Kelvin

// WaterAt is water at a temperature of 0 C to 100 C, outside of which it is an
// error. With t in C:
//
//	density    (999.83952 + 16.945176 t - 7.9870401e-3 t² - 46.170461e-6 t³
//	           + 105.56302e-9 t⁴ - 280.54253e-12 t⁵)/(1 + 16.879850e-3 t) kg/m3
//	viscosity  log10(µ/1.002 mPa s) = (20 - t)/(t + 96)
//	           × (1.2364 - 1.37e-3 (20 - t) + 5.7e-6 (20 - t)²)
//	vapour     0.61121 exp((18.678 - t/234.5) t/(257.14 + t)) kPa
//
// Old handbooks print viscosities up to 1 % higher: 1.217e-5 ft2/s at 60 F
// against 1.209e-5 here. Source: Kell 1975; Kestin, Sokolov and Wakeham 1978;
// Buck 1981 with the constants of 1996.
func WaterAt(temperature manway.Temperature) (Water, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Temperature", temperature, freezing, freezing+100)
	if err := faults.Err(); err != nil {
		return Water{}, err
	}
	t := float64(temperature - freezing)
	density := (999.83952 + t*(16.945176+t*(-7.9870401e-3+t*(-46.170461e-6+t*(105.56302e-9-t*280.54253e-12))))) / (1 + 16.879850e-3*t)
	below := 20 - t
	dynamic := 1.002e-3 * math.Pow(10, below/(t+96)*(1.2364-1.37e-3*below+5.7e-6*below*below))
	return Water{
		Temperature: temperature,
		Density:     manway.Density(density),
		Viscosity:   dynamic / density,
		Vapour:      manway.Pressure(611.21 * math.Exp((18.678-t/234.5)*t/(257.14+t))),
	}, nil
}

// Head is the height of this water that weighs the pressure p.
//
// Source: hydrostatics.
func (w Water) Head(p manway.Pressure) manway.Length {
	return manway.Length(float64(p) / (float64(w.Density) * manway.StandardGravity))
}

// Basis lists the sources of the properties of water.
func (Water) Basis() []manway.Citation {
	return []manway.Citation{{Source: kell1975, Place: "equation 16"}, {Source: kestin1978, Place: "equation 15"}, {Source: buck1981, Place: "equation ew, constants of 1996"}}
}
