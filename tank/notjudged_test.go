package tank

import (
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
