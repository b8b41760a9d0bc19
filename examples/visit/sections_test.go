package visit_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"manway.example/manway"
	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
	"manway.example/manway/tank"
)

// fact is the number of a fact of a section by its key.
func fact(v visit.Visit, section, key string) (float64, bool) {
	for _, s := range v.Sections {
		if s.ID != section {
			continue
		}
		for _, f := range s.Facts {
			if f.Key == key {
				return f.Number, true
			}
		}
	}
	return 0, false
}

// The sections that are asked for come alone and in the order asked.
func TestOnlyTheSectionsAskedFor(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	v, _ := page(t, s, book)
	for i := range v.Sections {
		a, b := v.Sections[i], v.Sections[len(v.Sections)-1-i]
		got, err := v.Only(a.ID, b.ID)
		if err != nil || len(got.Sections) != 2 || got.Sections[0].Title != a.Title || got.Sections[1].Title != b.Title {
			t.Errorf("%s and %s: %d sections, %v", a.ID, b.ID, len(got.Sections), err)
		}
	}
	if _, err := v.Only("crew", "cellar"); err == nil || !strings.Contains(err.Error(), `"cellar"`) || !strings.Contains(err.Error(), "pump") {
		t.Errorf("a section that is not there: %v", err)
	}
}

// The level stood at 49.5 in, the outlet is at 48: 1.5 in more over 60 by 62 and 60
// by 31 in. Where no level was read nothing is said of it.
func TestLevelOnArrival(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	v, _ := page(t, s, book)
	if above, ok := fact(v, "arrival", "above_outlet_in"); !ok || math.Abs(above-1.5) > 1e-9 {
		t.Errorf("%v in above the outlet, %v", above, ok)
	}
	if over, ok := fact(v, "arrival", "over_gal"); !ok || math.Abs(over-1.5*60*93/231) > 1e-9 {
		t.Errorf("%v gal over the outlet, %v; by hand %v", over, ok, 1.5*60*93/231)
	}
	s.Arrival.Level, s.Compartments[0].Level = manway.Reading{}, manway.Reading{}
	v, _ = page(t, s, book)
	for _, key := range []string{"above_outlet_in", "over_gal"} {
		if x, ok := fact(v, "arrival", key); ok {
			t.Errorf("no level was read and %s is %v", key, x)
		}
	}
}

// The hose of the truck takes a K of 3 for couplings, bends and its ends, and what
// it takes is what the vacuum leaves over the lift.
func TestHoseOfTheTruck(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	v, _ := page(t, s, book)
	h := v.Pump.Pull.Hose
	if k := float64(h.FittingLoss / h.VelocityHead); math.Abs(k-3) > 1e-9 {
		t.Errorf("fittings take %v velocity heads, want 3", k)
	}
	// A hose of 3 in: what flows, over pi/4 (3 in)^2, is the velocity of that head.
	if speed := float64(h.Flow) / (math.Pi / 4 * 0.0762 * 0.0762); math.Abs(speed*speed/(2*manway.StandardGravity)/float64(h.VelocityHead)-1) > 1e-9 {
		t.Errorf("%v flows at a velocity head of %v", h.Flow, h.VelocityHead)
	}
	// The truck's inlet is 4 ft over ground 4 ft higher than that at the opening, the
	// floor 18 + 4 + 60 in below that.
	if lift := (v.Pump.Pull.Available - v.Pump.Pull.Left).In(manway.Foot); math.Abs(lift-(4+4+82./12)) > 1e-9 {
		t.Errorf("lift of %v ft, by hand %v", lift, 4+4+82./12)
	}
	if math.Abs(float64(h.Loss/v.Pump.Pull.Left)-1) > 1e-6 {
		t.Errorf("the hose takes %v of %v", h.Loss, v.Pump.Pull.Left)
	}
}

// What rests on the roof, and what new risers add, is said where it is known: of a
// concrete box and not of a plastic one.
func TestRestsOnTheRoof(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	for _, plastic := range []bool{false, true} {
		if plastic {
			s.Tank.Material, s.Tank.Steel, s.Tank.RoofLoss = tank.PlasticShell, manway.SteelUnknown, manway.Reading{}
			s.Tank.BarDiameter, s.Tank.BarSpacing, s.Tank.BarCover = 0, 0, 0
		}
		v, _ := page(t, s, book)
		if v.Roof.Change.Known == plastic {
			t.Fatalf("plastic %v: change known %v", plastic, v.Roof.Change.Known)
		}
		now, told := fact(v, "structure", "roof_now_lbf")
		if told == plastic || told && math.Abs(now/v.Roof.Change.Now.In(manway.PoundForce)-1) > 1e-12 {
			t.Errorf("plastic %v: %v lbf, told %v", plastic, now, told)
		}
	}
}

