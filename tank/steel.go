package tank

import (
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
		if part.steel.State > manway.SteelKnown {
			faults.Add(part.name+".State", part.steel.State.String(), "unknown, none or known")
		}
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

// strip is the member bent so that a face is pulled, with the bars of a
// direction. Where nothing counts near that face, a mesh of the other face that
// is known counts by its cover from this one. Which of two crossing layers
// lies inside is not known, so both are taken as the inner one.
func (m member) strip(face, dir int) concrete.Strip {
	near, far := m.steel.Inside, m.steel.Outside
	lost, farLost := m.lost, manway.Length(0)
	if face == outsideFace {
		near, far, lost, farLost = far, near, 0, m.lost
	}
	steel, layer := near.bars(dir), near
	if steel.State != manway.SteelKnown && far.bars(dir).State == manway.SteelKnown {
		steel, layer = far.bars(dir), far
		// from this face as built; what it has lost is taken off again
		steel.Cover = m.thickness + m.lost - steel.Cover - steel.Diameter
		steel.Cover = max(steel.Cover, 0)
		if steel.Cover == 0 || far.bars(dir).Cover <= farLost {
			steel = manway.Reinforcement{} // bare on its own side: its bond does not count
		}
	}
	crossing := layer.bars(1 - dir)
	return concrete.Strip{
		Concrete: m.concrete, Thickness: m.thickness, Lost: lost, Steel: steel,
		Inner: steel.State == manway.SteelKnown && crossing.State == manway.SteelKnown,
	}
}

// strength is what a member has in each face and direction.
type strength struct {
	member
	bend  [2][2]concrete.Standing // by face, then direction of the bars
	shear [2]concrete.Standing    // by direction, the lesser of the two faces
	depth manway.Length           // by which a load spreads to the support, and punches
}

// strength works the strengths of m out once.
func (m member) strength() (strength, error) {
	s := strength{member: m, depth: m.thickness}
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
			s.bend[face][dir] = bend
			if face == insideFace || worse(shear, s.shear[dir]) {
				s.shear[dir] = shear
			}
			if d := strip.EffectiveDepth(); !bend.Plain && d < s.depth {
				s.depth = d
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

// pull is the greatest Use that a field of moments makes of a face, apart for
// what counts and for what does not.
type pull struct {
	use      float64
	demand   float64
	standing concrete.Standing
	at       plate.Point
}

// zone is a part of a member with its own strength.
type zone struct {
	plate.Rect
	strength
}

// pulls finds, for each face, the worst place where its steel counts (0) and the
// worst where it does not (1). Where steel counts, the moments are those of Wood
// and Armer for its two directions; elsewhere the principal moment against the
// plain section, for comparison. far is the face that a positive moment pulls.
func pulls(f *plate.Field, s *strength, zones []zone, far int) (worst [2][2]pull) {
	f.Scan(func(p plate.Point, v plate.Value) {
		here := s
		for i := range zones {
			if z := &zones[i]; p.X >= z.X0 && p.X <= z.X1 && p.Y >= z.Y0 && p.Y <= z.Y1 {
				here = &z.strength
			}
		}
		sag, hog := v.M.WoodArmer()
		first, second, _ := v.M.Principal()
		for side := range 2 {
			face := far
			moments, principal := sag, first
			if side == 1 {
				face, moments, principal = 1-far, [2]float64{-hog[0], -hog[1]}, -second
			}
			for dir := range 2 {
				st := &here.bend[face][dir]
				demand, capacity, kind := moments[dir], st.Design, 0
				if st.Plain || st.Counts != manway.Pass {
					demand, kind = principal, 1
					if capacity == 0 {
						capacity = st.AsPlain
					}
				}
				w := &worst[face][kind]
				if use := demand / capacity; use > w.use {
					*w = pull{use, demand, *st, p}
				}
			}
		}
	})
	return worst
}
