package manway_test

import (
	"fmt"
	"math"
	"testing"

	"manway.example/manway"
	"manway.example/manway/internal/limit"
	"manway.example/manway/internal/reftable"
)

func TestInspectionFigures(t *testing.T) {
	reftable.Load(t, "inspection.csv").Each(t, func(t *testing.T, row reftable.Row) {
		var i manway.Inspection
		pick := row.Input(t, "pick")
		if pick == "stained" {
			row.Read(t, "pick", &i.Bars)
			i.Sounding = manway.Ringing
		} else {
			row.Read(t, "pick", &i.Sounding)
		}
		u, err := i.Unsound(1.6*manway.Inch, 0) // so thin that half of it is 0.8 in
		if pick == "hollow" {
			u, err = i.Unsound(8*manway.Inch, 0)
		}
		if err != nil {
			t.Fatal(err)
		}
		switch row.Unit {
		case "in":
			row.Check(t, u.Depth.In(manway.Inch))
		case "%":
			row.Check(t, 100*(1-u.Bars))
		default:
			word := "sound"
			if u.Depth > 0 {
				word = "unsound"
			}
			row.CheckText(t, word)
		}
	})
}

// Property (monotone): each list goes from whole to worse, whatever the others
// say, but for a hollow sound, whose depth is that of the bars; (bounded) half an
// inch is always left.
func TestWorsePicksLeaveLess(t *testing.T) {
	cover := 3 * manway.Inch / 4
	depth := func(i manway.Inspection, thick manway.Length) manway.Length {
		u, err := i.Unsound(thick, cover)
		if err != nil {
			t.Fatal(err)
		}
		if u.Depth < 0 || thick-u.Depth < manway.Inch/2*(1-1e-12) {
			t.Fatalf("%+v of %v: %+v", i, thick, u)
		}
		return u.Depth
	}
	sounds := []manway.Sounding{manway.Ringing, manway.Dull, manway.Crumbling}
	for _, thick := range []manway.Length{1 * manway.Inch, 2.5 * manway.Inch, 4 * manway.Inch, 60 * manway.Inch} {
		for s, sound := range sounds {
			for probe := manway.ProbeScratches; probe <= manway.ProbeDeeper; probe++ {
				for bars := manway.BarsNone; bars <= manway.BarsThinned; bars++ {
					here := depth(manway.Inspection{Sounding: sound, Probe: probe, Bars: bars}, thick)
					worse := []manway.Inspection{{Sounding: sound, Probe: min(probe+1, manway.ProbeDeeper), Bars: bars}, {Sounding: sound, Probe: probe, Bars: min(bars+1, manway.BarsThinned)}}
					if s+1 < len(sounds) {
						worse = append(worse, manway.Inspection{Sounding: sounds[s+1], Probe: probe, Bars: bars})
					}
					for _, w := range worse {
						if depth(w, thick) < here {
							t.Errorf("%v: %+v leaves more than %v %v %v", thick, w, sound, probe, bars)
						}
					}
				}
			}
		}
	}
}

// What nobody tried is taken as dull, and that is said; a pick takes it back.
func TestNotTriedIsDull(t *testing.T) {
	none, err := manway.Inspection{}.Unsound(4*manway.Inch, 0)
	if err != nil {
		t.Fatal(err)
	}
	dull, err := manway.Inspection{Sounding: manway.Dull}.Unsound(4*manway.Inch, 0)
	if err != nil {
		t.Fatal(err)
	}
	if none.Depth != dull.Depth || none.Assumed != manway.AssumedDullConcrete || dull.Assumed != 0 {
		t.Errorf("not tried %+v, dull %+v", none, dull)
	}
	scratched, err := manway.Inspection{Probe: manway.ProbeScratches}.Unsound(4*manway.Inch, 0)
	if err != nil || scratched.Depth != 0 || scratched.Assumed != 0 {
		t.Errorf("only scratches: %+v, %v", scratched, err)
	}
	for text, bad := range map[string]interface{ UnmarshalText([]byte) error }{
		"loud": new(manway.Sounding), "2 in": new(manway.Probe), "rusty": new(manway.Bars), "4 in": new(manway.Edge),
	} {
		if bad.UnmarshalText([]byte(text)) == nil {
			t.Errorf("%q is read", text)
		}
	}
	if _, ok := manway.EdgeNotSeen.Thickness(); ok {
		t.Error("an edge that was not seen has a thickness")
	}
	if _, ok := manway.Edge(99).Thickness(); ok {
		t.Error("no edge has a thickness")
	}
}

// Members of 1 to 60 in, covers to 12 in.
func TestInspectionLimits(t *testing.T) {
	type member struct {
		manway.Inspection
		Thickness, Cover manway.Length
	}
	limit.Check(t, member{Thickness: 4 * manway.Inch}, func(m member) error { _, err := m.Unsound(m.Thickness, m.Cover); return err },
		limit.Between("Thickness", manway.Inch, 60*manway.Inch), limit.Between("Cover", 0, 12*manway.Inch),
		limit.AtMost("Sounding", manway.Crumbling), limit.AtMost("Probe", manway.ProbeDeeper), limit.AtMost("Bars", manway.BarsThinned))
	if _, err := (manway.Inspection{}).Unsound(manway.Length(math.NaN()), 0); err == nil {
		t.Error("a thickness that is no number is taken")
	}
	if n := testing.AllocsPerRun(10, func() { _, _ = manway.Inspection{Sounding: manway.Hollow}.Unsound(manway.Foot, 0) }); n != 0 {
		t.Errorf("Unsound allocates %v times", n)
	}
}

// A 4 in roof that sounds hollow where a screwdriver goes in half an inch.
func ExampleInspection_Unsound() {
	u, err := manway.Inspection{Sounding: manway.Hollow, Probe: manway.ProbeHalf}.Unsound(4*manway.Inch, 3*manway.Inch/4)
	fmt.Println(u.Depth, "does not count,", err)
	// Output: 3/4 in does not count, <nil>
}

// What shows at the edge of an opening stands for the thickness of the roof.
func ExampleEdge_Thickness() {
	t, ok := manway.EdgeFour.Thickness()
	fmt.Println(t, ok)
	// Output: 4 in true
}
