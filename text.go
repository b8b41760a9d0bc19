package manway

import (
	"math"
	"strconv"
	"strings"
)

// unitDef is one unit: its names, the first of them the one that is listed,
// and value in SI = number*factor + offset.
type unitDef struct {
	names  []string
	factor float64
	offset float64
	leads  bool // may be followed by a term in a smaller unit
}

// unitTable is all that the text of one quantity needs.
type unitTable struct {
	quantity string    // name in errors
	units    []unitDef // every unit that is read
	base     string    // the SI unit that MarshalText writes
	us, si   []unitDef // the units written for people, largest first
	refused  string    // a unit refused by name
}

// unit is a unitDef with no offset.
func def(factor float64, names ...string) unitDef { return unitDef{names: names, factor: factor} }

// lead is a unitDef that a smaller unit may follow, as inches follow feet.
func lead(factor float64, names ...string) unitDef {
	return unitDef{names: names, factor: factor, leads: true}
}

// append writes x losslessly: the shortest digits that read back to the same
// float64, and the SI unit.
func (t *unitTable) append(b []byte, x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return b, &InputError{Field: t.quantity, Value: strconv.FormatFloat(x, 'g', -1, 64), Want: "a finite number"}
	}
	b = strconv.AppendFloat(b, x, 'g', -1, 64)
	b = append(b, ' ')
	return append(b, t.base...), nil
}

// people writes x in the largest unit of the system in which it is at least 1,
// to four significant digits and never fewer than the whole units.
func (t *unitTable) people(x float64, s System) string {
	units := t.us
	if s == SI {
		units = t.si
	}
	u := units[len(units)-1]
	for _, v := range units {
		if math.Abs(x-v.offset) >= v.factor*(1-1e-9) {
			u = v
			break
		}
	}
	return number((x-u.offset)/u.factor) + " " + u.names[0]
}

// number writes v for people: four significant digits, whole numbers whole,
// commas between thousands.
func number(v float64) string {
	a := math.Abs(v)
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return strconv.FormatFloat(v, 'g', -1, 64)
	case a >= 1e15:
		return strconv.FormatFloat(v, 'e', 3, 64)
	case a < 5e-7: // rounds to nothing in the sixth place
		return "0"
	}
	places := min(max(3-int(math.Floor(math.Log10(a))), 0), 6)
	s := strconv.FormatFloat(a, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	whole, frac, _ := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if frac != "" {
		whole += "." + frac
	}
	if v < 0 {
		return "-" + whole
	}
	return whole
}

// eighth is the smallest part of an inch that is written for people.
const eighth = float64(Inch) / 8

// feetAndInches writes x in feet, inches and eighths of an inch. It rounds to
// the tick first and parts afterwards, so that 12 in or -0 never show.
func feetAndInches(x float64) string {
	ticks := math.Round(x / eighth)
	if !(math.Abs(ticks) < 1<<53) {
		return strconv.FormatFloat(x/float64(Foot), 'g', 4, 64) + " ft"
	}
	n := int64(math.Abs(ticks))
	if n == 0 {
		return "0 in"
	}
	feet, inches, eighths := n/96, n/8%12, n%8
	var parts []string
	if feet > 0 {
		parts = append(parts, strconv.FormatInt(feet, 10)+" ft")
	}
	inch := ""
	if inches > 0 || eighths == 0 && feet == 0 {
		inch = strconv.FormatInt(inches, 10)
	}
	if eighths > 0 {
		top, bottom := eighths, int64(8)
		for top%2 == 0 {
			top, bottom = top/2, bottom/2
		}
		if inch != "" {
			inch += " "
		}
		inch += strconv.FormatInt(top, 10) + "/" + strconv.FormatInt(bottom, 10)
	}
	if inch != "" {
		parts = append(parts, inch+" in")
	}
	s := strings.Join(parts, " ")
	if x < 0 {
		return "-" + s
	}
	return s
}
