package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"manway.example/manway/examples/internal/strictjson"
)

// format is how the records of a source are written.
type format byte

const (
	jsonLines format = iota
	jsonDocument
	csvLines
)

// source is where records come from.
type source struct {
	name      string
	reader    io.Reader // what follows the header
	close     func()
	format    format
	header    []byte // csv: the first line
	bare      bool   // csv: the header was given by the call
	separator byte   // csv: between cells
	line      int    // number of the reader's first line
}

// headBytes is how much of a source is looked at to tell its format.
const headBytes = 64 << 10

// openSource opens a file, or standard input for "-", and tells its format.
func openSource(name, header string, stdin io.Reader) (source, error) {
	s := source{name: name, reader: stdin, close: func() {}, line: 1, header: []byte(header), bare: header != ""}
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return s, err
		}
		if info, err := f.Stat(); err == nil && info.IsDir() {
			f.Close()
			return s, fmt.Errorf("%s: a directory: want a file of records", name)
		}
		s.reader, s.close = f, func() { f.Close() }
	} else {
		s.name = "standard input"
	}
	if err := s.sniff(); err != nil {
		s.close()
		return s, fmt.Errorf("%s: %w", s.name, err)
	}
	return s, nil
}

// sniff reads the head of the source and tells the format from it; the file's
// extension decides where the head does not.
func (s *source) sniff() error {
	head, err := readHead(s.reader)
	if err != nil {
		return err
	}
	head = bytes.TrimPrefix(head, []byte("\ufeff"))
	first := bytes.TrimLeft(head, " \t\r\n")
	if s.bare {
		s.reader = io.MultiReader(bytes.NewReader(head), s.reader)
		s.takeRows(first)
		return nil
	}
	switch {
	case len(first) == 0 && s.name == "standard input":
		first = nil
	case len(first) == 0:
		return errors.New("empty: want records")
	case first[0] == 0:
		return errors.New("a zero byte at its start: want text")
	case first[0] == '[':
		return errors.New("a JSON list: want one JSON object a line")
	}
	s.line += bytes.Count(head[:len(head)-len(first)], []byte("\n"))
	rest := s.reader
	s.reader = io.MultiReader(bytes.NewReader(first), rest)
	extension := strings.ToLower(filepath.Ext(s.name))
	switch {
	case len(first) == 0:
		return nil
	case first[0] == '{':
		if opensDocument(first, extension == ".json") {
			s.format = jsonDocument
		}
		return nil
	case extension == ".json" || extension == ".jsonl" || extension == ".ndjson":
		return nil
	}
	return s.takeHeader(first, rest)
}

// opensDocument reports whether the head is that of one JSON document of many
// lines: the first line is only "{" and a name follows, or, where the file is
// named so, the first line is not a whole record.
func opensDocument(head []byte, named bool) bool {
	first, rest, _ := bytes.Cut(head, []byte("\n"))
	if first = bytes.TrimSpace(first); len(first) > 1 {
		return named && !json.Valid(first)
	}
	rest = bytes.TrimLeft(rest, " \t\r\n")
	return len(rest) > 0 && (rest[0] == '"' || rest[0] == '}')
}

// takeHeader takes the first line off a CSV source.
func (s *source) takeHeader(head []byte, more io.Reader) error {
	s.format = csvLines
	header, rest, ended := bytes.Cut(head, []byte("\n"))
	if !ended && len(head) >= headBytes/2 {
		return fmt.Errorf("the first line is longer than %d KiB: want JSON objects or a CSV header", headBytes>>11)
	}
	s.header = bytes.TrimRight(header, "\r")
	s.separator = separatorOf(s.header)
	s.reader = io.MultiReader(bytes.NewReader(rest), more)
	s.line++
	return nil
}

// takeRows takes a CSV source of which the call gave the header, with commas
// whatever stands between the cells of the rows.
func (s *source) takeRows(head []byte) {
	first, _, _ := bytes.Cut(head, []byte("\n"))
	s.format = csvLines
	if s.separator = separatorOf(first); s.separator != ',' {
		s.header = bytes.ReplaceAll(s.header, []byte{','}, []byte{s.separator})
	}
}

// separatorOf is what stands between the cells of a line.
func separatorOf(line []byte) byte {
	if bytes.IndexByte(line, ',') < 0 && bytes.IndexByte(line, '\t') >= 0 {
		return '\t'
	}
	return ','
}

// readHead reads until it has a line with something in it and the start of the
// next one, or enough.
func readHead(r io.Reader) ([]byte, error) {
	head := make([]byte, 0, headBytes)
	for len(head) < cap(head) {
		n, err := r.Read(head[len(head):cap(head)])
		head = head[:len(head)+n]
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		text := bytes.TrimLeft(head, " \t\r\n")
		if line, rest, ok := bytes.Cut(text, []byte("\n")); ok {
			if len(bytes.TrimSpace(line)) > 1 || len(bytes.TrimSpace(rest)) > 0 {
				break
			}
		}
	}
	return head, nil
}

// whole reads the rest of the source, a little more than a document may have at
// most.
func (s *source) whole() ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(s.reader, strictjson.MaxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", s.name, err)
	}
	return data, nil
}
