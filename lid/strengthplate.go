package lid

import (
	"errors"
	"fmt"
	"math"
	"sync"

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

// threePoints raises the moments to those of a disc that rests on three points,
// over the whole of it but half a thickness round each point: its own weight, and
// a person in the middle, at the rim midway between two points, and half way
// there. The rim between two points bends most, as a beam from one to the other.
func (j *judge) threePoints(d plate.Disc, r float64) error {
	var most response
	places, polar := clearOfPoints(d)
	total := math.Pi * d.Radius * d.Radius
	for _, at := range polar {
		own, err := d.Uniform(j.q, at[0])
		if err != nil {
			return plateFaults(err)
		}
		add, twist, err := d.ThreePoint(1, at[0], at[1])
		if err != nil {
			return plateFaults(err)
		}
		most.dead = math.Max(most.dead, principal(own, add, twist, j.q*total))
	}
	side := r * math.Sqrt(math.Pi)
	outermost := math.Sqrt(d.Radius*d.Radius-side*side/4) - side/2
	most.sink = math.Inf(1)
	for _, share := range [...]float64{0, 0.5, 1} {
		boots := plate.Patch{X: -share * outermost, Length: side, Width: side, Force: j.person}
		list, err := d.ThreePointPatch(boots, append(places, plate.Point{X: boots.X}))
		if err != nil {
			return plateFaults(err)
		}
		for _, v := range list {
			first, second, _ := v.M.Principal()
			most.person = math.Max(most.person, math.Max(first, -second))
		}
		most.sink = math.Min(most.sink, list[len(list)-1].W) // the stiffest place stops a fall hardest
	}
	j.response = most
	return nil
}

// clearOfPoints are places over half the disc, which is the same on both sides of
// a load on the axis, half a thickness or more from the three points; also by
// radius and angle.
func clearOfPoints(d plate.Disc) (places []plate.Point, polar [][2]float64) {
	const rings, turns = 9, 12
	for i := range rings {
		for k := range turns + 1 {
			r, theta := d.Radius*float64(i)/(rings-1), math.Pi*float64(k)/turns
			sin, cos := math.Sincos(theta)
			x, y := r*cos, r*sin
			if math.Min(math.Hypot(x-d.Radius, y), math.Hypot(x+d.Radius/2, y-d.Radius*math.Sqrt(3)/2)) < d.Thickness/2 {
				continue
			}
			places, polar = append(places, plate.Point{X: x, Y: y}), append(polar, [2]float64{r, theta})
		}
	}
	return places, polar
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

// studies is the memory in which slabs are solved, used again from one to the
// next: nothing of what it held before counts.
var studies = sync.Pool{New: func() any { return new(plate.Study) }}

// solve runs the loads, each alone, on three meshes or more. A load alone lets
// the corners rise further than with the slab's weight on them, which is on the
// safe side.
func (j *judge) solve(s *plate.Slab, loads ...[]plate.Load) ([]slabAnswer, error) {
	st := studies.Get().(*plate.Study)
	defer studies.Put(st)
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
	length, width, force := j.clip(on)
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
	// in the middle, where the tire's rectangle bends the disc more across it
	// than along it
	v, err := j.disc().Patch(plate.Patch{Length: length, Width: width, Force: force}, plate.Point{})
	if err != nil {
		return 0, plateFaults(err)
	}
	moment, _, _ := v.M.Principal()
	if j.s.Chipped { // a boot at the rim between two points bends it more than a tire anywhere
		moment = math.Max(moment, j.response.person/j.person*force)
	}
	return moment, nil
}

// clip is the part of a pressed rectangle in the middle of the lid that is on it,
// and the force on that. On a disc it is the longest rectangle of the same
// breadth that fits, under the force on all that is on the disc.
func (j *judge) clip(on soil.Contact) (length, width, force float64) {
	span, long := float64(j.s.Span), float64(j.s.Long)
	length, width = float64(on.Length), float64(on.Width)
	if long > 0 {
		length, width = math.Min(length, long), math.Min(width, span)
		return length, width, float64(on.Pressure) * length * width
	}
	force = float64(on.Pressure) * onDisc(length, width, span/2)
	short, other := &length, &width
	if width < length {
		short, other = other, short
	}
	*short = math.Min(*short, span/math.Sqrt2)
	*other = math.Min(*other, math.Sqrt(span*span-*short**short))
	return length, width, force
}

// onDisc is the area that a rectangle and a disc with the same middle share.
func onDisc(length, width, radius float64) float64 {
	x, y := math.Min(length/2, radius), math.Min(width/2, radius)
	if math.Hypot(x, y) <= radius {
		return 4 * x * y
	}
	under := func(x float64) float64 { // the quarter disc from 0 to x
		return (x*math.Sqrt(radius*radius-x*x) + radius*radius*math.Asin(x/radius)) / 2
	}
	flat := math.Sqrt(radius*radius - y*y) // up to there the rectangle is lower
	return 4 * (flat*y + under(x) - under(flat))
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
