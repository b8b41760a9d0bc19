package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"text/tabwriter"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/tank"
)

var command = record.Command[input, output]{
	Name:    "afloat",
	Doc:     record.Comment(source),
	Flags:   flags,
	ID:      func(in *input) string { return in.ID },
	Do:      compute,
	Partial: true,
	Text:    writeText,
	JSON:    writeJSON,
	Columns: []string{"id", "state", "factor", "required", "down_lbf", "uplift_lbf", "displaced_ft3", "shell_lb", "leave", "least_liquid_in", "water_limit_in", "groundwater"},
	Rows:    writeRow,
}

func writeJSON(j *record.JSON, in *input, out *output) {
	j.Text("id", in.ID)
	j.Text("state", out.State.String())
	if out.State == tank.NoUplift {
		j.Null("factor")
	} else {
		j.Number("factor", out.Factor)
	}
	j.Number("required", out.Required.Value)
	j.Text("required_by", out.Required.Source.String())
	j.Text("groundwater", in.Groundwater.String())
	writeForces(j, &out.Flotation)
	j.Number("shell_lb", out.shell.Mass.In(manway.Pound))
	j.Number("lift_point_along_in", out.shell.Centroid.Along.In(manway.Inch))
	j.Number("lift_point_across_in", out.shell.Centroid.Across.In(manway.Inch))
	j.Text("leave", out.Leave.String())
	if out.Leave == tank.LeaveAtLeast {
		j.Number("least_liquid_in", out.LeastLiquid.In(manway.Inch))
	} else {
		j.Null("least_liquid_in")
	}
	if out.limit.AnyLevel {
		j.Null("water_limit_in")
	} else {
		j.Number("water_limit_in", out.limit.Depth.In(manway.Inch))
	}
	if out.stages != nil {
		j.List("stages")
		for i := range out.stages {
			s := &out.stages[i]
			j.Object("")
			j.Text("stage", s.Name)
			j.Text("state", s.State.String())
			if s.State == tank.NoUplift {
				j.Null("factor")
			} else {
				j.Number("factor", s.Factor)
			}
			j.Number("down_lbf", s.Down.In(manway.PoundForce))
			j.Number("uplift_lbf", s.Uplift.In(manway.PoundForce))
			j.End()
		}
		j.End()
	}
	j.Any("assumed", out.Assumed)
	j.Any("cautions", out.Cautions)
}

// writeForces writes the terms of the balance.
func writeForces(j *record.JSON, f *tank.Flotation) {
	for _, term := range [...]struct {
		key string
		f   manway.Force
	}{
		{"shell_lbf", f.Shell}, {"lids_lbf", f.Lids}, {"risers_lbf", f.Risers}, {"contents_lbf", f.Contents},
		{"moist_soil_lbf", f.MoistSoil}, {"submerged_soil_lbf", f.SubmergedSoil}, {"ballast_lbf", f.Ballast},
		{"down_lbf", f.Down}, {"uplift_lbf", f.Uplift},
	} {
		j.Number(term.key, term.f.In(manway.PoundForce))
	}
	j.Number("displaced_ft3", f.Displaced.In(manway.CubicFoot))
}

func writeRow(r *record.Row, in *input, out *output) {
	r.Text(in.ID)
	r.Text(out.State.String())
	if out.State == tank.NoUplift {
		r.Empty()
	} else {
		r.Number(out.Factor)
	}
	r.Number(out.Required.Value)
	r.Number(out.Down.In(manway.PoundForce))
	r.Number(out.Uplift.In(manway.PoundForce))
	r.Number(out.Displaced.In(manway.CubicFoot))
	r.Number(out.shell.Mass.In(manway.Pound))
	r.Text(out.Leave.String())
	if out.Leave == tank.LeaveAtLeast {
		r.Number(out.LeastLiquid.In(manway.Inch))
	} else {
		r.Empty()
	}
	if out.limit.AnyLevel {
		r.Empty()
	} else {
		r.Number(out.limit.Depth.In(manway.Inch))
	}
	r.Text(in.Groundwater.String())
}

// water says beside a figure what groundwater it rests on.
func water(in *input) string {
	if in.Groundwater.Known {
		return "groundwater " + in.Groundwater.Depth.Text(in.Units) + " below grade"
	}
	return "groundwater not measured, taken at grade"
}

// up is a level rounded up to the next eighth of an inch, or millimetre, so that
// what is read off the page is never less than what was reckoned.
func up(x manway.Length, sys manway.System) manway.Length {
	tick := manway.Inch / 8
	if sys == manway.SI {
		tick = manway.Millimetre
	}
	return manway.Length(math.Ceil(float64(x/tick)-1e-6)) * tick
}

// factor is the factor of safety in words.
func factor(f *tank.Flotation) string {
	if f.State == tank.NoUplift {
		return "no uplift: the water stands below the tank"
	}
	return fmt.Sprintf("factor %.2f, asked for %.2f: %v", f.Factor, f.Required.Value, f.State)
}

func writeText(w io.Writer, in *input, out *output) error {
	name := in.ID
	if name == "" {
		name = "tank"
	}
	sys := in.Units
	record.Printf(w, sys, "%s with %v of liquid, %s\n%s\n\n", name, in.Liquid, water(in), factor(&out.Flotation))
	for _, step := range out.Working(sys) {
		fmt.Fprintf(w, "  %v\n", step)
	}
	fmt.Fprintln(w)
	switch out.Leave {
	case tank.LeaveNone:
		fmt.Fprintf(w, "Pumped dry it has the factor asked for (%s).\n", water(in))
	case tank.LeaveAtLeast:
		record.Printf(w, sys, "Do not pump below %v in any compartment (%s).\n", up(out.LeastLiquid, sys), water(in))
	default:
		fmt.Fprintf(w, "Not even full has it the factor asked for (%s): do not pump.\n", water(in))
	}
	if out.limit.AnyLevel {
		record.Printf(w, sys, "With %v of liquid it has the factor whatever the groundwater below grade.\n", in.Liquid)
	} else {
		record.Printf(w, sys, "With %v of liquid it has the factor where groundwater is found %v below grade or deeper.\n", in.Liquid, up(out.limit.Depth, sys))
	}
	record.Printf(w, sys, "The empty tank weighs %v; its centre is %v from the inlet end.\n", out.shell.Mass, out.shell.Centroid.Along)
	if out.stages != nil {
		fmt.Fprintf(w, "\nStep by step, %s:\n", water(in))
		t := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
		for i := range out.stages {
			fmt.Fprintf(t, "  %s\t%s\n", out.stages[i].Name, factor(&out.stages[i].Flotation))
		}
		if err := t.Flush(); err != nil {
			return err
		}
	}
	fmt.Fprintln(w)
	for _, a := range out.Assumed.List() {
		fmt.Fprintf(w, "Taken: %s. To replace it: %s.\n", a.Taken, a.Measure)
	}
	var sources []string
	for _, c := range out.Basis() {
		sources = append(sources, c.String())
	}
	fmt.Fprintf(w, "Sources: %s.\n", strings.Join(sources, "; "))
	for _, c := range out.Cautions.List() {
		fmt.Fprintln(w, c.Sentence)
	}
	return nil
}
