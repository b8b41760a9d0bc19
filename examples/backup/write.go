package main

import (
	"fmt"
	"io"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/hydraulics"
)

var command = record.Command[input, output]{
	Name:      "backup",
	Doc:       record.Comment(source),
	Flags:     flags,
	ID:        func(in *input) string { return in.ID },
	Do:        compute,
	Text:      writeText,
	JSON:      writeJSON,
	Columns:   []string{"id", "time_min", "level_1_in", "level_2_in", "level_3_in", "level_4_in", "inflow_gal_per_min", "outflow_gal_per_min"},
	Rows:      writeRows,
	Documents: map[string]func(io.Writer, *input, *output) error{"svg": writeSVG},
}

func writeRows(r *record.Row, in *input, out *output) {
	for i, now := range out.routed.Series {
		if i > 0 {
			r.Next()
		}
		r.Text(in.ID)
		r.Number(now.Time.In(manway.Minute))
		for k, level := range now.Levels {
			if k < out.routed.Compartments {
				r.Number(level.In(manway.Inch))
			} else {
				r.Empty()
			}
		}
		r.Number(now.Inflow.In(manway.GallonPerMinute))
		r.Number(now.Out.In(manway.GallonPerMinute))
	}
}

func writeJSON(j *record.JSON, in *input, out *output) {
	r := out.routed
	j.Text("id", in.ID)
	j.Number("outlet_in", out.route.OutletInvert.In(manway.Inch))
	j.Number("peak_in", r.Peak.In(manway.Inch))
	j.Number("peak_over_outlet_in", (r.Peak - out.route.OutletInvert).In(manway.Inch))
	j.Number("peak_at_min", r.PeakAt.In(manway.Minute))
	for _, mark := range []struct {
		key string
		at  hydraulics.Span
	}{{"inlet_at_min", r.InletAt}, {"roof_at_min", r.RoofAt}, {"spill_at_min", r.SpillAt}} {
		if mark.at.Known {
			j.Number(mark.key, mark.at.Time.In(manway.Minute))
		} else {
			j.Null(mark.key)
		}
	}
	j.Number("in_gal", r.In.In(manway.Gallon))
	j.Number("out_gal", r.Out.In(manway.Gallon))
	j.Number("spilled_gal", r.Spilled.In(manway.Gallon))
	j.Number("stored_gal", r.Stored.In(manway.Gallon))
	j.Number("imbalance", r.Imbalance)
	j.List("heads")
	for _, h := range out.head {
		j.Object("")
		j.Text("at", h.name)
		j.Number("flow_gal_per_min", h.flow.In(manway.GallonPerMinute))
		j.Number("clear_in", h.head.Clear.In(manway.Inch))
		if h.head.Closed {
			j.Null("head_in")
		} else {
			j.Number("head_in", h.head.Head.In(manway.Inch))
		}
		j.End()
	}
	j.End()
	j.List("series")
	for _, now := range out.routed.Series {
		j.Object("")
		j.Number("time_min", now.Time.In(manway.Minute))
		j.List("levels_in")
		for _, level := range now.Levels[:r.Compartments] {
			j.Number("", level.In(manway.Inch))
		}
		j.End()
		j.Number("inflow_gal_per_min", now.Inflow.In(manway.GallonPerMinute))
		j.Number("outflow_gal_per_min", now.Out.In(manway.GallonPerMinute))
		j.End()
	}
	j.End()
	j.Any("cautions", r.Cautions)
}

// clock is a time from the start as hours and minutes.
func clock(t manway.Duration) string {
	minutes := int(t.In(manway.Minute) + 0.5)
	return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
}

// marked is when a level was reached, or that it was not.
func marked(at hydraulics.Span) string {
	if !at.Known {
		return "not reached"
	}
	return "reached at " + clock(at.Time)
}

func writeText(w io.Writer, in *input, out *output) error {
	s, r := in.Units, out.routed
	if in.ID != "" {
		fmt.Fprintln(w, in.ID)
	}
	fmt.Fprintf(w, "Outlet %s, %.4g %% open, invert at %s\n", out.route.Outlet.Diameter.Text(s), 100*out.route.Outlet.Open, out.route.OutletInvert.Text(s))
	for _, h := range out.head {
		if h.flow == 0 {
			continue
		}
		if h.head.Closed {
			fmt.Fprintf(w, "  %s, %s: closed, nothing gets through\n", h.name, h.flow.Text(s))
			continue
		}
		if h.head.Head > out.roof-out.route.OutletInvert {
			fmt.Fprintf(w, "  %s, %s: would stand above the roof if it went on, at %s over the invert if the outlet were clear\n", h.name, h.flow.Text(s), h.head.Clear.Text(s))
			continue
		}
		fmt.Fprintf(w, "  %s, %s: stands %s over the invert if it goes on, %s if the outlet were clear\n", h.name, h.flow.Text(s), h.head.Head.Text(s), h.head.Clear.Text(s))
	}
	fmt.Fprintf(w, "Highest level %s, %s over the outlet, at %s\n", r.Peak.Text(s), (r.Peak - out.route.OutletInvert).Text(s), clock(r.PeakAt))
	if in.Inlet.Taken {
		fmt.Fprintf(w, "Inlet invert %s: %s\n", in.Inlet.Length.Text(s), marked(r.InletAt))
	}
	fmt.Fprintf(w, "Roof %s: %s\n", out.roof.Text(s), marked(r.RoofAt))
	if in.Spill.Taken {
		fmt.Fprintf(w, "Spill %s: %s\n", in.Spill.Length.Text(s), marked(r.SpillAt))
	}
	fmt.Fprintf(w, "In %s, out %s, spilled %s, stored %s; balance off by %.1e\n", r.In.Text(s), r.Out.Text(s), r.Spilled.Text(s), r.Stored.Text(s), r.Imbalance)
	fmt.Fprintln(w, "  time   level over outlet")
	writeCourse(w, in, out)
	for _, c := range r.Cautions.List() {
		fmt.Fprintf(w, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
	}
	fmt.Fprintln(w, "Sources")
	for _, c := range r.Basis() {
		if _, err := fmt.Fprintf(w, "  %s\n", c); err != nil {
			return err
		}
	}
	return nil
}

// writeCourse writes the highest level of each twenty-fourth of the time as a
// bar beside its figure.
func writeCourse(w io.Writer, in *input, out *output) {
	const rows, bar = 24, 40
	series := out.routed.Series
	most := out.routed.Peak - out.route.OutletInvert
	over := series[len(series)-1].Time
	for row := range rows {
		from, to := over*manway.Duration(row)/rows, over*manway.Duration(row+1)/rows
		high := manway.Length(0)
		found := false
		for _, now := range series {
			if now.Time >= from && (now.Time < to || row == rows-1) {
				if level := now.Levels[0] - out.route.OutletInvert; !found || level > high {
					high, found = level, true
				}
			}
		}
		if !found {
			continue
		}
		n := 0
		if most > 0 && high > 0 {
			n = int(bar*float64(high/most) + 0.5)
		}
		fmt.Fprintf(w, "%6s   %-12s %s\n", clock(from), high.Text(in.Units), strings.Repeat("#", n))
	}
}
