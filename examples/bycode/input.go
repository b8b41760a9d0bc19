package main

import (
	"flag"
	"fmt"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/examples/internal/tankinput"
	"manway.example/manway/tank"
)

// input is one tank and what was found at it.
type input struct {
	ID    string        `json:"id"`
	Units manway.System `json:"units"` // of the figures in words
	Rules string        `json:"rules"`
	tankinput.Tank
	InletInvert      manway.Length   `json:"inlet_invert"`
	OutletInvert     manway.Length   `json:"outlet_invert"`
	Bedrooms         int             `json:"bedrooms"`
	DailyFlow        manway.Flow     `json:"daily_flow"`
	InletBelow       *manway.Length  `json:"inlet_below"`
	InletAbove       *manway.Length  `json:"inlet_above"`
	OutletBelow      *manway.Length  `json:"outlet_below"`
	OutletAbove      *manway.Length  `json:"outlet_above"`
	AccessSizes      []manway.Length `json:"access_sizes"`
	AccessBelowGrade *manway.Length  `json:"access_below_grade"`
	SoilCover        *manway.Length  `json:"soil_cover"`
	CoverMass        manway.Mass     `json:"cover_mass"`
	CoverFastened    manway.Answer   `json:"cover_fastened"`
	SecondaryGuard   manway.Answer   `json:"secondary_guard"`
}

func flags(fs *flag.FlagSet, in *input) {
	fs.StringVar(&in.ID, "id", "", "`NAME` of the tank")
	record.UnitsFlag(fs, &in.Units)
	fs.StringVar(&in.Rules, "rules", "", "`ID` of the set of rules, such as us-va; a wrong one lists them")
	tankinput.Flags(fs, &in.Tank)
	fs.TextVar(&in.InletInvert, "inlet-invert", manway.Length(0), "`HEIGHT` over the floor")
	fs.TextVar(&in.OutletInvert, "outlet-invert", manway.Length(0), "`HEIGHT` over the floor")
	fs.IntVar(&in.Bedrooms, "bedrooms", 0, "`NUMBER` of bedrooms")
	fs.TextVar(&in.DailyFlow, "daily-flow", manway.Flow(0), "`FLOW`, such as 450 gpd")
	record.Optional(fs, &in.InletBelow, "inlet-below", "`DEPTH` of the inlet fitting below the liquid")
	record.Optional(fs, &in.InletAbove, "inlet-above", "`HEIGHT` of the inlet fitting above the liquid")
	record.Optional(fs, &in.OutletBelow, "outlet-below", "`DEPTH` of the outlet fitting below the liquid")
	record.Optional(fs, &in.OutletAbove, "outlet-above", "`HEIGHT` of the outlet fitting above the liquid")
	record.List(fs, &in.AccessSizes, "access-sizes", "least `SIZES` of the openings, with semicolons between them")
	record.Optional(fs, &in.AccessBelowGrade, "access-below-grade", "`DEPTH` of cover or riser top below grade; less than 0 is above")
	record.Optional(fs, &in.SoilCover, "soil-cover", "`DEPTH` of soil over the roof")
	fs.TextVar(&in.CoverMass, "cover-mass", manway.Mass(0), "`MASS` of the lightest cover")
	fs.TextVar(&in.CoverFastened, "cover-fastened", manway.Unknown, "`ANSWER`: yes or no")
	fs.TextVar(&in.SecondaryGuard, "secondary-guard", manway.Unknown, "`ANSWER`: yes or no")
}

// output is the verdict.
type output struct {
	rules tank.RuleSet
	tank.Judgement
}

// judge holds the tank against its rules.
func judge(in *input) (output, error) {
	spec, faults := in.Spec()
	spec.InletInvert, spec.OutletInvert = in.InletInvert, in.OutletInvert
	t, faults := tankinput.New(spec, faults)
	rules, err := tank.RuleSetOf(in.Rules)
	if err != nil {
		for _, f := range err.(manway.InputErrors) {
			faults.Add("Rules", f.Value, f.Want)
		}
	}
	if len(faults) > 0 {
		return output{}, faults
	}
	j, err := rules.Judge(in.facts(&t, &faults))
	if err != nil || len(faults) > 0 {
		return output{}, append(faults, tankinput.Renamed(err)...)
	}
	return output{rules, j}, nil
}

// facts are the tank's and those that were found at it.
func (in *input) facts(t *tank.Tank, faults *manway.InputErrors) tank.Facts {
	f := t.Facts()
	f.Bedrooms, f.DailyFlow = in.Bedrooms, in.DailyFlow
	f.CoverMass, f.CoverFastened, f.SecondaryGuard = in.CoverMass, in.CoverFastened, in.SecondaryGuard
	for to, from := range map[*manway.Reading]*manway.Length{
		&f.InletBelow: in.InletBelow, &f.InletAbove: in.InletAbove, &f.OutletBelow: in.OutletBelow, &f.OutletAbove: in.OutletAbove,
		&f.AccessBelowGrade: in.AccessBelowGrade, &f.SoilCover: in.SoilCover,
	} {
		if from != nil {
			*to = manway.Read(*from)
		}
	}
	for i, x := range in.AccessSizes {
		manway.Within(faults, fmt.Sprintf("AccessSizes[%d]", i), x, manway.Inch, 20*manway.Foot)
		if i == 0 || x < f.AccessSize.Length {
			f.AccessSize = manway.Read(x)
		}
	}
	return f
}
