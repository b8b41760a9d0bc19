package visit

import (
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/hydraulics"
)

// Said is a value of the survey that is no plain measurement: where it stands and
// how it was said.
type Said struct {
	Path    string  // in the survey's JSON: accesses[0].lid.thickness
	Written string  // "about 41 in", "owner says 2019", "41 in ± 1 in", "unknown"
	How     How     // how it is known
	Off     float64 // by how much a quantity may be off either way, in its SI unit; 0: not said
}

// How says how a value is known. The zero value is a measurement.
type How uint8

// How a value may be known.
const (
	Measured     How = iota
	About            // estimated by eye
	OwnerSays        // not verified
	AskedUnknown     // asked for, and nobody knew
	NotOpened        // behind a lid that was not opened
)

// The words that stand before a value, with a blank after them.
const (
	aboutWord = "about "
	ownerWord = "owner says "
)

// How far an estimate may be off: about is within a twentieth, at least a quarter
// of an inch; what the owner says within a tenth, at least half an inch. A date
// that is about right is off by up to half a year, one of the owner by a year
// (hydraulics.Certainty). Common practice.
var estimates = map[How]struct {
	share float64
	least manway.Length
}{About: {0.05, manway.Inch / 4}, OwnerSays: {0.10, manway.Inch / 2}}

// saying reads the words round the values of a survey as its decoder goes along
// and keeps what they said.
type saying struct{ list []Said }

// reword takes the words off a value: what is left is read in its place, as null
// where nobody knew. A text that is no such value comes back as it is, so that
// the decoder refuses it where it must.
func (s *saying) reword(path string, typ reflect.Type, text string) any {
	said, bare := sayingOf(path, typ, text)
	if said.Written != "" {
		s.list = append(s.list, said)
	}
	return bare
}

// sayingOf is what the words of one text say, with an empty Written where they say
// nothing, and what is to be read in its place.
func sayingOf(path string, typ reflect.Type, text string) (Said, any) {
	said := Said{Path: path, Written: text}
	trimmed := strings.TrimSpace(text)
	switch {
	case typ.Kind() == reflect.String:
		return Said{}, text
	case trimmed == "unknown":
		said.How = AskedUnknown
		return said, orNull(typ, text)
	case trimmed == "not opened" && strings.HasSuffix(path, ".opened"):
		return Said{}, "no"
	case trimmed == "not opened":
		said.How = NotOpened
		return said, orNull(typ, text)
	}
	rest, how := cutHow(trimmed)
	bare, off, found := cutTolerance(rest)
	said.How = how
	switch {
	case typ == reflect.TypeFor[manway.Date]():
		return said.date(typ, bare, found, text)
	case quantity(typ):
		return said.quantity(typ, bare, off, found, text)
	case how == Measured || found:
		return Said{}, text
	case typ.Kind() == reflect.Int || typ.Kind() == reflect.Float64:
		if _, err := strconv.ParseFloat(bare, 64); err != nil {
			return Said{}, text
		}
		return said, json.Number(bare)
	case reads(typ, bare):
		return said, bare
	}
	return Said{}, text
}

// cutHow takes the words off the head of a text.
func cutHow(text string) (rest string, how How) {
	rest, owner := strings.CutPrefix(text, ownerWord)
	rest, about := strings.CutPrefix(strings.TrimSpace(rest), aboutWord)
	switch rest = strings.TrimSpace(rest); {
	case owner:
		return rest, OwnerSays
	case about:
		return rest, About
	}
	return text, Measured
}

// partDate is a year, or a year and a month.
var partDate = regexp.MustCompile(`^(\d{4})(?:-(\d{2}))?$`)

// date reads a date of which only the year or the month is known as the middle of
// it, which is about right.
func (s Said) date(typ reflect.Type, bare string, tolerance bool, text string) (Said, any) {
	m := partDate.FindStringSubmatch(bare)
	switch {
	case tolerance || !doubtful(s.Path):
		return Said{}, text
	case m != nil && m[2] == "":
		bare = m[1] + "-07-01"
	case m != nil:
		bare += "-15"
	case s.How == Measured:
		return Said{}, text
	}
	if !reads(typ, bare) {
		return Said{}, text
	}
	if s.How == Measured {
		s.How = About
	}
	return s, bare
}