// A lid of 2 in, the thinnest of which half may be gone, is asked for its loss;
// what is thinner is not.
func TestLossOfAThinLidIsAsked(t *testing.T) {
	s := readText(t, fifteen)
	s.Accesses[0].Lid.Steel = manway.SteelNone
	s.Accesses[0].Lid.Loss = manway.Reading{}
	for thickness, want := range map[manway.Length]bool{2 * manway.Inch: true, 1.9 * manway.Inch: false} {
		s.Accesses[0].Lid.Thickness = thickness
		v, _ := page(t, s, cost.Book{})
		asked := false
		for _, c := range v.Changes {
			if strings.Contains(c.Measure, "thickness of the lid") {
				asked = true
				// A slab half as thick uses four times as much of its strength under a
				// load on it, and twice as much under its own weight.
				if !(c.Share > 0.5 && c.Share < 0.75) {
					t.Errorf("the answers differ by %v of the greater Use", c.Share)
				}
			}
		}
		if asked != want {
			t.Errorf("a lid of %v: its loss is asked for: %v, want %v", thickness, asked, want)
		}
	}
}

// An earlier visit whose layers were read has them in the history, one without has
// none.
func TestLayersOfEarlierVisits(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	bare := s.History[0]
	bare.Date.Year--
	bare.Compartments = nil
	s.History = append([]visit.Earlier{bare}, s.History...)
	v, _ := page(t, s, book)
	history, err := v.Only("history")
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []visit.CellKind{visit.Unknown, visit.Words} {
		row := history.Sections[0].Tables[0].Rows[i]
		layers := row[len(row)-1]
		if layers.Key != "layers" || layers.Is != want || want == visit.Words && !strings.Contains(layers.Text, "8 in") {
			t.Errorf("visit %d: %+v", i, layers)
		}
	}
}

// Walls that are no plates are not judged, with the reason; the rest of the visit
// is there.
func TestWallsThatAreNoPlates(t *testing.T) {
	s, book := read(t, "rusted-handle.json")
	whole, _ := page(t, s, book)
	s.Tank.Wall = 36 * manway.Inch
	v, _ := page(t, s, book)
	if len(v.Sections) != len(whole.Sections) {
		t.Errorf("%d sections, %d before", len(v.Sections), len(whole.Sections))
	}
	told := map[string]bool{}
	for _, section := range v.Sections {
		for _, c := range section.Checks {
			if strings.Contains(c.Reason, "two thicknesses") {
				told[c.Name] = true
			}
		}
	}
	if !told["walls, side wall"] || !told["walls, end wall"] || len(told) != 2 {
		t.Errorf("not judged: %v", told)
	}
}

// No sentence, label or note is empty, or has two stops or blanks where one would
// do, and a sentence for the owner ends.
func TestSentencesAreWhole(t *testing.T) {
	for name, v := range answered(t) {
		for _, s := range v.Sections {
			lines := slices.Concat(s.Says, s.Unjudged, s.Photos)
			for _, f := range s.Facts {
				lines = append(lines, f.Label, f.Text)
			}
			for _, table := range s.Tables {
				for _, row := range table.Rows {
					for _, c := range row {
						lines = append(lines, c.Text)
					}
				}
			}
			for _, c := range s.Checks {
				lines = append(lines, c.Name)
			}
			for _, line := range lines {
				if strings.TrimSpace(line) != line || line == "" || strings.Contains(line, "  ") || strings.Contains(line, "..") || strings.Contains(line, " ,") || strings.Contains(line, "()") {
					t.Errorf("%s, %s: %q", name, s.ID, line)
				}
			}
			for _, line := range slices.Concat(s.Says, s.Unjudged) {
				if s.For == visit.ForOwner && !strings.HasSuffix(line, ".") {
					t.Errorf("%s, %s: %q has no end", name, s.ID, line)
				}
			}
		}
	}
}
