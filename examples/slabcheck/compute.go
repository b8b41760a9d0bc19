package main

import (
	"errors"
	"fmt"
	"strconv"
	"sync"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// output is what was found of one record.
type output struct {
	values    []value // at the points
	extremes  plate.Extremes
	load      float64 // N
	reaction  float64
	reactions plate.Reactions
	uplift    plate.Uplift
	accuracy
	tank *tankOutput // of a record that is a tank
}

// accuracy is how far the figures can be relied on.
type accuracy struct {
	closed    bool // a closed form: no mesh
	meshes    int
	cells     [2]int
	unknowns  int
	error     float64 // of the governing moment, as a part of it
	errorW    float64 // of the largest deflection
	residual  float64
	converged bool
}

const defaultNu = 0.2 // of concrete

func nuOf(given *float64) float64 {
	if given == nil {
		return defaultNu
	}
	return *given
}

func compute(in *input) (output, error) {
	switch {
	case in.tank() != nil:
		return in.whole()
	case in.Slab != nil && in.Lid != nil:
		return output{}, manway.InputErrors{{Field: "lid", Value: "given beside slab", Want: "one of the two"}}
	case in.Lid != nil:
		return computeLid(in)
	case in.Slab == nil:
		return output{}, manway.InputErrors{{Field: "slab", Value: "none", Want: "a slab, a lid or a tank"}}
	}
	study := studies.Get().(*plate.Study)
	defer studies.Put(study)
	return computeSlab(in, study)
}

// studies keeps the memory of slabs that were solved for those to come.
var studies = sync.Pool{New: func() any { return new(plate.Study) }}

// computeSlab leaves the solved slab in study, case 0.
func computeSlab(in *input, study *plate.Study) (output, error) {
	slab, faults := in.plate()
	loads := in.loads(&faults)
	if len(faults) > 0 {
		return output{}, faults
	}
	if err := study.Run(slab, [][]plate.Load{loads}); err != nil {
		return output{}, in.explain(err)
	}
	c := &study.Cases[0]
	last := study.Meshes[len(study.Meshes)-1]
	out := output{extremes: c.Extremes, load: c.Load, reaction: c.Reaction, uplift: c.Uplift,
		accuracy: accuracy{meshes: len(study.Meshes), cells: [2]int{last.CellsX, last.CellsY}, unknowns: last.Unknowns,
			error: study.Error, errorW: study.ErrorW, residual: study.Residual, converged: study.Converged}}
	c.Reactions(&out.reactions)
	for i, p := range in.Points {
		if !(p.X >= 0 && float64(p.X) <= slab.Length*(1+1e-9) && p.Y >= 0 && float64(p.Y) <= slab.Width*(1+1e-9)) {
			faults.Add(fmt.Sprintf("points[%d]", i), p.X.Text(in.Units)+", "+p.Y.Text(in.Units), "a point on the slab")
			continue
		}
		v, solid := c.At(float64(p.X), float64(p.Y))
		out.values = append(out.values, value{v, !solid})
	}
	return out, faults.Err()
}

// value is what was found at a point; in an opening there is nothing to find.
type value struct {
	plate.Value
	open bool
}

// plate is the slab as the solver has it, with the lists that flags gave.
func (in *input) plate() (*plate.Slab, manway.InputErrors) {
	var faults manway.InputErrors
	s := *in.Slab
	s.Edges = either(s.Edges, in.Lists.Edges)
	s.Lines = either(s.Lines, in.Lists.Lines)
	s.Supports = either(s.Supports, in.Lists.Supports)
	s.Openings = either(s.Openings, in.Lists.Openings)
	s.Zones = either(s.Zones, in.Lists.Zones)

	p := &plate.Slab{Length: float64(s.Length), Width: float64(s.Width), Thickness: float64(s.Thickness),
		E: float64(s.E), Nu: nuOf(s.Nu), BearingOnly: s.BearingOnly}
	if n := len(s.Edges); n != 0 && n != len(p.Edges) {
		faults.Add("slab.edges", strconv.Itoa(n)+" of them", "4, at y=0, x=length, y=width, x=0")
	}
	for i, e := range s.Edges {
		if e == threePoints {
			faults.Add(fmt.Sprintf("slab.edges[%d]", i), e.String(), "simple, clamped or free")
		}
		if i < len(p.Edges) {
			p.Edges[i] = plate.Edge(e)
		}
	}
	for i, l := range s.Lines {
		switch {
		case (l.X == nil) == (l.Y == nil):
			faults.Add(fmt.Sprintf("slab.lines[%d]", i), "with x and y, or with neither", "one of x and y")
		case l.X != nil:
			p.Lines = append(p.Lines, plate.Line{Axis: plate.X, At: float64(*l.X)})
		default:
			p.Lines = append(p.Lines, plate.Line{Axis: plate.Y, At: float64(*l.Y)})
		}
	}
	for _, q := range s.Supports {
		p.Points = append(p.Points, plate.Point{X: float64(q.X), Y: float64(q.Y)})
	}
	for i, o := range s.Openings {
		field := fmt.Sprintf("slab.openings[%d]", i)
		if o.Shape == round {
			if o.Length != 0 || o.Width != 0 {
				faults.Add(field, "round with a length or width", "a diameter")
			}
			if o.Diameter == 0 {
				faults.Add(field+".diameter", "none", "the diameter of a round opening")
			}
			p.Openings = append(p.Openings, plate.RoundOpening(float64(o.X), float64(o.Y), float64(o.Diameter)))
			continue
		}
		if o.Diameter != 0 {
			faults.Add(field, "rect with a diameter", "length and width")
		}
		p.Openings = append(p.Openings, plate.RectOpening(float64(o.X), float64(o.Y), float64(o.Length), float64(o.Width)))
	}
	for _, z := range s.Zones {
		x, y := float64(z.X), float64(z.Y)
		p.Zones = append(p.Zones, plate.Zone{Rect: plate.Rect{X0: x, Y0: y, X1: x + float64(z.Length), Y1: y + float64(z.Width)},
			Thickness: float64(z.Thickness)})
	}
	return p, faults
}

func either[T any](own, other []T) []T {
	if own == nil {
		return other
	}
	return own
}

// explain puts the solver's faults in the words of the record.
func (in *input) explain(err error) error {
	var faults plate.Faults
	switch {
	case errors.As(err, &faults):
	case errors.Is(err, plate.ErrNotHeld):
		return manway.InputErrors{{Field: "slab.edges", Value: "too few supports", Want: "supports that hold every piece of the slab"}}
	case errors.Is(err, plate.ErrTips):
		return manway.InputErrors{{Field: "loads", Value: "the slab tips or lifts off its bearings", Want: "loads that leave it in balance"}}
	default:
		return err
	}
	var out manway.InputErrors
	for _, f := range faults {
		field, lengths := fieldOf(f.Field)
		value := strconv.FormatFloat(f.Value, 'g', 6, 64)
		if lengths {
			value = manway.Length(f.Value).Text(in.Units)
		}
		want := f.Want
		if f.Low != 0 || f.High != 0 {
			want = manway.Length(f.Low).Text(in.Units) + " to " + manway.Length(f.High).Text(in.Units)
		}
		out.Add(field, value, want)
	}
	return out
}
