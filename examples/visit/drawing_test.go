package visit_test

import (
	"math"
	"regexp"
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

// Nothing is drawn outside its paper.
func TestDrawingsStayOnTheirPaper(t *testing.T) {
	for _, name := range sites(t) {
		s, book := read(t, name)
		v, _ := page(t, s, book)
		for _, section := range v.Sections {
			for i, f := range section.Figures {
				box := numbers(t, boxes, string(f.SVG))[0]
				for _, r := range numbers(t, rects, string(f.SVG)) {
					if r[0] < 0 || r[1] < 0 || r[0]+r[2] > box[0]+0.01 || r[1]+r[3] > box[1]+0.01 {
						t.Errorf("%s, %s %d: a rectangle %v on paper of %v", name, section.ID, i, r, box)
					}
				}
			}
		}
	}
}
