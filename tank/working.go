package tank

import (
	"fmt"

	"manway.example/manway"
)

// Working is the volume below a depth step by step, in inches and gallons, from
// the numbers of the tank, so that a person can redo it by hand.
//
// Errors: as Volume.
//
// Source: as Volume.
func (t *Tank) Working(depth manway.Length) (manway.Working, error) {
	v, err := t.Volume(depth)
	if err != nil {
		return nil, err
	}
	w := volumeSteps(t.shape, depth)
	hollow := manway.Volume(t.solid.volume(t.whole, float64(depth)))
	if len(t.Spec.Partitions) == 0 {
		return append(w, manway.Step{Symbol: "V", Formula: "volume below h", Value: gallons(v)}), nil
	}
	w = append(w, manway.Step{Symbol: "Vh", Formula: "volume below h, partitions not taken out", Value: gallons(hollow)})
	room := manway.Volume(0)
	for i := range t.n - 1 {
		p := &t.partitions[i]
		top := min(float64(depth), p.top)
		taken := manway.Volume(t.solid.volume(p.span, top))
		room += taken
		w = append(w, manway.Step{
			Symbol: fmt.Sprintf("P%d", i+1), Formula: "room of the partition",
			Numbers: fmt.Sprintf("from %s to %s, up to %s", inches(manway.Length(p.from)), inches(manway.Length(p.to)), inches(manway.Length(top))),
			Value:   gallons(taken),
		})
	}
	w = append(w, manway.Step{Symbol: "V", Formula: "Vh - P", Numbers: gallons(hollow) + " - " + gallons(room), Value: gallons(v)})
	for i := range t.n {
		c := &t.compartments[i]
		w = append(w, manway.Step{
			Symbol: fmt.Sprintf("V%d", i+1), Formula: "compartment",
			Numbers: fmt.Sprintf("from %s to %s", inches(c.From), inches(c.To)), Value: gallons(manway.Volume(c.liquid(float64(depth)))),
		})
	}
	return w, nil
}

func inches(x manway.Length) string  { return fmt.Sprintf("%.4g in", x.In(manway.Inch)) }
func gallons(v manway.Volume) string { return fmt.Sprintf("%.2f gal", v.In(manway.Gallon)) }
func squareInches(a float64) string {
	return fmt.Sprintf("%.2f in2", manway.Area(a).In(manway.SquareInch))
}
func step(symbol, formula, numbers, value string) manway.Step {
	return manway.Step{Symbol: symbol, Formula: formula, Numbers: numbers, Value: value}
}

// volumeSteps are the steps of a shape's own formula.
func volumeSteps(s Shape, depth manway.Length) manway.Working {
	w := manway.Working{step("h", "depth of liquid", "", inches(depth))}
	d := depth.In(manway.Inch)
	switch s := s.(type) {
	case Box:
		return append(w, boxSteps(s, d)...)
	case VerticalCylinder:
		a := s.solid().area(whole(s), 0)
		return append(w, step("A", "pi D^2/4", fmt.Sprintf("3.14159 x %.4g^2/4", s.Diameter.In(manway.Inch)), squareInches(a)), step("Vh", "A h", "", gallons(manway.Volume(a*float64(depth)))))
	case HorizontalCylinder:
		return append(w, barrelSteps(s.Diameter, s.Length, 1, depth, s.Inlet, s.Outlet)...)
	case HorizontalEllipse:
		return append(w, barrelSteps(s.Height, s.Length, float64(s.Width)/float64(s.Height), depth, Head{}, Head{})...)
	case Frustum:
		r0, r1 := s.BottomDiameter.In(manway.Inch)/2, s.TopDiameter.In(manway.Inch)/2
		r := r0 + (r1-r0)*d/s.Height.In(manway.Inch)
		return append(w, step("r", "r0 + (r1 - r0) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", r0, r1, r0, d, s.Height.In(manway.Inch)), fmt.Sprintf("%.4f in", r)),
			step("Vh", "pi h (r0^2 + r0 r + r^2)/3 / 231", fmt.Sprintf("3.14159 x %.4g (%.4g^2 + %.4g x %.4f + %.4f^2)/3/231", d, r0, r0, r, r), ""))
	case Sphere:
		return append(w, step("Vh", "pi h^2 (1.5 D - h)/3 / 231", fmt.Sprintf("3.14159 x %.4g^2 (1.5 x %.4g - %.4g)/3/231", d, s.Diameter.In(manway.Inch), d), ""))
	}
	return append(w, step("Vh", "read from the survey between its levels", "", ""))
}

