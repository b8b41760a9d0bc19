package lid

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
)

// BendCase is how a lid is carried and loaded.
type BendCase struct {
	Span   manway.Length // between the supports, across the short side; 0: the width of the lid
	Long   manway.Length // the same along a slab; 0: its length
	Person manway.Person
	Steel  manway.Reinforcement
}

// bendChecks is how many checks a Bending has.
const bendChecks = 3

// Bending is an unreviewed screening of a lid as a plate of plain concrete.
// No check in it ever passes: the code does not permit plain concrete to span
// free, unknown steel cannot be shown by arithmetic, and known steel is judged
// by the section with its steel. The figures are for comparison.
type Bending struct {
	Left         manway.Length          // thickness that is left
	StrengthLeft float64                // of the plain section, (left/thickness)2
	Span         manway.Length          // taken
	OwnMoment    manway.MomentPerLength // own weight and soil on top
	LiveMoment   manway.MomentPerLength // one person, on one boot at the centre
	Nominal      manway.MomentPerLength // 5 lambda sqrt(f'c) S
	Rupture      manway.MomentPerLength // at the modulus of rupture, 7.5 lambda sqrt(f'c) S
	Checks       [bendChecks]manway.Check
	Cautions     manway.Cautions
	Assumed      manway.Assumptions
	// MeasureFirst is the one assumption whose measurement would change the
	// screening most: the steel, else the strength, else the person.
	MeasureFirst manway.Assumptions

	person   manway.Person
	concrete manway.Concrete
	load     manway.Pressure // own weight and soil on top, on the area
	patch    manway.Length   // radius of the boot as the formula takes it
	long     manway.Length
	width    manway.Length
	oneWay   bool
	round    bool
}

// boot is the radius of the circle on which a person stands, on one boot at
// the worst place: common practice.
const boot = 3 * manway.Inch

// Title stands over every output of a Bending.
const Title = "Unreviewed screening of the lid in bending, not a design"

// Validate returns the faults of c.
func (c BendCase) Validate() error {
	var faults manway.InputErrors
	if c.Span != 0 {
		manway.Within(&faults, "Span", c.Span, 2*manway.Inch, mostWidth)
	}
	if c.Long != 0 {
		manway.Within(&faults, "Long", c.Long, 2*manway.Inch, mostLength)
	}
	faults.Under("Person", c.Person.Validate())
	faults.Under("Steel", c.Steel.Validate())
	return faults.Err()
}

// Bend gives the bending moments of a worn lid, simply supported all round,
// under its own weight with the soil on it and a person on one boot at its
// centre, against a section of plain concrete of the thickness that is left:
//
//	disc   own M = q a2 (3 + nu)/16
//	       person M = W/(4 pi) [(1 + nu) ln(a/r) + 1 - (1 - nu) r2/(4 a2)]
//	slab   the same by Levy's series, across the short side
//	piece  of several: a strip on its two ends, M = q L2/8 + W L/(4 B)
//	Mn = 5 lambda sqrt(f'c) h2/6, phi 0.60;  cracking at 7.5 lambda sqrt(f'c) h2/6   (psi, in)
//
// with a the radius of the support, r a boot of 3 in, nu = 0.2, h the thickness
// less the loss. The three checks are the own weight by 1.4 D, the person by 1.2
// D + 1.6 L, and twice the person as a hole cover must carry (29 CFR
// 1926.502(i)(2)). A plug and a stepped lid are taken at the full thickness in
// the middle; flange, shear and recesses are not judged here. Lids of other
// materials and pieces of a round lid are not judged: keep off.
//
// It fails with [manway.InputErrors] as [Lid.Validate] does, and where the
// span is beyond the lid. Sources: Timoshenko and Woinowsky-Krieger; Roark
// Table 11.2 and 11.4; ACI 318-19 14.5.2.1, 19.2.3.1.
func (l Lid) Bend(c BendCase) (Bending, error) {
	var faults manway.InputErrors
	w, err := l.Weigh()
	faults.Under("", err)
	faults.Under("", c.Validate())
	if c.Span > l.across() {
		faults.Add("Span", text(c.Span), "at most the lid's width, "+bound(l.across()))
	}
	if c.Long != 0 && (l.Shape.Round() || c.Long > l.Length) {
		faults.Add("Long", text(c.Long), "0 for a round lid, at most the length of a slab")
	}
	if err := faults.Err(); err != nil {
		return Bending{}, err
	}
	b := Bending{
		Left: l.left(), Span: c.Span,
		Cautions: manway.Screening | manway.KeepOffRoof | manway.GuardHole | manway.LocalCode,
		Assumed:  w.Assumed,
		oneWay:   l.Pieces > 1 && !l.Shape.Round(),
		round:    l.Shape.Round(),
	}
	if b.Span == 0 {
		b.Span = l.across()
	}
	left := ratio(b.Left, l.Thickness)
	b.StrengthLeft = left * left
	var made manway.Assumptions
	b.person, made = c.Person.Filled()
	b.Assumed |= made
	if l.Material == OfConcrete {
		b.section(l)
		b.moments(l, c, w)
	}
	if c.Steel.State == manway.SteelUnknown {
		b.Assumed |= manway.AssumedNoSteel
	}
	b.MeasureFirst = firstOf(b.Assumed, manway.AssumedNoSteel, manway.AssumedConcreteStrength, manway.AssumedPerson)
	b.judge(l, c.Steel)
	return b, nil
}

