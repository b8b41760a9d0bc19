package tank

import (
	"fmt"

	"manway.example/manway"
	"manway.example/manway/internal/concrete"
	"manway.example/manway/internal/soil"
)

// Basis is where the screening comes from.
func (RoofStrength) Basis() []manway.Citation { return strengthBasis[:] }

// Basis is where the screening comes from.
func (WallStrength) Basis() []manway.Citation { return strengthBasis[:] }

// Basis is where the screening comes from.
func (PartitionStrength) Basis() []manway.Citation { return strengthBasis[:] }

// Basis is where the screening comes from.
func (FloorStrength) Basis() []manway.Citation { return strengthBasis[:] }

var strengthBasis = [...]manway.Citation{
	{Source: timoshenko, Place: "thin plates; moments for reinforcement after Wood and Armer (Concrete 2, 1968)"},
	{Source: manway.ACI318_19, Place: "5.3, 14.5, 21.2, 22.3, 22.5, 22.6; chapter 27 and load tests are the way on"},
	{Source: manway.AASHTOLRFD, Place: "3.6.1.2, 3.6.2.2, 3.11.6.4"},
	{Source: manway.ASCE7_16, Place: "Table 4.3-1"},
	{Source: soil.Das, Place: "chapter 13"},
}

// timoshenko is the book of plates.
var timoshenko = &manway.Source{ID: "timoshenko-plates", Title: "Theory of Plates and Shells, 2nd ed.", Body: "Stephen P. Timoshenko and Sergius Woinowsky-Krieger, McGraw-Hill", Year: 1959}

// Text says the change in one sentence; it is empty where nothing is planned.
func (c RoofChange) Text() string {
	if !c.Known {
		return ""
	}
	verb := func(share float64) string {
		if share < 0 {
			return "takes " + percent(-share) + " off"
		}
		return "adds " + percent(share) + " to"
	}
	return fmt.Sprintf("what is planned %s the weight that the roof carries now, its own included, and %s its bending moment; this holds whether or not its strength is known", verb(c.Load), verb(c.Moment))
}

// Working is the roof step by step: the loads, the section, and every check.
// The moments come from the plate, whose mesh and error stand beside them.
func (r RoofStrength) Working(s manway.System) manway.Working {
	if len(r.Loadings) == 0 {
		return nil
	}
	w := manway.Working{
		{Symbol: "h", Formula: "roof - loss", Numbers: r.roof.Text(s) + " - " + r.Case.Loss.Text(s), Value: (r.roof - r.Case.Loss).Text(s)},
		{Symbol: "span along", Formula: "inside length + lesser of wall and roof", Value: r.along.Text(s)},
		{Symbol: "span across", Formula: "inside width + lesser of wall and roof", Value: r.across.Text(s)},
		{Symbol: "own weight", Formula: "density x g x h", Value: r.own.Text(s)},
		{Symbol: "on it", Formula: "soil x g x cover + surface", Value: r.soil.Text(s)},
	}
	w = r.strips.working(w, "bars along: ", "bars across: ")
	for _, l := range r.Loadings {
		where := ""
		if l.Moving {
			where = fmt.Sprintf(" at %s along, %s across", l.At.Along.Text(s), l.At.Across.Text(s))
		}
		for _, c := range l.Checks {
			w = append(w, checkStep(l.Name+where+", "+c.Name, c, s))
		}
	}
	return append(w, manway.Step{
		Symbol: "plate", Formula: "thin plate that can lift off its walls",
		Numbers: fmt.Sprintf("%d x %d cells, %d unknowns, residual %.1g", r.Solved.CellsX, r.Solved.CellsY, r.Solved.Unknowns, r.Solved.Residual),
		Value:   fmt.Sprintf("the last mesh moved the governing moment by %.2g %%", 100*r.Solved.Error),
	})
}

// Working is the walls step by step.
func (w WallStrength) Working(s manway.System) manway.Working {
	return checksWorking(w.strips, "bars level: ", "bars upright: ", w.Loadings, s)
}

// Working is the partition step by step.
func (p PartitionStrength) Working(s manway.System) manway.Working {
	return checksWorking(p.strips, "bars level: ", "bars upright: ", p.Loadings, s)
}

// Working is the floor step by step.
func (f FloorStrength) Working(s manway.System) manway.Working {
	if len(f.Loading.Checks) == 0 {
		return nil
	}
	return checksWorking(f.strips, "bars along: ", "bars across: ", []Loading{f.Loading}, s)
}

// strips are the sections of a member whose inside face is pulled, bars along
// and across.
type strips [2]concrete.Strip

func (m member) strips() strips {
	return strips{m.strip(insideFace, 0), m.strip(insideFace, 1)}
}

// working appends the strength in bending of the two sections, once where they
// are the same.
func (list strips) working(w manway.Working, along, across string) manway.Working {
	names := [...]string{along, across}
	for dir, strip := range list {
		name := names[dir]
		if list[0] == list[1] {
			name = "bars both ways: "
		}
		steps, err := strip.BendingWorking()
		if err != nil || dir == 1 && list[0] == list[1] {
			continue
		}
		for _, step := range steps {
			step.Symbol = name + step.Symbol
			w = append(w, step)
		}
	}
	return w
}

func checksWorking(list strips, along, across string, loadings []Loading, s manway.System) manway.Working {
	if len(loadings) == 0 {
		return nil
	}
	w := list.working(nil, along, across)
	for _, l := range loadings {
		for _, c := range l.Checks {
			w = append(w, checkStep(l.Name+", "+c.Name, c, s))
		}
	}
	return w
}

// checkStep is one check as a line of working.
func checkStep(name string, c manway.Check, s manway.System) manway.Step {
	step := manway.Step{
		Symbol: name, Formula: c.Combination.String() + " against capacity",
		Numbers: c.Kind.Text(c.Demand, s) + "/" + c.Kind.Text(c.Capacity, s), Value: c.Status.String(),
	}
	if use, ok := c.Use(); ok {
		step.Value = fmt.Sprintf("%.4g, %s", use, c.Status)
	}
	return step
}
