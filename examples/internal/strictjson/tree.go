package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"sort"
	"strings"
	"unicode/utf8"
)

// What a document may have at most.
const (
	MaxBytes = 8 << 20
	MaxDepth = 64
)

type kind byte

const (
	null kind = iota
	boolean
	number
	text
	list
	object
)

// node is one value of the document: where it stands, and what is in it.
type node struct {
	kind       kind
	start, end int    // offsets in the document
	text       string // of a string: what it says; of a number, true, false and null: as written
	said       string // of a text that is read as something else: what it said
	members    []member
	items      []*node
}

type member struct {
	name  string
	start int // offset of the name
	value *node
}

// member is the last member of that name, as encoding/json has it.
func (n *node) member(name string) *node {
	for i := len(n.members) - 1; i >= 0; i-- {
		if n.members[i].name == name {
			return n.members[i].value
		}
	}
	return nil
}

// parse reads a whole document. A syntax error ends it: nothing after it can be
// told apart.
func (d *Doc) parse() error {
	if len(d.data) > MaxBytes {
		return Faults{fault("", fmt.Sprintf("more than %d MiB", MaxBytes>>20), fmt.Sprintf("at most %d MiB", MaxBytes>>20))}
	}
	if len(bytes.TrimLeft(d.data, " \t\r\n")) == 0 {
		return Faults{fault("", "nothing", "a JSON object")}
	}
	if at := invalidUTF8(d.data); at >= 0 {
		return Faults{{Line: d.lineAt(at), Value: fmt.Sprintf("byte 0x%02x", d.data[at]), Want: "text in UTF-8"}}
	}
	p := parser{data: d.data, dec: json.NewDecoder(bytes.NewReader(d.data))}
	p.dec.UseNumber()
	root, err := p.value(0)
	d.root = root // as far as it goes
	var raw json.RawMessage
	if err := json.Unmarshal(d.data, &raw); err != nil {
		return Faults{d.syntaxFault(err)}
	}
	if f, ok := err.(Fault); ok {
		f.Line = d.lineAt(p.start())
		return Faults{f}
	}
	return err
}

func (d *Doc) syntaxFault(err error) Fault {
	var syntax *json.SyntaxError
	if !errors.As(err, &syntax) {
		return fault("", "", "JSON: "+err.Error())
	}
	at := max(0, min(int(syntax.Offset), len(d.data))-1)
	line := d.lineAt(at)
	from := 0
	if line > 1 {
		from = d.lines[line-2] + 1
	}
	want := "valid JSON: " + strings.TrimPrefix(syntax.Error(), "json: ")
	if strings.HasSuffix(want, "after top-level value") {
		want = "nothing after the end of the document"
	}
	near := string(d.data[max(from, at-20) : at+1])
	return Fault{Line: line, Value: shorten(strings.ToValidUTF8(near, "")), Want: want}
}

type parser struct {
	data []byte
	dec  *json.Decoder
}

// start is the offset of the next token.
func (p *parser) start() int {
	at := int(p.dec.InputOffset())
	for at < len(p.data) && strings.IndexByte(" \t\r\n,:", p.data[at]) >= 0 {
		at++
	}
	return at
}

// value reads one value; with an error, what there was of it.
func (p *parser) value(depth int) (*node, error) {
	if depth > MaxDepth {
		return &node{}, fault("", fmt.Sprintf("more than %d levels", MaxDepth), fmt.Sprintf("at most %d levels of [ and {", MaxDepth))
	}
	n := &node{start: p.start()}
	n.end = n.start
	tok, err := p.dec.Token()
	if err != nil {
		return n, err
	}
	switch tok := tok.(type) {
	case json.Delim:
		if tok == '{' {
			err = p.members(n, depth)
		} else {
			err = p.items(n, depth)
		}
	case string:
		n.kind, n.text = text, tok
	case json.Number:
		n.kind, n.text = number, tok.String()
	case bool:
		n.kind, n.text = boolean, fmt.Sprint(tok)
	case nil:
		n.kind, n.text = null, "null"
	}
	n.end = max(n.start, int(p.dec.InputOffset()))
	return n, err
}

func (p *parser) members(n *node, depth int) error {
	n.kind = object
	for p.dec.More() {
		m := member{start: p.start()}
		tok, err := p.dec.Token()
		if err != nil {
			return err
		}
		m.name, _ = tok.(string)
		m.value, err = p.value(depth + 1)
		n.members = append(n.members, m)
		if err != nil {
			return err
		}
	}
	_, err := p.dec.Token()
	return err
}

func (p *parser) items(n *node, depth int) error {
	n.kind = list
	for p.dec.More() {
		item, err := p.value(depth + 1)
		n.items = append(n.items, item)
		if err != nil {
			return err
		}
	}
	_, err := p.dec.Token()
	return err
}

// lineAt is the line of an offset, from 1.
func (d *Doc) lineAt(offset int) int {
	return sort.SearchInts(d.lines, offset) + 1
}

func newlines(data []byte) []int {
	var at []int
	for i, c := range data {
		if c == '\n' {
			at = append(at, i)
		}
	}
	return at
}

func invalidUTF8(data []byte) int {
	if utf8.Valid(data) {
		return -1
	}
	at := 0
	for {
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size <= 1 {
			return at
		}
		at += size
	}
}

// Read reads a whole document from r, at most [MaxBytes] of it, and decodes it
// as [Decode] does.
func Read(r io.Reader, into any) (*Doc, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return &Doc{}, err
	}
	return Decode(data, into)
}
