package visit

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"manway.example/manway"
	"manway.example/manway/examples/internal/svg"
	"manway.example/manway/hydraulics"
	"manway.example/manway/lid"
	"manway.example/manway/tank"
)

// drawingSection is the tank to scale, in section and in plan.
func (v Visit) drawingSection() Section {
	return Section{
		ID: "drawing", Title: "The tank, to scale",
		Method: "Drawn from the survey, each drawing in one scale; the section runs along the tank through its middle.",
		Figures: []Figure{
			{Caption: "Section along the tank, inlet on the left.", SVG: picture(v.sectionDrawing())},
			{Caption: "Plan, seen from above. Broken lines lie under the roof.", SVG: picture(v.planDrawing())},
		},
	}
}

// picture is a drawing as part of a page. The drawing escapes every text in it.
func picture(d *svg.Drawing) template.HTML {
	var b strings.Builder
	if _, err := d.WriteTo(&b); err != nil {
		return template.HTML("<p>" + template.HTMLEscapeString("No drawing: "+err.Error()) + "</p>")
	}
	return template.HTML(b.String())
}

// tied keeps a figure and its unit on one line.
func tied(figure string) string { return strings.ReplaceAll(figure, " ", "\u00a0") }

// frame is the tank in the coordinates of the section: x along from the inside
// of the inlet end, y up from the top of the roof.
type frame struct {
	v                 Visit
	d                 *svg.Drawing
	length, height    float64 // inside, heads included in the length
	wall, roof, floor float64
	bottom            float64 // y of the inside of the floor
}

func at(x, y float64) svg.Point { return svg.Point{X: x, Y: y} }

func (v Visit) frame() frame {
	t := v.Tank
	f := frame{
		v: v, length: float64(t.Inside.Length), height: float64(t.Inside.Height),
		wall: float64(t.Spec.Wall), roof: float64(t.Spec.Roof), floor: float64(t.Spec.Floor),
	}
	if f.length == 0 { // an upright round tank has no length of its own
		f.length = float64(t.Inside.Width)
	}
	f.bottom = -f.roof - f.height
	return f
}

// ground is the height of the ground over the roof along the tank: a line
// through what was measured at the accesses.
func (f *frame) ground(x float64) float64 {
	points := f.points()
	if x <= points[0].X {
		return points[0].Y
	}
	for i, p := range points[1:] {
		if before := points[i]; x <= p.X && p.X > before.X {
			return before.Y + (x-before.X)/(p.X-before.X)*(p.Y-before.Y)
		}
	}
	return points[len(points)-1].Y
}

// points is the ground over each access, along the tank.
func (f *frame) points() []svg.Point {
	var list []svg.Point
	for i, a := range f.v.Survey.Accesses {
		list = append(list, at(float64(f.v.Survey.place(i)), float64(a.Cover)))
	}
	slices.SortFunc(list, func(a, b svg.Point) int { return cmp.Compare(a.X, b.X) })
	return list
}

func (v Visit) sectionDrawing() *svg.Drawing {
	f := v.frame()
	side := max(0.5, f.length/5)
	left, right := -f.wall-side, f.length+f.wall+side
	top := 0.0
	for i, a := range v.Survey.Accesses {
		top = max(top, float64(a.Cover), float64(v.Accesses[i].Reach.Top), float64(a.Riser.Height+a.Lid.Thickness))
	}
	deep := f.bottom - f.floor - 0.15
	f.d = svg.Page{
		Name: "section", Title: "Section through the tank, to scale", Desc: v.sectionWords(),
		Area:  svg.Area{Left: left, Right: right, Bottom: deep, Top: top + 0.08},
		Width: 580, MarginLeft: 138, MarginRight: 138, MarginTop: 20, MarginBottom: 56, Text: 15,
	}.Start()
	f.earth(left, right, deep)
	f.shell()
	for i := range v.Tank.Compartments() {
		f.contents(i)
	}
	f.pipes()
	for i := range v.Survey.Accesses {
		f.access(i)
	}
	f.measures()
	f.d.Legend()
	return f.d
}

// sectionWords says what the section shows to those who cannot see it.
func (v Visit) sectionWords() string {
	sys := v.Survey.Units
	return fmt.Sprintf("The tank is %s long and %s high inside, the outlet %s above the floor. %s",
		v.Tank.Inside.Length.Text(sys), v.Tank.Inside.Height.Text(sys), v.Survey.Tank.OutletInvert.Text(sys),
		plural(len(v.Survey.Accesses), "opening")+" in the roof.")
}

