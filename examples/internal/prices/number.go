package prices

import (
	"bytes"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Number is an amount of money or a percentage as people write it: 450, "450.00"
// or -2.5, as a JSON number or text, in a cell or a flag.
type Number struct{ decimal.Decimal }

// maxNumber bounds the text of a number.
const maxNumber = 32

// UnmarshalJSON reads a number or a text that holds one; null leaves it.
func (n *Number) UnmarshalJSON(data []byte) error {
	if string(data) == "null" {
		return nil
	}
	return n.UnmarshalText(bytes.Trim(data, `"`))
}

// UnmarshalText reads a number; a sign of per cent may follow.
func (n *Number) UnmarshalText(text []byte) error {
	want := &manway.InputError{Field: "number", Want: "a number such as 450.00"}
	if len(text) > maxNumber {
		want.Value = strconv.Quote(string(text[:maxNumber]) + "…")
		return want
	}
	s := strings.TrimSpace(strings.TrimSuffix(string(text), "%"))
	want.Value = strconv.Quote(string(text))
	if s == "" || strings.Trim(s, "+-.0123456789") != "" {
		return want
	}
	d, err := decimal.NewFromString(s)
	if err != nil {
		return want
	}
	n.Decimal = d
	return nil
}
