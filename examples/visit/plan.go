package visit

import (
	"fmt"
	"slices"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/tank"
)

// hidden is the line of what lies under the roof.
var hidden = svg.Style{Line: 1.2, Dash: true}

// planDrawing is the tank from above with its dimensions.
func (v Visit) planDrawing() *svg.Drawing {
	f := v.frame()
	half := float64(v.Tank.Inside.Width) / 2
	d := svg.Page{
		Name: "plan", Title: "Plan of the tank, to scale", Desc: v.sectionWords(),
		Area:  svg.Area{Left: -f.wall - 0.1, Right: f.length + f.wall + 0.1, Bottom: -half - f.wall - 0.1, Top: half + f.wall + 0.1},
		Width: 340, MarginLeft: 44, MarginRight: 8, MarginTop: 8, MarginBottom: 76, Tall: 240, Text: 14,
	}.Start()
	round := v.outline(d, f)
	for i, a := range v.Survey.Accesses {
		x := float64(v.Survey.place(i))
		if s := a.Lid.Shape; s != 0 && !s.Round() {
			d.Rect(at(x-float64(a.Lid.Length)/2, float64(a.Lid.Width)/2), at(x+float64(a.Lid.Length)/2, -float64(a.Lid.Width)/2), svg.Style{Fill: svg.Paper, Line: 2})
		} else if s != 0 {
			d.Circle(at(x, 0), float64(a.Lid.Diameter)/2, svg.Style{Fill: svg.Paper, Line: 2})
		}
		d.Circle(at(x, 0), float64(a.Opening)/2, hidden)
		d.Text(at(x, -max(float64(a.Lid.Width), float64(a.Lid.Diameter), float64(a.Opening))/2), a.Name, svg.Middle, 0, 14)
	}
	low, sys := -half-f.wall, v.Survey.Units
	away := 22.0
	if chain := v.chain(f); len(chain) > 2 {
		for i, x := range chain[1:] {
			d.Dimension(at(x, low), at(chain[i], low), away, manway.Length(x-chain[i]).Text(sys))
		}
		away += 36 // short figures stand under their line
	}
	d.Dimension(at(f.length+f.wall, low), at(-f.wall, low), away, manway.Length(f.length+2*f.wall).Text(sys)+" outside")
	if !round {
		d.Dimension(at(-f.wall, low), at(-f.wall, -low), 14, manway.Length(-2*low).Text(sys)+" outside")
	}
	return d
}

// outline draws the roof over the walls and partitions that carry it.
func (v Visit) outline(d *svg.Drawing, f frame) (round bool) {
	half := float64(v.Tank.Inside.Width) / 2
	if _, round = v.Tank.Spec.Shape.(tank.VerticalCylinder); round {
		d.Circle(at(f.length/2, 0), half+f.wall, svg.Style{Fill: svg.Concrete, Line: 1.5})
		d.Circle(at(f.length/2, 0), half, hidden)
	} else {
		d.Rect(at(-f.wall, half+f.wall), at(f.length+f.wall, -half-f.wall), svg.Style{Fill: svg.Concrete, Line: 1.5})
		d.Rect(at(0, half), at(f.length, -half), hidden)
	}
	for _, p := range v.Survey.Tank.Partitions {
		d.Rect(at(float64(p.At), half), at(float64(p.At+p.Thickness), -half), hidden)
	}
	return round
}

// chain is the tank's ends and the middles of its openings, as a tape along the
// roof has them; only the ends where a place was not measured, or two are too
// near for their figures.
func (v Visit) chain(f frame) []float64 {
	const least = 0.35
	ends := []float64{-f.wall, f.length + f.wall}
	list := slices.Clone(ends)
	for i, a := range v.Survey.Accesses {
		if !a.At.Taken {
			return ends
		}
		list = append(list, float64(v.Survey.place(i)))
	}
	slices.Sort(list)
	for i, x := range list[1:] {
		if x-list[i] < least {
			return ends
		}
	}
	return list
}

// roofFigure is the roof slab as it was screened: its openings, where each load
// that moves asks most of it, and where its moments come nearest to the
// strength. There is none where the roof was not judged.
func (v Visit) roofFigure() []Figure {
	if v.Roof.Governs < 0 {
		return nil
	}
	f := v.frame()
	half := float64(v.Tank.Inside.Width) / 2
	d := svg.Page{
		Name: "roof", Title: "The roof slab, to scale", Desc: "Seen from above, with the worst place of each load that moves.",
		Area:  svg.Area{Left: -f.wall - 0.1, Right: f.length + f.wall + 0.1, Bottom: -half - f.wall - 0.1, Top: half + f.wall + 0.1},
		Width: 580, MarginLeft: 138, MarginRight: 138, MarginTop: 16, MarginBottom: 16, Tall: 240, Text: 14,
	}.Start()
	v.outline(d, f)
	for i, a := range v.Survey.Accesses {
		d.Circle(at(float64(v.Survey.place(i)), 0), float64(a.Opening)/2, svg.Style{Fill: svg.Paper, Line: 1.5})
	}
	mark := func(p tank.Point, words string) {
		side := svg.Left
		if float64(p.Along) > f.length/2 {
			side = svg.Right
		}
		d.Circle(at(float64(p.Along), float64(p.Across)), 0.03, svg.Style{Fill: svg.Solid})
		d.Label(at(float64(p.Along), float64(p.Across)), side, words)
	}
	for _, l := range v.Roof.Loadings {
		if l.Moving {
			mark(l.At, fmt.Sprintf("%s: %s", l.Name, l.Status().Against()))
		}
	}
	mark(v.Roof.Weakest, "weakest here")
	return []Figure{{Caption: "The roof as a slab on its walls: the worst place of each load that moves, and where it is weakest. Broken lines are the walls and partitions under it.", SVG: picture(d)}}
}
