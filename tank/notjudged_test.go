package tank

import (
	"strings"
	"testing"

	"manway.example/manway"
)

// What is not of concrete is not judged, and then no check governs.
func TestNothingGovernsWhatIsNotJudged(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 60 * in, Height: 60 * in}, Material: PlasticShell, Partitions: []Partition{{At: 60 * in, Thickness: 1 * in}}})
	roof := roofOf(t, &x, RoofCase{})
	wall, err := x.Wall(WallCase{})
	if err != nil {
		t.Fatal(err)
	}
	partition, err := x.Partition(PartitionCase{})
	if err != nil {
		t.Fatal(err)
	}
	floor, err := x.Floor(FloorCase{})
	if err != nil {
		t.Fatal(err)
	}
	for part, c := range map[string]struct{ governs, notJudged, loadings int }{
		"roof":      {roof.Governs, len(roof.NotJudged), len(roof.Loadings)},
		"wall":      {wall.Governs, len(wall.NotJudged), len(wall.Loadings)},
		"partition": {partition.Governs, len(partition.NotJudged), len(partition.Loadings)},
		"floor":     {floor.Loading.Governs, len(floor.NotJudged), len(floor.Loading.Checks)},
	} {
		if c.governs != -1 || c.notJudged == 0 || c.loadings != 0 {
			t.Errorf("%s: %d governs of %d loadings, %d not judged; want -1 of none", part, c.governs, c.loadings, c.notJudged)
		}
	}
}

// A floor that stands now says not to empty the tank only where it would not stand
// now, even if it would not with higher water.
func TestFloorCautionIsForTheWaterThatIsThere(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 200 * in, Width: 100 * in, Height: 60 * in}, Wall: 6 * in, Roof: 6 * in, Floor: 5 * in})
	steel := Mesh(bar(0.5, 12, 1.5))
	for water, stands := range map[manway.Length]bool{20 * manway.Foot: true, 0: false} {
		f, err := x.Floor(FloorCase{Cover: manway.Foot, Concrete: strongConcrete, Steel: Steel{Inside: steel, Outside: steel}, Groundwater: manway.GroundwaterAt(water)})
		if err != nil {
			t.Fatal(err)
		}
		if f.Groundwater.State != LimitAt || (f.Loading.Status() == manway.Pass) != stands || f.Cautions.Has(manway.DoNotEmpty) == stands {
			t.Errorf("water %v down: %v, limit %+v, do not empty: %v", water, f.Loading.Status(), f.Groundwater, f.Cautions.Has(manway.DoNotEmpty))
		}
	}
}

// Walls of 48 in clear height on a floor of 26 in span 48 + 13 in, of which 30.5 in
// is half; a partition the 40 in up to its head; a floor within walls of 12 in the
// width and half a bearing at both ends, 40 + 12 in. Up to half the span each is
// judged; above it the figures of a plate would say nothing.
func TestWhatIsNoPlateIsNotJudged(t *testing.T) {
	const hair = 1e-6 * manway.Inch
	spec := Spec{Shape: Box{Length: 120 * in, Width: 40 * in, Height: 48 * in}, Wall: 12 * in, Roof: 6 * in, Floor: 26 * in,
		Partitions: []Partition{{At: 60 * in, Thickness: 20 * in, Height: 40 * in}}}
	why := func(list []manway.Check, name string) bool {
		for _, c := range list {
			if c.Name == name && c.Status == manway.NotJudged && strings.Contains(c.Reason, "two thicknesses") {
				return true
			}
		}
		return false
	}
	for _, over := range []bool{false, true} {
		s, more := spec, -hair
		if over {
			more = hair
		}
		s.Wall = 30.5*in + more
		x := must(t, s)
		w, err := x.Wall(WallCase{Concrete: strongConcrete})
		if err != nil {
			t.Fatal(err)
		}
		if why(w.NotJudged, "side wall") != over || why(w.NotJudged, "end wall") != over || (len(w.Loadings) == 0) != over || over && w.Governs >= 0 {
			t.Errorf("wall of %v: %d loadings, %d governs, %+v", s.Wall, len(w.Loadings), w.Governs, w.NotJudged)
		}
		if over && (w.Groundwater.State != LimitUnknown || !w.Cautions.Has(manway.DoNotEmpty)) {
			t.Errorf("wall of %v: groundwater %v, cautions %v", s.Wall, w.Groundwater.State, w.Cautions)
		}
		s = spec
		s.Partitions = []Partition{{At: 60 * in, Thickness: 20*in + more, Height: 40 * in}}
		x = must(t, s)
		p, err := x.Partition(PartitionCase{Concrete: strongConcrete})
		if err != nil {
			t.Fatal(err)
		}
		if why(p.NotJudged, "partition") != over || (len(p.Loadings) == 0) != over || over && p.Governs >= 0 || p.Order == "" {
			t.Errorf("partition of %v: %d loadings, %d governs, %q, %+v", s.Partitions[0].Thickness, len(p.Loadings), p.Governs, p.Order, p.NotJudged)
		}
		s = spec
		s.Floor = 26*in + more
		x = must(t, s)
		f, err := x.Floor(FloorCase{Concrete: strongConcrete})
		if err != nil {
			t.Fatal(err)
		}
		if why(f.NotJudged, "floor") != over || (len(f.Loading.Checks) == 0) != over || over && (f.Loading.Governs >= 0 || !f.Cautions.Has(manway.DoNotEmpty)) {
			t.Errorf("floor of %v: %+v, %+v", s.Floor, f.Loading, f.NotJudged)
		}
	}
}

// An end wall too short for its thickness is not judged, and the side wall is;
// how high groundwater may stand is then not known.
func TestOneWallIsNoPlate(t *testing.T) {
	x := must(t, Spec{Shape: Box{Length: 96 * in, Width: 5 * in, Height: 60 * in}, Wall: 6 * in, Roof: 6 * in, Floor: 6 * in})
	steel := Mesh(bar(0.5, 6, 1.5))
	w, err := x.Wall(WallCase{Concrete: strongConcrete, Steel: Steel{Inside: steel, Outside: steel}})
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Loadings) != 3 || w.Governs < 0 || w.Groundwater.State != LimitUnknown || !w.Cautions.Has(manway.DoNotEmpty) {
		t.Errorf("%d loadings, %d governs, groundwater %v", len(w.Loadings), w.Governs, w.Groundwater.State)
	}
	for _, l := range w.Loadings {
		if !strings.HasPrefix(l.Name, "side wall: ") {
			t.Errorf("judged: %q", l.Name)
		}
	}
	if checkNamed(t, w.NotJudged, "end wall").Reason == "" {
		t.Error("no reason why the end wall is not judged")
	}
}
