package riser

import (
	"math"
	"strconv"

	"manway.example/manway"
)

// Joint is the ring-shaped joint below a ring: between it and the roof, or
// between it and the ring below.
type Joint struct {
	Inside  manway.Length // inside diameter, or inside side of a square one; 6 in to 10 ft
	Outside manway.Length // outside diameter or side, above Inside, up to 14 ft
	Square  bool          // a square ring
	Closed  manway.Length // thickness of the joint when closed, 1/16 in to 4 in
}

// Wall is the width of the joint from inside to outside, (outside - inside)/2.
// Source: geometry.
func (j Joint) Wall() manway.Length { return (j.Outside - j.Inside) / 2 }

// InsideLength is the joint's length along its inner edge, pi inside of a round
// ring. Source: geometry.
func (j Joint) InsideLength() manway.Length { return j.round(j.Inside) }

// OutsideLength is the joint's length along its outer edge, pi outside of a round
// ring. Source: geometry.
func (j Joint) OutsideLength() manway.Length { return j.round(j.Outside) }

// Length is the joint's length on its centreline, pi (inside + outside)/2 of a
// round ring. Source: geometry.
func (j Joint) Length() manway.Length { return j.round((j.Inside + j.Outside) / 2) }

// Volume is the space in the closed joint, wall x length x thickness. Source:
// geometry.
func (j Joint) Volume() manway.Volume { return j.Length().Times(j.Wall()).Times(j.Closed) }

func (j Joint) round(across manway.Length) manway.Length {
	if j.Square {
		return 4 * across
	}
	return math.Pi * across
}

// Validate returns the faults of j.
func (j Joint) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Inside", j.Inside, 6*manway.Inch, 10*manway.Foot)
	manway.Within(&faults, "Outside", j.Outside, j.Inside+manway.Inch/4, 14*manway.Foot)
	manway.Within(&faults, "Closed", j.Closed, manway.Inch/16, 4*manway.Inch)
	return faults.Err()
}

// Strip is a preformed flexible sealant strip as it comes off the roll.
type Strip struct {
	Width   manway.Length // 1/4 in to 4 in
	Height  manway.Length // 1/4 in to 4 in
	Roll    manway.Length // length of a roll, 1 ft to 1000 ft
	Overlap manway.Length // at the ends of one run, 0 to 1 ft; 0 is a butt joint kneaded together
}

// StripNeed is the strip that one joint needs.
type StripNeed struct {
	Runs    int           // laid side by side
	Length  manway.Length // of all runs with their overlaps
	Roll    manway.Length // length of a roll
	Rolls   int           // whole rolls
	Left    manway.Length // of the last roll
	Fill    float64       // strip volume over the volume of the closed joint
	Squeeze float64       // closed thickness over the height of the strip
	Note    string        // why the strip does not suit the joint, empty where it does
}

// halfVolume is the least share of the closed joint that the strip must fill
// (supplier submittals that apply ASTM C990).
const halfVolume = 0.5

// Strip is the preformed strip for the joint, by the half-volume rule:
//
//	runs   = whole number of  1/2 wall closed / (width height)
//	length = runs (centreline + overlap)
//
// A strip that is not at least as high as the joint is thick does not touch
// both faces, and one squeezed to less than a quarter of its height is not
// likely to close: Note says so. It fails unless every length is in its range
// and the runs fit side by side in the wall. Source: ASTM C990 (scope: strip
// round the joint, not stretched, on clean and sound faces); compression to
// about half is a trade instruction.
func (j Joint) Strip(s Strip) (StripNeed, error) {
	var faults manway.InputErrors
	faults.Under("Joint", j.Validate())
	manway.Within(&faults, "Width", s.Width, manway.Inch/4, 4*manway.Inch)
	manway.Within(&faults, "Height", s.Height, manway.Inch/4, 4*manway.Inch)
	manway.Within(&faults, "Roll", s.Roll, manway.Foot, 1000*manway.Foot)
	manway.Within(&faults, "Overlap", s.Overlap, 0, manway.Foot)
	if len(faults) > 0 {
		return StripNeed{}, faults
	}
	section := s.Width.Times(s.Height)
	runs, err := manway.Pieces(manway.Area(halfVolume)*j.Wall().Times(j.Closed), section)
	if err != nil {
		return StripNeed{}, err
	}
	if runs > 1 && manway.Length(runs)*s.Width > j.Wall() {
		return StripNeed{}, manway.InputErrors{{Field: "Width", Value: s.Width.String(), Want: "a strip that fills half of the joint in runs that fit in the wall of " + j.Wall().String()}}
	}
	n := StripNeed{Runs: runs, Roll: s.Roll, Length: manway.Length(runs) * (j.Length() + s.Overlap)}
	if n.Rolls, err = manway.Pieces(n.Length, s.Roll); err != nil {
		return StripNeed{}, err
	}
	n.Left = max(manway.Length(n.Rolls)*s.Roll-n.Length, 0)
	n.Fill = float64(manway.Length(runs)*s.Width) * float64(s.Height) / (float64(j.Wall()) * float64(j.Closed))
	n.Squeeze = float64(j.Closed) / float64(s.Height)
	switch {
	case n.Squeeze > 1:
		n.Note = "the strip is thinner than the joint and does not touch both faces"
	case n.Squeeze < 0.25:
		n.Note = "the weight on the joint is not likely to squeeze the strip so thin"
	}
	return n, nil
}

