package lid

import (
	"math"

	"manway.example/manway"
)

// liftConstants is one set of constants of the equation (Pub. 94-110, pp.
// 7-12), lengths in the edition's own unit.
type liftConstants struct {
	length     manway.Length // the unit
	weight     manway.Mass   // the unit of weight
	load       manway.Mass   // LC
	near, far  float64       // H: least that counts, most
	knuckle    float64       // V at which VM is 1 and the tables change
	slope      float64       // of VM
	high       float64       // greatest V and D
	travel     float64       // numerator in DM
	least      float64       // D that counts at least
	beyond     float64       // added to half the width for H, V at or above low
	beyondLow  float64       // the same for V below low
	lowV       float64
	misprinted [3][2]float64 // cells of tables 1 and 3 that differ from the rounded formula: H or D, value
}

var constants = [...]liftConstants{
	USEdition: {
		length: manway.Inch, weight: manway.Pound, load: 51 * manway.Pound, near: 10, far: 25, knuckle: 30, slope: 0.0075,
		high: 70, travel: 1.8, least: 10, beyond: 8, beyondLow: 10, lowV: 10,
		misprinted: [3][2]float64{{22, 0.46}, {23, 0.44}},
	},
	MetricEdition: {
		length: manway.Centimetre, weight: manway.Kilogram, load: 23 * manway.Kilogram, near: 25, far: 63, knuckle: 75, slope: 0.003,
		high: 175, travel: 4.5, least: 25, beyond: 20, beyondLow: 25, lowV: 25,
		misprinted: [3][2]float64{{}, {}, {130, 0.86}},
	},
}

// over reports v > limit, a hair of slack for unit conversion.
func over(v, limit float64) bool { return v > limit*(1+1e-9) }

func (c *liftConstants) horizontal(h float64) float64 {
	if over(h, c.far) {
		return 0
	}
	return math.Min(1, c.near/math.Max(h, c.near))
}

func (c *liftConstants) vertical(v float64) float64 {
	if over(v, c.high) {
		return 0
	}
	return 1 - c.slope*math.Abs(v-c.knuckle)
}

func (c *liftConstants) distance(d float64) float64 {
	if over(d, c.high) {
		return 0
	}
	return math.Min(1, 0.82+c.travel/math.Max(d, c.least))
}

func asymmetry(degrees float64) float64 {
	if over(degrees, 135) {
		return 0
	}
	return 1 - 0.0032*degrees
}

// printedHorizontal is HM as Table 1 prints it.
func (c *liftConstants) printedHorizontal(h, m float64) float64 {
	for _, cell := range c.misprinted[:2] {
		if cell[0] != 0 && math.Abs(h-cell[0]) < 1e-6 {
			return cell[1]
		}
	}
	return twoDecimals(m)
}

// printedDistance is DM as Table 3 prints it.
func (c *liftConstants) printedDistance(d, m float64) float64 {
	if cell := c.misprinted[2]; cell[0] != 0 && math.Abs(d-cell[0]) < 1e-6 {
		return cell[1]
	}
	return twoDecimals(m)
}

// twoDecimals rounds as the printed tables do, a five up.
func twoDecimals(m float64) float64 { return math.Floor(m*100+0.5+1e-9) / 100 }

// frequencyRow is one row of Table 5 (p. 15): lifts a minute, then for each
// spell the multiplier with V below 30 in (75 cm), and at or above it.
type frequencyRow struct {
	rate float64
	fm   [3][2]float64
}

var frequencyTable = [...]frequencyRow{
	{0.2, [3][2]float64{{1.00, 1.00}, {0.95, 0.95}, {0.85, 0.85}}},
	{0.5, [3][2]float64{{0.97, 0.97}, {0.92, 0.92}, {0.81, 0.81}}},
	{1, [3][2]float64{{0.94, 0.94}, {0.88, 0.88}, {0.75, 0.75}}},
	{2, [3][2]float64{{0.91, 0.91}, {0.84, 0.84}, {0.65, 0.65}}},
	{3, [3][2]float64{{0.88, 0.88}, {0.79, 0.79}, {0.55, 0.55}}},
	{4, [3][2]float64{{0.84, 0.84}, {0.72, 0.72}, {0.45, 0.45}}},
	{5, [3][2]float64{{0.80, 0.80}, {0.60, 0.60}, {0.35, 0.35}}},
	{6, [3][2]float64{{0.75, 0.75}, {0.50, 0.50}, {0.27, 0.27}}},
	{7, [3][2]float64{{0.70, 0.70}, {0.42, 0.42}, {0.22, 0.22}}},
	{8, [3][2]float64{{0.60, 0.60}, {0.35, 0.35}, {0.18, 0.18}}},
	{9, [3][2]float64{{0.52, 0.52}, {0.30, 0.30}, {0.00, 0.15}}},
	{10, [3][2]float64{{0.45, 0.45}, {0.26, 0.26}, {0.00, 0.13}}},
	{11, [3][2]float64{{0.41, 0.41}, {0.00, 0.23}, {0.00, 0.00}}},
	{12, [3][2]float64{{0.37, 0.37}, {0.00, 0.21}, {0.00, 0.00}}},
	{13, [3][2]float64{{0.00, 0.34}, {0.00, 0.00}, {0.00, 0.00}}},
	{14, [3][2]float64{{0.00, 0.31}, {0.00, 0.00}, {0.00, 0.00}}},
	{15, [3][2]float64{{0.00, 0.28}, {0.00, 0.00}, {0.00, 0.00}}},
}

// frequency is FM: Table 5, linear between rows (p. 7); above the last row 0.
func frequency(rate float64, spell Spell, low bool) float64 {
	column := 1
	if low {
		column = 0
	}
	first := frequencyTable[0]
	if rate <= first.rate {
		return first.fm[spell][column]
	}
	for i, row := range frequencyTable[1:] {
		if rate > row.rate {
			continue
		}
		before := frequencyTable[i]
		a, b := before.fm[spell][column], row.fm[spell][column]
		return a + (b-a)*(rate-before.rate)/(row.rate-before.rate)
	}
	return 0
}

// gripMultiplier is CM, Table 7 (p. 18).
func gripMultiplier(g Grip, low bool) float64 {
	switch {
	case g == PoorGrip:
		return 0.90
	case g == FairGrip && low:
		return 0.95
	}
	return 1
}
