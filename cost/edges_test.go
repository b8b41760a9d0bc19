package cost_test

import (
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"manway.example/manway/cost"
	"manway.example/manway/riser"
)

// A price book of 16 MiB is read and one of a byte more is refused, whole.
func TestLargestBook(t *testing.T) {
	const most = 16 << 20
	row := cost.BookHeader + "\na,b,EA,1,USD,2026-01-01,\n"
	remark := "#" + strings.Repeat("x", 98) + "\n"
	text := row + strings.Repeat(remark, (most-len(row))/len(remark))
	text += "#" + strings.Repeat("y", most-len(text)-2) + "\n"
	for _, c := range []struct {
		text string
		fine bool
	}{{text, true}, {text + "\n", false}} {
		book, err := cost.ReadPriceBook(strings.NewReader(c.text))
		if _, ok := book.Price("a", today); c.fine != (err == nil) || ok != c.fine {
			t.Errorf("%d bytes: %v, price %v", len(c.text), err, ok)
		}
	}
}

// A book with more faults than anybody reads stops at the thousandth, or at the
// last one of its row.
func TestMostFaultsOfABook(t *testing.T) {
	_, err := cost.ReadPriceBook(strings.NewReader(cost.BookHeader + strings.Repeat("\na,,EA,1,USD,2026-01-01,", 1500)))
	if list, ok := err.(cost.BookErrors); !ok || len(list) != 1000 {
		t.Errorf("%d faults", len(list))
	}
}

// What is needed of a line by hand: net with waste, times how much looser it is
// bought than placed, denser too; packs by that.
func TestNeededByHand(t *testing.T) {
	for _, c := range []struct {
		waste, bulking, want float64 // of a net of 10
	}{{0, 0, 10}, {5, 0, 10.5}, {0, 1.25, 12.5}, {10, 1.25, 13.75}, {0, 0.8, 8}, {0, 1, 10}, {100, 0, 20}} {
		l := cost.Line{Code: "a", Class: riser.Material, Net: 10, NetUnit: "YDQ", WastePercent: c.waste, Bulking: c.bulking, Pack: 4, Whole: true, Quantity: 9, Unit: "EA"}
		merged := cost.Merge([]cost.Line{l, {Code: "a", Class: riser.Material, NetUnit: "YDQ", WastePercent: c.waste, Bulking: c.bulking, Pack: 4, Whole: true, Unit: "EA"}})
		packs := math.Ceil(c.want / 4)
		if len(merged) != 1 || merged[0].Quantity != packs || math.Abs(merged[0].Leftover-(4*packs-c.want)) > 1e-9 {
			t.Errorf("waste %v %%, bulking %v: %+v, want %v packs", c.waste, c.bulking, merged, packs)
		}
		needed := false
		for _, step := range l.Working() {
			needed = needed || step.Symbol == "needed"
		}
		if needed != (c.waste > 0 || c.bulking > 0) {
			t.Errorf("waste %v %%, bulking %v: the working says what is needed: %v", c.waste, c.bulking, needed)
		}
	}
}

// Lines are added up where code, units, crew and pack are one, and kept apart where
// a range is given for either of them, in the order in which they first stand.
func TestWhatIsMerged(t *testing.T) {
	plain := cost.Line{Code: "a", Quantity: 1, Unit: "EA"}
	ranged, priced := plain, plain
	ranged.Quantities = cost.Range{Low: 1, Likely: 1, High: 2}
	priced.Prices = cost.Range{Low: 1, Likely: 1, High: 2}
	with := func(change func(*cost.Line)) cost.Line { l := plain; change(&l); return l }
	for _, c := range []struct {
		name  string
		lines []cost.Line
		want  []float64
	}{
		{"alike", []cost.Line{plain, plain, plain}, []float64{3}}, {"range last", []cost.Line{plain, plain, ranged}, []float64{2, 1}}, {"range first", []cost.Line{ranged, plain, plain}, []float64{1, 2}},
		{"ranges", []cost.Line{ranged, priced, ranged}, []float64{1, 1, 1}}, {"price range between", []cost.Line{plain, priced, plain}, []float64{2, 1}},
		{"code", []cost.Line{plain, with(func(l *cost.Line) { l.Code = "b" }), plain}, []float64{2, 1}}, {"unit", []cost.Line{plain, with(func(l *cost.Line) { l.Unit = "SET" })}, []float64{1, 1}},
		{"crew", []cost.Line{plain, with(func(l *cost.Line) { l.Crew = 2 })}, []float64{1, 1}}, {"waste", []cost.Line{plain, with(func(l *cost.Line) { l.WastePercent = 5 })}, []float64{1, 1}},
		{"bulking", []cost.Line{plain, with(func(l *cost.Line) { l.Bulking = 2 })}, []float64{1, 1}}, {"class", []cost.Line{plain, with(func(l *cost.Line) { l.Class = riser.Fee })}, []float64{1, 1}},
	} {
		got := cost.Merge(c.lines)
		if len(got) != len(c.want) {
			t.Errorf("%s: %d lines, want %v", c.name, len(got), c.want)
			continue
		}
		for i, l := range got {
			if l.Quantity != c.want[i] {
				t.Errorf("%s: line %d of %v, want %v", c.name, i, l.Quantity, c.want[i])
			}
		}
	}
}

