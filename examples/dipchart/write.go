package main

import (
	"fmt"
	"io"
	"text/tabwriter"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
)

var command = record.Command[input, output]{
	Name:      "dipchart",
	Doc:       record.Comment(source),
	Flags:     flags,
	ID:        func(in *input) string { return in.ID },
	Do:        compute,
	Partial:   true,
	Text:      writeText,
	JSON:      writeJSON,
	Columns:   []string{"id", "reading_in", "depth_in", "gal", "gal_1", "gal_2", "gal_3", "gal_4"},
	Rows:      writeRows,
	Documents: map[string]func(io.Writer, *input, *output) error{"svg": writeSVG},
}

func writeJSON(j *record.JSON, in *input, out *output) {
	j.Text("id", in.ID)
	j.Number("full_gal", out.full.In(manway.Gallon))
	j.Number("liquid_depth_in", out.depth.In(manway.Inch))
	j.Number("liquid_gal", out.liquid.In(manway.Gallon))
	j.List("compartments")
	for _, c := range out.compartments[:out.n] {
		j.Object("")
		j.Number("gal", c.volume.In(manway.Gallon))
		j.Number("share", c.share)
		j.Number("gal_per_in", c.perInch.In(manway.Gallon))
		j.End()
	}
	j.End()
	j.List("chart")
	for _, row := range out.chart.Rows {
		j.Object("")
		if out.chart.FromRim {
			j.Number("reading_in", row.Reading.In(manway.Inch))
		}
		j.Number("depth_in", row.Depth.In(manway.Inch))
		j.Number("gal", row.Volume.In(manway.Gallon))
		j.List("compartments")
		for _, v := range row.Compartments[:out.n] {
			j.Object("")
			j.Number("gal", v.In(manway.Gallon))
			j.End()
		}
		j.End()
		j.End()
	}
	j.End()
	if codes := out.tank.Cautions.Codes(); len(codes) > 0 {
		j.Texts("cautions", codes)
	}
}

func writeRows(r *record.Row, in *input, out *output) {
	for i, row := range out.chart.Rows {
		if i > 0 {
			r.Next()
		}
		r.Text(in.ID)
		r.Number(row.Reading.In(manway.Inch))
		r.Number(row.Depth.In(manway.Inch))
		r.Number(row.Volume.In(manway.Gallon))
		for k, v := range row.Compartments {
			if k < out.n {
				r.Number(v.In(manway.Gallon))
			} else {
				r.Empty()
			}
		}
	}
}

// liquid writes a volume to the tenth of a gallon, or of a litre.
func liquid(v manway.Volume, sys manway.System) string {
	if sys == manway.SI {
		return fmt.Sprintf("%.1f", v.In(manway.Litre))
	}
	return fmt.Sprintf("%.1f", v.In(manway.Gallon))
}

// amount is a volume with its unit.
func amount(v manway.Volume, sys manway.System) string {
	if sys == manway.SI {
		return liquid(v, sys) + " L"
	}
	return liquid(v, sys) + " gal"
}

func writeText(w io.Writer, in *input, out *output) error {
	name := in.ID
	if name == "" {
		name = "tank"
	}
	sys, unit, per, step, liquids := in.Units, "gal", "inch", manway.Inch, manway.Gallon
	if sys == manway.SI {
		unit, per, step, liquids = "L", "centimetre", manway.Centimetre, manway.Litre
	}
	fmt.Fprintf(w, "%s: %s, full to the roof %s\n", name, in.Shape.Kind, amount(out.full, sys))
	fmt.Fprintf(w, "At %s of liquid: %s\n", out.depth.Text(sys), amount(out.liquid, sys))
	for i, c := range out.compartments[:out.n] {
		rate := float64(c.perInch/liquids) * float64(step/manway.Inch)
		fmt.Fprintf(w, "  compartment %d: %s, %.1f %%, %.2f %s per %s\n", i+1, amount(c.volume, sys), 100*c.share, rate, unit, per)
	}
	if low, high, known, err := out.tank.Range(out.depth); err == nil && known {
		fmt.Fprintf(w, "As the sizes are known: %s to %s\n", amount(low, sys), amount(high, sys))
	}
	if in.Working {
		steps, err := out.tank.Working(out.depth, sys)
		if err != nil {
			return err
		}
		for _, step := range steps {
			fmt.Fprintf(w, "  %v\n", step)
		}
	}
	for _, a := range (out.tank.Assumed & manway.AssumedInsideDepth).List() {
		fmt.Fprintf(w, "Taken: %s; measure %s\n", a.Taken, a.Measure)
	}
	for _, c := range out.tank.Cautions.List() {
		fmt.Fprintf(w, "%s\n", c.Sentence)
	}
	return writeChart(w, out, sys, unit)
}

func writeChart(w io.Writer, out *output, sys manway.System, unit string) error {
	t := tabwriter.NewWriter(w, 0, 0, 2, ' ', tabwriter.AlignRight)
	if out.chart.FromRim {
		fmt.Fprint(t, "down from rim\t")
	}
	fmt.Fprintf(t, "depth\t%s\t", unit)
	for i := range out.n {
		if out.n > 1 {
			fmt.Fprintf(t, "%d\t", i+1)
		}
	}
	fmt.Fprintln(t)
	for _, row := range out.chart.Rows {
		if out.chart.FromRim {
			fmt.Fprintf(t, "%s\t", row.Reading.Text(sys))
		}
		fmt.Fprintf(t, "%s\t%s\t", row.Depth.Text(sys), liquid(row.Volume, sys))
		for _, v := range row.Compartments[:out.n] {
			if out.n > 1 {
				fmt.Fprintf(t, "%s\t", liquid(v, sys))
			}
		}
		fmt.Fprintln(t)
	}
	return t.Flush()
}
