package lid

import "manway.example/manway"

// Zone is the height of the hands in the UK lifting filter.
type Zone uint8

// The zones, from the ground up.
const (
	BelowMidShin  Zone = iota // below the middle of the lower leg: a lid at the ground
	ShinToKnuckle             // from there to the knuckles of a hanging hand
	KnuckleToElbow
	ElbowToShoulder
	AboveShoulder
)

var zones = [...]string{"below mid-shin", "shin to knuckle", "knuckle to elbow", "elbow to shoulder", "above shoulder"}

// String is the zone in words.
func (z Zone) String() string { return manway.Word(zones[:], z) }

// MarshalText is the same as String.
func (z Zone) MarshalText() ([]byte, error) { return []byte(z.String()), nil }

// UnmarshalText accepts the words of String.
func (z *Zone) UnmarshalText(text []byte) error { return manway.ReadWord(z, "zone", zones[:], text) }

// filterKg is the filter in kilograms by zone: men close, men far, women
// close, women far. The women's figures but one are remembered.
var filterKg = [...][4]manway.Mass{
	BelowMidShin:    {10, 5, 7, 3},
	ShinToKnuckle:   {20, 10, 13, 7},
	KnuckleToElbow:  {25, 15, 16, 10},
	ElbowToShoulder: {20, 10, 13, 7},
	AboveShoulder:   {10, 5, 7, 3},
}

// Filter is one lift as the UK lifting filter sees it.
type Filter struct {
	Zone      Zone
	Far       bool         // at arm's length, not close to the body
	Women     bool         // the lifters are women
	Turn      manway.Angle // of the body, 0 to 180 deg
	Frequency float64      // lifts a minute, 0 to 60
}

// Limit is the weight below which the UK guidance asks for no closer look at a
// lift:
//
//	the figure of the zone, less 10 % turned more than 45 deg, 20 % more than 90 deg,
//	less 30 % at over 0.5 to 2 lifts a minute, 50 % to 8, 80 % above
//
// The guidance prints 1 to 2, 5 to 8 and above 12 a minute; a rate between two
// of them takes the greater cut. It is a filter, not a limit that is safe. Where
// the hands cross zones the least figure counts. Source: HSE, L23.
func (f Filter) Limit() (manway.Mass, error) {
	var faults manway.InputErrors
	within(&faults, "Zone", f.Zone, zones[:])
	if !(f.Turn >= 0 && !over(f.Turn.In(manway.Degree), 180)) {
		faults.Add("Turn", f.Turn.String(), "0 to 180 deg")
	}
	manway.Within(&faults, "Frequency", f.Frequency, 0, 60)
	if err := faults.Err(); err != nil {
		return 0, err
	}
	column := 0
	if f.Women {
		column += 2
	}
	if f.Far {
		column++
	}
	return times(filterKg[f.Zone][column]*manway.Kilogram, f.turned()*f.repeated()), nil
}

// turned is what a turn of the body leaves.
func (f Filter) turned() float64 {
	switch degrees := f.Turn.In(manway.Degree); {
	case over(degrees, 90):
		return 0.8
	case over(degrees, 45):
		return 0.9
	}
	return 1
}

// repeated is what the rate leaves.
func (f Filter) repeated() float64 {
	switch {
	case f.Frequency > 8:
		return 0.2
	case f.Frequency > 2:
		return 0.5
	case f.Frequency > 0.5: // about 30 an hour are still in the figures
		return 0.7
	}
	return 1
}

// The UK filter for pushing and pulling, hands between knuckle and shoulder,
// up to 20 m: to start or stop a load, and to keep it moving. Source: HSE, L23;
// Research Report 228 (2004).
var pushFilterKg = [...][2]manway.Mass{{20, 10}, {15, 7}}

// PushFilter is the force of that filter, as a mass under standard gravity.
// Source: HSE, L23.
func PushFilter(women bool) (start, keep manway.Force) {
	row := pushFilterKg[0]
	if women {
		row = pushFilterKg[1]
	}
	return (row[0] * manway.Kilogram).Weight(), (row[1] * manway.Kilogram).Weight()
}
