package cost

import (
	"math"
	"strconv"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Takeoff turns a scope into lines to buy: each material with its waste, in
// whole packs where it comes in packs, with what is left over; labour, equipment,
// haulage, fees and waiting days as they are. A material of the scope that
// neither own nor [Supplies] knows is bought as it stands, without waste. Own
// supplies stand in for those of the same code.
//
//	bought = ceil(net (1 + waste) bulking / pack)
//
// A pack that is short by less than one part in 1e9 is not bought: 18 in of
// 6 in pieces is 3. Lines of one code are not merged, so that each keeps its
// working; see [Merge].
//
// It refuses a scope of more than 10,000 items, a quantity below 0, a unit
// outside Recommendation 20, and a material in another unit than its supply
// counts in. Sources: of waste and yield those of each [Supply]; the sum itself is
// common practice.
func Takeoff(scope []riser.Item, own ...Supply) ([]Line, error) {
	var faults manway.InputErrors
	manway.Within(&faults, "Scope", len(scope), 0, maxLines)
	for i, s := range own {
		faults.Under("Supplies["+strconv.Itoa(i)+"]", s.Validate())
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	lines := make([]Line, 0, len(scope))
	for i, item := range scope {
		l, err := takeoff(item, own)
		faults.Under("Scope["+strconv.Itoa(i)+"]", err)
		lines = append(lines, l)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return lines, nil
}

// maxLines is the most lines of one scope or estimate.
const maxLines = 10_000

func takeoff(item riser.Item, own []Supply) (Line, error) {
	l := Line{
		Code: item.Code, Description: item.Description, Class: item.Class,
		Quantity: item.Quantity, Unit: Unit(item.Unit), NetUnit: Unit(item.Unit),
		Crew: item.Crew, From: item.Working, Basis: [3]manway.Citation{item.Basis},
	}
	if err := l.Validate(); err != nil {
		return l, err
	}
	l.Net = item.Quantity
	s, ok := supplyOf(item.Code, own)
	if !ok {
		return l, nil
	}
	if Unit(item.Unit) != s.NetUnit {
		return l, manway.InputErrors{{Field: "Unit", Value: item.Unit, Want: string(s.NetUnit) + ", in which " + item.Code + " is counted"}}
	}
	return l.bought(s)
}

func supplyOf(code string, own []Supply) (Supply, bool) {
	for _, list := range [...][]Supply{own, supplies[:]} {
		for _, s := range list {
			if s.Code == code {
				return s, true
			}
		}
	}
	return Supply{}, false
}

// bought is the line of a net quantity as it is bought.
func (l Line) bought(s Supply) (Line, error) {
	l.Code, l.Unit = s.buy(), s.Unit
	if s.Description != "" {
		l.Description = s.Description
	}
	l.WastePercent, l.Bulking, l.Whole, l.Remembered = s.WastePercent, s.Bulking, s.Whole, s.Remembered
	l.Basis[1], l.Basis[2] = s.Waste, s.Yield
	pack := s.Pack
	if pack == 0 {
		per, err := s.Unit.Per(s.NetUnit)
		if err != nil {
			return l, err
		}
		pack = per
	}
	l.Quantity = l.needed() / pack
	if s.Whole || s.Pack != 0 {
		l.Pack = pack
	}
	if s.Whole {
		n, err := manway.Pieces(l.needed(), pack)
		if err != nil {
			return l, err
		}
		l.Quantity = float64(n)
		l.Leftover = math.Max(l.Quantity*pack-l.needed(), 0)
		if l.Leftover < 1e-9*pack {
			l.Leftover = 0
		}
	}
	return l, nil
}

// Merge adds up lines of one code, unit and crew in the order in which they
// first stand. Packs are counted anew over the sum, so that two half bags are
// one: the quantity bought may be less than that of the parts. Lines with a
// range are kept apart.
func Merge(lines []Line) []Line {
	type key struct {
		code      string
		unit, net Unit
		crew      int
		pack      float64
	}
	at := map[key]int{}
	var merged []Line
	for _, l := range lines {
		k := key{l.Code, l.Unit, l.NetUnit, l.Crew, l.Pack}
		i, seen := at[k]
		if !seen || !l.Quantities.IsZero() || !l.Prices.IsZero() || !merged[i].sameSupply(l) {
			if !seen && l.Quantities.IsZero() && l.Prices.IsZero() {
				at[k] = len(merged)
			}
			merged = append(merged, l)
			continue
		}
		m := &merged[i]
		m.Net += l.Net
		m.Quantity += l.Quantity
		if l.From != "" && m.From != l.From {
			m.From += "; " + l.From
		}
		if n, err := manway.Pieces(m.needed(), m.Pack); m.Whole && err == nil {
			m.Quantity = float64(n)
			m.Leftover = math.Max(float64(n)*m.Pack-m.needed(), 0)
		}
	}
	return merged
}

func (l Line) sameSupply(o Line) bool {
	return l.WastePercent == o.WastePercent && l.Bulking == o.Bulking && l.Whole == o.Whole && l.Class == o.Class
}
