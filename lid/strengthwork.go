package lid

import (
	"fmt"

	"manway.example/manway"
)

// Working is the screening step by step, in the units of the code's equations:
// loads, moments, strength, and each check. It is empty for a lid that is not
// judged.
func (s Strength) Working() manway.Working {
	j := s.judged
	if j.q == 0 {
		return nil
	}
	f := func(format string, v ...any) string { return fmt.Sprintf(format, v...) }
	q := manway.Pressure(j.q).In(manway.PSF)
	w := manway.Working{
		{Symbol: "h", Formula: "thickness - loss", Numbers: f("%.4g in - %.4g in", j.l.Thickness.In(manway.Inch), j.l.Loss.In(manway.Inch)), Value: f("%.4g in", s.Left.In(manway.Inch))},
		{Symbol: "q", Formula: "weight/area, the lid as made at its heaviest and what lies on it", Value: f("%.5g lbf/ft2", q)},
	}
	dead, live := perFoot(j.response.dead), perFoot(j.response.person)
	if s.Solved.Closed && !s.Chipped {
		a := s.Span.In(manway.Foot) / 2
		r := patchRadius(min(float64(boot), float64(s.Span)/4), float64(s.Left)) / float64(manway.Foot)
		p := manway.Force(j.person).In(manway.PoundForce)
		w = append(w,
			manway.Step{Symbol: "a", Formula: "span/2", Numbers: f("%.5g in/2", s.Span.In(manway.Inch)), Value: f("%.5g ft", a)},
			manway.Step{Symbol: "MD", Formula: "q a2 (3 + nu)/16", Numbers: f("%.5g x %.5g^2 x 3.2/16", q, a), Value: f("%.5g lbf ft/ft", dead)},
			manway.Step{Symbol: "ML", Formula: "W/(4 pi) ((1 + nu) ln(a/r) + 1 - (1 - nu) r2/(4 a2))", Numbers: f("%.5g/(4 pi) (1.2 ln(%.5g/%.5g) + 1 - 0.8 x %.5g^2/(4 x %.5g^2))", p, a, r, r, a), Value: f("%.5g lbf ft/ft", live)},
		)
	} else {
		how := f("plate of %d unknowns, last mesh moved it by %.2g %%", s.Solved.Unknowns, 100*s.Solved.Error)
		if s.Long == 0 {
			how = "disc on three points, greatest principal moment"
		}
		w = append(w,
			manway.Step{Symbol: "MD", Formula: how, Value: f("%.5g lbf ft/ft", dead)},
			manway.Step{Symbol: "ML", Formula: how, Value: f("%.5g lbf ft/ft", live)},
		)
	}
	section, err := j.l.strip(j.c.Steel).BendingWorking()
	if err == nil {
		w = append(w, section...)
	}
	for _, c := range s.Checks {
		if c.Kind != manway.Ratio {
			w = append(w, checkStep(c))
		}
	}
	return w
}

// checkStep is one check as a line of working.
func checkStep(c manway.Check) manway.Step {
	step := manway.Step{
		Symbol: c.Name, Formula: c.Combination.String() + " against capacity",
		Numbers: c.Kind.Text(c.Demand, manway.US) + "/" + c.Kind.Text(c.Capacity, manway.US), Value: c.Status.String(),
	}
	if use, ok := c.Use(); ok {
		step.Value = fmt.Sprintf("%.4g, %s", use, c.Status)
	}
	return step
}

// perFoot is a moment per metre in lbf ft/ft.
func perFoot(m float64) float64 {
	return manway.MomentPerLength(m).In(manway.PoundForceFootPerFoot)
}