// thinnest is the thickness below which nothing is counted.
const thinnest = 0.25 * manway.Inch

// section fills in what the plain section has, per metre of width.
func (b *Bending) section(l Lid) {
	known, made := l.Concrete.Filled()
	b.Assumed |= made
	b.concrete = known
	if made&manway.AssumedConcreteStrength != 0 {
		b.Cautions |= manway.UnknownStrength
	}
	if b.Left < thinnest {
		return
	}
	plain, err := concrete.Plain{Concrete: known, Width: manway.Metre, Thickness: b.Left}.Flexure()
	rupture, err2 := concrete.ModulusOfRupture(known)
	if err != nil || err2 != nil {
		return // cannot be: both were validated with the lid
	}
	b.Nominal = manway.MomentPerLength(plain.Nominal)
	b.Rupture = manway.MomentPerLength(float64(rupture) * float64(plain.Modulus))
}

// moments fills in the moments of the loads.
func (b *Bending) moments(l Lid, c BendCase, w Weight) {
	area := l.topArea()
	q := float64(w.Heaviest.Weight())/float64(w.Volume)*float64(l.Thickness) + float64(w.OnTop.Weight())/area
	live := float64(b.person.Mass.Weight())
	span, long := float64(b.Span), float64(c.Long)
	if c.Long == 0 {
		long = float64(l.Length)
	}
	r := patchRadius(math.Min(float64(boot), span/4), float64(b.Left))
	b.load, b.patch, b.long, b.width = manway.Pressure(q), manway.Length(r), manway.Length(long), l.across()
	switch {
	case l.Shape.Round():
		b.OwnMoment = manway.MomentPerLength(discUniform(q, span/2, poisson))
		b.LiveMoment = manway.MomentPerLength(discPatch(live, r, span/2, poisson))
	case b.oneWay:
		b.OwnMoment = manway.MomentPerLength(q * long * long / 8)
		b.LiveMoment = manway.MomentPerLength(live * long / 4 / float64(l.across()))
	default:
		short, long := math.Min(span, long), math.Max(span, long)
		across, _ := slabUniform(long, short, poisson)
		b.OwnMoment = manway.MomentPerLength(across * q * short * short)
		b.LiveMoment = manway.MomentPerLength(slabPatch(live, r, long, short, poisson))
	}
}

// judge fills in the checks, none of which can pass.
func (b *Bending) judge(l Lid, steel manway.Reinforcement) {
	own, live := float64(b.OwnMoment), float64(b.LiveMoment)
	plain := manway.Citation{Source: manway.ACI318_19, Place: "14.5.2.1, 21.2.1"}
	check := func(name string, combination manway.Combination) manway.Check {
		f := combination.Factors()
		return manway.Check{
			Name: name, Kind: manway.KindMomentPerLength, Combination: combination,
			Demand: f.Dead*own + f.Live*live, Unfactored: own + live,
			Capacity: concrete.PhiPlain * float64(b.Nominal), Phi: concrete.PhiPlain, Source: plain,
		}
	}
	b.Checks[0] = check("bending under its own weight", manway.Dead)
	b.Checks[0].Unfactored = own
	b.Checks[1] = check("bending with a person on it", manway.DeadLive)
	cover := check("hole cover: twice the person", manway.Service)
	cover.Demand, cover.Unfactored = own+2*live, own+live
	cover.Capacity, cover.Phi = float64(b.Nominal), 0
	cover.Source = manway.Citation{Source: manway.OSHA1926, Place: "1926.502(i)(2)"}
	b.Checks[2] = cover
	status, reason := plainStatus(l, steel.State)
	for i := range b.Checks {
		b.Checks[i].Status, b.Checks[i].Reason = status, reason
	}
}

// plainStatus is what a comparison with plain concrete can say.
func plainStatus(l Lid, steel manway.SteelState) (manway.Status, string) {
	switch {
	case l.Material != OfConcrete:
		return manway.NotJudged, "only concrete is judged by its size: keep off"
	case l.Shape.Round() && l.Pieces > 1:
		return manway.NotJudged, "the pieces of a round lid are not judged: figures of the whole one for comparison"
	case steel == manway.SteelNone:
		return manway.NotPermitted, "the code does not permit plain concrete to span free: figures for comparison"
	case steel == manway.SteelKnown:
		return manway.NotJudged, "with its steel the lid is judged by its section: figures of plain concrete for comparison"
	}
	return manway.NotShown, "cannot be shown by arithmetic while the steel is not known: figures of plain concrete for comparison"
}

// Basis is where the screening comes from.
func (Bending) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: timoshenko, Place: "ch. 3 and 5, circular and rectangular plates, simply supported"},
		{Source: roark, Place: "Tables 11.2 and 11.4, cases 1a and 1b"},
		{Source: manway.ACI318_19, Place: "14.5.2.1, 19.2.3.1, 21.2.1"},
		manway.DeadLive.Source(),
		{Source: manway.OSHA1926, Place: "1926.502(i)(2)"},
	}
}
