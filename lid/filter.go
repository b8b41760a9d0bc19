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
func (z Zone) String() string { return word(zones[:], int(z)) }

// MarshalText is the same as String.
func (z Zone) MarshalText() ([]byte, error) { return []byte(z.String()), nil }

// UnmarshalText accepts the words of String.
func (z *Zone) UnmarshalText(text []byte) error { return readWord(z, "zone", zones[:], text) }

// filterKg is the filter in kilograms by zone: men close, men far, women
// close, women far. The women's figures but one are remembered.
var filterKg = [...][4]manway.Mass{
	BelowMidShin:    {10, 5, 7, 3},
	ShinToKnuckle:   {20, 10, 13, 7},
	KnuckleToElbow:  {25, 15, 16, 10},
	ElbowToShoulder: {20, 10, 13, 7},
	AboveShoulder:   {10, 5, 7, 3},
}

// FilterLimit is the weight below which the UK guidance asks for no closer look
// at a lift of up to about 30 an hour, close to the body or at arm's length,
// for men or women. It is a filter, not a limit that is safe. Where the hands
// cross zones the least one counts. Source: HSE, L23.
func FilterLimit(z Zone, far, women bool) (manway.Mass, error) {
	var faults manway.InputErrors
	within(&faults, "Zone", z, zones[:])
	if err := faults.Err(); err != nil {
		return 0, err
	}
	column := 0
	if women {
		column += 2
	}
	if far {
		column++
	}
	return filterKg[z][column] * manway.Kilogram, nil
}

// The UK filter for pushing and pulling, hands between knuckle and shoulder,
// up to 20 m: to start or stop a load, and to keep it moving. Source: HSE, L23;
// Research Report 228 (2004).
var pushFilterKg = [...][2]manway.Mass{{20, 10}, {15, 7}}

// PushFilter is the force of that filter, as a mass under standard gravity.
func PushFilter(women bool) (start, keep manway.Force) {
	row := pushFilterKg[0]
	if women {
		row = pushFilterKg[1]
	}
	return (row[0] * manway.Kilogram).Weight(), (row[1] * manway.Kilogram).Weight()
}
