package tank

import (
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/plate"
)

// StrengthTitle stands over every structural output of this package.
const StrengthTitle = "Unreviewed screening of what stands there, not a design"

// Steel is the steel of a slab or wall of the tank by its two faces. Where only
// one mesh is there it belongs to the face it is nearer to, and the other
// face stays unknown: the mesh then counts for both, each by its own cover.
type Steel struct {
	Inside  Layer // underside of the roof, upper side of the floor; of a partition the inlet side
	Outside Layer
}

// Layer is the steel near one face in two directions, its cover from that face
// as built. Along runs along the tank in roof and floor, level in a wall;
// Across runs across the tank, or upright in a wall. Both zero is steel of
// which nothing is known.
type Layer struct{ Along, Across manway.Reinforcement }

// Mesh is a layer of the same steel both ways.
func Mesh(r manway.Reinforcement) Layer { return Layer{r, r} }

// Validate returns the faults of s.
func (s Steel) Validate() error {
	var faults manway.InputErrors
	for _, part := range [...]struct {
		name  string
		steel manway.Reinforcement
	}{
		{"Inside.Along", s.Inside.Along}, {"Inside.Across", s.Inside.Across},
		{"Outside.Along", s.Outside.Along}, {"Outside.Across", s.Outside.Across},
	} {
		faults.Under(part.name, part.steel.Validate())
	}
	return faults.Err()
}

// bars gives the steel of a layer in a direction, 0 along and 1 across.
func (l Layer) bars(dir int) manway.Reinforcement {
	if dir == 0 {
		return l.Along
	}
	return l.Across
}

// Faces of a member.
const (
	insideFace = iota
	outsideFace
)

// member is a slab or wall of the tank as its strength sees it, all over the
// same.
type member struct {
	concrete  manway.Concrete
	thickness manway.Length // that is left
	lost      manway.Length // worn off the inside face
	steel     Steel
}

// farthest is how deep below the pulled face a mesh may lie and count.
const farthest = manway.Foot

// strip is the member bent so that a face is pulled, with the bars of a
// direction. Where nothing counts near that face, a mesh of the other face that
// is known counts by its cover from this one. Which of two crossing layers lies
// inside is not known, so both are taken with the least depth they can have: near
// the pulled face as the inner one, near the other as the outer one.
func (m member) strip(face, dir int) concrete.Strip {
	near, far := m.steel.Inside, m.steel.Outside
	lost, farLost := m.lost, manway.Length(0)
	if face == outsideFace {
		near, far, lost, farLost = far, near, 0, m.lost
	}
	steel, crossing := near.bars(dir), near.bars(1-dir)
	if steel.State != manway.SteelKnown && far.bars(dir).State == manway.SteelKnown {
		steel, crossing = far.bars(dir), manway.Reinforcement{}
		// from this face as built; what it has lost is taken off again
		steel.Cover = m.thickness + m.lost - steel.Cover - steel.Diameter
		steel.Cover = max(steel.Cover, 0)
		if steel.Cover == 0 || steel.Cover > farthest || far.bars(dir).Cover <= farLost {
			steel = manway.Reinforcement{} // too far, or bare on its own side: its bond does not count
		}
	}
	return concrete.Strip{
		Concrete: m.concrete, Thickness: m.thickness, Lost: lost, Steel: steel,
		Inner: steel.State == manway.SteelKnown && crossing.State == manway.SteelKnown,
	}
}

// strength is what a member has in each face and direction.
type strength struct {
	member
	bend  [2][2]concrete.Standing // by the face that is pulled, then direction of the bars
	shear [2][2]concrete.Standing
	depth [2]manway.Length // by face: the effective depth, or the thickness where no steel counts
}

// strength works the strengths of m out once.
func (m member) strength() (strength, error) {
	s := strength{member: m, depth: [2]manway.Length{m.thickness, m.thickness}}
	for dir := range 2 {
		for face := range 2 {
			strip := m.strip(face, dir)
			bend, err := strip.Bending()
			if err != nil {
				return s, err
			}
			shear, err := strip.Shear()
			if err != nil {
				return s, err
			}
			s.bend[face][dir], s.shear[face][dir] = bend, shear
			if d := strip.EffectiveDepth(); !bend.Plain && d < s.depth[face] {
				s.depth[face] = d
			}
		}
	}
	return s, nil
}

