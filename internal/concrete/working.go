package concrete

import (
	"fmt"
	"math"

	"manway.example/manway"
)

// BendingWorking is Bending step by step, per foot of width, in the inches and
// pounds of the code's equations: from the same inputs, so that a person can
// redo it by hand.
func (s Strip) BendingWorking() (manway.Working, error) {
	st, err := s.Bending()
	if err != nil {
		return nil, err
	}
	filled, _ := s.Concrete.Filled()
	fc, h := filled.Strength.In(manway.PSI), s.plain().counted().In(manway.Inch)
	var w manway.Working
	section := s.section()
	if steel := s.Steel; steel.State == manway.SteelKnown && section.Validate() == nil {
		f := section.flexure()
		d, db := section.Depth.In(manway.Inch), steel.Diameter.In(manway.Inch)
		as := AreaPerWidth(steel.Diameter, steel.Spacing).In(manway.Inch) * 12
		behind := "db/2"
		if s.Inner {
			behind = "3 db/2"
		}
		w = append(w,
			step("As", "12 pi db2/4/s", fmt.Sprintf("12 pi %.4g^2/4/%.4g", db, steel.Spacing.In(manway.Inch)), as, "in2/ft"),
			step("As least", "0.0018 x 12 h", fmt.Sprintf("0.0018 x 12 x %.4g", s.Thickness.In(manway.Inch)), LeastSlabRatio*12*s.Thickness.In(manway.Inch), "in2/ft"),
			step("d", "h - (cover - lost) - "+behind, fmt.Sprintf("%.4g - (%.4g - %.4g) - %s of %.4g", s.Thickness.In(manway.Inch), steel.Cover.In(manway.Inch), s.Lost.In(manway.Inch), behind, db), d, "in"),
			step("a", "As fs/(0.85 f'c 12)", fmt.Sprintf("%.4g x %.0f/(0.85 x %.0f x 12)", as, f.Stress.In(manway.PSI), fc), f.StressBlock.In(manway.Inch), "in"),
			step("eps_t", "0.003 (d - c)/c, c = a/beta1", fmt.Sprintf("0.003 (%.4g - %.4g)/%.4g", d, f.NeutralAxis.In(manway.Inch), f.NeutralAxis.In(manway.Inch)), f.Strain, ""),
			step("phi", "0.65 + 0.25 (eps_t - fy/Es)/0.003, 0.65 to 0.9", "", f.Phi, ""),
			step("phi Mn, reinforced", "phi As fs (d - a/2)/12", fmt.Sprintf("%.4g x %.4g x %.0f (%.4g - %.4g/2)/12", f.Phi, as, f.Stress.In(manway.PSI), d, f.StressBlock.In(manway.Inch)), perFoot(float64(f.Design)), "lbf ft/ft"),
		)
	}
	w = append(w,
		step("S", "12 h2/6", fmt.Sprintf("12 x %.4g^2/6", h), 2*h*h, "in3/ft"),
		step("phi Mn, plain", "0.6 x 5 sqrt(f'c) S/12, lambda "+fmt.Sprintf("%.3g", of(s.Concrete).lambda), fmt.Sprintf("0.6 x 5 x %.5g x %.4g/12", math.Sqrt(fc), 2*h*h), perFoot(st.AsPlain), "lbf ft/ft"),
	)
	counts := "counted"
	if st.Counts != manway.Pass {
		counts = st.Reason
	}
	return append(w, step("phi Mn", counts, "", perFoot(st.Design), "lbf ft/ft")), nil
}

// perFoot is a moment per metre in lbf ft/ft.
func perFoot(m float64) float64 {
	return manway.MomentPerLength(m).In(manway.PoundForceFootPerFoot)
}

func step(symbol, formula, numbers string, value float64, unit string) manway.Step {
	text := fmt.Sprintf("%.5g", value)
	if unit != "" {
		text += " " + unit
	}
	return manway.Step{Symbol: symbol, Formula: formula, Numbers: numbers, Value: text}
}