// Numbers that are reckoned with have at most 40 digits, 30 places and lie within
// 1e12.
func TestNumbersThatAreTaken(t *testing.T) {
	for text, fine := range map[string]bool{
		"0": true, "1e12": true, "-1e12": true, "1.000000000001e12": false, "-1000000000001": false, "1e-30": true, "1e-31": false, "1e15": false, "1e16": false, "0e16": false, "0e15": true,
		strings.Repeat("1", 10) + "." + strings.Repeat("3", 30): true, strings.Repeat("1", 12) + "." + strings.Repeat("3", 30): false,
	} {
		_, err := cost.HalfEven.Round(decimal.RequireFromString(text), 2)
		if fine != (err == nil) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// How each material is bought, by hand: what is added for waste and laps in per
// cent, what a pack of it gives (a roll of 14.5 ft, a tube of 10.1 fl oz of 1.8046875
// in3, 0.0075 ft3 of mix a pound), how much looser it is than in place, and whether
// it comes whole. What is counted has no waste.
func TestHowMaterialsAreBought(t *testing.T) {
	type row struct {
		waste, pack, bulking float64
		whole                bool
	}
	want := map[string]row{
		"sealant-strip": {5, 14.5, 0, true}, "sealant-bead": {10, 10.1 * 1.8046875, 0, true}, "cement-plug": {10, 0.375, 0, true}, "repair-mortar": {10, 0.375, 0, true}, "grout": {10, 0.45, 0, true},
		"concrete": {10, 0.45, 0, true}, "wrap": {10, 0, 0, false}, "gravel": {5, 0, 1.12 / 0.95, false}, "fill": {5, 0, 1.25 / 0.90, false}, "topsoil": {10, 0, 0, false}, "seed": {5, 1, 0, true},
		"riser-plastic": {0, 1, 0, true}, "ring-concrete": {}, "tank": {},
	}
	for _, s := range cost.Supplies() {
		w, ok := want[s.Code]
		if !ok {
			w = row{whole: true} // by the piece
			if s.Unit != "EA" || s.NetUnit != "EA" {
				t.Errorf("%s is bought by the %s", s.Code, s.Unit)
			}
		}
		if s.WastePercent != w.waste || math.Abs(s.Pack-w.pack) > 1e-12 || math.Abs(s.Bulking-w.bulking) > 1e-12 || s.Whole != w.whole {
			t.Errorf("%s: %+v, want %+v", s.Code, s, w)
		}
		delete(want, s.Code)
	}
	if len(want) > 0 {
		t.Errorf("not supplied: %v", want)
	}
}

// Labour says where its hours come from, with the delay where there is one.
func TestWhereHoursComeFrom(t *testing.T) {
	for delay, want := range map[float64]string{0: "54 FTK x 0.05 h", 1: "54 FTK x 0.05 h", 1.5: "54 FTK x 0.05 h x 1.5 delay"} {
		l := must(cost.Task{Name: "patch", Quantity: 6, Unit: "YDK", Crew: 2, Delay: delay}.Line())(t)
		if hours := 54 * 0.05 * max(delay, 1); l.From != want || math.Abs(l.Quantity-hours) > 1e-9 || math.Abs(l.Hours()-hours/2) > 1e-9 {
			t.Errorf("delay %v: %v h from %q, want %q", delay, l.Quantity, l.From, want)
		}
	}
}
