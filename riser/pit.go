package riser

import (
	"manway.example/manway"
	"manway.example/manway/internal/soil"
)

// SoilType is the type by which the sides of a pit are sloped.
type SoilType uint8

// The types that are offered. Ground round a tank is previously disturbed:
// type C unless a competent person declares type B. Type A and short-term
// slopes are not offered.
const (
	TypeC         SoilType = iota // 1 1/2 horizontal to 1 vertical
	TypeBDeclared                 // 1 to 1, declared B by a competent person on site
)

var soilTypes = [...]string{"C", "B-declared"}

// String is C or B-declared.
func (s SoilType) String() string { return manway.Word(soilTypes[:], s) }

// MarshalText is the same as String.
func (s SoilType) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText accepts C and B-declared.
func (s *SoilType) UnmarshalText(text []byte) error {
	return manway.ReadWord(s, "soil type", soilTypes[:], text)
}

// Slope is the steepest slope of the type, horizontal to one vertical. Source: 29
// CFR 1926 Subpart P, Appendix B, Table B-1, pits below 20 ft deep.
func (s SoilType) Slope() float64 {
	if s == TypeBDeclared {
		return 1
	}
	return 1.5
}

// Earth is the kind of ground, for its change of volume and for digging.
type Earth uint8

// The kinds of ground.
const (
	Loam Earth = iota // common earth
	Sand
	Clay
)

var earths = [...]struct {
	word  string
	spoil soil.Spoil
	hand  float64 // hours to dig one cubic metre by hand, trench to 1 m deep
}{
	Loam: {"loam", soil.CommonEarth, 2.20},
	Sand: {"sand", soil.SandSpoil, 1.20},
	Clay: {"clay", soil.ClaySpoil, 3.30},
}

var earthWords = [...]string{earths[0].word, earths[1].word, earths[2].word}

// String is loam, sand or clay.
func (e Earth) String() string { return manway.Word(earthWords[:], e) }

// MarshalText is the same as String.
func (e Earth) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText accepts loam, sand and clay.
func (e *Earth) UnmarshalText(text []byte) error {
	return manway.ReadWord(e, "earth", earthWords[:], text)
}

// Loose is the volume in the pile of one volume in the bank. Source: FM 5-434
// Table 1-1; the sand row is confirmed by a Navy training manual, loam and clay are
// remembered, clay on the high side.
func (e Earth) Loose() float64 { return float64(e.volumes().Loose) }

// Compacted is the volume, compacted, of one volume in the bank. Source: that of
// [Earth.Loose].
func (e Earth) Compacted() float64 { return float64(e.volumes().Compacted) }

func (e Earth) volumes() soil.Volumes {
	if int(e) >= len(earths) {
		return soil.Volumes{}
	}
	v, _ := earths[e].spoil.FromBank(1) // of a valid kind of ground
	return v
}

// Pit is a hole dug down to a part of the tank.
type Pit struct {
	Length   manway.Length // of the part to expose, or its diameter, 6 in to 60 ft
	Width    manway.Length // of a rectangular part; 0 for a round one
	Working  manway.Length // space all round at the bottom, 0 to 6 ft
	Depth    manway.Length // from grade to the bottom, in the middle, below 20 ft
	Ground   manway.Angle  // slope of the ground, rising along Length; 0 to 30 deg
	Type     SoilType
	Shored   bool           // sides held vertical by a protective system instead of sloped
	Earth    Earth          //
	Density  manway.Density // in the bank, moist, 60 to 150 lb/ft3; 0: not known, taken heavy
	Standing manway.Volume  // of riser, cover or tank that stands in the pit, not dug
	Refill   manway.Volume  // of what will stand in the pit afterwards, not refilled
	Water    manway.Groundwater
}

// Dig is what a pit amounts to.
type Dig struct {
	Pit       Pit
	Slope     float64          // horizontal to one vertical; 0 shored
	Bottom    [2]manway.Length // length and width, or diameter and 0
	Top       [2]manway.Length // the same at grade, in plan; on a slope the width across it of a round pit too
	Uphill    manway.Length    // from the middle to the rim uphill, in plan
	Downhill  manway.Length    // the same downhill
	Deepest   manway.Length    // from the bottom up to the rim uphill: what the rules go by
	TopArea   manway.Area      // of the opening at grade, in plan
	Hole      manway.Volume    // of the whole pit
	Bank      manway.Volume    // dug, as it lay
	Loose     manway.Volume    // dug, in the pile
	Backfill  manway.Volume    // space to refill, compacted
	Over      manway.Volume    // bank volume left over after refilling; negative is short of soil
	Spoil     manway.Mass      // dug
	Setback   manway.Length    // least distance of the pile from the edge
	Protect   bool             // deep enough that the sides must be sloped or held in any case
	Ladder    bool
	AirTest   bool
	HandHours manway.Duration // to dig by hand, one person
	FillHours manway.Duration // to backfill and compact by hand, one person
	Wet       bool            // the bottom is below the groundwater taken
	Assumed   manway.Assumptions
	Cautions  manway.Cautions
}

