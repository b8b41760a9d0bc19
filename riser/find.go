package riser

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Tie is a point fixed by its distances to two corners of a house.
type Tie struct {
	Corners manway.Length // between the corners A and B, 1 ft to 1000 ft
	FromA   manway.Length // 0 to 1000 ft
	FromB   manway.Length // 0 to 1000 ft
	Right   bool          // the point is on the right hand of one who walks from A to B, not the left
	Tape    manway.Length // by how much a distance may be off, 0 to 10 ft
}

// Position is a point seen from the corners.
type Position struct {
	Along manway.Length // from A in the direction of B, negative behind A
	Out   manway.Length // from the line through A and B, to the side of the point
	Off   manway.Length // the farthest that the true point may be away, by the tape
	Angle manway.Angle  // at which the two distances cross, 0 to 90 deg; below 30 the ties are poor
	Poor  bool          // measure to other corners
	// OffKnown is false where the point may lie so near the line of the corners
	// that the tape does not fix it: Off is not given then.
	OffKnown bool
}

// Position is where the point lies:
//
//	along = (a^2 - b^2 + c^2)/(2 c)
//	out   = sqrt(a^2 - along^2)
//	off   = the farthest of the four points with both distances off by the tape
//
// c between the corners. It fails unless every length is in its range and the
// two distances can meet, which the tape is allowed to help: the point is then
// on the line. Source: plane trigonometry.
func (t Tie) Position() (Position, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Corners", t.Corners, manway.Foot, 1000*manway.Foot)
	manway.Within(&faults, "FromA", t.FromA, 0, 1000*manway.Foot)
	manway.Within(&faults, "FromB", t.FromB, 0, 1000*manway.Foot)
	manway.Within(&faults, "Tape", t.Tape, 0, 10*manway.Foot)
	if len(faults) > 0 {
		return Position{}, faults
	}
	x, y, ok := cross(float64(t.Corners), float64(t.FromA), float64(t.FromB), 2*float64(t.Tape)+1e-9)
	if !ok {
		sum := t.FromA + t.FromB
		return Position{}, manway.InputErrors{{Field: "FromB", Value: t.FromB.String(), Want: "distances that meet: together at least and apart at most the " + t.Corners.String() + " between the corners, they are " + sum.String() + " together"}}
	}
	p := Position{Along: manway.Length(x), Out: manway.Length(y), OffKnown: true}
	p.Angle, p.Poor = t.crossing()
	for _, d := range [...][2]float64{{1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		tape := float64(t.Tape)
		u, v, ok := cross(float64(t.Corners), float64(t.FromA)+d[0]*tape, float64(t.FromB)+d[1]*tape, 0)
		if !ok {
			p.OffKnown = false
			continue
		}
		p.Off = max(p.Off, manway.Length(math.Hypot(u-x, v-y)))
	}
	if !p.OffKnown {
		p.Off, p.Poor = 0, true
	}
	return p, nil
}

// cross is where circles of radius a and b about two points c apart meet.
func cross(c, a, b, slack float64) (x, y float64, ok bool) {
	if a < 0 || b < 0 || a+b < c-slack || math.Abs(a-b) > c+slack {
		return 0, 0, false
	}
	x = (a*a - b*b + c*c) / (2 * c)
	return x, math.Sqrt(max(a*a-x*x, 0)), true
}

// crossing is the angle at which the two tapes cross.
func (t Tie) crossing() (manway.Angle, bool) {
	a, b, c := float64(t.FromA), float64(t.FromB), float64(t.Corners)
	if a == 0 || b == 0 {
		return 0, true
	}
	angle := math.Acos(min(max((a*a+b*b-c*c)/(2*a*b), -1), 1))
	angle = min(angle, math.Pi-angle)
	return manway.Angle(angle), angle < math.Pi/6
}

// String is the position in words.
func (p Position) String() string {
	s := p.Along.String() + " along from the first corner, " + p.Out.String() + " out"
	if p.OffKnown && p.Off > 0 {
		s += ", within " + p.Off.String()
	}
	return s
}

// Surface is what lies on top of a buried cover.
type Surface uint8

// The surfaces. The zero value is turf.
const (
	Turf Surface = iota
	BareSoil
	LooseGravel
	Pavers
	RootedBed
	Asphalt
	ConcreteSlab
	Deck
)

var surfaces = [...]struct {
	word    string
	minutes float64 // to lift and put aside a square foot
	hand    bool    // hand tools do
}{
	Turf:         {"turf", 0.5, true},
	BareSoil:     {"bare soil", 0, true},
	LooseGravel:  {"loose gravel", 0.5, true},
	Pavers:       {"pavers", 2, true},
	RootedBed:    {"rooted bed", 2, true},
	Asphalt:      {"asphalt", 0, false},
	ConcreteSlab: {"concrete slab", 0, false},
	Deck:         {"deck", 0, false},
}

var surfaceWords = func() (w [len(surfaces)]string) {
	for i := range surfaces {
		w[i] = surfaces[i].word
	}
	return w
}()

// String is the surface in words.
func (s Surface) String() string { return manway.Word(surfaceWords[:], s) }

// MarshalText is the same as String.
func (s Surface) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts the words of the surfaces.
func (s *Surface) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "surface", surfaceWords[:], text)
}