// Times is the strip for several joints like this one, 0 to 1000: rolls are
// counted over all of them.
func (n StripNeed) Times(joints int) (StripNeed, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "joints", joints, 0, 1000)
	manway.Within(&faults, "Runs", n.Runs, 1, 100)
	manway.Within(&faults, "Length", n.Length, 0, 10000*manway.Foot)
	manway.Within(&faults, "Roll", n.Roll, manway.Foot, 1000*manway.Foot)
	manway.Within(&faults, "Fill", n.Fill, 0, 1e6)
	manway.Within(&faults, "Squeeze", n.Squeeze, 0, 1e6)
	if len(faults) > 0 {
		return StripNeed{}, faults
	}
	n.Runs *= joints
	n.Length *= manway.Length(joints)
	var err error
	if n.Rolls, err = manway.Pieces(n.Length, n.Roll); err != nil {
		return StripNeed{}, err
	}
	n.Left = max(manway.Length(n.Rolls)*n.Roll-n.Length, 0)
	return n, nil
}

// Bead is gunned sealant.
type Bead struct {
	Width manway.Length // 1/16 in to 4 in
	Depth manway.Length // 1/16 in to 4 in; of a round bead both are its diameter
	Round bool          // pi/4 of the square
	Inner bool          // laid along the inner edge
	Outer bool          // laid along the outer edge; neither: on the centreline
	Tube  manway.Volume // of one tube, 1 fl oz to 10 gal
}

// Yield is the length of bead that one tube gives: tube/section. Source: geometry.
func (b Bead) Yield() manway.Length {
	return manway.Length(float64(b.Tube) / float64(b.section()))
}

func (b Bead) section() manway.Area {
	if b.Round {
		return math.Pi / 4 * b.Width.Times(b.Depth)
	}
	return b.Width.Times(b.Depth)
}

// BeadNeed is the gunned sealant that one joint needs.
type BeadNeed struct {
	Length manway.Length
	Volume manway.Volume
	Tubes  int
	Left   manway.Volume // in the last tube
}

// Bead is the sealant for beads along the joint's edges or its centreline:
// length x section, in whole tubes. It fails unless every length is within its
// range. Source: geometry; a US fluid ounce is 231/128 in3.
func (j Joint) Bead(b Bead) (BeadNeed, error) {
	var faults manway.InputErrors
	faults.Under("Joint", j.Validate())
	manway.Within(&faults, "Width", b.Width, manway.Inch/16, 4*manway.Inch)
	manway.Within(&faults, "Depth", b.Depth, manway.Inch/16, 4*manway.Inch)
	manway.Within(&faults, "Tube", b.Tube, manway.FluidOunce, 10*manway.Gallon)
	if len(faults) > 0 {
		return BeadNeed{}, faults
	}
	var n BeadNeed
	if b.Inner {
		n.Length += j.InsideLength()
	}
	if b.Outer {
		n.Length += j.OutsideLength()
	}
	if !b.Inner && !b.Outer {
		n.Length = j.Length()
	}
	n.Volume = b.section().Times(n.Length)
	var err error
	if n.Tubes, err = manway.Pieces(n.Volume, b.Tube); err != nil {
		return BeadNeed{}, err
	}
	n.Left = max(manway.Volume(n.Tubes)*b.Tube-n.Volume, 0)
	return n, nil
}