// earth is the ground, wet below the groundwater where it is known.
func (f *frame) earth(left, right, deep float64) {
	g := f.v.Survey.Ground.Groundwater
	outline := []svg.Point{at(left, f.ground(left))}
	outline = append(outline, f.points()...)
	outline = append(outline, at(right, f.ground(right)))
	f.d.Polygon(append(outline, at(right, deep), at(left, deep)), svg.Style{Fill: svg.Soil})
	if g.Known {
		level := f.ground(left) - float64(g.Depth)
		if level > deep {
			f.d.Rect(at(left, level), at(right, deep), svg.Style{Fill: svg.Wet})
			f.d.Level(at(right-0.08, level))
			f.d.Label(at(right-0.08, level), svg.Right, "groundwater")
		}
	} else {
		f.d.Label(at(right-0.08, f.ground(right)), svg.Right, "groundwater unknown, taken at grade")
	}
	f.d.Polyline(outline, svg.Style{Line: 2.5})
	f.d.Label(at(left+0.05, f.ground(left)), svg.Left, "grade")
}

// shell is the tank's concrete with its hollow and partitions.
func (f *frame) shell() {
	fill := svg.Concrete
	if f.v.Tank.Spec.Material != tank.ConcreteShell {
		fill = svg.Solid
	}
	f.d.Rect(at(-f.wall, 0), at(f.length+f.wall, f.bottom-f.floor), svg.Style{Fill: fill, Line: 1.5})
	f.d.Rect(at(0, -f.roof), at(f.length, f.bottom), svg.Style{Fill: svg.Paper, Line: 1.5})
}

// contents is what stands in one compartment; nothing is drawn where nobody
// looked.
func (f *frame) contents(i int) {
	c := f.v.Tank.Compartments()[i]
	x0, x1 := float64(c.From), float64(c.To)
	if x1 == 0 {
		x1 = f.length
	}
	plan := f.v.Pump.Compartments[i]
	mid := (x0 + x1) / 2
	if plan.State != hydraulics.Opened {
		f.d.Text(at(mid, f.bottom+f.height/2), "not", svg.Middle, 0, -9)
		f.d.Text(at(mid, f.bottom+f.height/2), "opened", svg.Middle, 0, 9)
	} else {
		f.layers(i, x0, x1, mid)
	}
	if i < len(f.v.Survey.Tank.Partitions) {
		p := f.v.Survey.Tank.Partitions[i]
		high := f.height
		if p.Height > 0 {
			high = float64(p.Height)
		}
		f.d.Rect(at(float64(p.At), f.bottom), at(float64(p.At+p.Thickness), f.bottom+high), svg.Style{Fill: svg.Concrete, Line: 1.5})
	}
}

func (f *frame) layers(i int, x0, x1, mid float64) {
	in := Contents{}
	if i < len(f.v.Survey.Compartments) {
		in = f.v.Survey.Compartments[i]
	}
	if !in.Level.Taken {
		f.d.Text(at(mid, f.bottom+f.height/2), "level not read", svg.Middle, 0, 0)
		return
	}
	sys := f.v.Survey.Units
	level := f.bottom + float64(in.Level.Length)
	f.d.Rect(at(x0, f.bottom), at(x1, level), svg.Style{Fill: svg.Liquid, Line: 1})
	side := svg.Left
	if i > 0 {
		side = svg.Right
	}
	if in.Sludge.Taken && in.Sludge.Length > 0 {
		top := f.bottom + float64(in.Sludge.Length)
		f.d.Rect(at(x0, f.bottom), at(x1, top), svg.Style{Fill: svg.Sludge, Line: 1})
		f.d.Label(at(x0+(x1-x0)*0.15, (f.bottom+top)/2), side, "sludge "+tied(in.Sludge.Length.Text(sys)))
	}
	if in.Scum.Taken && in.Scum.Length > 0 {
		f.d.Rect(at(x0, level-float64(in.Scum.Length)), at(x1, level), svg.Style{Fill: svg.Scum, Line: 1})
		f.d.Label(at(x0+(x1-x0)*0.15, level-float64(in.Scum.Length)/2), side, "scum "+tied(in.Scum.Length.Text(sys)))
	}
	f.d.Level(at(x0+(x1-x0)*0.6, level))
}

