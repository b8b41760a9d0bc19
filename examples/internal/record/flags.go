package record

import (
	"encoding"
	"errors"
	"flag"
	"io"
	"os"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
)

// textReader is a pointer to a T that reads text, as that to every quantity does.
type textReader[T any] interface {
	*T
	encoding.TextUnmarshaler
}

// Optional declares a flag for a value that may be unknown: *p stays nil until
// the flag is given.
func Optional[T any, P textReader[T]](fs *flag.FlagSet, p **T, name, usage string) {
	fs.Func(name, usage, func(text string) error {
		var v T
		if err := P(&v).UnmarshalText([]byte(text)); err != nil {
			return err
		}
		*p = &v
		return nil
	})
}

// List declares a flag for a list of values: given once for each, or with
// semicolons between them.
func List[T any, P textReader[T]](fs *flag.FlagSet, p *[]T, name, usage string) {
	fs.Func(name, usage, func(text string) error {
		for part := range strings.SplitSeq(text, ";") {
			var v T
			if err := P(&v).UnmarshalText([]byte(strings.TrimSpace(part))); err != nil {
				return err
			}
			*p = append(*p, v)
		}
		return nil
	})
}

// shownFlag is a flag of which no value may have characters that are not seen.
type shownFlag struct{ flag.Value }

// Set sets the flag.
func (f shownFlag) Set(text string) error {
	if strings.ContainsFunc(text, strictjson.Unseen) {
		return errors.New("want " + strictjson.WantSeen)
	}
	return f.Value.Set(text)
}

// IsBoolFlag reports whether the flag may stand without a value.
func (f shownFlag) IsBoolFlag() bool {
	b, ok := f.Value.(interface{ IsBoolFlag() bool })
	return ok && b.IsBoolFlag()
}

// terminal reports whether a person watches w.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
