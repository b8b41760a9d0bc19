package main

import (
	"io"

	"manway.example/manway"
	"manway.example/manway/examples/internal/record"
	"manway.example/manway/internal/plate"
)

var command = record.Command[input, output]{
	Name:      "slabcheck",
	Doc:       record.Comment(source),
	Flags:     flags,
	ID:        func(in *input) string { return in.ID },
	Do:        compute,
	Text:      writeText,
	JSON:      writeJSON,
	Columns:   columns,
	Rows:      writeRows,
	Documents: map[string]func(io.Writer, *input, *output) error{"svg": writeSVG},
}

// cautions stand under every result.
const cautions = manway.Screening | manway.KeepOffRoof | manway.LocalCode

func inches(v float64) float64 { return manway.Length(v).In(manway.Inch) }
func lbf(v float64) float64    { return manway.Force(v).In(manway.PoundForce) }

// named is one extreme with the key it is written under.
type named struct {
	key    string
	at     plate.Extreme
	length bool // a deflection, else a moment per length
}

func (n named) value() float64 {
	if n.length {
		return inches(n.at.Value)
	}
	return lbf(n.at.Value)
}

func (o *output) largest() []named {
	e := &o.extremes
	return []named{{"w_in", e.W, true}, {"rise_in", e.Rise, true}, {"mx_max_lbf", e.MxMax, false}, {"mx_min_lbf", e.MxMin, false},
		{"my_max_lbf", e.MyMax, false}, {"my_min_lbf", e.MyMin, false}, {"mxy_lbf", e.MxyMax, false},
		{"sag_lbf", e.Sag, false}, {"hog_lbf", e.Hog, false}}
}

func writeJSON(j *record.JSON, in *input, out *output) {
	if out.tank != nil {
		writeTankJSON(j, in, out.tank)
		return
	}
	j.Text("id", in.ID)
	j.List("points")
	for i, v := range out.values {
		j.Object("")
		j.Number("x_in", in.Points[i].X.In(manway.Inch))
		j.Number("y_in", in.Points[i].Y.In(manway.Inch))
		if v.open { // nothing bends there
			for _, key := range [...]string{"w_in", "mx_lbf", "my_lbf", "mxy_lbf"} {
				j.Null(key)
			}
			j.Bool("in_opening", true)
			j.End()
			continue
		}
		j.Number("w_in", inches(v.W))
		j.Number("mx_lbf", lbf(v.M.X))
		j.Number("my_lbf", lbf(v.M.Y))
		j.Number("mxy_lbf", lbf(v.M.XY))
		j.End()
	}
	j.End()
	j.Object("maxima")
	for _, n := range out.largest() {
		j.Object(n.key)
		j.Number("value", n.value())
		j.Number("x_in", inches(n.at.At.X))
		j.Number("y_in", inches(n.at.At.Y))
		j.End()
	}
	j.End()
	j.Number("total_load_lbf", lbf(out.load))
	j.Number("total_reaction_lbf", lbf(out.reaction))
	if !out.closed {
		writeSupports(j, in, out)
	}
	writeAccuracy(j, &out.accuracy)
	j.Any("cautions", cautions)
}

// writeSupports writes what each support carries, and where the slab lifts.
func writeSupports(j *record.JSON, in *input, out *output) {
	list := func(key string, forces []float64) {
		j.List(key)
		for _, f := range forces {
			j.Number("", lbf(f))
		}
		j.End()
	}
	j.Object("reactions")
	list("edges_lbf", out.reactions.Edges[:])
	list("lines_lbf", out.reactions.Lines)
	list("supports_lbf", out.reactions.Points)
	list("corners_lbf", out.reactions.Corners[:])
	j.End()
	if in.Slab.BearingOnly {
		u := &out.uplift
		j.Object("uplift")
		j.Number("length_in", inches(u.Length))
		j.Number("rise_in", inches(u.Most))
		j.Number("x_in", inches(u.At.X))
		j.Number("y_in", inches(u.At.Y))
		j.List("corners")
		for _, lifted := range u.Corners {
			j.Bool("", lifted)
		}
		j.End()
		j.End()
	}
}

func writeAccuracy(j *record.JSON, a *accuracy) {
	j.Object("mesh")
	if a.closed {
		j.Text("kind", "closed form")
	} else {
		j.Text("kind", "bicubic elements")
		j.Int("cells_x", a.cells[0])
		j.Int("cells_y", a.cells[1])
		j.Int("unknowns", a.unknowns)
		j.Int("meshes", a.meshes)
		j.Number("residual", a.residual)
	}
	j.End()
	j.Number("error_estimate", a.error)
	j.Number("error_estimate_w", a.errorW)
	j.Bool("converged", a.converged)
}

var columns = []string{"id", "place", "x_in", "y_in", "w_in", "mx_lbf", "my_lbf", "mxy_lbf", "value", "total_load_lbf", "total_reaction_lbf",
	"error_estimate", "converged", "use", "status", "notice"}

// notice stands in every row of CSV, as the cautions do elsewhere.
const notice = "unreviewed screening, not a design"

// writeRows writes a row for each point, then one for each extreme.
func writeRows(r *record.Row, in *input, out *output) {
	if out.tank != nil {
		writeTankRows(r, in, out.tank)
		return
	}
	row := func(place string, x, y float64, cells func()) {
		r.Text(in.ID)
		r.Text(place)
		r.Number(x)
		r.Number(y)
		cells()
		r.Number(lbf(out.load))
		r.Number(lbf(out.reaction))
		r.Number(out.error)
		r.Bool(out.converged)
		r.Empty()
		r.Empty()
		r.Text(notice)
	}
	for i, v := range out.values {
		row("point", in.Points[i].X.In(manway.Inch), in.Points[i].Y.In(manway.Inch), func() {
			if v.open {
				for range 5 {
					r.Empty()
				}
				return
			}
			r.Number(inches(v.W))
			r.Number(lbf(v.M.X))
			r.Number(lbf(v.M.Y))
			r.Number(lbf(v.M.XY))
			r.Empty()
		})
		r.Next()
	}
	for i, n := range out.largest() {
		if i > 0 {
			r.Next()
		}
		row(n.key, inches(n.at.At.X), inches(n.at.At.Y), func() {
			for range 4 {
				r.Empty()
			}
			r.Number(n.value())
		})
	}
}