// worse reports whether a shows less than b: first by what counts, then by
// figure.
func worse(a, b concrete.Standing) bool {
	if ac, bc := a.Counts == manway.Pass, b.Counts == manway.Pass; ac != bc {
		return bc
	}
	return a.Design < b.Design
}

// made gathers what the strengths rest on.
func (s strength) made() (made manway.Assumptions, warn manway.Cautions) {
	for _, face := range s.bend {
		for _, st := range face {
			made |= st.Made
			warn |= st.Warn
		}
	}
	return made, warn
}

// elastic is Ec for the stiffness; the moments of an even slab do not depend
// on it.
func elastic(c manway.Concrete) float64 {
	e, err := concrete.ElasticModulus(c)
	if err != nil {
		return float64(concrete.SteelModulus) / 8 // cannot be: c was validated
	}
	return float64(e)
}

// poisson is Poisson's ratio of concrete, the usual value.
const poisson = 0.2

// measure names one moment out of a field at a point: of which face, in which
// direction of the bars, or the principal one.
type measure struct {
	face      int
	dir       int
	principal bool
}

// measures are all the measures of one moment: for the face that a positive
// moment pulls (0) and the other (1), those of Wood and Armer by direction and
// the principal one.
type measures [2][3]float64

const principal = 2

func measuresOf(v plate.Moment) measures {
	mean, diff := (v.X+v.Y)/2, (v.X-v.Y)/2
	half := math.Sqrt(diff*diff + v.XY*v.XY)
	sag, hog := v.WoodArmer()
	return measures{{sag[0], sag[1], mean + half}, {-hog[0], -hog[1], half - mean}}
}

// of picks a measure; far is the face that a positive moment pulls.
func (m measure) of(all *measures, far int) float64 {
	side, kind := 0, m.dir
	if m.face != far {
		side = 1
	}
	if m.principal {
		kind = principal
	}
	return all[side][kind]
}

// pull is the greatest Use that a field of moments makes of a face, apart for
// what counts and for what does not.
type pull struct {
	measure
	use      float64
	demand   float64
	standing *concrete.Standing
	at       plate.Point
}

// zone is a part of a member with its own strength.
type zone struct {
	plate.Rect
	strength
}

// strengthAt is the strength at a point: that of the last zone it lies in.
func strengthAt(p plate.Point, s *strength, zones []zone) *strength {
	for i := range zones {
		if z := &zones[i]; p.X >= z.X0 && p.X <= z.X1 && p.Y >= z.Y0 && p.Y <= z.Y1 {
			s = &z.strength
		}
	}
	return s
}

// measured is the measure by which a face is judged in a direction, and the
// strength to hold it against: where nothing counts, that of plain concrete.
func (s *strength) measured(face, dir int) (measure, float64) {
	st := &s.bend[face][dir]
	if st.Counts == manway.Pass && !st.Plain {
		return measure{face, dir, false}, st.Design
	}
	if st.Design > 0 {
		return measure{face, dir, true}, st.Design
	}
	return measure{face, dir, true}, st.AsPlain
}

// pulls finds, for each face, the worst place where its steel counts (0) and the
// worst where it does not (1). Where steel counts, the moments are those of Wood
// and Armer for its two directions; elsewhere the principal moment against what
// the section counts as, or has plain, for comparison. near tells where the face
// away from far is judged; nil is everywhere.
func pulls(f *plate.Field, s *strength, zones []zone, far int, near func(plate.Point) bool) (worst [2][2]pull) {
	var judged [2][2]struct {
		measure
		capacity float64
	}
	var last *strength // the one that judged is of
	f.Scan(func(p plate.Point, v plate.Moment) {
		here := strengthAt(p, s, zones)
		if here != last {
			last = here
			for face := range 2 {
				for dir := range 2 {
					by := &judged[face][dir]
					by.measure, by.capacity = here.measured(face, dir)
				}
			}
		}
		most := math.Max(math.Abs(v.X), math.Abs(v.Y)) + math.Abs(v.XY) // no measure is greater
		var all measures
		known := false
		for face := range 2 {
			for dir := range 2 {
				by := &judged[face][dir]
				kind := 0
				if by.principal {
					kind = 1
				}
				w := &worst[face][kind]
				if most <= w.use*by.capacity || face != far && near != nil && !near(p) {
					continue
				}
				if !known {
					all, known = measuresOf(v), true
				}
				demand := by.of(&all, far)
				if use := demand / by.capacity; more(use, w.use) {
					*w = pull{by.measure, use, demand, &here.bend[face][dir], p}
				}
			}
		}
	})
	return worst
}
