package lid

import "manway.example/manway"

// Exertion is a way of pushing or pulling.
type Exertion uint8

// The exertions of the guideline.
const (
	PullTwoHands Exertion = iota
	PushTwoHands
	PullOneHand
)

var exertions = [...]string{"pull with both hands", "push with both hands", "pull with one hand"}

// String is the exertion in words.
func (e Exertion) String() string { return manway.Word(exertions[:], e) }

// MarshalText is the same as String.
func (e Exertion) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText accepts the words of String.
func (e *Exertion) UnmarshalText(text []byte) error {
	return manway.ReadWord(e, "exertion", exertions[:], text)
}

// HandForce is the guideline of the force of the hands at one height. Below 32
// in, the usual height at a lid, the table says nothing.
type HandForce struct {
	Known bool
	Low   manway.Force // protects at least 80 % of people
	High  manway.Force // protects 50 %
}

// handForces is the guideline in lbf for hand heights of 32 to 48 in, one row
// an inch: the upper ends of the bands that protect 80 and 50 % of people, by
// exertion. The row of 33 in prints its yellow band from 43 although green ends
// at 44, a misprint.
var handForces = [...][3][2]float64{
	{{41, 57}, {48, 61}, {38, 46}},
	{{44, 60}, {50, 62}, {40, 48}},
	{{47, 63}, {50, 63}, {41, 49}},
	{{50, 65}, {51, 63}, {42, 50}},
	{{52, 68}, {52, 63}, {43, 51}},
	{{55, 70}, {53, 63}, {43, 52}},
	{{58, 72}, {53, 64}, {44, 52}},
	{{60, 73}, {54, 63}, {44, 52}},
	{{62, 74}, {54, 64}, {44, 52}},
	{{64, 76}, {56, 66}, {44, 53}},
	{{66, 77}, {58, 68}, {44, 53}},
	{{67, 79}, {60, 71}, {44, 53}},
	{{69, 80}, {62, 73}, {44, 53}},
	{{70, 81}, {64, 75}, {44, 53}},
	{{71, 82}, {65, 76}, {43, 53}},
	{{72, 83}, {67, 78}, {43, 52}},
	{{73, 83}, {68, 79}, {42, 52}},
}

const lowestHand, highestHand = 32.0, 48.0 // in

// HandForceAt is the guideline at a hand height, linear between whole inches.
// It is not known below 32 in and above 48 in.
func HandForceAt(e Exertion, height manway.Length) HandForce {
	h := height.In(manway.Inch)
	if int(e) >= len(exertions) || !(h >= lowestHand*(1-1e-12) && h <= highestHand*(1+1e-12)) {
		return HandForce{}
	}
	i := min(max(int(h-lowestHand), 0), len(handForces)-2)
	share := h - lowestHand - float64(i)
	at := func(column int) manway.Force {
		a, b := handForces[i][e][column], handForces[i+1][e][column]
		return manway.Force(a+(b-a)*share) * manway.PoundForce
	}
	return HandForce{Known: true, Low: at(0), High: at(1)}
}
