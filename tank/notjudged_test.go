package tank

import "testing"

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
