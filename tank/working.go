package tank

import (
	"fmt"

	"manway.example/manway"
)

// Working is the volume below a depth step by step, in inches and gallons or in
// metres and litres, from the numbers of the tank, so that a person can redo it
// by hand.
//
// Errors: as Volume.
//
// Source: as Volume.
func (t *Tank) Working(depth manway.Length, sys manway.System) (manway.Working, error) {
	v, err := t.Volume(depth)
	if err != nil {
		return nil, err
	}
	u := rule{sys == manway.SI}
	w := u.volumeSteps(t.shape, depth)
	hollow := manway.Volume(t.solid.volume(t.whole, float64(depth)))
	if len(t.Spec.Partitions) == 0 {
		return append(w, manway.Step{Symbol: "V", Formula: "volume below h", Value: u.liquid(v)}), nil
	}
	w = append(w, manway.Step{Symbol: "Vh", Formula: "volume below h, partitions not taken out", Value: u.liquid(hollow)})
	room := manway.Volume(0)
	for i := range t.n - 1 {
		p := &t.partitions[i]
		top := min(float64(depth), p.top)
		taken := manway.Volume(t.solid.volume(p.span, top))
		room += taken
		w = append(w, manway.Step{
			Symbol: fmt.Sprintf("P%d", i+1), Formula: "room of the partition",
			Numbers: fmt.Sprintf("from %s to %s, up to %s", u.long(manway.Length(p.from)), u.long(manway.Length(p.to)), u.long(manway.Length(top))),
			Value:   u.liquid(taken),
		})
	}
	w = append(w, manway.Step{Symbol: "V", Formula: "Vh - P", Numbers: u.liquid(hollow) + " - " + u.liquid(room), Value: u.liquid(v)})
	for i := range t.n {
		c := &t.compartments[i]
		w = append(w, manway.Step{
			Symbol: fmt.Sprintf("V%d", i+1), Formula: "compartment",
			Numbers: fmt.Sprintf("from %s to %s", u.long(c.From), u.long(c.To)), Value: u.liquid(manway.Volume(c.liquid(float64(depth)))),
		})
	}
	return w, nil
}

// rule is what lengths are read off in: inches, or metres.
type rule struct{ metric bool }

func (u rule) of(x manway.Length) float64 {
	if u.metric {
		return x.In(manway.Metre)
	}
	return x.In(manway.Inch)
}

func (u rule) long(x manway.Length) string {
	if u.metric {
		return fmt.Sprintf("%.4g m", u.of(x))
	}
	return fmt.Sprintf("%.4g in", u.of(x))
}

func (u rule) liquid(v manway.Volume) string {
	if u.metric {
		return fmt.Sprintf("%.2f L", v.In(manway.Litre))
	}
	return fmt.Sprintf("%.2f gal", v.In(manway.Gallon))
}

func (u rule) area(a float64) string {
	if u.metric {
		return fmt.Sprintf("%.4f m2", a)
	}
	return fmt.Sprintf("%.2f in2", manway.Area(a).In(manway.SquareInch))
}

// to is what makes gallons of cubic inches, or litres of cubic metres.
func (u rule) to() string {
	if u.metric {
		return " x 1000"
	}
	return " / 231"
}

func step(symbol, formula, numbers, value string) manway.Step {
	return manway.Step{Symbol: symbol, Formula: formula, Numbers: numbers, Value: value}
}

// volumeSteps are the steps of a shape's own formula.
func (u rule) volumeSteps(s Shape, depth manway.Length) manway.Working {
	w := manway.Working{step("h", "depth of liquid", "", u.long(depth))}
	d := u.of(depth)
	switch s := s.(type) {
	case Box:
		return append(w, u.boxSteps(s, d)...)
	case VerticalCylinder:
		a := s.solid().area(whole(s), 0)
		return append(w, step("A", "pi D^2/4", fmt.Sprintf("3.14159 x %.4g^2/4", u.of(s.Diameter)), u.area(a)), step("Vh", "A h", "", u.liquid(manway.Volume(a*float64(depth)))))
	case HorizontalCylinder:
		return append(w, u.barrelSteps(s.Diameter, s.Length, 1, depth, s.Inlet, s.Outlet)...)
	case HorizontalEllipse:
		return append(w, u.barrelSteps(s.Height, s.Length, float64(s.Width)/float64(s.Height), depth, Head{}, Head{})...)
	case Frustum:
		r0, r1 := u.of(s.BottomDiameter)/2, u.of(s.TopDiameter)/2
		r := r0 + (r1-r0)*d/u.of(s.Height)
		return append(w, step("r", "r0 + (r1 - r0) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", r0, r1, r0, d, u.of(s.Height)), fmt.Sprintf("%.4f", r)),
			step("Vh", "pi h (r0^2 + r0 r + r^2)/3"+u.to(), fmt.Sprintf("3.14159 x %.4g (%.4g^2 + %.4g x %.4f + %.4f^2)/3", d, r0, r0, r, r)+u.to(), ""))
	case Sphere:
		return append(w, step("Vh", "pi h^2 (1.5 D - h)/3"+u.to(), fmt.Sprintf("3.14159 x %.4g^2 (1.5 x %.4g - %.4g)/3", d, u.of(s.Diameter), d)+u.to(), ""))
	}
	return append(w, step("Vh", "read from the survey between its levels", "", ""))
}

