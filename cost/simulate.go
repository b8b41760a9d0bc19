package cost

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strconv"
	"sync"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/stat/distuv"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Simulation asks how far the total of an estimate may lie from its single
// figure, given the ranges of its lines.
type Simulation struct {
	Draws int    // 1,000 to 1,000,000
	Seed  uint64 // the same seed gives the same answer on any number of cores
}

// Driver is one line and the part of the spread of the total that comes from
// it: covariance with the total over the variance of the total. Over all
// lines the parts add up to 1.
type Driver struct {
	Line int // index in Lines
	Code string
	Part float64
}

// Spread is what a simulation found.
type Spread struct {
	P10, P50, P90 decimal.Decimal // one in ten totals is below P10, one in ten above P90
	Mean, SD      decimal.Decimal
	Drivers       []Driver // lines with a range, the greatest part first
	Draws         int
	Seed          uint64
	Cautions      manway.Cautions
}

// blockDraws is the number of draws computed together; each line has a
// substream of its own in each block, so that neither the order of the blocks
// nor the number of cores touches the answer.
const blockDraws = 2048

// Simulate draws the total of the estimate again and again with every ranged
// quantity and price drawn anew, independent of each other, and the charges in
// the proportion they have in the estimate:
//
//	total = max(sum of quantity x price x factor of its class, minimum)
//
// Values are drawn from gonum's distributions of the shape of each range. A
// positive correlation between lines, such as a common price of diesel, widens
// the spread: [SumOf] shows by how much.
//
// It refuses an estimate that is not complete or has no range, and draws
// outside 1,000 to 1,000,000. Source: common practice; the shapes are those of
// [Range.Moments].
func (e Estimate) Simulate(s Simulation) (Spread, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Draws", s.Draws, 1_000, 1_000_000)
	if !e.Complete {
		faults.Add("Estimate", strconv.Itoa(len(e.Missing))+" lines without a price", "a complete estimate")
	}
	e.check(&faults)
	if err := faults.Err(); err != nil {
		return Spread{}, err
	}
	drawn, fixed := e.drawn(s.Seed)
	if len(drawn) == 0 {
		faults.Add("Lines", "none with a range", "a range of quantity or price on at least one line")
	}
	if err := faults.Err(); err != nil {
		return Spread{}, err
	}
	least := e.Terms.Minimum.InexactFloat64()
	middle := fixed
	for _, l := range drawn {
		middle += l.middle
	}
	totals, sums := simulate(drawn, fixed, least, s.Draws)
	slices.Sort(totals)
	return e.spreadOf(drawn, middle, totals, sums, s)
}

// check adds the faults of an estimate that was not made by [Job.Estimate].
func (e Estimate) check(faults *manway.InputErrors) {
	if err := e.Terms.Validate(); err != nil {
		faults.Under("Terms", err)
	}
	manway.Within(faults, "Places", e.Places, 0, 12)
	checkNotNegative(faults, "Direct", e.Direct)
	manway.Within(faults, "Lines", len(e.Lines), 0, maxLines)
	for i, l := range e.Lines {
		if len(*faults) > maxFaults {
			return
		}
		if err := l.Line.Validate(); err != nil {
			faults.Under("Lines["+strconv.Itoa(i)+"]", err)
		}
		checkNotNegative(faults, "Amount", l.Amount)
		checkNotNegative(faults, "UnitPrice", l.UnitPrice)
	}
}

// drawnLine is one line with a range, as the simulation needs it.
type drawnLine struct {
	index           int
	quantity, price Range // fixed values have low = high
	factor          float64
	middle          float64 // mean of the line, about which sums are taken
	seed            uint64
}

// drawn is the lines with a range, and the total of all the others.
func (e Estimate) drawn(seed uint64) (list []drawnLine, fixed float64) {
	factors := e.classFactors()
	for i, l := range e.Lines {
		amount := l.Amount.InexactFloat64() * factors[l.Class]
		if l.Quantities.IsZero() && l.Prices.IsZero() || !l.Priced {
			fixed += amount
			continue
		}
		d := drawnLine{index: i, quantity: l.Quantities, price: l.Prices, factor: factors[l.Class], seed: seed}
		if d.quantity.IsZero() {
			d.quantity = Range{l.Quantity, l.Quantity, l.Quantity, PERT}
		}
		if d.price.IsZero() {
			p := l.UnitPrice.InexactFloat64()
			d.price = Range{p, p, p, PERT}
		}
		d.middle = d.quantity.moments().Mean * d.price.moments().Mean * d.factor
		list = append(list, d)
	}
	return list, fixed
}

// classFactors is what the owner pays for 1 of cost of each class, from the
// terms, without the rest up to a minimum.
func (e Estimate) classFactors() [riser.Wait + 1]float64 {
	t := e.Terms
	part := func(percent decimal.Decimal) float64 { return percent.InexactFloat64() / 100 }
	var bought, sold, factors [riser.Wait + 1]float64
	for _, tax := range t.Taxes {
		if tax.At == OnPurchase {
			bought[tax.Class] += part(tax.Percent)
		} else {
			sold[tax.Class] += part(tax.Percent)
		}
	}
	profit := part(t.ProfitPercent)
	if t.ProfitAs == Margin {
		profit /= 1 - profit
	}
	loaded := (1 + part(t.OverheadPercent)) * (1 + profit)
	if t.ProfitOn == OnCost {
		loaded = 1 + part(t.OverheadPercent) + profit
	}
	loaded *= 1 + part(t.ContingencyPercent)
	direct, price := e.Direct.InexactFloat64(), 0.0
	for c := range factors {
		factors[c] = (1 + bought[c]) * loaded
		price += factors[c] * e.sumOf(riser.Class(c)).InexactFloat64()
	}
	for c := range factors {
		if direct > 0 {
			factors[c] += sold[c] * price / direct
		}
	}
	return factors
}

