package cost

import (
	"fmt"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Line is one thing to buy or to pay for, in the quantity that is bought: with
// waste and in whole packs. Lines come from [Takeoff] and [PumpOut], or are
// written by hand.
type Line struct {
	Code         string // the code in the price book
	Description  string
	Class        riser.Class // material, labour, equipment, haulage, fee or wait
	Quantity     float64     // to be paid for, in Unit
	Unit         Unit
	Net          float64 // what the scope asks for, in NetUnit; 0 for a line written by hand
	NetUnit      Unit
	WastePercent float64            // added to Net
	Bulking      float64            // volume as bought over volume as measured in place; 0 where it is the same
	Pack         float64            // NetUnit in one Unit as bought; 0 where it is not packed
	Whole        bool               // bought in whole units only
	Leftover     float64            // in NetUnit, after waste
	Crew         int                // people at the task, for labour; 0 elsewhere
	From         string             // where the net quantity comes from, with its numbers
	Basis        [3]manway.Citation // of the quantity, the waste and the yield
	Remembered   bool               // a figure of it was not read in its source
	Quantities   Range              // of Quantity; the zero value is no range
	Prices       Range              // of the price of one unit; the zero value is no range
}

// Validate returns every fault of the line.
func (l Line) Validate() error {
	var faults manway.InputErrors
	if !isCode(l.Code) {
		faults.Add("Code", strconv.Quote(clip(l.Code)), "letters, digits, points and hyphens, starting with a letter or digit, at most 64")
	}
	if !plainText(l.Description) || len(l.Description) > maxCell {
		faults.Add("Description", strconv.Quote(clip(l.Description)), fmt.Sprintf("one line of UTF-8 text of at most %d bytes", maxCell))
	}
	if l.Class > riser.Wait {
		faults.Add("Class", l.Class.String(), "material, labour, equipment, haulage, fee or wait")
	}
	checkFloat(&faults, "Quantity", l.Quantity, 0, 1e9)
	faults.Under("", l.Unit.Validate())
	checkFloat(&faults, "Net", l.Net, 0, 1e9)
	checkFloat(&faults, "WastePercent", l.WastePercent, 0, 1000)
	checkFloat(&faults, "Bulking", l.Bulking, 0, 1000)
	checkFloat(&faults, "Pack", l.Pack, 0, 1e9)
	checkFloat(&faults, "Leftover", l.Leftover, 0, 1e9)
	manway.Within(&faults, "Crew", l.Crew, 0, 100)
	if !l.Quantities.IsZero() {
		faults.Under("Quantities", l.Quantities.Validate())
	}
	if !l.Prices.IsZero() {
		faults.Under("Prices", l.Prices.Validate())
	}
	return faults.Err()
}

// Hours is the clock time of a labour line: labour hours by the crew. It is 0
// for other lines. Source: common practice, as [Crew.Days].
func (l Line) Hours() float64 {
	if l.Class != riser.Labour || l.Crew == 0 {
		return 0
	}
	return l.Quantity / float64(l.Crew)
}

// Working is how the quantity to buy follows from the scope.
func (l Line) Working() manway.Working {
	num := func(v float64) string { return strconv.FormatFloat(round12(v), 'g', 6, 64) }
	var w manway.Working
	if l.From != "" {
		w = append(w, manway.Step{Symbol: "net", Formula: l.From})
	}
	if l.NetUnit == "" {
		return w
	}
	net := num(l.Net) + " " + string(l.NetUnit)
	factor, numbers := "net", net
	if l.WastePercent > 0 {
		factor += " (1 + waste)"
		numbers += " x " + num(1+l.WastePercent/100)
	}
	if l.Bulking > 0 {
		factor += " x bulking"
		numbers += " x " + num(l.Bulking)
	}
	if l.WastePercent > 0 || l.Bulking > 0 {
		w = append(w, manway.Step{Symbol: "needed", Formula: factor, Numbers: numbers, Value: num(l.needed()) + " " + string(l.NetUnit)})
	}
	if l.Pack > 0 {
		rule := "needed / pack"
		if l.Whole {
			rule += ", rounded up"
		}
		w = append(w, manway.Step{Symbol: "bought", Formula: rule, Numbers: num(l.needed()) + " / " + num(l.Pack), Value: num(l.Quantity) + " " + string(l.Unit)})
		if l.Leftover > 0 {
			w = append(w, manway.Step{Symbol: "left over", Formula: "bought x pack - needed", Value: num(l.Leftover) + " " + string(l.NetUnit)})
		}
	}
	if h := l.Hours(); h > 0 {
		w = append(w, manway.Step{Symbol: "time", Formula: "labour hours / crew", Numbers: num(l.Quantity) + " / " + strconv.Itoa(l.Crew), Value: num(h) + " h"})
	}
	return w
}

// needed is the net quantity with waste and bulking, in NetUnit.
func (l Line) needed() float64 {
	v := l.Net * (1 + l.WastePercent/100)
	if l.Bulking > 0 {
		v *= l.Bulking
	}
	return v
}
