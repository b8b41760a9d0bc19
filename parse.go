package manway

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// maxText bounds the text of one quantity; what people write is far shorter.
const maxText = 64

// parse reads text as one quantity of the table and returns it in SI.
//
// The grammar, with spaces allowed between any two parts:
//
//	quantity = [sign] term { ["-"] term }
//	term     = number unit
//	number   = decimal | whole fraction | fraction
//
// More than one term is read only where the table allows it (feet and inches,
// pounds and ounces), largest unit first, every number but the last whole,
// and no later term as large as the unit before it. The sign holds for the
// whole text.
func (t *unitTable) parse(text []byte) (float64, error) {
	if len(text) > maxText {
		return 0, t.refuse(string(text[:maxText])+"…", "")
	}
	s := tidy(string(text))
	sign := 1.0
	switch {
	case strings.HasPrefix(s, "-"):
		sign, s = -1, strings.TrimSpace(s[1:])
	case strings.HasPrefix(s, "+"):
		s = strings.TrimSpace(s[1:])
	}
	if s == "" {
		return 0, t.refuse(string(text), "")
	}
	var sum, offset, last float64 // last is the factor of the unit before, 0 at first
	for s != "" {
		n, whole, rest, ok := cutNumber(s)
		if !ok {
			return 0, t.refuse(string(text), "")
		}
		u, rest, problem := t.cutUnit(rest)
		if problem != "" {
			return 0, t.refuse(string(text), problem)
		}
		if last != 0 && !(n*u.factor < last) {
			return 0, t.refuse(string(text), "each part smaller than one of the unit before it")
		}
		if rest != "" && (!u.leads || !whole) {
			return 0, t.refuse(string(text), "")
		}
		last = u.factor
		sum += n * u.factor
		offset = u.offset
		s = rest
	}
	if v := sign*sum + offset; !math.IsInf(v, 0) {
		return v, nil
	}
	return 0, t.refuse(string(text), "a value within the range of float64")
}

// refuse is the error for text that is no quantity of the table.
func (t *unitTable) refuse(text, want string) error {
	if want == "" {
		want = "a number with a unit: " + t.list()
	}
	return &InputError{Field: t.quantity, Value: strconv.Quote(text), Want: want}
}

// tidy brings typographic marks to their plain forms and trims spaces.
func tidy(s string) string {
	return strings.TrimSpace(tidier.Replace(s))
}

var tidier = strings.NewReplacer(
	"′", "'", "’", "'", "″", `"`, "”", `"`, "''", `"`,
	"−", "-", "–", "-", "\u00a0", " ", "\u202f", " ",
	"²", "2", "³", "3", "·", " ", "*", " ",
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// cutNumber reads the number at the head of s: 12, 1,250, 100.5, 1e-3, 4 1/2,
// 4-1/2 or 1/2. It says whether the number is whole, and returns what follows.
func cutNumber(s string) (n float64, whole bool, rest string, ok bool) {
	s = strings.TrimSpace(s)
	num, rest := cutDecimal(s)
	if num == "" {
		return 0, false, s, false
	}
	if top, below, is := cutFraction(num, rest); is { // 1/2
		return top, false, below, top >= 0
	}
	plain := strings.ReplaceAll(num, ",", "")
	if strings.Contains(num, ",") && !thousands(num) {
		return 0, false, s, false
	}
	n, err := strconv.ParseFloat(plain, 64)
	if err != nil || n == 0 && strings.ContainsAny(mantissa(plain), "123456789") {
		return 0, false, s, false
	}
	whole = !strings.ContainsAny(plain, ".eE")
	if whole { // a fraction may follow: 4 1/2 or 4-1/2
		after := strings.TrimLeft(rest, " ")
		after = strings.TrimPrefix(after, "-")
		if top, below := cutDecimal(after); top != "" && len(after) < len(rest) {
			if f, below, is := cutFraction(top, below); is {
				return n + f, false, below, f >= 0 && f < 1
			}
		}
	}
	return n, whole, rest, true
}

// cutDecimal takes digits, points, commas and an exponent off the head of s.
func cutDecimal(s string) (num, rest string) {
	i := 0
	for i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' || s[i] == ',') {
		i++
	}
	if i == 0 {
		return "", s
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		k := j
		for k < len(s) && s[k] >= '0' && s[k] <= '9' {
			k++
		}
		if k > j {
			i = k
		}
	}
	return s[:i], s[i:]
}

// cutFraction reads num "/" whole; the value is -1 where the fraction is
// written but is none, such as 1/0.
func cutFraction(num, rest string) (f float64, below string, is bool) {
	if !strings.HasPrefix(rest, "/") {
		return 0, rest, false
	}
	den, below := cutDecimal(rest[1:])
	top, err1 := strconv.ParseUint(num, 10, 32)
	bot, err2 := strconv.ParseUint(den, 10, 32)
	if err1 != nil || err2 != nil || bot == 0 {
		return -1, below, true
	}
	return float64(top) / float64(bot), below, true
}

// thousands reports whether the commas of num part it into groups of three.
func thousands(num string) bool {
	head, _, _ := strings.Cut(num, ".")
	if strings.Contains(num[len(head):], ",") {
		return false
	}
	groups := strings.Split(head, ",")
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && (len(g) == 0 || len(g) > 3) {
			return false
		}
	}
	return true
}

func mantissa(num string) string {
	m, _, _ := strings.Cut(strings.ToLower(num), "e")
	return m
}

// cutUnit reads the unit at the head of s and steps over a dash between terms.
func (t *unitTable) cutUnit(s string) (u unitDef, rest, problem string) {
	s = strings.Join(strings.Fields(s), " ")
	if t.refused != "" && strings.EqualFold(s, t.refused) {
		return unitDef{}, s, fmt.Sprintf("a unit other than %s: %s", t.refused, t.list())
	}
	if u, ok := t.find(s); ok {
		return u, "", ""
	}
	end := strings.IndexAny(s, " -0123456789")
	if end <= 0 {
		return unitDef{}, s, "a number with a unit: " + t.list()
	}
	u, ok := t.find(s[:end])
	if !ok || !u.leads {
		return unitDef{}, s, "a number with a unit: " + t.list()
	}
	rest = s[end:]
	switch {
	case strings.HasPrefix(rest, " - "):
		rest = rest[3:]
	case strings.HasPrefix(rest, "-"):
		rest = rest[1:]
	}
	rest = strings.TrimSpace(rest)
	if rest == "" {
		return unitDef{}, s, "a number with a unit: " + t.list()
	}
	return u, rest, ""
}

// find looks a unit up by any of its names, capitals or not.
func (t *unitTable) find(name string) (unitDef, bool) {
	for _, u := range t.units {
		for _, n := range u.names {
			if strings.EqualFold(n, name) {
				return u, true
			}
		}
	}
	return unitDef{}, false
}

// list names the units a text of this quantity may have.
func (t *unitTable) list() string {
	names := make([]string, len(t.units))
	for i, u := range t.units {
		names[i] = u.names[0]
	}
	return strings.Join(names, ", ")
}