// blockSums are the sums that one block leaves, about the means of the lines.
type blockSums struct {
	total, square float64
	cross         []float64 // of each line with the total
	line          []float64
}

// simulate fills the totals block by block over the cores at hand and adds up
// the sums in the order of the blocks.
func simulate(lines []drawnLine, fixed, least float64, draws int) ([]float64, blockSums) {
	totals := make([]float64, draws)
	blocks := (draws + blockDraws - 1) / blockDraws
	sums := make([]blockSums, blocks)
	workers := min(runtime.GOMAXPROCS(0), blocks)
	var wait sync.WaitGroup
	for w := range workers {
		wait.Go(func() {
			values := make([]float64, len(lines)*blockDraws)
			for b := w; b < blocks; b += workers {
				part := totals[b*blockDraws : min((b+1)*blockDraws, draws)]
				sums[b] = block(lines, fixed, least, b, part, values)
			}
		})
	}
	wait.Wait()
	all := blockSums{cross: make([]float64, len(lines)), line: make([]float64, len(lines))}
	for _, s := range sums {
		all.total += s.total
		all.square += s.square
		for i := range lines {
			all.cross[i] += s.cross[i]
			all.line[i] += s.line[i]
		}
	}
	return totals, all
}

// block draws one block of totals.
func block(lines []drawnLine, fixed, least float64, number int, totals, values []float64) blockSums {
	n := len(totals)
	middle := fixed
	for i := range totals {
		totals[i] = fixed
	}
	for k, l := range lines {
		row := values[k*n : (k+1)*n]
		for i := range row {
			row[i] = l.factor
		}
		middle += l.middle
		source := rand.NewPCG(l.seed, uint64(l.index)<<32|uint64(number))
		multiply(row, l.quantity, source)
		multiply(row, l.price, source)
		for i, v := range row {
			totals[i] += v
		}
	}
	s := blockSums{cross: make([]float64, len(lines)), line: make([]float64, len(lines))}
	for i := range totals {
		totals[i] = math.Max(totals[i], least)
		d := totals[i] - middle
		s.total += d
		s.square += d * d
	}
	for k, l := range lines {
		for i, v := range values[k*n : (k+1)*n] {
			s.line[k] += v - l.middle
			s.cross[k] += (v - l.middle) * (totals[i] - middle)
		}
	}
	return s
}

// multiply multiplies each of row by a value drawn from r.
func multiply(row []float64, r Range, source rand.Source) {
	a, width := r.Low, r.High-r.Low
	if width == 0 {
		for i := range row {
			row[i] *= a
		}
		return
	}
	switch r.Shape {
	case Triangular:
		d := distuv.NewTriangle(r.Low, r.High, r.Likely, source)
		for i := range row {
			row[i] *= d.Rand()
		}
	case Normal:
		d := distuv.Normal{Mu: r.Likely, Sigma: width / 6, Src: source}
		for i := range row {
			v := d.Rand()
			for v < r.Low || v > r.High {
				v = d.Rand()
			}
			row[i] *= v
		}
	default:
		m := (r.Likely - a) / width
		d := distuv.Beta{Alpha: 1 + 4*m, Beta: 1 + 4*(1-m), Src: source}
		for i := range row {
			row[i] *= a + width*d.Rand()
		}
	}
}

// spreadOf reads the percentiles and drivers off the sorted totals.
func (e Estimate) spreadOf(lines []drawnLine, middle float64, totals []float64, s blockSums, ask Simulation) (Spread, error) {
	n := float64(len(totals))
	mean := s.total / n
	variance := math.Max(s.square/n-mean*mean, 0)
	var faults manway.InputErrors
	money := func(v float64) decimal.Decimal {
		d, err := amountOf(v, e.Places, e.Rounding)
		faults.Under("", err)
		return d
	}
	out := Spread{
		P10: money(quantile(totals, 0.1)), P50: money(quantile(totals, 0.5)), P90: money(quantile(totals, 0.9)),
		Mean: money(middle + mean), SD: money(math.Sqrt(variance)),
		Draws: ask.Draws, Seed: ask.Seed, Cautions: e.Cautions,
	}
	for k, l := range lines {
		d := Driver{Line: l.index, Code: e.Lines[l.index].Code}
		if variance > 0 {
			d.Part = (s.cross[k]/n - mean*s.line[k]/n) / variance
		}
		out.Drivers = append(out.Drivers, d)
	}
	slices.SortStableFunc(out.Drivers, func(a, b Driver) int {
		switch {
		case a.Part > b.Part:
			return -1
		case a.Part < b.Part:
			return 1
		}
		return 0
	})
	return out, faults.Err()
}

// quantile interpolates between the order statistics of sorted values.
func quantile(sorted []float64, p float64) float64 {
	at := p * float64(len(sorted)-1)
	i := min(int(at), len(sorted)-2)
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
