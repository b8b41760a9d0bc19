package main

import (
	"fmt"
	"math"
	"strings"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// lidLoads answers for a round lid by closed forms.
type lidLoads struct {
	disc   plate.Disc
	three  bool
	loads  []plate.Load
	radius float64
}

func (in *input) lidLoads() (l lidLoads, faults manway.InputErrors) {
	d := in.Lid
	l.three = d.Edge == threePoints
	l.radius = float64(d.Diameter) / 2
	l.disc = plate.Disc{Radius: l.radius, Thickness: float64(d.Thickness), E: float64(d.E), Nu: nuOf(d.Nu), Clamped: d.Edge == edge(plate.Clamped)}
	if d.Edge == edge(plate.Free) {
		faults.Add("lid.edge", d.Edge.String(), "simple, clamped or three points")
	}
	l.loads = in.loads(&faults)
	for i, load := range l.loads {
		field := fmt.Sprintf("loads[%d]", i)
		switch p := load.(type) {
		case plate.Uniform:
		case plate.Patch:
			if l.three && (p.X != 0 || p.Y != 0) {
				faults.Add(field+".x", manway.Length(p.X).Text(in.Units), "a patch at the centre: the rim bears on three points")
			}
		default:
			faults.Add(field+".kind", in.Loads[i].Kind.String(), "uniform or patch on a lid")
		}
	}
	return l, faults
}

// at is the response at a point of the lid.
func (l *lidLoads) at(x, y float64) (v plate.Value, err error) {
	r, theta := math.Hypot(x, y), math.Atan2(y, x)
	if r > l.radius { // within the rounding of a rim point
		r = math.Min(r, l.radius*(1+1e-9))
		if r > l.radius {
			r = l.radius
		}
	}
	for _, load := range l.loads {
		switch p := load.(type) {
		case plate.Uniform:
			polar, err := l.disc.Uniform(p.Pressure, r)
			if err != nil {
				return v, err
			}
			v = add(v, cartesian(polar, 0, theta))
		case plate.Patch:
			if l.three {
				polar, err := l.disc.Concentric(p.Force, math.Sqrt(p.Length*p.Width/math.Pi), r)
				if err != nil {
					return v, err
				}
				v = add(v, cartesian(polar, 0, theta))
				continue
			}
			w, err := l.disc.Patch(p, plate.Point{X: x, Y: y})
			if err != nil {
				return v, err
			}
			v = add(v, w)
		}
	}
	if !l.three {
		return v, nil
	}
	polar, twist, err := l.disc.ThreePoint(l.total(), r, theta)
	if err != nil {
		return v, err
	}
	return add(v, cartesian(polar, twist, theta)), nil
}

// total is the load on the lid.
func (l *lidLoads) total() (sum float64) {
	for _, load := range l.loads {
		switch p := load.(type) {
		case plate.Uniform:
			sum += p.Pressure * math.Pi * l.radius * l.radius
		case plate.Patch:
			sum += p.Force
		}
	}
	return sum
}

func add(a, b plate.Value) plate.Value {
	return plate.Value{W: a.W + b.W, M: plate.Moment{X: a.M.X + b.M.X, Y: a.M.Y + b.M.Y, XY: a.M.XY + b.M.XY}}
}

// cartesian turns radial, tangential and twisting moments into x and y.
func cartesian(p plate.Polar, twist, theta float64) plate.Value {
	s, c := math.Sincos(theta)
	return plate.Value{W: p.W, M: plate.Moment{
		X:  p.Radial*c*c + p.Tangential*s*s - 2*twist*s*c,
		Y:  p.Radial*s*s + p.Tangential*c*c + 2*twist*s*c,
		XY: (p.Radial-p.Tangential)*s*c + twist*(c*c-s*s),
	}}
}

// scan visits points in rings all over the lid and on a grid under each patch,
// but none nearer than half the thickness to one of three points of support.
func (l *lidLoads) scan(visit func(x, y float64) error) error {
	const rings, around = 40, 72
	look := func(x, y float64) error {
		for k := range 3 {
			s, c := math.Sincos(float64(k) * 2 * math.Pi / 3)
			if l.three && math.Hypot(x-l.radius*c, y-l.radius*s) < l.disc.Thickness/2 {
				return nil
			}
		}
		return visit(x, y)
	}
	for i := range rings + 1 {
		n := around
		if i == 0 {
			n = 1
		}
		for k := range n {
			s, c := math.Sincos(2 * math.Pi * float64(k) / around)
			r := l.radius * float64(i) / rings
			if err := look(r*c, r*s); err != nil {
				return err
			}
		}
	}
	for _, load := range l.loads {
		p, ok := load.(plate.Patch)
		for k := 0; ok && k < 81; k++ {
			x, y := p.X+(float64(k%9)-4)/8*p.Length, p.Y+(float64(k/9)-4)/8*p.Width
			if err := look(x, y); err != nil {
				return err
			}
		}
	}
	return nil
}

func computeLid(in *input) (output, error) {
	l, faults := in.lidLoads()
	if len(faults) > 0 {
		return output{}, faults
	}
	out := output{load: l.total(), accuracy: accuracy{closed: true, converged: true}}
	out.reaction = out.load
	first := true
	err := l.scan(func(x, y float64) error {
		v, err := l.at(x, y)
		if err != nil {
			return err
		}
		out.extremes.Take(plate.Point{X: x, Y: y}, v, first)
		first = false
		return nil
	})
	if err != nil {
		return output{}, in.explainLid(err)
	}
	for i, p := range in.Points {
		x, y := float64(p.X), float64(p.Y)
		if !(math.Hypot(x, y) <= l.radius*(1+1e-9)) {
			faults.Add(fmt.Sprintf("points[%d]", i), p.X.Text(in.Units)+", "+p.Y.Text(in.Units), "a point on the lid")
			continue
		}
		v, err := l.at(x, y)
		if err != nil {
			return output{}, in.explainLid(err)
		}
		out.values = append(out.values, value{v, false})
	}
	return out, faults.Err()
}

// explainLid is explain with the names of a lid; its radius is half the diameter.
func (in *input) explainLid(err error) error {
	err = in.explain(err)
	if faults, ok := err.(manway.InputErrors); ok {
		for _, f := range faults {
			switch f.Field = strings.Replace(f.Field, "slab.", "lid.", 1); f.Field {
			case "lid.diameter":
				f.Value = in.Lid.Diameter.Text(in.Units)
			case "lid.x":
				f.Field = "loads"
			}
		}
	}
	return err
}