// doubtful reports whether a date may be less than certain: that of an earlier
// visit or pump-out.
func doubtful(path string) bool {
	return path == "household.last_pumped" || strings.HasPrefix(path, "history[") && strings.HasSuffix(path, "].date")
}

// quantity takes the tolerance off a quantity; without one an estimate has its
// own.
func (s Said) quantity(typ reflect.Type, bare, off string, found bool, text string) (Said, any) {
	if s.How == Measured && !found {
		return Said{}, text
	}
	value, ok := sizeOf(typ, bare)
	if !ok {
		return Said{}, text
	}
	if found {
		if s.Off, ok = sizeOf(typ, off); !ok || !(s.Off > 0) {
			return Said{}, text
		}
		return s, bare
	}
	e := estimates[s.How]
	s.Off = e.share * math.Abs(value)
	if lengthwise(typ) {
		s.Off = max(s.Off, float64(e.least))
	}
	return s, bare
}

// lengthwise reports whether a type is a length, which may be not measured.
func lengthwise(typ reflect.Type) bool {
	switch typ {
	case reflect.TypeFor[manway.Length](), reflect.TypeFor[manway.Reading](), reflect.TypeFor[manway.Groundwater]():
		return true
	}
	return false
}

// quantity reports whether a type is a quantity with a unit.
func quantity(typ reflect.Type) bool {
	return lengthwise(typ) || typ.Kind() == reflect.Float64 && reflect.PointerTo(typ).Implements(reflect.TypeFor[encoding.TextUnmarshaler]())
}

// sizeOf reads a text as a quantity of a type, in its SI unit.
func sizeOf(typ reflect.Type, text string) (float64, bool) {
	if lengthwise(typ) {
		typ = reflect.TypeFor[manway.Length]()
	}
	v := reflect.New(typ)
	if v.Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text)) != nil {
		return 0, false
	}
	return v.Elem().Float(), true
}

// reads reports whether a type reads a text.
func reads(typ reflect.Type, text string) bool {
	r, ok := reflect.New(typ).Interface().(encoding.TextUnmarshaler)
	return ok && r.UnmarshalText([]byte(text)) == nil
}

// orNull is the text where the type reads it, else null.
func orNull(typ reflect.Type, text string) any {
	if reads(typ, text) {
		return text
	}
	return nil
}

func cutTolerance(value string) (bare, off string, found bool) {
	for _, sign := range [...]string{"±", "+/-"} {
		if bare, off, found = strings.Cut(value, sign); found {
			return strings.TrimSpace(bare), strings.TrimSpace(off), true
		}
	}
	return value, "", false
}

// said is how the value at a path was said; a measurement where nothing was.
func (s Survey) said(path string) How {
	for _, one := range s.Said {
		if one.Path == path {
			return one.How
		}
	}
	return Measured
}

// saidCertainty is the same for the date or the count of people at a path.
func (s Survey) saidCertainty(path string) hydraulics.Certainty {
	return [...]hydraulics.Certainty{About: hydraulics.About, OwnerSays: hydraulics.OwnerSays, NotOpened: 0}[s.said(path)]
}

// called is the value at a path as a person calls it: inlet lid, lid thickness.
func (s Survey) called(path string) string {
	var parts []string
	for part := range strings.SplitSeq(path, ".") {
		name, index, indexed := strings.Cut(strings.TrimSuffix(part, "]"), "[")
		i, err := strconv.Atoi(index)
		switch {
		case !indexed || err != nil:
			parts = append(parts, strings.ReplaceAll(name, "_", " "))
		case name == "accesses" && i < len(s.Accesses):
			parts = append(parts, s.Accesses[i].Name)
		case name == "history" && i < len(s.History):
			parts = append(parts, "visit of "+s.History[i].Date.String())
		default:
			parts = append(parts, fmt.Sprintf("%s %d", strings.TrimSuffix(strings.ReplaceAll(name, "_", " "), "s"), i+1))
		}
	}
	if len(parts) > 1 && (parts[0] == "ground" || parts[0] == "household" || parts[0] == "arrival") {
		parts = parts[1:]
	}
	return strings.Join(parts, ", ")
}
