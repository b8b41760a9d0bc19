package visit_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"
	"testing"

	"manway.example/manway/cost"
	"manway.example/manway/examples/visit"
)

// markup is what would leave its place in HTML, SVG, a template or a script if
// it were not written as text.
var markup = []string{`<script>alert(1)</script>`, `"onload="a()"'><img/onerror=a>`, `]]></svg></text><!--{{.}}&lt;`}

// texts calls do with every text that can be set in v, and its path.
func texts(v reflect.Value, path string, do func(string, reflect.Value)) {
	switch v.Kind() {
	case reflect.String:
		do(path, v)
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				texts(v.Field(i), path+"."+v.Type().Field(i).Name, do)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			texts(v.Index(i), fmt.Sprintf("%s[%d]", path, i), do)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			texts(v.Elem(), path, do)
		}
	}
}

// filled is a survey with a text of its own in every field that takes one, or in
// only those, and the texts by their fields.
func filled(t *testing.T, name, text string, only map[string]string) (visit.Survey, map[string]string) {
	t.Helper()
	s, _ := read(t, name)
	taken := map[string]string{}
	texts(reflect.ValueOf(&s).Elem(), "", func(path string, v reflect.Value) {
		if strings.HasPrefix(path, ".Remark") || strings.Contains(path, ".Remark") || strings.HasPrefix(path, ".Tolerances") {
			return // not read
		}
		before := v.String()
		mine := fmt.Sprintf("%d%s", len(taken)+10, text)
		if only != nil && only[path] == "" {
			return
		}
		if v.SetString(mine); s.Validate() != nil {
			v.SetString(before) // a word of a list, not a text
			return
		}
		taken[path] = mine
	})
	if len(taken) < 8 {
		t.Fatalf("%s: only %d fields take a text", name, len(taken))
	}
	return s, taken
}

// skeleton is the elements and attribute names of a page or drawing, in order,
// and all of its text.
func skeleton(t *testing.T, page []byte) (names []string, text string) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var b strings.Builder
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return names, b.String()
		}
		if err != nil {
			t.Fatalf("the page is not well formed: %v", err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			names = append(names, x.Name.Local)
			for _, a := range x.Attr {
				names = append(names, "@"+a.Name.Local)
				b.WriteString(a.Value)
			}
		case xml.CharData:
			b.Write(x)
		case xml.Comment:
			names = append(names, "comment")
		}
	}
}

// Whatever is written in the text fields of a survey, the page has the elements
// and attributes that it has with plain words of the same length, in the same
// order: nothing of it became markup, in the drawings neither. The page, the text
// and the JSON show every character of it.
func TestTextFieldsStayText(t *testing.T) {
	for i, text := range markup {
		name := sites(t)[i%len(sites(t))]
		_, book := read(t, name)
		s, taken := filled(t, name, text, nil)
		plain, _ := filled(t, name, strings.Repeat("m", len(text)), taken)
		evil, tame := rendered(t, s, book), rendered(t, plain, book)
		names, shows := skeleton(t, evil)
		wanted, _ := skeleton(t, tame)
		if !slices.Equal(names, wanted) {
			t.Errorf("%s: the text fields change the elements of the page: %d, not %d", name, len(names), len(wanted))
		}
		v, err := visit.Run(s, book)
		if err != nil {
			t.Fatal(err)
		}
		data, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		shown := 0
		for path, mine := range taken {
			if strings.Contains(shows, mine) {
				shown++
			}
			quoted, _ := json.Marshal(mine)
			if bytes.Contains(data, []byte(mine[:20])) && !bytes.Contains(data, quoted[1:len(quoted)-1]) {
				t.Errorf("%s: %s is not whole in the JSON", name, path)
			}
		}
		if shown < 3 {
			t.Errorf("%s: the page shows %d of %d texts", name, shown, len(taken))
		}
		if bytes.Contains(evil, []byte("<script>alert")) || bytes.Contains(data, []byte("<script>")) {
			t.Errorf("%s: a script got through", name)
		}
		t.Logf("%s: %d text fields, %d of them on the page, %d elements and attributes", name, len(taken), shown, len(names))
	}
}

func rendered(t *testing.T, s visit.Survey, book cost.Book) []byte {
	t.Helper()
	v, err := visit.Run(s, book)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := v.WriteHTML(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
