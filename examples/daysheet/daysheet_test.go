package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// day is one run of the command over text.
func day(t *testing.T, in string, args ...string) (code int, out []string, log string) {
	t.Helper()
	var stdout, stderr strings.Builder
	code = newCommand().Run(append(args, "-"), strings.NewReader(in), &stdout, &stderr)
	return code, strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n"), stderr.String()
}

// numbers are the cells of a row after its id; an empty one is NaN.
func numbers(t *testing.T, row string) []float64 {
	t.Helper()
	cells := strings.Split(row, ",")
	list := make([]float64, len(cells)-2)
	for i, cell := range cells[1 : len(cells)-1] {
		v, err := strconv.ParseFloat(cell, 64)
		if cell == "" {
			v = math.NaN()
		} else if err != nil {
			t.Fatalf("%q: %v", row, err)
		}
		list[i] = v
	}
	return list
}

func near(a, b []float64) string {
	return cmp.Diff(a, b, cmp.Comparer(func(x, y float64) bool {
		return math.IsNaN(x) && math.IsNaN(y) || math.Abs(x-y) <= 1e-9*math.Max(1, math.Abs(y))
	}))
}

// By hand: L x B x depth/231 gallons, pi/4 d2 t/1728 x 150 pounds.
func TestRowByHand(t *testing.T) {
	const gal = 231.
	disc := func(d, thick float64) float64 { return math.Pi / 4 * d * d * thick / 1728 * 150 }
	none := math.NaN()
	for _, c := range []struct {
		name, row string
		want      []float64 // liquid_1, liquid_2, pump, lid, reach
	}{
		{"first compartment at its third", "a,96,48,48,62,3,18,24,3,12,4,3,1", []float64{62 * 48 * 48 / gal, 31 * 48 * 48 / gal, 62 * 48 * 48 / gal, disc(24, 3), 18}},
		{"15.6 of 46.8 is a third", "a,96,48,46.8,62,3,0,20,2.5,10.4,5.2,0,0", []float64{62 * 48 * 46.8 / gal, 31 * 48 * 46.8 / gal, 62 * 48 * 46.8 / gal, disc(20, 2.5), 0}},
		{"within 1e-9 of it", "a,96,48,46.8,62,3,0,20,2.5,10.4,5.199999995,0,0", []float64{62 * 48 * 46.8 / gal, 31 * 48 * 46.8 / gal, 62 * 48 * 46.8 / gal, disc(20, 2.5), 0}},
		{"just short of it", "a,96,48,46.8,62,3,0,20,2.5,10.4,5.1999999,0,0", []float64{62 * 48 * 46.8 / gal, 31 * 48 * 46.8 / gal, 0, disc(20, 2.5), 0}},
		{"both compartments", "a,96,48,48,62,3,1,20,3,16,0,8,8", []float64{62 * 48 * 48 / gal, 31 * 48 * 48 / gal, 93 * 48 * 48 / gal, disc(20, 3), 1}},
		{"no partition", "a,96,48,48,,,1,20,3,16,0,,", []float64{96 * 48 * 48 / gal, none, 96 * 48 * 48 / gal, disc(20, 3), 1}},
		{"second not read", "a,96,48,48,62,3,1,20,3,16,0,,", []float64{62 * 48 * 48 / gal, 31 * 48 * 48 / gal, none, disc(20, 3), 1}},
		{"scum not read", "a,96,48,48,62,3,1,20,3,16,,0,0", []float64{62 * 48 * 48 / gal, 31 * 48 * 48 / gal, none, disc(20, 3), 1}},
		{"no lid, no cover", "a,96,48,48,62,3,,,,1,0,1,0", []float64{62 * 48 * 48 / gal, 31 * 48 * 48 / gal, 0, none, none}},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, out, log := day(t, header+c.row+"\n", "-out", "csv")
			if code != 0 || len(out) != 2 {
				t.Fatalf("exit %d, %q, %s", code, out, log)
			}
			if diff := near(c.want, numbers(t, out[1])); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// 77 in x 60 in x 50 in are 1,000 gal exactly. The household table has 2.6 years
// for 1,000 gal and four people (Mancl 1984).
func TestNamedColumns(t *testing.T) {
	const in = "id,length_in,width_in,depth_in,people,sludge1_in,scum1_in,truck_gal,lid_dia_in,lid_thick_in,cover_in,pumped,visited\n" +
		"a,77,60,50,4,20,5,600,24,3,10,2024-11-25,2026-11-25\n"
	for _, c := range []struct {
		columns string
		want    []float64
	}{
		{"id,liquid_gal,liquid_L,liquid_ft3", []float64{1000, 3785.411784, 231000. / 1728}},
		{"id,pump_gal,pump_1_gal,pump_2_gal,loads", []float64{1000, 1000, math.NaN(), 2}},
		{"id,sludge_gal,scum_gal,solids_1,solids_2", []float64{400, 100, 0.5, math.NaN()}},
		{"id,next_years,next_months", []float64{2.6, 31.2}},
		{"id,reach_in,reach_mm,reach_ft", []float64{10, 254, 10. / 12}},
		{"id,lid_lb,lid_soaked_lb,lid_kg", []float64{math.Pi * 36 * 12 / 1728 * 150, math.Pi * 36 * 12 / 1728 * 150 * 1.05, math.Pi * 36 * 12 / 1728 * 150 * 0.45359237}},
		{"id,float_factor,leave_in", []float64{math.NaN(), math.NaN()}}, // no height
	} {
		code, out, log := day(t, in, "-out", "csv", "-columns", c.columns)
		if code != 0 || len(out) != 2 || out[0] != c.columns+",errors" {
			t.Fatalf("%s: exit %d, %q, %s", c.columns, code, out, log)
		}
		if diff := near(c.want, numbers(t, out[1])); diff != "" {
			t.Errorf("%s: %s", c.columns, diff)
		}
	}
	// A third was passed before the visit: the date is that of the visit.
	if _, out, _ := day(t, in, "-out", "csv", "-columns", "id,next_on,float_state"); out[1] != "a,2026-11-25,," {
		t.Error(out)
	}
	for _, columns := range []string{"id,gallons", "id,pump", "id,pump_in", "id,id", "", "id,reach_furlong"} {
		if code, _, log := day(t, in, "-out", "csv", "-columns", columns); code != 2 || !strings.Contains(log, "column") {
			t.Errorf("%q: exit %d, %s", columns, code, log)
		}
	}
}

// A box 8 ft x 4 ft x 4 ft inside with 3 in walls, floor and roof, the water at
// grade and no soil on it, by hand: 135 lb/ft3 x shell against 62.4 lb/ft3 x
// outside volume.
func TestFlotationByHand(t *testing.T) {
	const outside = 8.5 * 4.5 * 4.5
	shell := outside - 8*4*4
	in := "id,length_in,width_in,depth_in,height_in,wall_in,roof_in,floor_in,cover_in\na,96,48,44,48,3,3,3,0\n"
	code, out, log := day(t, in, "-out", "csv", "-columns", "id,float_factor,leave_in")
	if code != 0 {
		t.Fatal(code, log)
	}
	factor := 135 * shell / (62.4 * outside)
	leave := (1.2*62.4*outside - 135*shell) / 62.4 / (8 * 4) * 12
	if diff := near([]float64{factor, leave}, numbers(t, out[1])); diff != "" {
		t.Error(diff)
	}
	_, out, _ = day(t, in, "-out", "csv", "-columns", "id,float_state,leave_state", "-groundwater", "5 ft")
	if out[1] != "a,no uplift,factor kept when empty," {
		t.Error(out)
	}
}

// What is wrong with a row is told in its place, all at once, by the row's own
// names.
func TestRefusedRows(t *testing.T) {
	for _, c := range []struct{ row, want string }{
		{"b,0,48,48,62,3,18,24,3,12,4,3,1", "length 0 in: want 4 in to 100 ft"},
		{"b,96,48,48,62,0,18,24,3,12,4,3,1", "partition_thick 0 in"},
		{"b,96,48,48,94,3,18,24,3,12,4,3,1", "partition 7 ft 10 in"},
		{"b,96,48,48,62,3,18,24,,12,4,3,1", "lid_thick 0 in"},
		{"b,96,48,48,62,3,-1,24,3,12,4,3,1", "cover -1 in"},
		{"b,96,48,48,62,3,18,24,3,40,12,3,1", "scum1 1 ft: want sludge and scum together"},
		{"b,96,48,48,62,3,18,24,3,12,4,49,1", "sludge2 4 ft 1 in"},
		{"b,96,48,48,,,18,24,3,12,4,3,1", "sludge2 3 in: want nothing: there is no partition; line 3: scum2 1 in"},
		{"b,96,48,5,62,3,18,24,3,1,1,1,1", "depth 5 in"},
		{"b,1e300,48,48,62,3,18,24,3,1,1,1,1", "length"},
		{"b,NaN,48,48,62,3,18,24,3,1,1,1,1", "length NaN: want a bare number"},
		{"b,0,0,48,62,3,999,0.1,3,1,1,1,1", "lid_dia"},
	} {
		code, out, log := day(t, header+row+c.row+"\n"+row, "-out", "csv")
		if code != 1 || len(out) != 4 || !strings.HasPrefix(out[2], "b,,,,,,") || !strings.Contains(out[2], c.want) || out[1] != out[3] {
			t.Errorf("%s: exit %d, %q, %s", c.row, code, out, log)
		}
	}
	for _, c := range []struct{ args, want string }{
		{"-truck 5gal", "truck 5 gal: want 10 gal"},
		{"-people 0", "people 0: want 1 to 100"},
		{"-wall 4ft", "wall 4 ft"},
		{"-groundwater -1in", "groundwater -1 in"},
		{"-height 40in", "depth 4 ft: want at most the inside height"},
		{"-lid-at 20in", "lid_dia 0 in: want the lid's diameter"},
		{"-pumped 2026-11-25 -visited 2025-11-25", "pumped 2026-11-25"},
	} {
		args := append(strings.Fields(c.args), "-out", "csv", "-columns", "id,loads,next_years,next_on,float_factor", "-height", "5ft")
		if strings.Contains(c.args, "-height") {
			args = args[:len(args)-2]
		}
		code, out, log := day(t, header+"b,96,48,48,62,3,18,,,12,4,3,1\n", args...)
		if code != 1 || !strings.Contains(out[1], c.want) {
			t.Errorf("%s: exit %d, %q, %s", c.args, code, out, log)
		}
	}
	_, out, _ := day(t, header+"b,0,0,48,62,3,999,0.1,3,1,1,1,1\n", "-out", "json")
	for _, field := range []string{"length", "width", "cover", "lid_dia"} {
		if !strings.Contains(out[0], `"field":"`+field+`"`) {
			t.Errorf("no fault of %s in %s", field, out[0])
		}
	}
}

// The order is kept, and each row is worked as it is alone: compartments and
// what stands between them make the box, and metres give what inches give.
func TestManyRows(t *testing.T) {
	const n = 20000
	r := rand.New(rand.NewPCG(3, 7))
	var us, si strings.Builder
	us.WriteString(header)
	si.WriteString(strings.ReplaceAll(header, "_in", "_mm"))
	box := make([]float64, n)
	for i := range n {
		cells := []float64{80 + float64(r.IntN(40)), 48 + float64(r.IntN(20)), 40 + float64(r.IntN(15)), 50, 1 + float64(r.IntN(4)), float64(r.IntN(50)), 24, 3, float64(r.IntN(20)), float64(r.IntN(8)), float64(r.IntN(20)), float64(r.IntN(8))}
		box[i] = (cells[0] - cells[4]) * cells[1] * cells[2] / 231
		fmt.Fprintf(&us, "%d", i)
		fmt.Fprintf(&si, "%d", i)
		for _, v := range cells {
			fmt.Fprintf(&us, ",%g", v)
			fmt.Fprintf(&si, ",%g", v*25.4)
		}
		us.WriteString("\n")
		si.WriteString("\n")
	}
	_, inches, _ := day(t, us.String(), "-out", "csv")
	_, metres, _ := day(t, si.String(), "-out", "csv")
	if len(inches) != n+1 || len(metres) != n+1 {
		t.Fatal(len(inches), len(metres))
	}
	for i, out := range inches[1:] {
		if !strings.HasPrefix(out, strconv.Itoa(i)+",") {
			t.Fatalf("row %d is %s", i, out)
		}
		got := numbers(t, out)
		if diff := near(got, numbers(t, metres[i+1])); diff != "" {
			t.Fatal(diff)
		}
		if !(math.Abs(got[0]+got[1]-box[i]) <= 1e-8*box[i]) {
			t.Fatalf("%s: the compartments hold %g, not %g", out, got[0]+got[1], box[i])
		}
	}
}

func TestText(t *testing.T) {
	_, out, _ := day(t, header+"a,96,48,48,62,3,,24,3,16,0,,\n")
	if out[0] != "a: liquid 1 618.4 gal, liquid 2 309.2 gal, pump not known, lid 117.8 lb," || out[1] != "  reach not known" || !strings.Contains(out[2], "never-enter") {
		t.Errorf("%q", out)
	}
	_, out, _ = day(t, header+"a,96,48,48,62,3,,24,3,16,0,,\n", "-out", "json")
	if !strings.Contains(out[0], `"pump_gal":null`) || !strings.Contains(out[0], `"never-enter"`) {
		t.Error(out)
	}
}

// Whatever stands in a row, there is one line for it and no number that is none.
func FuzzRow(f *testing.F) {
	f.Add("a,96,48,48,62,3,18,24,3,12,4,3,1")       // plain
	f.Add("a,96,48,48,,,,,,,,,")                    // nothing measured
	f.Add("a,1e308,1e308,1e308,-1,5e-324,0,,,,,,")  // ends of the numbers
	f.Add("\"=1+1\",96,48,48,62,3,1,1,1,1,1,1,1,1") // a formula, a cell too many
	f.Fuzz(func(t *testing.T, text string) {
		if strings.ContainsAny(text, "\n") || strings.TrimSpace(text) == "" {
			return // not one row
		}
		all := strings.Join(append([]string{"id"}, columnNames()...), ",")
		_, out, _ := day(t, header+text+"\n", "-out", "csv", "-columns", all, "-height", "60in", "-people", "3")
		if len(out) != 2 {
			t.Fatalf("%q", out)
		}
		if strings.Contains(out[1], "Inf") || !strings.Contains(text, "NaN") && strings.Contains(out[1], "NaN") || strings.Contains(out[1], "defect") {
			t.Fatal(out[1])
		}
	})
}

// Of a roof nothing is said without the lid's place; steel that nobody saw is
// never counted on; bars without known steel are refused, not ignored.
func TestRoof(t *testing.T) {
	const columns = "id,roof_screening_use,roof_screening_load,roof_screening_status"
	for _, c := range []struct{ name, args, want string }{
		{"no place", "", "a,,,,"},
		{"unknown steel", "-lid-at 20in", "not shown"},
		{"no steel", "-lid-at 20in -steel none", "not permitted"},
		{"known steel", "-lid-at 20in -steel known -bar 0.375in -bar-spacing 12in -bar-cover 1in", "a,"},
		{"bars of unknown steel", "-lid-at 20in -bar 0.375in", "steel unknown: want known, where bars are given"},
		{"no spacing", "-lid-at 20in -steel known -bar 0.375in", "bar_spacing 0 in"},
		{"off the tank", "-lid-at 200in", "lid_at"},
	} {
		_, out, log := day(t, header+"a,96,48,48,62,3,18,24,3,12,4,3,1\n", append(strings.Fields(c.args), "-out", "csv", "-columns", columns, "-roof", "4in")...)
		if len(out) != 2 || !strings.Contains(out[1], c.want) {
			t.Errorf("%s: %q %s", c.name, out, log)
		}
	}
	_, out, _ := day(t, header+"a,96,48,48,62,3,18,24,3,12,4,3,1\n", "-out", "json", "-columns", columns, "-roof", "4in", "-lid-at", "20in")
	if !strings.Contains(out[0], `"screening"`) {
		t.Errorf("no word that it is a screening: %s", out[0])
	}
}
