package lid

import (
	"errors"
	"fmt"
	"math"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/plate"
	"manway.example/manway/internal/soil"
)

// response is what the plate does under its loads, one by one and unfactored.
type response struct {
	dead, person float64 // greatest principal moments, N m/m
	sink         float64 // under a standing person, m
}

// disc is the lid as a round plate.
func (j *judge) disc() plate.Disc {
	return plate.Disc{Radius: float64(j.s.Span) / 2, Thickness: float64(j.s.Left), E: j.modulus(), Nu: poisson}
}

// modulus is Ec of the lid's concrete.
func (j *judge) modulus() float64 {
	e, err := concrete.ElasticModulus(j.l.Concrete)
	if err != nil {
		return 1 // cannot be: the lid was validated
	}
	return float64(e)
}

// respond fills in the response.
func (j *judge) respond() error {
	if j.s.Long > 0 {
		return j.slabResponse()
	}
	d := j.disc()
	r := patchRadius(math.Min(float64(boot), d.Radius/2), d.Thickness)
	j.response = response{
		dead:   discUniform(j.q, d.Radius, poisson),
		person: discPatch(j.person, r, d.Radius, poisson),
	}
	p, err := d.Concentric(j.person, r, 0)
	if err != nil {
		return plateFaults(err)
	}
	j.response.sink = p.W
	j.s.Solved = Solved{Closed: true, Converged: true}
	if j.s.Chipped {
		return j.threePoints(d, r)
	}
	return nil
}

// threePoints raises the moments to those of a disc that rests on three points:
// the symmetric answer and what the points add, over the whole disc but half a
// thickness round each point.
func (j *judge) threePoints(d plate.Disc, r float64) error {
	total := math.Pi * d.Radius * d.Radius
	var most response
	const rings, turns = 24, 12
	for i := range rings {
		at := (d.Radius - d.Thickness/2) * float64(i) / (rings - 1)
		own, err := d.Uniform(j.q, at)
		if err != nil {
			return plateFaults(err)
		}
		load, err := d.Concentric(j.person, r, at)
		if err != nil {
			return plateFaults(err)
		}
		for k := range turns + 1 {
			theta := math.Pi / 3 * float64(k) / turns
			add, twist, err := d.ThreePoint(1, at, theta)
			if err != nil {
				return plateFaults(err)
			}
			most.dead = math.Max(most.dead, principal(own, add, twist, j.q*total))
			most.person = math.Max(most.person, principal(load, add, twist, j.person))
			most.sink = math.Max(most.sink, load.W+j.person*math.Abs(add.W))
		}
	}
	j.response = most
	return nil
}

// principal is the greater principal moment by size of a symmetric answer and
// what a force on three points adds.
func principal(p, add plate.Polar, twist, force float64) float64 {
	radial, tangential := p.Radial+force*add.Radial, p.Tangential+force*add.Tangential
	mean, half := (radial+tangential)/2, math.Hypot((radial-tangential)/2, force*twist)
	return math.Abs(mean) + half
}

// slab is the lid as a rectangular plate, its length along x: on a whole seat it
// bears all round and can lift off; one of several pieces, or a chipped seat,
// leaves it its two short sides.
func (j *judge) slab() plate.Slab {
	s := plate.Slab{
		Length: float64(j.s.Long), Width: float64(j.s.Span), Thickness: float64(j.s.Left),
		E: j.modulus(), Nu: poisson, BearingOnly: true,
	}
	if j.l.Pieces > 1 || j.s.Chipped {
		s.Edges[plate.SideY0], s.Edges[plate.SideY1] = plate.Free, plate.Free
		s.Width = float64(j.l.across())
	}
	return s
}

// slabResponse solves the slab under its own weight and a person in its middle
// and, where its long sides are free, at one of them.
func (j *judge) slabResponse() error {
	s := j.slab()
	side := float64(boot) * math.Sqrt(math.Pi) // a square of the boot's area
	length, width := math.Min(side, s.Length/2), math.Min(side, s.Width/2)
	y := s.Width / 2
	if s.Edges[plate.SideY0] == plate.Free {
		y = width / 2
	}
	dead := []plate.Load{plate.Uniform{Pressure: j.q}}
	boots := []plate.Load{plate.Patch{X: s.Length / 2, Y: y, Length: length, Width: width, Force: j.person}}
	cases, err := j.solve(&s, dead, boots)
	if err != nil {
		return err
	}
	j.response = response{cases[0].moment, cases[1].moment, cases[1].sink}
	return nil
}

// answer of one load case.
type slabAnswer struct{ moment, sink float64 }

// solve runs the loads, each alone, on three meshes or more. A load alone lets
// the corners rise further than with the slab's weight on them, which is on the
// safe side.
func (j *judge) solve(s *plate.Slab, loads ...[]plate.Load) ([]slabAnswer, error) {
	var st plate.Study
	if err := st.Run(s, loads); err != nil {
		return nil, plateFaults(err)
	}
	list := make([]slabAnswer, len(st.Cases))
	for i := range st.Cases {
		e := &st.Cases[i].Extremes
		list[i] = slabAnswer{math.Abs(e.Governing().Value), e.W.Value}
	}
	j.s.Solved = Solved{
		Unknowns: st.Unknowns(), Error: math.Max(j.s.Solved.Error, st.Error),
		Residual: math.Max(j.s.Solved.Residual, st.Residual), Converged: st.Converged,
	}
	return list, nil
}

// wheelMoment is the greatest moment under a wheel in the middle.
func (j *judge) wheelMoment(on soil.Contact) (float64, error) {
	length, width := j.clip(on)
	force := float64(on.Pressure) * length * width
	if j.s.Long > 0 {
		s := j.slab()
		y := s.Width / 2
		if s.Edges[plate.SideY0] == plate.Free {
			y = width / 2
		}
		cases, err := j.solve(&s, []plate.Load{plate.Patch{X: s.Length / 2, Y: y, Length: length, Width: width, Force: force}})
		if err != nil {
			return 0, err
		}
		return cases[0].moment, nil
	}
	d := j.disc()
	r := math.Min(math.Sqrt(length*width/math.Pi), d.Radius)
	moment := discPatch(force, patchRadius(r, d.Thickness), d.Radius, poisson)
	if j.s.Chipped {
		person, load := j.response.person, j.person
		if bound := person / load * force; bound > moment { // the points add by the force alone
			moment = bound
		}
	}
	return moment, nil
}

// plateFaults turns what the plate refuses into faults of the lid.
func plateFaults(err error) error {
	var faults plate.Faults
	if !errors.As(err, &faults) {
		return manway.InputErrors{{Field: "Seat", Value: err.Error(), Want: "a lid that its seat holds"}}
	}
	var list manway.InputErrors
	for _, f := range faults {
		list.Add("Lid."+f.Field, fmt.Sprintf("%g (SI)", f.Value), f.Want)
	}
	return list
}
