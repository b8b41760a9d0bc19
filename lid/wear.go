package lid

import (
	"fmt"

	"manway.example/manway"
)

// Wear is what two measured thicknesses of one lid, roof or wall say: at a
// protected place, such as under a pipe boot or in the seat, and where the
// gases have eaten it.
type Wear struct {
	Protected manway.Length   // as made, 0.5 to 60 in
	Now       manway.Length   // 0 to Protected
	Age       manway.Duration // of the part, 1 to 150 years
	Reading   manway.Length   // error of one reading, to 1 in; 0: 1/8 in is taken
}

// usualReading is the error of a thickness read with a rule on a rough face,
// common practice.
const usualReading = 0.125 * manway.Inch

// Loss is the wear of a part so far.
type Loss struct {
	Lost      manway.Length
	Shown     bool          // Lost is more than the two readings may be off
	PerYear   manway.Length // mean over the age
	Fastest   manway.Length // the same with both readings off the unfavourable way
	Share     float64       // of the thickness as made
	Plain     float64       // bending strength left of a plain section, (Now/Protected)2
	Stiffness float64       // (Now/Protected)3
	Cautions  manway.Cautions

	wear Wear
}

// Validate returns the faults of w.
func (w Wear) Validate() error {
	var faults manway.InputErrors
	manway.Within(&faults, "Protected", w.Protected, 0.5*manway.Inch, 60*manway.Inch)
	manway.Within(&faults, "Now", w.Now, 0, max(w.Protected, 0))
	manway.Within(&faults, "Age", w.Age, 1*manway.Year, 150*manway.Year)
	manway.Within(&faults, "Reading", w.Reading, 0, 1*manway.Inch)
	return faults.Err()
}

// Loss is
//
//	rate = (thickness at a protected place - thickness now)/age
//
// It is a mean. Sewer concrete stands for up to two years and then loses
// evenly (Wells and Melchers 2015), so that the rate of today is rather more
// than the mean, never less for what this shows. Source: common practice of two
// measured thicknesses; Wells and Melchers 2015, abstract.
func (w Wear) Loss() (Loss, error) {
	if err := w.Validate(); err != nil {
		return Loss{}, err
	}
	if w.Reading == 0 {
		w.Reading = usualReading
	}
	lost, years := w.Protected-w.Now, manway.Length(w.Age.In(manway.Year))
	left := float64(w.Now / w.Protected)
	return Loss{
		Lost: lost, Shown: lost > 2*w.Reading, PerYear: lost / years, Fastest: (lost + 2*w.Reading) / years,
		Share: 1 - left, Plain: left * left, Stiffness: left * left * left,
		Cautions: manway.EstimateOnly, wear: w,
	}, nil
}

// Remaining says how long a part lasts at a rate. It is never a date.
type Remaining struct {
	State      RemainingState
	NotLonger  manway.Duration // at the mean rate; where State is NotLongerThan
	AsLittleAs manway.Duration // at the fastest rate that the readings allow
}

// RemainingState is the kind of answer. The zero value is NotMeasured.
type RemainingState uint8

// The answers.
const (
	NotMeasured   RemainingState = iota // the loss is within the error of the readings: no rate, and no statement that it lasts
	NotLongerThan                       // NotLonger, at that rate
	Reached                             // the limit is reached already
)

var remainings = [...]string{"no loss measured", "not longer than", "reached"}

// String is the answer in words.
func (s RemainingState) String() string { return manway.Word(remainings[:], s) }

// MarshalText is the same as String.
func (s RemainingState) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Until is how long the part has, at the rate so far, until a thickness is
// left: the one at which its cover is gone, or its Use reaches 1.
//
//	not longer than (now - limit)/rate
//
// The limit is 0 to Protected. Source: that of [Wear.Loss].
func (l Loss) Until(limit manway.Length) (Remaining, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Limit", limit, 0, l.wear.Protected)
	if err := faults.Err(); err != nil {
		return Remaining{}, err
	}
	room := l.wear.Now - limit
	if room <= 0 {
		return Remaining{State: Reached}, nil
	}
	l, err := l.wear.Loss() // whatever the caller has made of the figures in l
	if err != nil {
		return Remaining{}, err
	}
	if !l.Shown {
		return Remaining{State: NotMeasured}, nil
	}
	years := func(rate manway.Length) manway.Duration { return manway.Duration(room/rate) * manway.Year }
	return Remaining{NotLongerThan, years(l.PerYear), years(l.Fastest)}, nil
}

