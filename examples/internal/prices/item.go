package prices

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"manway.example/manway"
	"manway.example/manway/riser"
)

// Item is one line of a scope.
type Item struct {
	Code        string  `json:"code"`
	Description string  `json:"description"`
	Class       string  `json:"class"`
	Quantity    float64 `json:"quantity"`
	Unit        string  `json:"unit"`
	Crew        int     `json:"crew"`
	From        string  `json:"from"`
}

// ReadItem reads an item as a flag has it: CODE QUANTITY UNIT.
func ReadItem(text string) (Item, error) {
	f := strings.Fields(text)
	if len(f) != 3 {
		return Item{}, fmt.Errorf("%q: want CODE QUANTITY UNIT, such as concrete 3 FTQ", text)
	}
	q, err := strconv.ParseFloat(strings.ReplaceAll(f[1], ",", ""), 64)
	if err != nil {
		return Item{}, fmt.Errorf("%q: want a number between code and unit", text)
	}
	return Item{Code: f[0], Quantity: q, Unit: f[2]}, nil
}

// Scope is the items in the terms of the library; all their faults are told.
func Scope(items []Item) ([]riser.Item, error) {
	var faults manway.InputErrors
	scope := make([]riser.Item, len(items))
	for i, it := range items {
		var err error
		scope[i], err = it.riser()
		faults.Under("Scope["+strconv.Itoa(i)+"]", err)
	}
	return scope, faults.Err()
}

// riser is the item in the terms of its package; what a code of the module
// means need not be said again.
func (it Item) riser() (riser.Item, error) {
	out := riser.Item{Code: it.Code, Description: it.Description, Quantity: it.Quantity, Unit: it.Unit, Crew: it.Crew, Working: it.From}
	codes := riser.ItemCodes()
	i := slices.IndexFunc(codes, func(c riser.ItemCode) bool { return c.Code == it.Code })
	if i >= 0 {
		out.Class = codes[i].Class
		if out.Description == "" {
			out.Description = codes[i].Description
		}
		if out.Unit == "" {
			out.Unit = codes[i].Unit
		}
	}
	var faults manway.InputErrors
	if it.Class != "" {
		class, err := readClass(it.Class)
		if err != nil {
			faults = append(faults, err)
		}
		out.Class = class
	} else if i < 0 {
		faults.Add("Class", "none", "material, labour, equipment, haulage, fee or wait, since "+strconv.Quote(it.Code)+" is no code of this module")
	}
	return out, faults.Err()
}

func readClass(text string) (riser.Class, *manway.InputError) {
	for c := riser.Material; c <= riser.Wait; c++ {
		if c.String() == text {
			return c, nil
		}
	}
	return 0, &manway.InputError{Field: "Class", Value: strconv.Quote(text), Want: "material, labour, equipment, haulage, fee or wait"}
}
