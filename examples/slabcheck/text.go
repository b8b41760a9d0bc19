package main

import (
	"fmt"
	"io"
	"strings"

	"manway.example/manway"
	"manway.example/manway/internal/plate"
)

// small writes a deflection finer than a length is written.
func small(v float64, s manway.System) string {
	if s == manway.SI {
		return fmt.Sprintf("%.4g mm", manway.Length(v).In(manway.Millimetre))
	}
	return fmt.Sprintf("%.4g in", inches(v))
}

func moment(v float64, s manway.System) string { return manway.MomentPerLength(v).Text(s) }

func force(v float64, s manway.System) string { return manway.Force(v).Text(s) }

func place(p plate.Point, s manway.System) string {
	if s == manway.SI {
		return fmt.Sprintf("x %.4g m, y %.4g m", p.X, p.Y)
	}
	return fmt.Sprintf("x %.4g in, y %.4g in", inches(p.X), inches(p.Y))
}

func writeText(w io.Writer, in *input, out *output) error {
	b := &strings.Builder{}
	if out.tank != nil {
		writeTankText(b, in, out.tank)
		_, err := io.WriteString(w, b.String())
		return err
	}
	s := in.Units
	name := in.ID
	if name == "" {
		name = "slab"
		if in.Lid != nil {
			name = "lid"
		}
	}
	fmt.Fprintf(b, "%s\n", name)
	for i, v := range out.values {
		p := plate.Point{X: float64(in.Points[i].X), Y: float64(in.Points[i].Y)}
		if v.open {
			fmt.Fprintf(b, "At %s: in an opening\n", place(p, s))
			continue
		}
		fmt.Fprintf(b, "At %s: sinks %s, Mx %s, My %s, Mxy %s\n", place(p, s), small(v.W, s), moment(v.M.X, s), moment(v.M.Y, s), moment(v.M.XY, s))
	}
	e := &out.extremes
	fmt.Fprintf(b, "Deflection: at most %s, at %s\n", small(e.W.Value, s), place(e.W.At, s))
	if e.Rise.Value < 0 {
		fmt.Fprintf(b, "Rises: %s, at %s\n", small(-e.Rise.Value, s), place(e.Rise.At, s))
	}
	fmt.Fprintf(b, "Sagging moment: at most %s, at %s\n", moment(e.Sag.Value, s), place(e.Sag.At, s))
	if e.Hog.Value < 0 {
		fmt.Fprintf(b, "Hogging moment: at most %s, at %s\n", moment(-e.Hog.Value, s), place(e.Hog.At, s))
	}
	fmt.Fprintf(b, "Mx from %s to %s, My from %s to %s\n", moment(e.MxMin.Value, s), moment(e.MxMax.Value, s), moment(e.MyMin.Value, s), moment(e.MyMax.Value, s))
	fmt.Fprintf(b, "Load %s, supports carry %s\n", force(out.load, s), force(out.reaction, s))
	if !out.closed {
		textSupports(b, in, out)
	}
	textAccuracy(b, &out.accuracy)
	for _, c := range cautions.List() {
		fmt.Fprintf(b, "%s: %s\n", strings.ToUpper(c.Level.String()), c.Sentence)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func textSupports(b *strings.Builder, in *input, out *output) {
	s := in.Units
	parts := []string{}
	for i, name := range [4]string{"edge y=0", "edge x=length", "edge y=width", "edge x=0"} {
		if f := out.reactions.Edges[i]; f != 0 {
			parts = append(parts, name+": "+force(f, s))
		}
	}
	for i, f := range out.reactions.Lines {
		parts = append(parts, fmt.Sprintf("line %d: %s", i, force(f, s)))
	}
	for i, f := range out.reactions.Points {
		parts = append(parts, fmt.Sprintf("support %d: %s", i, force(f, s)))
	}
	fmt.Fprintf(b, "Supports: %s\n", strings.Join(parts, ", "))
	if u := out.uplift; u.Length > 0 {
		fmt.Fprintf(b, "Lifts off %s of its supports, by %s at %s\n", manway.Length(u.Length).Text(s), small(u.Most, s), place(u.At, s))
	}
}

func textAccuracy(b *strings.Builder, a *accuracy) {
	switch {
	case a.closed:
		b.WriteString("Closed form\n")
	case a.converged:
		fmt.Fprintf(b, "%d meshes, the last of %d x %d cells: moment within %.2g %%, deflection within %.2g %%, by their differences\n",
			a.meshes, a.cells[0], a.cells[1], 100*a.error, 100*a.errorW)
	default:
		fmt.Fprintf(b, "NOT CONVERGED: on %d meshes, the last of %d x %d cells, the moment may still be off by %.2g %%: do not rely on it\n",
			a.meshes, a.cells[0], a.cells[1], 100*a.error)
	}
}