// pipes are inlet and outlet at their inverts.
func (f *frame) pipes() {
	const pipe = 4 * 0.0254
	outlet := f.bottom + float64(f.v.Survey.Tank.OutletInvert)
	f.d.Rect(at(f.length, outlet), at(f.length+f.wall+0.12, outlet+pipe), svg.Style{Fill: svg.Paper, Line: 1.5})
	f.d.Label(at(f.length+f.wall, outlet), svg.Right, "outlet")
	if r := f.v.Survey.Tank.InletInvert; r.Taken {
		inlet := f.bottom + float64(r.Length)
		f.d.Rect(at(-f.wall-0.12, inlet), at(0, inlet+pipe), svg.Style{Fill: svg.Paper, Line: 1.5})
		f.d.Label(at(-f.wall, inlet), svg.Left, "inlet")
	}
}

// access is one opening with its riser and lid as found, and broken the top to
// which it is to be brought.
func (f *frame) access(i int) {
	a, r := f.v.Survey.Accesses[i], f.v.Accesses[i]
	x, half := float64(f.v.Survey.place(i)), float64(a.Opening)/2
	f.d.Rect(at(x-half, 0), at(x+half, -f.roof), svg.Style{Fill: svg.Paper, Line: 1})
	bore, wall := float64(r.TakenBore)/2, float64(r.TakenWall)
	top := float64(a.Riser.Height)
	if top > 0 {
		f.d.Rect(at(x-bore-wall, 0), at(x-bore, top), svg.Style{Fill: svg.Concrete, Line: 1})
		f.d.Rect(at(x+bore, 0), at(x+bore+wall, top), svg.Style{Fill: svg.Concrete, Line: 1})
		f.d.Rect(at(x-bore, 0), at(x+bore, top), svg.Style{Fill: svg.Paper})
	}
	f.lid(a, x, top)
	if reach := float64(r.Reach.Top); !r.Reach.NoRing && reach > top {
		f.d.Rect(at(x-bore-wall, top), at(x+bore+wall, reach), svg.Style{Line: 1.2, Dash: true})
	}
	side := svg.Left
	if x > f.length/2 {
		side = svg.Right
	}
	words := a.Name
	if down := a.Cover - a.Riser.Height; down > 0 {
		words += ", " + tied(down.Text(f.v.Survey.Units)+" down")
	}
	if a.Opened != manway.Yes {
		words += ", not opened"
	}
	f.d.Label(at(x, top+float64(a.Lid.Thickness)/2), side, words)
}

// lid is the lid on top of what stands there.
func (f *frame) lid(a Access, x, top float64) {
	if a.Lid.Shape == 0 {
		return
	}
	half, thick := float64(a.Lid.least())/2, float64(a.Lid.Thickness)
	y := top - min(float64(a.Lid.LetIn), thick)
	below := half
	if a.Lid.Shape == lid.BevelledPlug {
		below = float64(a.Lid.BottomDiameter) / 2
	}
	f.d.Polygon([]svg.Point{at(x-below, y), at(x+below, y), at(x+half, y+thick), at(x-half, y+thick)}, svg.Style{Fill: svg.Concrete, Line: 2})
}

// measures are the dimensions that a person checks with a tape.
func (f *frame) measures() {
	sys := f.v.Survey.Units
	in := manway.Length(f.length)
	f.d.Dimension(at(f.length, f.bottom-f.floor), at(0, f.bottom-f.floor), 26, in.Text(sys)+" inside")
	x := f.length + f.wall + 0.3
	f.d.Dimension(at(x, f.bottom), at(x, f.bottom+float64(f.v.Survey.Tank.OutletInvert)), 0, f.v.Survey.Tank.OutletInvert.Text(sys))
	if x := f.clear(); f.ground(x) > 0 {
		f.d.Dimension(at(x, f.ground(x)), at(x, 0), 0, manway.Length(f.ground(x)).Text(sys))
	}
}

// clear is a place over the roof, in the widest gap between what stands on it,
// for the depth of the soil.
func (f *frame) clear() float64 {
	const beside = 0.07
	var taken [][2]float64
	for i, a := range f.v.Survey.Accesses {
		r := f.v.Accesses[i]
		half := max(float64(r.TakenBore)/2+float64(r.TakenWall), float64(a.Lid.least())/2)
		x := float64(f.v.Survey.place(i))
		taken = append(taken, [2]float64{x - half, x + half})
	}
	slices.SortFunc(taken, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	best, wide, from := 0.0, -1.0, -f.wall
	for _, t := range append(taken, [2]float64{f.length + f.wall, 0}) {
		if t[0]-from > wide {
			best, wide = from+beside, t[0]-from
		}
		from = max(from, t[1])
	}
	return best
}