func (u rule) boxSteps(b Box, d float64) manway.Working {
	l, wide := u.of(b.Length), u.of(b.Width)
	if b.plumb() {
		return manway.Working{step("Vh", "L W h"+u.to(), fmt.Sprintf("%.4g x %.4g x %.4g", l, wide, d)+u.to(), "")}
	}
	lf, wf, h := u.of(b.FloorLength), u.of(b.FloorWidth), u.of(b.Height)
	if lf == 0 {
		lf = l
	}
	if wf == 0 {
		wf = wide
	}
	w := manway.Working{
		step("Lh", "Lf + (L - Lf) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", lf, l, lf, d, h), fmt.Sprintf("%.4f", lf+(l-lf)*d/h)),
		step("Wh", "Wf + (W - Wf) h/H", fmt.Sprintf("%.4g + (%.4g - %.4g) %.4g/%.4g", wf, wide, wf, d, h), fmt.Sprintf("%.4f", wf+(wide-wf)*d/h)),
		step("Vh", "h (Lf Wf + (Lf Wh + Lh Wf)/2 + Lh Wh)/3"+u.to(), "", ""),
	}
	if b.Fillet > 0 {
		w = append(w, step("", "less the fillet, a quarter round of", u.long(b.Fillet), "along the floor's edges"))
	}
	return w
}

func (u rule) barrelSteps(diameter, length manway.Length, wide float64, depth manway.Length, inlet, outlet Head) manway.Working {
	r, d := u.of(diameter)/2, u.of(depth)
	a := wide * segment(float64(diameter)/2, float64(depth))
	w := manway.Working{}
	formula := "r^2 acos((r - h)/r) - (r - h) sqrt(2 r h - h^2)"
	if wide != 1 {
		formula = fmt.Sprintf("%.6g (%s)", wide, formula)
	}
	w = append(w, step("A", formula, fmt.Sprintf("r %.4g, h %.4g", r, d), u.area(a)),
		step("Vs", "A L"+u.to(), u.area(a)+" x "+u.long(length)+u.to(), u.liquid(manway.Volume(a*float64(length)))))
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
			fmt.Sprintf("a %.4g, r %.4g, h %.4g", u.of(manway.Length(h.reach(float64(diameter)/2))), r, d), u.liquid(manway.Volume(e.volume(float64(depth))))))
	}
	return w
}

// Working is the weight of each part: volume times density.
func (s Shell) Working(sys manway.System) manway.Working {
	part := func(symbol, name string, p Part) manway.Step {
		numbers := ""
		if p.Volume != 0 && sys == manway.SI {
			numbers = fmt.Sprintf("%.3f m3 x %.0f kg/m3", p.Volume.In(manway.CubicMetre), float64(p.Mass)/float64(p.Volume))
		} else if p.Volume != 0 {
			numbers = fmt.Sprintf("%.2f ft3 x %.1f lb/ft3", p.Volume.In(manway.CubicFoot), manway.Density(float64(p.Mass)/float64(p.Volume)).In(manway.PoundPerCubicFoot))
		}
		return step(symbol, name, numbers, pounds(p.Mass, sys))
	}
	if s.Weighed {
		return manway.Working{step("M", "as weighed", "", pounds(s.Mass, sys))}
	}
	return manway.Working{
		part("Mf", "floor", s.Floor), part("Mw", "walls", s.Walls), part("Mr", "roof less its openings", s.Roof), part("Mp", "partitions", s.Partitions),
		step("M", "Mf + Mw + Mr + Mp", "", pounds(s.Mass, sys)),
	}
}

// pounds is a mass in whole pounds, or kilograms.
func pounds(m manway.Mass, sys manway.System) string {
	if sys == manway.SI {
		return fmt.Sprintf("%.0f kg", m.In(manway.Kilogram))
	}
	return fmt.Sprintf("%.0f lb", m.In(manway.Pound))
}