// Rules of 29 CFR 1926 Subpart P.
const (
	protectFrom  = 5 * manway.Foot  // 1926.652(a)(1)
	ladderFrom   = 4 * manway.Foot  // 1926.651(c)(2)
	airTestBelow = 4 * manway.Foot  // 1926.651(g)
	spoilSetback = 2 * manway.Foot  // 1926.651(j)(2)
	engineerFrom = 20 * manway.Foot // 1926.652 Appendix B
)

// handFill is the hours to backfill and compact by hand, 1.00 h/m3 of the table
// that gives the digging. A book for industrial plants has 2.80 h/yd3 to dig and
// 3.00 h/yd3 to fill, with access limits that open ground does not have.
const handFill = 1.00 * float64(manway.Hour)

// DigOf is the volume, spoil, rules and hand hours of a pit by the prismoidal
// formula, exact for plane sides and for a cone:
//
//	V = h [a b + s h (a + b) + 4/3 s^2 h^2]     a x b rectangle at the bottom
//	V = pi h/3 (R^2 + R r + r^2)                round
//
// with a, b and r the part to expose and the working space on both sides of it,
// s the slope (1.5 for type C, 1 for a declared B, 0 where the sides are
// shored). On ground that slopes by g = tan(ground) the rectangle is the sum of
// three prismoids, over the bottom and over each end, and the round pit a cone
// cut by a tilted plane, H above its point:
//
//	V = pi/3 s^2 H^3/(1 - s^2 g^2)^1.5 - pi/3 r^3/s,  H = h + r/s
//
// and rules of depth go by the rim uphill. Bank = V less what stands in the pit; loose and compacted by the
// earth's factors; spoil weight = bank x density.
//
// It fails unless every field is in its range; a pit of more than 20 ft is for
// an engineer and is refused. Sources: 29 CFR 1926.651 and 652 with Appendix B
// Table B-1; FM 5-434 Table 1-1; hours: trade table of hand trenches to 1 m deep
// by soil, with its backfill of 1.00 h/m3.
func DigOf(p Pit) (Dig, error) {
	if err := p.validate(); err != nil {
		return Dig{}, err
	}
	d := Dig{Pit: p, Setback: spoilSetback}
	d.measure()
	d.Bank = d.Hole - p.Standing
	d.Loose = d.Bank * manway.Volume(p.Earth.Loose())
	d.Backfill = d.Hole - p.Refill
	d.Over = d.Bank - d.Backfill/manway.Volume(p.Earth.Compacted())
	if p.Density == 0 {
		d.Assumed = manway.AssumedSoil
	}
	d.Spoil = d.Bank.Times(d.density())
	d.Protect = manway.Reached(d.Deepest, protectFrom)
	d.Ladder = manway.Reached(d.Deepest, ladderFrom)
	d.AirTest = d.Deepest > airTestBelow
	d.HandHours = manway.Duration(d.Bank) * manway.Duration(earths[p.Earth].hand) * manway.Hour
	d.FillHours = manway.Duration(float64(d.Backfill) * handFill)
	water, made := p.Water.Taken()
	d.Wet, d.Assumed = p.Depth > water, d.Assumed|made
	d.Cautions = manway.TrenchCollapse | manway.LocateUtilities | manway.AsbestosCement | manway.KeepOffRoof | manway.MayFloat | manway.MayCave | manway.LocalCode | manway.RememberedFigure
	if made != 0 {
		d.Cautions |= manway.GroundwaterUnknown
	}
	return d, nil
}

