package record

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"strings"
	"unicode/utf8"

	"manway.example/manway/examples/internal/strictjson"
)

// lineReader reads records of one line each by encoding/json. It takes only
// what is beyond doubt; strictjson reads the rest again, to tell what is wrong
// with it, or to find that nothing is.
type lineReader struct {
	never bool // the type needs strictjson for every record
	dec   *json.Decoder
	feed  feed
	names [][]byte // the names so far in every open object
	opens []int    // where in names each open object starts; -1: a list
}

// feed gives the decoder one line at a time.
type feed struct{ rest []byte }

func (f *feed) Read(p []byte) (int, error) {
	if len(f.rest) == 0 {
		return 0, io.EOF
	}
	n := copy(p, f.rest)
	f.rest = f.rest[n:]
	return n, nil
}

func newLineReader[In any]() lineReader {
	t := typeOf[In]()
	names := strings.Join(strictjson.Names(t), " ")
	return lineReader{never: strictjson.Required(t) || names != strings.ToLower(names)}
}

func typeOf[T any]() reflect.Type { return reflect.TypeFor[T]() }

// read decodes a line, and reports whether that went without any doubt. After a
// doubt the value may be half filled.
func (r *lineReader) read(line []byte, into any) bool {
	if r.never || line[0] != '{' || !shows(line) {
		return false
	}
	if r.dec == nil {
		r.dec = json.NewDecoder(&r.feed)
		r.dec.DisallowUnknownFields()
	}
	line = bytes.TrimRight(line, " \t\r")
	r.feed.rest = line
	from := r.dec.InputOffset()
	err := r.dec.Decode(into)
	if err != nil || r.dec.InputOffset()-from != int64(len(line)) {
		r.dec = nil // what is left of the line is in its buffer
		return false
	}
	return r.plain(line)
}

// shows reports whether a line is valid text, with no character that is not seen
// and no escape that might be one.
func shows(line []byte) bool {
	if !utf8.Valid(line) || bytes.ContainsFunc(line, strictjson.Unseen) {
		return false
	}
	for {
		at := bytes.IndexByte(line, '\\')
		if at < 0 {
			return true
		}
		if at+1 >= len(line) || strings.IndexByte(`"\/`, line[at+1]) < 0 {
			return false
		}
		line = line[at+2:]
	}
}

// manyNames is how many names of one object are compared with each other before
// it is left to strictjson, which has a map for them.
const manyNames = 32

// plain reports whether a valid line has no name twice in one object, and none
// that encoding/json would take for another: with a capital letter, an escape,
// or beyond ASCII.
func (r *lineReader) plain(line []byte) bool {
	r.names, r.opens = r.names[:0], r.opens[:0]
	for i := 0; i < len(line); i++ {
		switch line[i] {
		case '{':
			r.opens = append(r.opens, len(r.names))
		case '[':
			r.opens = append(r.opens, -1)
		case '}':
			last := len(r.opens) - 1
			r.names = r.names[:r.opens[last]]
			r.opens = r.opens[:last]
		case ']':
			r.opens = r.opens[:len(r.opens)-1]
		case '"':
			end := stringEnd(line, i+1)
			after := end + 1
			for after < len(line) && strings.IndexByte(" \t\r", line[after]) >= 0 { // white space of JSON on one line
				after++
			}
			if after < len(line) && line[after] == ':' && !r.newName(line[i+1:end]) {
				return false
			}
			i = end
		}
	}
	return true
}

// stringEnd is where the quote stands that ends the string from i on.
func stringEnd(line []byte, i int) int {
	for i < len(line) && line[i] != '"' {
		if line[i] == '\\' {
			i++
		}
		i++
	}
	return i
}

func (r *lineReader) newName(name []byte) bool {
	for _, c := range name {
		if c >= utf8.RuneSelf || c == '\\' || 'A' <= c && c <= 'Z' {
			return false
		}
	}
	before := r.names[r.opens[len(r.opens)-1]:]
	if len(before) >= manyNames {
		return false
	}
	for _, other := range before {
		if bytes.Equal(other, name) {
			return false
		}
	}
	r.names = append(r.names, name)
	return true
}
