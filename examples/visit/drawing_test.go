package visit_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"manway.example/manway/cost"
)

var (
	rects    = regexp.MustCompile(`<rect x="([-0-9.]+)" y="([-0-9.]+)" width="([0-9.]+)" height="([0-9.]+)"`)
	ellipses = regexp.MustCompile(`<ellipse cx="([-0-9.]+)" cy="([-0-9.]+)" rx="([0-9.]+)" ry="([0-9.]+)"`)
	boxes    = regexp.MustCompile(`viewBox="0 0 ([0-9.]+) ([0-9.]+)"`)
)

// numbers are the four numbers of each match, or the two.
func numbers(t *testing.T, of *regexp.Regexp, svg string) (list [][]float64) {
	t.Helper()
	for _, m := range of.FindAllStringSubmatch(svg, -1) {
		var row []float64
		for _, text := range m[1:] {
			x, err := strconv.ParseFloat(text, 64)
			if err != nil {
				t.Fatal(err)
			}
			row = append(row, x)
		}
		list = append(list, row)
	}
	return list
}

// The drawings are to scale: what was measured in inches stands in them by one
// factor, that of the 96 in between the ends of the tank. Section: x from the
// inlet end, y up from the floor; plan: y from the middle.
func TestDrawingsAreToScale(t *testing.T) {
	s, _ := read(t, "rusted-handle.json")
	v, _ := page(t, s, cost.Book{})
	drawings := map[string]string{}
	for _, section := range v.Sections {
		for _, f := range section.Figures {
			for _, name := range []string{"Section through the tank", "Plan of the tank"} {
				if strings.Contains(string(f.SVG), name) {
					drawings[name] = string(f.SVG)
				}
			}
		}
	}
	for name, want := range map[string][][4]float64{ // x, low y, width, height
		"Section through the tank": {
			{0, 0, 96, 60}, {-3, -3, 102, 67},
			{0, 0, 62, 49.5}, {0, 0, 62, 13}, {0, 44.5, 62, 5}, // liquid, sludge, scum
			{62, 0, 3, 60},                             // partition
			{96, 48, 3 + 0.12/0.0254, 4},               // outlet, a pipe of 4 in
			{-3 - 0.12/0.0254, 51, 3 + 0.12/0.0254, 4}, // inlet
			{6, 60, 20, 4}, {72, 60, 20, 4},            // openings in the roof
			{1, 64, 3, 12}, {28, 64, 3, 12}, {4, 64, 24, 12}, // riser and its bore
		},
		"Plan of the tank": {
			{-3, -33, 102, 66}, {0, -30, 96, 60}, {62, -30, 3, 60}, {67, -13, 30, 26},
		},
	} {
		svg := drawings[name]
		got := numbers(t, rects, svg)
		var scale, x0, y0 float64
		for _, r := range got {
			if math.Abs(r[2]/r[3]-96./60) < 1e-3 {
				scale, x0, y0 = r[2]/96, r[0], r[1]+r[3]
			}
		}
		if scale == 0 {
			t.Errorf("%s: no inside of 96 by 60 in", name)
			continue
		}
		if name == "Plan of the tank" {
			y0 -= 30 * scale
		}
		for _, w := range want {
			there := false
			for _, r := range got {
				is := [4]float64{(r[0] - x0) / scale, (y0 - r[1] - r[3]) / scale, r[2] / scale, r[3] / scale}
				off := 0.0
				for k := range w {
					off = max(off, math.Abs(is[k]-w[k]))
				}
				there = there || off < 0.015/scale // two figures of a hundredth of a pixel
			}
			if !there {
				t.Errorf("%s: nothing at %v in, %v by %v", name, w[:2], w[2], w[3])
			}
		}
		if name != "Plan of the tank" {
			continue
		}
		for _, w := range [][3]float64{{16, 0, 12}, {16, 0, 10}, {82, 0, 10}} { // lid and openings
			there := false
			for _, e := range numbers(t, ellipses, svg) {
				there = there || math.Abs((e[0]-x0)/scale-w[0]) < 0.01 && math.Abs((y0-e[1])/scale-w[1]) < 0.01 && math.Abs(e[2]/scale-w[2]) < 0.01 && e[2] == e[3]
			}
			if !there {
				t.Errorf("%s: no circle of radius %v at %v in", name, w[2], w[:2])
			}
		}
	}
}

