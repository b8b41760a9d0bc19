package lid

import (
	"encoding/json"
	"math/bits"
	"strconv"
	"strings"

	"manway.example/manway"
)

// Outside is a set of conditions that the lifting equation does not cover
// (Pub. 94-110, p. 6), all of them common at a lid. A lift with one of them
// gets no number.
type Outside uint16

// The conditions.
const (
	Kneeling         Outside = 1 << iota // or seated
	OneHanded                            // a single small handle
	ConfinedPosture                      // in a pit, under a hedge or a deck
	Astride                              // over the hole: never done
	UnstableLoad                         // a load that tips, slips or spills
	WithCarrying                         // or with pushing or pulling: more than one or two steps
	FastLift                             // faster than about 30 in/s
	SlipperyGround                       // friction of the foot below 0.4: mud, ice, wet grass
	HotOrCold                            // outside 66 to 79 F (19 to 26 C) or 35 to 50 % humidity
	WithOtherPersons                     // a lift by more than one person
	BelowFeet                            // hands below the ground that the feet stand on
	endOfOutside
)

var outsideWords = [...]string{"kneeling", "one-handed", "confined", "astride", "unstable", "carrying", "fast", "slippery", "hot or cold", "other persons", "below feet"}

// String is the conditions, separated by commas.
func (o Outside) String() string { return strings.Join(o.List(), ", ") }

// List is each condition of the set.
func (o Outside) List() []string {
	list := make([]string, 0, bits.OnesCount16(uint16(o)))
	for i, w := range outsideWords {
		if o&(1<<i) != 0 {
			list = append(list, w)
		}
	}
	return list
}

// MarshalJSON writes the set as a list.
func (o Outside) MarshalJSON() ([]byte, error) { return json.Marshal(o.List()) }

// UnmarshalText accepts a list of conditions separated by commas.
func (o *Outside) UnmarshalText(text []byte) error {
	var set Outside
	for part := range strings.SplitSeq(string(text), ",") {
		part = strings.TrimSpace(part)
		if part == "" {
			continue
		}
		i := indexOf(outsideWords[:], part)
		if i < 0 {
			return &manway.InputError{Field: "outside", Value: strconv.Quote(part), Want: strings.Join(outsideWords[:], ", ")}
		}
		set |= 1 << i
	}
	*o = set
	return nil
}

// UnmarshalJSON accepts a list of conditions, or one text of them.
func (o *Outside) UnmarshalJSON(data []byte) error {
	var list []string
	if json.Unmarshal(data, &list) == nil {
		return o.UnmarshalText([]byte(strings.Join(list, ",")))
	}
	var one string
	if err := json.Unmarshal(data, &one); err != nil {
		return &manway.InputError{Field: "outside", Value: strconv.Quote(string(data)), Want: "a list of " + strings.Join(outsideWords[:], ", ")}
	}
	return o.UnmarshalText([]byte(one))
}

func indexOf(words []string, text string) int {
	for i, w := range words {
		if strings.EqualFold(w, text) {
			return i
		}
	}
	return -1
}