func (p Pit) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Length", p.Length, 6*manway.Inch, 60*manway.Foot)
	if p.Width != 0 {
		manway.Within(&faults, "Width", p.Width, 6*manway.Inch, 60*manway.Foot)
	}
	manway.Within(&faults, "Working", p.Working, 0, 6*manway.Foot)
	if !(p.Depth > 0) || p.Depth >= engineerFrom {
		faults.Add("Depth", p.Depth.String(), "above 0 and below 20 ft; a deeper pit is designed by an engineer")
	}
	if p.Type > TypeBDeclared {
		faults.Add("Type", p.Type.String(), "C or B-declared")
	}
	if p.Earth > Clay {
		faults.Add("Earth", p.Earth.String(), "loam, sand or clay")
	}
	if p.Density != 0 {
		manway.Within(&faults, "Density", p.Density, 60*manway.PoundPerCubicFoot, 150*manway.PoundPerCubicFoot)
	}
	faults.Under("Water", p.Water.Validate())
	manway.NotNegative(&faults, "Standing", p.Standing)
	manway.NotNegative(&faults, "Refill", p.Refill)
	manway.Within(&faults, "Ground", p.Ground, 0, 30*manway.Degree)
	if len(faults) == 0 {
		p.validateHole(&faults)
	}
	return faults.Err()
}

// validateHole adds the faults of sizes that are each in their range.
func (p Pit) validateHole(faults *manway.InputErrors) {
	h := p.hole()
	if h.m*h.g > 0.9 || h.g*h.a/2 >= h.h {
		faults.Add("Ground", p.Ground.String(), "ground that the sides reach and that lies above the whole bottom; level it first")
		return
	}
	d := Dig{Pit: p}
	d.measure()
	if d.Deepest >= engineerFrom {
		faults.Add("Ground", p.Ground.String(), "less than 20 ft deep at the rim uphill; a deeper pit is designed by an engineer")
	}
	manway.Within(faults, "Standing", p.Standing, 0, d.Hole)
	manway.Within(faults, "Refill", p.Refill, 0, d.Hole)
}

// density is that of the soil in the bank, taken heavy where it is not known.
func (d Dig) density() manway.Density {
	if d.Pit.Density == 0 {
		return manway.HeavySoilMoist
	}
	return d.Pit.Density
}

// Working is the pit's volume and spoil step by step; b is 0 where it is round.
func (d Dig) Working(s manway.System) manway.Working {
	t := func(x manway.Length) string { return x.Text(s) }
	v := func(x manway.Volume) string {
		if s == manway.SI {
			return manway.KindVolume.Text(float64(x), s)
		}
		return num(x.In(manway.CubicFoot)) + " ft3"
	}
	p, slope := d.Pit, num(d.Slope)
	h, a, b := t(p.Depth), t(d.Bottom[0]), t(d.Bottom[1])
	volume := manway.Step{Symbol: "V", Value: v(d.Hole)}
	switch {
	case p.Ground > 0 && p.Width == 0 && !p.Shored:
		volume.Formula, volume.Numbers = "pi/3 s^2 H^3/(1 - s^2 g^2)^1.5 - pi/3 r^3/s, H = h + r/s", "s "+slope+", g tan("+p.Ground.Text(s)+"), h "+h+", r "+a+"/2"
	case p.Ground > 0 && !p.Shored:
		volume.Formula, volume.Numbers = "prismoids over the bottom and both ends", "a "+a+", b "+b+", h "+h+", s "+slope+", g tan("+p.Ground.Text(s)+")"
	case p.Width == 0:
		volume.Formula, volume.Numbers = "pi h/3 (R^2 + R r + r^2)", "pi x "+h+"/3, R "+t(d.Top[0])+"/2, r "+a+"/2"
	default:
		volume.Formula, volume.Numbers = "h [a b + s h (a + b) + 4/3 s^2 h^2]", "h "+h+", a "+a+", b "+b+", s "+slope
	}
	return manway.Working{volume,
		{Symbol: "bank", Formula: "V - what stands in it", Numbers: v(d.Hole) + " - " + v(p.Standing), Value: v(d.Bank)},
		{Symbol: "loose", Formula: "bank x " + num(p.Earth.Loose()), Numbers: v(d.Bank) + " x " + num(p.Earth.Loose()), Value: v(d.Loose)},
		{Symbol: "backfill", Formula: "V - what will stand in it", Numbers: v(d.Hole) + " - " + v(p.Refill), Value: v(d.Backfill)},
		{Symbol: "spoil", Formula: "bank x density", Numbers: v(d.Bank) + " x " + d.density().Text(s), Value: d.Spoil.Text(s)},
	}
}

// Basis is where the pit's rules and factors come from.
func (Dig) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.OSHA1926, Place: "1926.651, 1926.652, Appendix B Table B-1"},
		{Source: statics, Place: "prismoidal formula"},
		{Source: fm5434, Place: "Table 1-1"},
		{Source: handTrench, Place: "hand trench to 1 m; backfill and compact"},
	}
}
