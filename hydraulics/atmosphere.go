package hydraulics

import (
	"math"

	"manway.example/manway"
)

// The standard atmosphere below 11 km (ISO 2533).
const (
	seaLevelPressure                = 101325 // Pa
	seaLevelTemperature             = 288.15 // K
	lapseRate                       = 0.0065 // K/m
	gasConstant                     = 287.05287
	lowestAltitude, highestAltitude = -1500 * manway.Foot, 11000 * manway.Metre
	atmosphereExponent              = manway.StandardGravity / (gasConstant * lapseRate) // 5.25588
)

// earthRadius is the one that turns height into geopotential height.
const earthRadius = 6356766

// Atmosphere is the pressure of the standard atmosphere at the altitude z of
// -1,500 ft to 11,000 m, outside of which it is an error:
//
//	p = 101.325 kPa × (1 - 0.0065 H/288.15)^5.25588,  H = z r/(r + z)
//
// in metres with r = 6,356,766. The weather moves it by 3 % either way. Source:
// ISO 2533, sections 2.3 and 2.7.
func (s Suction) Atmosphere() (manway.Pressure, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Altitude", s.Altitude, lowestAltitude, highestAltitude)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	z := float64(s.Altitude)
	h := z * earthRadius / (earthRadius + z)
	return manway.Pressure(seaLevelPressure * math.Pow(1-lapseRate*h/seaLevelTemperature, atmosphereExponent)), nil
}
