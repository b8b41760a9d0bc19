package lid

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Chip is a piece broken out of the seat's rim or of the lid's edge.
type Chip struct {
	Along  manway.Length `json:"along"`  // round the rim
	In     manway.Length `json:"in"`     // from the edge inwards, across the bearing
	Height manway.Length `json:"height"` // of the opening it leaves under or beside the lid
}

// Validate returns the faults of c.
func (c Chip) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Along", c.Along, 0, mostLength)
	manway.Within(&faults, "In", c.In, 0, mostWidth)
	manway.Within(&faults, "Height", c.Height, 0, mostThick)
	return faults.Err()
}

func validateChips(faults *manway.InputErrors, chips []Chip) {
	manway.Within(faults, "Chips", len(chips), 0, 50)
	for i, c := range chips {
		if err := c.Validate(); err != nil {
			faults.Under("Chips["+strconv.Itoa(i)+"]", err)
		}
	}
}

// Rim is what is left of the bearing round the hole.
type Rim struct {
	Around   manway.Length // length of the rim, at the middle of the bearing
	Bearing  manway.Length // width on which the lid bears when centred; 0 where the opening is not known
	Whole    float64       // share of the rim not broken, 0 to 1
	Least    manway.Length // least bearing width left anywhere
	Gap      manway.Area   // open area of the chips that go right through the bearing
	OpenAir  manway.Answer // odour, water and insects get through a gap; no means no gap right through, never a tight seat
	Narrow   bool          // less than half the rim or less than 1 in of bearing is left somewhere
	NotKnown bool          // the opening was not measured: bearing not judged
}

// leastBearing is the width below which a bearing counts as narrow, common
// practice.
const leastBearing = 1 * manway.Inch

// rim is the bearing left: the width on which the lid laps over the hole, less
// half its play where it may lie against one side of a recess, less the chips. A chip as deep as the bearing is a gap of Along x Height.
func (l Lid) rim(s Seat) Rim {
	if s.Opening == 0 {
		return Rim{NotKnown: true, OpenAir: manway.Unknown}
	}
	r := Rim{Bearing: max((l.across()-s.Opening)/2, 0)}
	if l.Shape.Round() {
		r.Around = manway.Length(math.Pi * float64(l.across()+s.Opening) / 2)
	} else {
		long := s.OpeningLong
		if long == 0 {
			long = s.Opening
		}
		r.Around = l.Length + l.Width + s.Opening + long
	}
	lapped := r.Bearing
	if s.GapKnown && (s.Fit == LetIn || s.Fit == Step) { // it may lie against one side
		lapped = max(r.Bearing-s.Gap/2, 0)
	}
	r.Least = lapped
	broken := manway.Length(0)
	for _, c := range s.Chips {
		r.Least = min(r.Least, max(lapped-c.In, 0))
		if manway.Reached(c.In, r.Bearing) {
			broken += c.Along
			r.Gap += c.Along.Times(c.Height)
		}
	}
	if r.Around > 0 {
		r.Whole = math.Max(0, 1-float64(broken)/float64(r.Around))
	}
	r.OpenAir = answer(r.Gap > 0)
	r.Narrow = r.Least < leastBearing || r.Whole < 0.5
	return r
}
