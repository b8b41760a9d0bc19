package manway

// Combination is a load combination: the factor on each kind of load.
//
//	Service        1.0 D + 1.0 L + 1.0 H + 1.0 F
//	Dead           1.4 D + 1.4 F
//	DeadLive       1.2 D + 1.6 L + 1.6 H + 1.2 F
//	DeadResisting  0.9 D + 1.6 H
//
// D is the weight of what stands there and of the soil on it, L people and
// wheels, H lateral earth and groundwater, F liquid in the tank whose level is
// known. Source: ACI 318-19 Table 5.3.1 with 5.3.7 and 5.3.8; ASCE 7-16
// section 2.3.1.
type Combination uint8

// The combinations that the checks use.
const (
	Service Combination = iota
	Dead
	DeadLive
	DeadResisting
)

// Factors are the load factors of one combination.
type Factors struct {
	Dead, Live, Earth, Fluid float64
}

var combinations = [...]struct {
	name string
	f    Factors
}{
	Service:       {"1.0 D + 1.0 L + 1.0 H + 1.0 F", Factors{1, 1, 1, 1}},
	Dead:          {"1.4 D + 1.4 F", Factors{1.4, 0, 0, 1.4}},
	DeadLive:      {"1.2 D + 1.6 L + 1.6 H + 1.2 F", Factors{1.2, 1.6, 1.6, 1.2}},
	DeadResisting: {"0.9 D + 1.6 H", Factors{0.9, 0, 1.6, 0}},
}

// Factors gives the load factors; an unknown combination has none.
func (c Combination) Factors() Factors {
	if int(c) < len(combinations) {
		return combinations[c].f
	}
	return Factors{}
}

// String is the combination as it is written in the code.
func (c Combination) String() string {
	if int(c) < len(combinations) {
		return combinations[c].name
	}
	return "unknown combination"
}

// MarshalText is the same as String.
func (c Combination) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// Source is where the combinations stand.
func (c Combination) Source() Citation { return Citation{ACI318_19, "Table 5.3.1, 5.3.7, 5.3.8"} }
