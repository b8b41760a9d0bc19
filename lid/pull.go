package lid

import "manway.example/manway"

// PullLimit is the guideline of hand forces for a pull with both hands at one
// height. Below 32 in, the usual height at a lid, the table says nothing.
type PullLimit struct {
	Known bool
	Low   manway.Force // protects at least 80 % of people
	High  manway.Force // 50 % of people
}

// pullTable is the guideline's two-handed pull in lbf for hand heights of 32
// to 48 in, one row an inch (upper ends of the bands that protect 80 and 50 %).
var pullTable = [...][2]float64{
	{41, 57}, {44, 60}, {47, 63}, {50, 65}, {52, 68}, {55, 70}, {58, 72}, {60, 73}, {62, 74},
	{64, 76}, {66, 77}, {67, 79}, {69, 80}, {70, 81}, {71, 82}, {72, 83}, {73, 83},
}

const lowestPull, highestPull = 32.0, 48.0 // in

// PullAt is the guideline at a hand height, linear between whole inches. It is
// not known below 32 in and above 48 in.
func PullAt(height manway.Length) PullLimit {
	h := height.In(manway.Inch)
	if !(h >= lowestPull*(1-1e-12) && h <= highestPull*(1+1e-12)) {
		return PullLimit{}
	}
	i := min(max(int(h-lowestPull), 0), len(pullTable)-2)
	share := h - lowestPull - float64(i)
	at := func(column int) manway.Force {
		a, b := pullTable[i][column], pullTable[i+1][column]
		return manway.Force(a+(b-a)*share) * manway.PoundForce
	}
	return PullLimit{Known: true, Low: at(0), High: at(1)}
}
