package cost

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"

	"manway.example/manway"
)

// Price is one row of a price book: what one unit costs from a day on.
type Price struct {
	Code        string
	Description string
	Unit        Unit
	Price       decimal.Decimal
	Currency    Currency
	ValidFrom   manway.Date
	Note        string
}

// Book is a price book: for each code the prices in the order of the day from
// which they hold. It never changes once read. The zero value is an empty book.
type Book struct {
	prices map[string][]Price
}

// BookError is one fault in a price book and the line on which it stands.
type BookError struct {
	Line int
	manway.InputError
}

// Error gives line, field, value and what was wanted.
func (e *BookError) Error() string { return fmt.Sprintf("line %d: %s", e.Line, e.InputError.Error()) }

// Unwrap gives the fault without its line.
func (e *BookError) Unwrap() error { return &e.InputError }

// BookErrors is every fault of a price book in the order of its lines.
type BookErrors []*BookError

// Error is one fault a line.
func (e BookErrors) Error() string {
	lines := make([]string, len(e))
	for i, f := range e {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults one by one to errors.Is and errors.As.
func (e BookErrors) Unwrap() []error {
	list := make([]error, len(e))
	for i, f := range e {
		list[i] = f
	}
	return list
}

// BookHeader is the first line of a price book.
const BookHeader = "code,description,unit,price,currency,valid_from,note"

// maxBook is the largest price book that is read, in bytes, and maxFaults the
// number of faults after which reading stops.
const (
	maxBook   = 16 << 20
	maxFaults = 1000
	maxCell   = 500 // bytes of one cell
)

// ReadPriceBook reads a price book as CSV (RFC 4180, UTF-8): the header
// [BookHeader], then one price a row. Lines that start with # are remarks. The
// price is a plain decimal number of 0 or more with a point, no signs of
// currency and no commas; the unit is a code of Recommendation 20; the day as
// 2026-11-25. A code may stand several times with different days. Nothing is
// guessed and no row is passed over: the error is [BookErrors], every fault
// with its line, or the reader's own error. This is the one place of the
// package that reads.
func ReadPriceBook(r io.Reader) (Book, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBook+1))
	if err != nil {
		return Book{}, fmt.Errorf("price book: %w", err)
	}
	if len(data) > maxBook {
		return Book{}, BookErrors{bookFault(1, "Book", fmt.Sprintf("above %d bytes", maxBook), "at most 16 MiB")}
	}
	in := bookReader{book: Book{prices: map[string][]Price{}}, days: map[priceDay]int{}}
	in.read(bytes.TrimPrefix(data, []byte("\ufeff")))
	if len(in.faults) > 0 {
		return Book{}, in.faults
	}
	for _, list := range in.book.prices {
		slices.SortFunc(list, func(a, b Price) int { return b.ValidFrom.DaysUntil(a.ValidFrom) })
	}
	return in.book, nil
}

func bookFault(line int, field, value, want string) *BookError {
	return &BookError{line, manway.InputError{Field: field, Value: value, Want: want}}
}

type priceDay struct {
	code string
	day  manway.Date
}

type bookReader struct {
	book   Book
	days   map[priceDay]int // line on which a code got its price of that day
	faults BookErrors
}

func (in *bookReader) add(line int, field, value, want string) {
	in.faults = append(in.faults, bookFault(line, field, fmt.Sprintf("%q", clip(value)), want))
}

func (in *bookReader) read(data []byte) {
	c := csv.NewReader(bufio.NewReader(bytes.NewReader(data)))
	c.Comment = '#'
	c.FieldsPerRecord = -1
	c.ReuseRecord = true
	columns := strings.Split(BookHeader, ",")
	for first := true; len(in.faults) < maxFaults; {
		row, err := c.Read()
		if err == io.EOF {
			if first {
				in.add(1, "Header", "", BookHeader)
			}
			return
		}
		if err != nil {
			var parse *csv.ParseError
			if errors.As(err, &parse) {
				in.faults = append(in.faults, bookFault(parse.Line, "Row", parse.Err.Error(), "CSV by RFC 4180"))
			}
			return // quotes that do not close leave no row to go on from
		}
		line, _ := c.FieldPos(0)
		switch {
		case first:
			first = false
			if !slices.Equal(row, columns) {
				in.add(line, "Header", strings.Join(row, ","), BookHeader)
				return
			}
		case len(row) != len(columns):
			in.add(line, "Row", fmt.Sprintf("%d cells", len(row)), fmt.Sprintf("%d cells", len(columns)))
		default:
			in.row(line, row)
		}
	}
}

