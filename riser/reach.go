package riser

import (
	"math"

	"manway.example/manway"
)

// Access is one opening in the roof of a tank and the ground over it, as the
// crew measured them.
type Access struct {
	Cover          manway.Length // straight down from grade to the roof at the middle of the opening, 0 to 30 ft
	Slope          manway.Angle  // of the ground, 0 to 45 deg
	Span           manway.Length // outside diameter of the riser at grade, needed on a slope; 0 to 12 ft
	From           Edge          // where Reveal is measured
	Reveal         manway.Length // finished top above grade, negative below it; -3 ft to 3 ft
	Settlement     manway.Length // by how much the riser may sink once it is set, 0 to 1 ft
	GradeRise      manway.Length // by how much grade will be raised, negative where it will be cut; -3 ft to 3 ft
	CoverThickness manway.Length // of the cover that stands on the top ring; 0 where it is let in; 0 to 1 ft
	RoofThickness  manway.Length // 0: not known; 0 to 3 ft
}

// Edge is a place at the rim of a riser in sloping ground.
type Edge uint8

// The places. The zero value is the uphill side, where water comes from.
const (
	Uphill Edge = iota
	Centre
	Downhill
)

var edges = [...]string{"uphill", "centre", "downhill"}

// String is the place in one word.
func (e Edge) String() string { return manway.Word(edges[:], e) }

// MarshalText is the same as String.
func (e Edge) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText accepts uphill, centre and downhill.
func (e *Edge) UnmarshalText(text []byte) error {
	return manway.ReadWord(e, "edge", edges[:], text)
}

// Reach is how high a riser must be.
type Reach struct {
	Access   Access
	Top      manway.Length // from the roof to the finished top of the cover as it is set
	Height   manway.Length // Top less the cover that stands on it: what rings and joints must make up
	NoRing   bool          // the roof and cover already stand that high; Height is 0
	Uphill   manway.Length // finished top above final grade on the uphill side once settled, negative below
	Centre   manway.Length // the same in the middle
	Downhill manway.Length // the same on the downhill side
	Inside   manway.Length // from the finished top to the underside of the roof: how far in a tool must go; 0 where the roof is not known
	Assumed  manway.Assumptions
	Cautions manway.Cautions
}

// ReachOf is the height from a roof to grade:
//
//	top    = cover + grade rise + reveal + settlement + edge
//	height = top - thickness of the cover standing on the rings
//
// where edge is span/2 x tan(slope) for a reveal measured on the uphill side,
// nothing in the middle and the negative of it on the downhill side. Where the
// roof already stands that high, Height is 0 and NoRing is set; the reveals are
// then those of the cover laid on the roof. A settlement that does not come
// leaves the top that much higher.
//
// It fails unless every length is within the range of its field. Source:
// geometry; rules for the reveal differ by state (30 TAC 285.38(c): at least 2
// in above grade; N.C. G.S. 130A-335.1(b): within 6 in).
func ReachOf(a Access) (Reach, error) {
	if err := a.validate(); err != nil {
		return Reach{}, err
	}
	half := float64(a.Span) / 2 * math.Tan(float64(a.Slope))
	final := float64(a.Cover) + float64(a.GradeRise)
	edge := [...]float64{Uphill: half, Centre: 0, Downhill: -half}[a.From]
	top := final + float64(a.Reveal) + float64(a.Settlement) + edge
	r := Reach{Access: a, Top: manway.Length(top), Height: manway.Length(top) - a.CoverThickness, Cautions: manway.LocalCode}
	if !(r.Height > 1e-9) {
		r.Height, r.NoRing, r.Top = 0, true, a.CoverThickness
	}
	middle := float64(r.Top) - float64(a.Settlement) - final
	if r.NoRing {
		middle = float64(r.Top) - final // nothing is set that could sink
	}
	r.Uphill, r.Centre, r.Downhill = manway.Length(middle-half), manway.Length(middle), manway.Length(middle+half)
	if a.RoofThickness > 0 {
		r.Inside = r.Top + a.RoofThickness
	}
	if a.Cover > 0 {
		r.Cautions |= manway.TrenchCollapse | manway.LocateUtilities
	}
	r.Cautions |= manway.GuardHole | manway.NeverEnter
	return r, nil
}

func (a Access) validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Cover", a.Cover, 0, 30*manway.Foot)
	manway.Within(&faults, "Slope", a.Slope, 0, 45*manway.Degree)
	manway.Within(&faults, "Span", a.Span, 0, 12*manway.Foot)
	if a.Slope > 0 && a.Span == 0 {
		faults.Add("Span", "0 in", "the outside diameter of the riser, on sloping ground")
	}
	if a.From > Downhill {
		faults.Add("From", a.From.String(), "uphill, centre or downhill")
	}
	manway.Within(&faults, "Reveal", a.Reveal, -3*manway.Foot, 3*manway.Foot)
	manway.Within(&faults, "Settlement", a.Settlement, 0, manway.Foot)
	manway.Within(&faults, "GradeRise", a.GradeRise, -3*manway.Foot, 3*manway.Foot)
	manway.Within(&faults, "CoverThickness", a.CoverThickness, 0, manway.Foot)
	manway.Within(&faults, "RoofThickness", a.RoofThickness, 0, 3*manway.Foot)
	if len(faults) == 0 && a.Cover+a.GradeRise < 0 {
		faults.Add("GradeRise", a.GradeRise.String(), "no cut below the roof: "+a.Cover.String()+" of cover at most")
	}
	return faults.Err()
}

// Working is the reach step by step.
func (r Reach) Working(s manway.System) manway.Working {
	a := r.Access
	t := func(x manway.Length) string { return x.Text(s) }
	edge := r.Top - a.Cover - a.GradeRise - a.Reveal - a.Settlement
	if r.NoRing {
		return manway.Working{
			{Symbol: "top", Formula: "cover laid on the roof", Value: t(r.Top)},
			{Symbol: "height", Formula: "nothing to make up", Value: t(0)},
		}
	}
	return manway.Working{
		{Symbol: "edge", Formula: "span/2 x tan(slope), reveal measured " + a.From.String(), Numbers: t(a.Span) + "/2 x tan(" + a.Slope.Text(s) + ")", Value: t(edge)},
		{Symbol: "top", Formula: "cover + grade rise + reveal + settlement + edge", Numbers: t(a.Cover) + " + " + t(a.GradeRise) + " + " + t(a.Reveal) + " + " + t(a.Settlement) + " + " + t(edge), Value: t(r.Top)},
		{Symbol: "height", Formula: "top - cover thickness", Numbers: t(r.Top) + " - " + t(a.CoverThickness), Value: t(r.Height)},
	}
}

// Basis is where the reach comes from.
func (Reach) Basis() []manway.Citation {
	return []manway.Citation{{Source: statics, Place: "levels"}, {Source: texas285, Place: "285.38(c)"}, {Source: carolina130A, Place: "(b)"}}
}