// Buried is a cover to uncover by hand.
type Buried struct {
	Diameter manway.Length // of the cover, or its longer side; 6 in to 10 ft
	Depth    manway.Length // of soil over it, 0 to 2 ft
	Working  manway.Length // bared all round it, 0 to 3 ft; 0: 6 in
	Surface  Surface
	Earth    Earth
}

// uncoverTo is how deep a cover is bared from the edge, nobody in the dig:
// practice.
const uncoverTo = 2 * manway.Foot

// Uncovering is what it takes to bare a cover.
type Uncovering struct {
	Soil     manway.Volume   // dug, in the bank
	Minutes  manway.Duration // of one person: surface, soil and putting back
	NotHand  bool            // the surface is not opened by hand tools: minutes are of the soil below alone
	Cautions manway.Cautions
}

// Uncover is the hand work to bare a cover and to close it again:
//
//	soil    = pi/4 (diameter + 2 working)^2 depth, sides as they stand in so shallow a dig
//	minutes = surface + soil x (hours by earth to dig + 1.00 h/m3 to put back)
//
// Deeper than 2 ft it is a pit with sloped sides and is refused: use [DigOf].
// It fails unless every field is in its range. Sources: trade table of hand
// trenches to 1 m by soil; minutes for the surface are practice.
func Uncover(b Buried) (Uncovering, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Diameter", b.Diameter, 6*manway.Inch, 10*manway.Foot)
	if !(b.Depth >= 0 && b.Depth <= uncoverTo) {
		faults.Add("Depth", b.Depth.String(), "0 to 2 ft; a deeper dig is a pit with sloped sides")
	}
	manway.Within(&faults, "Working", b.Working, 0, 3*manway.Foot)
	manway.Within(&faults, "Surface", int(b.Surface), 0, len(surfaces)-1)
	manway.Within(&faults, "Earth", int(b.Earth), 0, len(earths)-1)
	if len(faults) > 0 {
		return Uncovering{}, faults
	}
	around := b.Working
	if around == 0 {
		around = 6 * manway.Inch
	}
	across := b.Diameter + 2*around
	area := math.Pi / 4 * across.Times(across)
	u := Uncovering{Soil: area.Times(b.Depth), NotHand: !surfaces[b.Surface].hand}
	u.Minutes = manway.Duration(area.In(manway.SquareFoot)*surfaces[b.Surface].minutes) * manway.Minute
	u.Minutes += manway.Duration(u.Soil)*manway.Duration(earths[b.Earth].hand)*manway.Hour + manway.Duration(float64(u.Soil)*handFill)
	u.Cautions = manway.LocateUtilities | manway.EstimateOnly
	if b.Depth > 0 {
		u.Cautions |= manway.TrenchCollapse
	}
	return u, nil
}

// Basis is where the hand work comes from.
func (Uncovering) Basis() []manway.Citation {
	return []manway.Citation{{Source: handTrench, Place: "hand trench to 1 m; backfill and compact"}, practice("minutes a square foot of surface")}
}

// Hose is the way from an access to the truck.
type Hose struct {
	Along   manway.Length // from the access to the truck, as the hose must lie; 0 to 2000 ft
	Fall    manway.Length // of the ground from the access down to the truck, negative up; -200 to 200 ft
	Inlet   manway.Length // of the truck above the ground it stands on, 0 to 15 ft
	Bottom  manway.Length // of the tank below grade at the access, 0 to 30 ft
	Spare   manway.Length // slack, 0 to 100 ft
	Section manway.Length // of one hose, 5 ft to 200 ft
}

// HoseRun is the hose to lay and the height to lift.
type HoseRun struct {
	Length   manway.Length // on the slope, down to the bottom, with slack
	Sections int
	Lift     manway.Length // from the bottom of the tank up to the truck's inlet; negative is downhill
}

// Run is the hose length and the vertical lift:
//
//	length = sqrt(along^2 + fall^2) + bottom + inlet + spare
//	lift   = bottom + inlet - fall
//
// It fails unless every length is in its range. Whether suction reaches is for
// the pump's own calculation. Source: geometry.
func (h Hose) Run() (HoseRun, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Along", h.Along, 0, 2000*manway.Foot)
	manway.Within(&faults, "Fall", h.Fall, -200*manway.Foot, 200*manway.Foot)
	manway.Within(&faults, "Inlet", h.Inlet, 0, 15*manway.Foot)
	manway.Within(&faults, "Bottom", h.Bottom, 0, 30*manway.Foot)
	manway.Within(&faults, "Spare", h.Spare, 0, 100*manway.Foot)
	manway.Within(&faults, "Section", h.Section, 5*manway.Foot, 200*manway.Foot)
	if len(faults) > 0 {
		return HoseRun{}, faults
	}
	r := HoseRun{Length: manway.Length(math.Hypot(float64(h.Along), float64(h.Fall))) + h.Bottom + h.Inlet + h.Spare, Lift: h.Bottom + h.Inlet - h.Fall}
	var err error
	r.Sections, err = manway.Pieces(r.Length, h.Section)
	return r, err
}

// String is the hose in words.
func (r HoseRun) String() string {
	return r.Length.String() + " of hose in " + strconv.Itoa(r.Sections) + " sections, lift " + r.Lift.String()
}