// row reads one price; all its faults are noted.
func (in *bookReader) row(line int, cells []string) {
	before := len(in.faults)
	for i, name := range [...]string{"Code", "Description", "Unit", "Price", "Currency", "ValidFrom", "Note"} {
		if !plainText(cells[i]) || len(cells[i]) > maxCell {
			in.add(line, name, cells[i], fmt.Sprintf("one line of UTF-8 text of at most %d bytes", maxCell))
		}
	}
	p := Price{Code: cells[0], Description: cells[1], Unit: Unit(cells[2]), Currency: Currency(cells[4]), Note: cells[6]}
	if !isCode(p.Code) {
		in.add(line, "Code", p.Code, "letters, digits, points and hyphens, starting with a letter or digit, at most 64")
	}
	if strings.TrimSpace(p.Description) == "" {
		in.add(line, "Description", p.Description, "what is priced")
	}
	in.under(line, p.Unit.Validate())
	var ok bool
	if p.Price, ok = readPrice(cells[3]); !ok {
		in.add(line, "Price", cells[3], "a number of 0 or more with a point, such as 1250.00, at most 1e12")
	}
	_, err := p.Currency.MinorUnit()
	in.under(line, err)
	if err := p.ValidFrom.UnmarshalText([]byte(cells[5])); err != nil {
		in.add(line, "ValidFrom", cells[5], "a date of the calendar as 2026-11-25")
	}
	if len(in.faults) > before {
		return
	}
	key := priceDay{p.Code, p.ValidFrom}
	if other, twice := in.days[key]; twice {
		in.add(line, "Code", p.Code, fmt.Sprintf("one price a day; it stands also on line %d", other))
		return
	}
	in.days[key] = line
	in.book.prices[p.Code] = append(in.book.prices[p.Code], p)
}

func (in *bookReader) under(line int, err error) {
	var faults manway.InputErrors
	faults.Under("", err)
	for _, f := range faults {
		in.faults = append(in.faults, bookFault(line, f.Field, f.Value, f.Want))
	}
}

// readPrice reads digits with at most one point; no sign, exponent or comma.
func readPrice(s string) (decimal.Decimal, bool) {
	if s == "" || len(s) > 24 || strings.Trim(s, "0123456789.") != "" || s[0] == '.' || s[len(s)-1] == '.' {
		return decimal.Decimal{}, false
	}
	d, err := decimal.NewFromString(s)
	return d, err == nil && !d.GreaterThan(maxMoney)
}

// isCode reports whether s can be a code.
func isCode(s string) bool {
	if s == "" || len(s) > 64 || s[0] == '-' || s[0] == '.' {
		return false
	}
	for _, c := range []byte(s) {
		if !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '.') {
			return false
		}
	}
	return true
}

// plainText reports whether s is UTF-8 on one line of characters that are all
// seen: no controls, and no marks that turn the writing or have no width.
func plainText(s string) bool {
	return utf8.ValidString(s) && !strings.ContainsFunc(s, func(r rune) bool { return unicode.In(r, unicode.C, unicode.Zl, unicode.Zp) })
}

// Over is b laid over base: every code that b has, with all its days, stands in
// for the same code of base. Neither book changes.
func (b Book) Over(base Book) Book {
	both := make(map[string][]Price, len(b.prices)+len(base.prices))
	for code, list := range base.prices {
		both[code] = list
	}
	for code, list := range b.prices {
		both[code] = list
	}
	return Book{prices: both}
}

// Price is the price of a code that holds on a day: the latest that starts on
// or before it. It reports false where there is none.
func (b Book) Price(code string, on manway.Date) (Price, bool) {
	list := b.prices[code]
	for i := len(list) - 1; i >= 0; i-- {
		if !on.Before(list[i].ValidFrom) {
			return list[i], true
		}
	}
	return Price{}, false
}

// Prices is every price of the book by code and day.
func (b Book) Prices() []Price {
	var all []Price
	for _, list := range b.prices {
		all = append(all, list...)
	}
	slices.SortFunc(all, func(x, y Price) int {
		if c := strings.Compare(x.Code, y.Code); c != 0 {
			return c
		}
		return y.ValidFrom.DaysUntil(x.ValidFrom)
	})
	return all
}
