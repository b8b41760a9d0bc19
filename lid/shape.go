package lid

import "manway.example/manway"

// Shape is the kind of body that a lid is. The zero value is refused.
type Shape uint8

// The shapes.
const (
	_            Shape = iota
	Disc               // flat round lid: Diameter
	BevelledPlug       // round, narrower below: Diameter on top, BottomDiameter
	SteppedPlug        // round flange of thickness Flange over a narrower plug: Diameter, BottomDiameter
	Slab               // flat rectangle: Length, Width
	TaperedSlab        // rectangle, narrower below: Length, Width, BottomLength, BottomWidth
	SteppedSlab        // rectangular flange over a narrower plug: the same, and Flange
)

var shapes = [...]string{"", "disc", "bevelled plug", "stepped plug", "slab", "tapered slab", "stepped slab"}

// String is the shape in words, such as bevelled plug.
func (s Shape) String() string { return manway.Word(shapes[:], s) }

// MarshalText is the same as String.
func (s Shape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts the words of String.
func (s *Shape) UnmarshalText(text []byte) error { return manway.ReadWord(s, "shape", shapes[:], text) }

// Round reports whether the lid is round in plan.
func (s Shape) Round() bool { return s == Disc || s == BevelledPlug || s == SteppedPlug }

// narrows reports whether the lid is narrower below.
func (s Shape) narrows() bool { return s != Disc && s != Slab }

// stepped reports whether it has a flange.
func (s Shape) stepped() bool { return s == SteppedPlug || s == SteppedSlab }

// Material is what a lid is made of. The zero value is concrete.
type Material uint8

// The materials. Only concrete is weighed by its size: the others are ribbed
// or hollow, and their weight is read on a scale or on the cover.
const (
	OfConcrete Material = iota
	OfPlastic           // polyethylene, polypropylene or glass-fibre
	OfIron              // cast iron or steel
)

var materials = [...]string{"concrete", "plastic", "iron"}

// String is concrete, plastic or iron.
func (m Material) String() string { return manway.Word(materials[:], m) }

// MarshalText is the same as String.
func (m Material) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText accepts concrete, plastic and iron.
func (m *Material) UnmarshalText(text []byte) error {
	return manway.ReadWord(m, "material", materials[:], text)
}

// Moisture is how wet a concrete lid is. The zero value is unknown.
type Moisture uint8

// The states of moisture.
const (
	MoistureUnknown Moisture = iota // reckoned from dry to soaked
	Dry
	Damp   // dark, no free water
	Soaked // has lain in water
)

var moistures = [...]string{"unknown", "dry", "damp", "soaked"}

// String is unknown, dry, damp or soaked.
func (m Moisture) String() string { return manway.Word(moistures[:], m) }

// MarshalText is the same as String.
func (m Moisture) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText accepts the words of String.
func (m *Moisture) UnmarshalText(text []byte) error {
	return manway.ReadWord(m, "moisture", moistures[:], text)
}

// Lid is one lid, or one of several equal pieces that close an opening.
type Lid struct {
	Shape          Shape           `json:"shape"`
	Diameter       manway.Length   `json:"diameter"`        // across the top of a round lid, 4 in to 10 ft
	BottomDiameter manway.Length   `json:"bottom_diameter"` // across its underside, where narrower
	Length         manway.Length   `json:"length"`          // long side of a slab, 4 in to 20 ft
	Width          manway.Length   `json:"width"`           // short side, 4 in to 10 ft, at most Length
	BottomLength   manway.Length   `json:"bottom_length"`
	BottomWidth    manway.Length   `json:"bottom_width"`
	Thickness      manway.Length   `json:"thickness"` // as made, at a protected place, 1/4 to 24 in
	Flange         manway.Length   `json:"flange"`    // thickness of the upper, wider part of a stepped lid
	Loss           manway.Length   `json:"loss"`      // thickness gone since, under 1 of Thickness; 0: none
	Recesses       []Recess        `json:"recesses"`
	Material       Material        `json:"material"`
	Concrete       manway.Concrete `json:"concrete"`
	Moisture       Moisture        `json:"moisture"`
	Absorption     float64         `json:"absorption"` // water taken up when soaked, share of the dry weight, 0 to 0.15; 0: 5 % is taken
	Measured       manway.Mass     `json:"measured"`   // one piece on a scale, as it is now; 0: reckoned from the size
	Pieces         int             `json:"pieces"`     // equal pieces of this size, 1 to 20; 0: one
	Overburden     Overburden      `json:"overburden"`
}

// Overburden is soil or gravel that lies on a lid.
type Overburden struct {
	Depth manway.Length // 0 to 20 ft; 0: none
	Soil  manway.Soil   // gravel too; 0: taken heavy
}

// Recess is a lifting pocket from above (Depth) or a vent or probe hole right
// through (Depth 0): round (Diameter) or rectangular (Length, Width).
type Recess struct {
	Diameter manway.Length `json:"diameter"`
	Length   manway.Length `json:"length"`
	Width    manway.Length `json:"width"`
	Depth    manway.Length `json:"depth"` // 0: through the lid
	Count    int           `json:"count"` // of the same, 1 to 50; 0: one
}

func (r Recess) area() float64 {
	if r.Diameter > 0 {
		return discArea(float64(r.Diameter))
	}
	return float64(r.Length) * float64(r.Width)
}

func (r Recess) count() float64 { return float64(max(r.Count, 1)) }

// volume is what the recesses take out of a lid of this thickness.
func (r Recess) volume(thickness float64) float64 {
	depth := float64(r.Depth)
	if depth == 0 {
		depth = thickness
	}
	return r.count() * r.area() * depth
}

// across is the least width of the lid's top: the diameter or the short side.
func (l Lid) across() manway.Length {
	if l.Shape.Round() {
		return l.Diameter
	}
	return l.Width
}

// under is the least width of its underside.
func (l Lid) under() manway.Length {
	switch l.Shape {
	case BevelledPlug, SteppedPlug:
		return l.BottomDiameter
	case TaperedSlab, SteppedSlab:
		return l.BottomWidth
	}
	return l.across()
}

// left is the thickness that is left.
func (l Lid) left() manway.Length { return l.Thickness - l.Loss }
