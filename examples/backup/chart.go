package main

import (
	"fmt"
	"io"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
)

// plot maps time and level to the world of a drawing, whose scale is the same
// both ways: a day is as wide as twice the range of levels is high.
type plot struct {
	over      manway.Duration
	low, high manway.Length
}

func (p plot) wide() float64 { return 2 * float64(p.high-p.low) }

func (p plot) at(t manway.Duration, level manway.Length) svg.Point {
	return svg.Point{X: p.wide() * float64(t/p.over), Y: float64(level - p.low)}
}

// writeSVG draws the levels against time with the levels that matter.
func writeSVG(w io.Writer, in *input, out *output) error {
	series := out.routed.Series
	p := plot{over: series[len(series)-1].Time}
	type mark struct {
		name  string
		level manway.Length
	}
	marks := []mark{{"outlet invert", out.route.OutletInvert}}
	if in.Inlet.Taken {
		marks = append(marks, mark{"inlet invert", in.Inlet.Length})
	}
	if in.Spill.Taken {
		marks = append(marks, mark{"spills", in.Spill.Length})
	}
	marks = append(marks, mark{"roof", out.roof})
	p.low, p.high = out.route.OutletInvert, out.roof
	for _, now := range series {
		for _, level := range now.Levels[:out.routed.Compartments] {
			p.low = min(p.low, level)
		}
	}
	pad := (p.high - p.low) / 12
	p.low, p.high = p.low-pad, p.high+pad
	desc := fmt.Sprintf("Highest level %s over the outlet at %s; inlet invert %s, roof %s.",
		(out.routed.Peak - out.route.OutletInvert).Text(in.Units), clock(out.routed.PeakAt), marked(out.routed.InletAt), marked(out.routed.RoofAt))
	d := svg.Page{
		Name: "levels", Title: "Level in the tank against time", Desc: desc,
		Area:  svg.Area{Right: p.wide(), Top: float64(p.high - p.low)},
		Width: 880, MarginLeft: 30, MarginRight: 210, MarginTop: 16, MarginBottom: 48,
	}.Start()
	d.Rect(p.at(0, p.low), p.at(p.over, p.high), svg.Style{Fill: svg.Paper, Line: 1})
	axis(d, p)
	for _, m := range marks {
		d.Line(p.at(0, m.level), p.at(p.over, m.level), svg.Style{Line: 1, Dash: true, Grey: true})
		d.Label(p.at(p.over, m.level), svg.Right, m.name+" "+m.level.Text(in.Units))
	}
	for i := out.routed.Compartments - 1; i >= 0; i-- {
		line := make([]svg.Point, len(series))
		for k, now := range series {
			line[k] = p.at(now.Time, now.Levels[i])
		}
		d.Polyline(line, svg.Style{Line: 2.2 - 0.6*float64(min(i, 2)), Grey: i > 0})
	}
	d.Text(p.at(p.over/2, p.low), fmt.Sprintf("hours from the start; outlet %.4g %% open, an estimate", 100*out.route.Outlet.Open), svg.Middle, 0, 40)
	d.Text(p.at(out.routed.PeakAt, out.routed.Peak), "highest "+out.routed.Peak.Text(in.Units)+" at "+clock(out.routed.PeakAt), svg.Middle, 0, -24)
	d.Level(p.at(out.routed.PeakAt, out.routed.Peak))
	_, err := d.WriteTo(w)
	return err
}

// axis marks the hours.
func axis(d *svg.Drawing, p plot) {
	for _, step := range []manway.Duration{manway.Minute, 10 * manway.Minute, manway.Hour, 3 * manway.Hour, 12 * manway.Hour, 2 * manway.Day, 7 * manway.Day} {
		if p.over/step > 13 {
			continue
		}
		for t := manway.Duration(0); t <= p.over*(1+1e-9); t += step {
			d.Line(p.at(t, p.low), p.at(t, p.low+(p.high-p.low)/60), svg.Style{Line: 1})
			d.Text(p.at(t, p.low), clock(t), svg.Middle, 0, 18)
		}
		return
	}
}