// Basis is where the rate comes from.
func (Loss) Basis() []manway.Citation {
	return []manway.Citation{
		{Source: manway.Practice, Place: "two measured thicknesses"},
		{Source: wellsMelchers2015, Place: "abstract"},
	}
}

// Working is the loss step by step.
func (l Loss) Working(s manway.System) manway.Working {
	w := l.wear
	return manway.Working{
		{Symbol: "lost", Formula: "protected - now", Numbers: w.Protected.Text(s) + " - " + w.Now.Text(s), Value: l.Lost.Text(s)},
		{Symbol: "rate", Formula: "lost/age", Numbers: l.Lost.Text(s) + "/" + w.Age.Text(s), Value: fmt.Sprintf("%.4g in a year", l.PerYear.In(manway.Inch))},
		{Symbol: "plain strength left", Formula: "(now/protected)2", Numbers: fmt.Sprintf("(%s/%s)^2", w.Now.Text(s), w.Protected.Text(s)), Value: number(l.Plain)},
	}
}

// Sulfide is what Pomeroy's equation is fed with: an explanation of a loss, not
// a forecast. Its figures are seldom measured at a small tank.
type Sulfide struct {
	Reaction   float64 // k, share of the acid that reacts, 0.1 to 1
	Flux       float64 // phi, g of sulfide sulfur a square metre and hour that reach the wall, 0 to 10
	Alkalinity float64 // A, of the wall as calcium carbonate, share by mass, 0.05 to 1: granitic aggregate 0.16 to 0.24, calcareous about 0.9
}

// pomeroy is the constant of the equation in mm of concrete a year, as it is
// remembered. 8,760 h x 100/32 g of carbonate a g of sulfur over 2.4 g/cm3
// gives 11.41.
const pomeroy = 11.4 * manway.Millimetre

// PerYear is the loss a year
//
//	c = 11.4 k phi/A  in mm
//
// Source: Pomeroy, Process Design Manual for Sulfide Control, 1974; remembered,
// so that the second result always carries that caution.
func (s Sulfide) PerYear() (manway.Length, manway.Cautions, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Reaction", s.Reaction, 0.1, 1)
	manway.Within(&faults, "Flux", s.Flux, 0, 10)
	manway.Within(&faults, "Alkalinity", s.Alkalinity, 0.05, 1)
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	return pomeroy * manway.Length(s.Reaction*s.Flux/s.Alkalinity), manway.RememberedFigure | manway.EstimateOnly, nil
}

// BarLeft is what is left of a bar by its least measured diameter.
type BarLeft struct {
	Area    float64 // share of the area as made
	Brittle bool    // more than 12 percent is gone: it may break without warning
}

// brittle is the share of a bar's area beyond which corroded bars broke without
// stretching (Almusallam 2001).
const brittle = 0.12

// WornBar is what is left of a bar: area goes with the square of the diameter. The
// strength of the steel that is left is unchanged; beyond a loss of 12 percent
// the bar may break without stretching. Diameters 0.05 to 2 in, the waist at
// most the diameter as made. Source: Almusallam 2001.
func WornBar(asMade, waist manway.Length) (BarLeft, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "AsMade", asMade, 0.05*manway.Inch, 2*manway.Inch)
	manway.Within(&faults, "Waist", waist, 0, max(asMade, 0))
	if err := faults.Err(); err != nil {
		return BarLeft{}, err
	}
	left := float64(waist/asMade) * float64(waist/asMade)
	return BarLeft{left, 1-left > brittle}, nil
}

// Sources of the wear.
var (
	// WellsMelchers2015 measured the loss of sewer concrete over four years.
	wellsMelchers2015 = &manway.Source{ID: "wells-melchers-2015", Title: "Modelling concrete deterioration in sewers using theory and field observations, Cement and Concrete Research 77, 82-96", Body: "Tony Wells and Robert E. Melchers", Year: 2015}
	// pomeroy1974 has the equation of the loss by hydrogen sulfide.
	pomeroy1974 = &manway.Source{ID: "pomeroy-1974", Title: "Process Design Manual for Sulfide Control in Sanitary Sewerage Systems", Body: "Richard D. Pomeroy, for the US Environmental Protection Agency", Year: 1974}
	// almusallam2001 pulled corroded bars to failure.
	almusallam2001 = &manway.Source{ID: "almusallam-2001", Title: "Effect of degree of corrosion on the properties of reinforcing steel bars, Construction and Building Materials 15, 361-368", Body: "Abdullah A. Almusallam", Year: 2001}
)