// Pack is a bag or pail of cement, mortar or grout.
type Pack struct {
	Mass  manway.Mass   // dry, 1 lb to 2000 lb
	Yield manway.Volume // in place, 0.001 ft3 to 100 ft3
}

// mixYield is the volume in place of a pound of bagged concrete mix, 0.0075
// ft3/lb: 0.60 ft3 of an 80 lb bag (trade pages; the standard, ASTM C387, was
// not read).
const mixYield = 0.0075 * float64(manway.CubicFoot) / float64(manway.Pound)

// MixBag is a bag of concrete mix of mass m.
func MixBag(m manway.Mass) Pack { return Pack{m, manway.Volume(float64(m) * mixYield)} }

// PackNeed is the cement that one volume needs.
type PackNeed struct {
	Volume manway.Volume
	Packs  int
	Left   manway.Volume // what the last pack would still give
}

// Cement is the cement or grout that fills the joint from its inner or outer
// edge to depth in, in whole packs:
//
//	volume = pi (inside + depth) depth closed        from inside
//	volume = pi (outside - depth) depth closed       from outside
//
// (4 for pi in a square ring). It fails unless depth is above 0 and at most the
// wall, and the pack is within its range. Source: geometry.
func (j Joint) Cement(depth manway.Length, fromOutside bool, p Pack) (PackNeed, error) {
	var faults manway.InputErrors
	faults.Under("Joint", j.Validate())
	if len(faults) == 0 {
		manway.Within(&faults, "depth", depth, manway.Millimetre, j.Wall())
	}
	faults.Under("Pack", p.Validate())
	if len(faults) > 0 {
		return PackNeed{}, faults
	}
	return p.For(j.plug(depth, fromOutside))
}

// plug is the volume that fills the joint to a depth from one edge.
func (j Joint) plug(depth manway.Length, fromOutside bool) manway.Volume {
	across := j.Inside + depth
	if fromOutside {
		across = j.Outside - depth
	}
	return j.round(across).Times(depth).Times(j.Closed)
}

// Validate returns the faults of p.
func (p Pack) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Mass", p.Mass, manway.Pound, 2000*manway.Pound)
	if !(p.Yield >= manway.CubicFoot/1000 && p.Yield <= 100*manway.CubicFoot) {
		faults.Add("Yield", strconv.FormatFloat(p.Yield.In(manway.CubicFoot), 'g', 6, 64)+" ft3", "0.001 ft3 to 100 ft3")
	}
	return faults.Err()
}

// For is the whole packs that give volume v: v/yield, rounded up. It fails unless
// the pack is within its range and v is not negative. Source: geometry; the yield
// of a bag of mix is that of [MixYield].
func (p Pack) For(v manway.Volume) (PackNeed, error) {
	var faults manway.InputErrors
	faults.Under("Pack", p.Validate())
	manway.NotNegative(&faults, "volume", v)
	if len(faults) > 0 {
		return PackNeed{}, faults
	}
	n, err := manway.Pieces(v, p.Yield)
	if err != nil {
		return PackNeed{}, err
	}
	return PackNeed{v, n, max(manway.Volume(n)*p.Yield-v, 0)}, nil
}

// Working is the joint's lengths and volume step by step.
func (j Joint) Working(s manway.System) manway.Working {
	t := func(x manway.Length) string { return x.Text(s) }
	factor := "pi"
	if j.Square {
		factor = "4"
	}
	volume := j.Volume().Text(s)
	if s == manway.US {
		volume = num(j.Volume().In(manway.CubicInch)) + " in3"
	}
	return manway.Working{
		{Symbol: "wall", Formula: "(outside - inside)/2", Numbers: "(" + t(j.Outside) + " - " + t(j.Inside) + ")/2", Value: t(j.Wall())},
		{Symbol: "length", Formula: factor + " (inside + outside)/2", Numbers: factor + " x (" + t(j.Inside) + " + " + t(j.Outside) + ")/2", Value: t(j.Length())},
		{Symbol: "volume", Formula: "length x wall x closed thickness", Numbers: t(j.Length()) + " x " + t(j.Wall()) + " x " + t(j.Closed), Value: volume},
	}
}

// Basis is where the joint's rules come from.
func (Joint) Basis() []manway.Citation {
	return []manway.Citation{{Source: astmC990, Place: "scope; half-volume rule in submittals"}, {Source: statics, Place: "lengths and volumes"}}
}
