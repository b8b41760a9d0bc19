package record

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"

	"manway.example/manway/examples/internal/strictjson"
)

// Digits is how many significant digits a written number has at most.
const Digits = 12

// AppendNumber appends v with at most [Digits] significant digits in its
// shortest form, 18 and not 18.000. It must be finite.
func AppendNumber(to []byte, v float64) []byte {
	if i := int64(v); float64(i) == v && -1e6 < v && v < 1e6 {
		return strconv.AppendInt(to, i, 10)
	}
	return strconv.AppendFloat(to, v, 'g', Digits, 64)
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// defect is the error for a number that no result may have.
func defect(key string, v float64) error {
	return fmt.Errorf("a finite number, not %v, for %s: this is a defect of the program", v, key)
}

// JSON writes one object: a call for each field, in order. In a list the key is
// empty. Keys are written as they are.
type JSON struct {
	buf   []byte
	ends  []byte // the closing brackets that are due
	comma bool
	err   error
}

func (j *JSON) begin(to []byte) {
	j.buf, j.ends, j.comma, j.err = to, j.ends[:0], false, nil
}

func (j *JSON) end() ([]byte, error) {
	buf := j.buf
	j.buf = nil
	return buf, j.err
}

func (j *JSON) key(key string) {
	if j.comma {
		j.buf = append(j.buf, ',')
	}
	if key != "" {
		j.buf = append(j.buf, '"')
		j.buf = append(j.buf, key...)
		j.buf = append(j.buf, '"', ':')
	}
	j.comma = true
}

// Object opens an object; [JSON.End] closes it.
func (j *JSON) Object(key string) { j.open(key, '{', '}') }

// List opens a list; [JSON.End] closes it.
func (j *JSON) List(key string) { j.open(key, '[', ']') }

func (j *JSON) open(key string, start, end byte) {
	j.key(key)
	j.buf = append(j.buf, start)
	j.ends = append(j.ends, end)
	j.comma = false
}

// End closes the object or list opened last.
func (j *JSON) End() {
	last := len(j.ends) - 1
	j.buf = append(j.buf, j.ends[last])
	j.ends = j.ends[:last]
	j.comma = true
}

// Number writes a number; NaN or an infinity makes the record refused.
func (j *JSON) Number(key string, v float64) {
	if !finite(v) {
		if j.err == nil {
			j.err = defect(key, v)
		}
		v = 0
	}
	j.key(key)
	j.buf = AppendNumber(j.buf, v)
}

// Numbers writes a list of numbers.
func (j *JSON) Numbers(key string, list []float64) {
	j.List(key)
	for _, v := range list {
		j.Number("", v)
	}
	j.End()
}

// Int writes a whole number.
func (j *JSON) Int(key string, n int) {
	j.key(key)
	j.buf = strconv.AppendInt(j.buf, int64(n), 10)
}

// Bool writes true or false.
func (j *JSON) Bool(key string, v bool) {
	j.key(key)
	j.buf = strconv.AppendBool(j.buf, v)
}

// Null writes null.
func (j *JSON) Null(key string) {
	j.key(key)
	j.buf = append(j.buf, "null"...)
}

// Text writes a text.
func (j *JSON) Text(key, v string) {
	j.key(key)
	j.buf = appendString(j.buf, v)
}

// Texts writes a list of texts.
func (j *JSON) Texts(key string, list []string) {
	j.List(key)
	for _, v := range list {
		j.Text("", v)
	}
	j.End()
}

// Any writes a value as encoding/json does, with its numbers rounded.
func (j *JSON) Any(key string, v any) {
	text, err := json.Marshal(v)
	if err != nil {
		if j.err == nil {
			j.err = err
		}
		text = []byte("null")
	}
	j.key(key)
	j.buf = appendRounded(j.buf, text)
}

func appendString(to []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			quoted, _ := json.Marshal(s) // a string always can be written
			return append(to, strictjson.Visible(string(quoted))...)
		}
	}
	to = append(to, '"')
	to = append(to, s...)
	return append(to, '"')
}

// appendRounded appends JSON text with every number that is no whole one cut to
// at most Digits significant digits.
func appendRounded(to, text []byte) []byte {
	for i := 0; i < len(text); {
		c := text[i]
		switch {
		case c == '"':
			end := min(stringEnd(text, i+1)+1, len(text))
			to = append(to, text[i:end]...)
			i = end
		case c == '-' || '0' <= c && c <= '9':
			end, whole := i+1, true
			for end < len(text) && numeric(text[end]) {
				whole = whole && '0' <= text[end] && text[end] <= '9'
				end++
			}
			if v, err := strconv.ParseFloat(string(text[i:end]), 64); err == nil && (!whole || v == 0) {
				to = AppendNumber(to, v)
			} else {
				to = append(to, text[i:end]...)
			}
			i = end
		default:
			to = append(to, c)
			i++
		}
	}
	return to
}

func numeric(c byte) bool {
	return '0' <= c && c <= '9' || c == '.' || c == 'e' || c == 'E' || c == '+' || c == '-'
}