// points are the places of everything that a drawing has: corners of rectangles
// and of what is round, ends and corners of lines, and where words stand.
func points(t *testing.T, svg string) (list [][2]float64) {
	t.Helper()
	for _, r := range numbers(t, rects, svg) {
		list = append(list, [2]float64{r[0], r[1]}, [2]float64{r[0] + r[2], r[1] + r[3]})
	}
	for _, e := range numbers(t, ellipses, svg) {
		list = append(list, [2]float64{e[0] - e[2], e[1] - e[3]}, [2]float64{e[0] + e[2], e[1] + e[3]})
	}
	for _, p := range numbers(t, steps, svg) {
		list = append(list, [2]float64{p[0], p[1]})
	}
	for _, m := range corners.FindAllStringSubmatch(svg, -1) {
		f := strings.Fields(m[1])
		for i := 0; i+1 < len(f); i += 2 {
			x, _ := strconv.ParseFloat(f[i], 64)
			y, _ := strconv.ParseFloat(f[i+1], 64)
			list = append(list, [2]float64{x, y})
		}
	}
	return list
}

var (
	steps   = regexp.MustCompile(`(?:[ML]|<text x="|<line x1=")([-0-9.]+)(?: |" y1?=")([-0-9.]+)`)
	corners = regexp.MustCompile(`points="([-0-9. ]+)"`)
)

// Nothing is drawn outside its paper, and there is something on it.
func TestDrawingsStayOnTheirPaper(t *testing.T) {
	for name, v := range answered(t) {
		for _, section := range v.Sections {
			for i, f := range section.Figures {
				svg := string(f.SVG)
				_, shapes, _ := strings.Cut(svg, "</defs>")
				box := numbers(t, boxes, svg)[0]
				all := points(t, shapes)
				for _, p := range all {
					if p[0] < -0.01 || p[1] < -0.01 || p[0] > box[0]+0.01 || p[1] > box[1]+0.01 {
						t.Errorf("%s, %s %d: something at %v on paper of %v", name, section.ID, i, p, box)
					}
				}
				if len(all) < 20 {
					t.Errorf("%s, %s %d: %d points are drawn", name, section.ID, i, len(all))
				}
			}
		}
	}
}

// The lines of a chart are the sums paid: each remedy has a line that stands at
// the end of each year at what was paid by then, as a share of the uppermost line
// of the grid, and steps up there and nowhere else.
func TestChartsShowTheSumsPaid(t *testing.T) {
	charts := 0
	for name, v := range answered(t) {
		figures := map[string]string{}
		for _, section := range v.Sections {
			for _, f := range section.Figures {
				figures[f.Caption] = string(f.SVG)
			}
		}
		for i, a := range v.Survey.Accesses {
			options := v.Options.Accesses[i]
			if !options.Compared {
				continue
			}
			charts++
			svg := figures[a.Name+": paid by the end of each year, usual life of each remedy, prices of today."]
			_, shapes, _ := strings.Cut(svg, "</defs>")
			lines := slices.DeleteFunc(regexp.MustCompile(`<polyline points="[-0-9. ]+"`).FindAllString(shapes, -1),
				func(line string) bool { return len(points(t, line)) <= 4 }) // grid and leaders
			if len(lines) != len(options.Comparison.Options) {
				t.Errorf("%s, %s: %d lines for %d remedies", name, a.Name, len(lines), len(options.Comparison.Options))
				continue
			}
			// The field is as wide as what lies between the margins, 340 - 52 - 84 pixels,
			// and 1 high to 1.6; the figures beside its level lines say what they stand for.
			const left, wide, top = 52, 340 - 52 - 84, 16
			const high = wide / 1.6
			most := 0.0
			for _, m := range regexp.MustCompile(`<text x="44"[^>]*>([0-9,]+)<`).FindAllStringSubmatch(svg, -1) {
				x, err := strconv.ParseFloat(strings.ReplaceAll(m[1], ",", ""), 64)
				if err != nil {
					t.Fatal(err)
				}
				most = max(most, x)
			}
			for k, o := range options.Comparison.Options {
				var want [][2]float64
				paid := 0.0
				for j, m := range o.Courses[cost.Usual].Curve {
					x := left + float64(m.Year)/float64(options.Comparison.Horizon.Years)*wide
					y := func(paid float64) float64 { return top + high*(1-paid/most) }
					if j > 0 {
						want = append(want, [2]float64{x, y(paid)})
					}
					paid = m.Paid.InexactFloat64()
					want = append(want, [2]float64{x, y(paid)})
				}
				got := points(t, lines[k])
				if len(got) != len(want) {
					t.Errorf("%s, %s, %s: %d corners, want %d", name, a.Name, o.Title, len(got), len(want))
					continue
				}
				for j := range want {
					if math.Hypot(got[j][0]-want[j][0], got[j][1]-want[j][1]) > 0.02 {
						t.Errorf("%s, %s, %s: corner %d at %v, want %v", name, a.Name, o.Title, j, got[j], want[j])
						break
					}
				}
			}
			if most < 4 {
				t.Errorf("%s, %s: the grid ends at %v", name, a.Name, most)
			}
		}
	}
	if charts < 3 {
		t.Errorf("%d charts", charts)
	}
}