func boxSteps(b Box, d float64) manway.Working {
	l, wide := b.Length.In(manway.Inch), b.Width.In(manway.Inch)
	if b.plumb() {
		return manway.Working{step("Vh", "L W h / 231", fmt.Sprintf("%.4g x %.4g x %.4g / 231", l, wide, d), "")}
	}
	lf, wf, h := b.FloorLength.In(manway.Inch), b.FloorWidth.In(manway.Inch), b.Height.In(manway.Inch)
	if lf == 0 {
		lf = l
	}
	if wf == 0 {
		wf = wide
	}
	w := manway.Working{
		step("Lh", "Lf + (L - Lf) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", lf, l, lf, d, h), fmt.Sprintf("%.4f in", lf+(l-lf)*d/h)),
		step("Wh", "Wf + (W - Wf) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", wf, wide, wf, d, h), fmt.Sprintf("%.4f in", wf+(wide-wf)*d/h)),
		step("Vh", "h (Lf Wf + (Lf Wh + Lh Wf)/2 + Lh Wh)/3 / 231", "", ""),
	}
	if b.Fillet > 0 {
		w = append(w, step("", "less the fillet, a quarter round of", inches(b.Fillet), "along the floor's edges"))
	}
	return w
}

func barrelSteps(diameter, length manway.Length, wide float64, depth manway.Length, inlet, outlet Head) manway.Working {
	r, d := diameter.In(manway.Inch)/2, depth.In(manway.Inch)
	a := wide * segment(float64(diameter)/2, float64(depth))
	w := manway.Working{}
	formula := "r^2 acos((r - h)/r) - (r - h) sqrt(2 r h - h^2)"
	if wide != 1 {
		formula = fmt.Sprintf("%.6g (%s)", wide, formula)
	}
	w = append(w, step("A", formula, fmt.Sprintf("r %.4g, h %.4g", r, d), squareInches(a)),
		step("Vs", "A L / 231", fmt.Sprintf("%s x %.4g in / 231", squareInches(a), length.In(manway.Inch)), gallons(manway.Volume(a*float64(length)))))
	for i, h := range [...]Head{inlet, outlet} {
		e := h.end(float64(diameter) / 2)
		if e == nil {
			continue
		}
		name, how := [...]string{"inlet head", "outlet head"}[i], "pi a h^2 (1 - h/3r)/2"
		if h.Form == SphericalCap || h.Form == Torispherical {
			how = "sections summed"
		}
		w = append(w, step([...]string{"Vi", "Vo"}[i], name+", "+h.Form.String()+": "+how,
			fmt.Sprintf("a %.4g, r %.4g, h %.4g", manway.Length(h.reach(float64(diameter)/2)).In(manway.Inch), r, d), gallons(manway.Volume(e.volume(float64(depth))))))
	}
	return w
}

// Working is the weight of each part: volume times density.
func (s Shell) Working() manway.Working {
	part := func(symbol, name string, p Part) manway.Step {
		numbers := ""
		if p.Volume != 0 {
			numbers = fmt.Sprintf("%.2f ft3 x %.1f lb/ft3", p.Volume.In(manway.CubicFoot), manway.Density(float64(p.Mass)/float64(p.Volume)).In(manway.PoundPerCubicFoot))
		}
		return step(symbol, name, numbers, fmt.Sprintf("%.0f lb", p.Mass.In(manway.Pound)))
	}
	if s.Weighed {
		return manway.Working{step("M", "as weighed", "", fmt.Sprintf("%.0f lb", s.Mass.In(manway.Pound)))}
	}
	return manway.Working{
		part("Mf", "floor", s.Floor), part("Mw", "walls", s.Walls), part("Mr", "roof less its openings", s.Roof), part("Mp", "partitions", s.Partitions),
		step("M", "Mf + Mw + Mr + Mp", "", fmt.Sprintf("%.0f lb", s.Mass.In(manway.Pound))),
	}
}
