package manway

// Kind says which quantity a bare float64 of a [Check] or a step of working
// is, always in SI.
type Kind uint8

// The kinds of quantity.
const (
	Ratio Kind = iota // a number without a unit
	KindLength
	KindArea
	KindVolume
	KindMass
	KindForce
	KindPressure
	KindDensity
	KindFlow
	KindMoment
	KindMomentPerLength
	KindLineLoad
	KindDuration
	KindVelocity
	KindAngle
	KindTemperature
)

var kinds = [...]*unitTable{
	KindLength: &lengthUnits, KindArea: &areaUnits, KindVolume: &volumeUnits,
	KindMass: &massUnits, KindForce: &forceUnits, KindPressure: &pressureUnits,
	KindDensity: &densityUnits, KindFlow: &flowUnits, KindMoment: &momentUnits,
	KindMomentPerLength: &momentPerLengthUnits, KindLineLoad: &lineLoadUnits,
	KindDuration: &durationUnits, KindVelocity: &velocityUnits,
	KindAngle: &angleUnits, KindTemperature: &temperatureUnits,
}

// Text writes x, in the SI unit of the kind, for people.
func (k Kind) Text(x float64, s System) string {
	switch {
	case k == KindLength:
		return Length(x).Text(s)
	case k == Ratio || int(k) >= len(kinds):
		return number(x)
	}
	return kinds[k].people(x, s)
}

// String is the name of the quantity.
func (k Kind) String() string {
	if k == Ratio || int(k) >= len(kinds) {
		return "ratio"
	}
	return kinds[k].quantity
}

// MarshalText is the same as String.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }
