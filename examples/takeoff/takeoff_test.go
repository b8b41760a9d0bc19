package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
)

func run(stdin string, args ...string) (out, errs string, code int) {
	var stdout, stderr bytes.Buffer
	code = command().Run(args, strings.NewReader(stdin), &stdout, &stderr)
	return stdout.String(), stderr.String(), code
}

const book = "../../testdata/prices/example.csv"

const job = `{"id":"j1","title":"@collar","on":"2026-11-25","scope":[{"code":"dig-hand","quantity":7.2,"crew":2,"from":"1.5 yd3 dug"},{"code":"concrete","quantity":3},{"code":"wait-cure","quantity":2}],` +
	`"tasks":[{"name":"patch","quantity":12,"unit":"FTK","crew":1}],"pump_out":{"gallons":"1,250 gal","covers":["26 in"],"filters":1},` +
	`"ranges":[{"code":"dig-hand","quantity":{"low":6,"likely":7.2,"high":12}}],"draws":2000,` +
	`"terms":{"overhead_percent":"12","profit_percent":20,"profit_as":"margin","minimum":"2000","taxes":[{"class":"material","percent":"6.5","rounding":"half-up"}]}}`

// The amounts of lines and charges in the CSV add up to the total of the JSON.
func TestAmountsAddUp(t *testing.T) {
	out, errs, code := run(job, "-in", "-", "-prices", book, "-out", "csv")
	if code != 0 {
		t.Fatal(errs)
	}
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var sum decimal.Decimal
	for _, r := range rows[1:] {
		if r[12] != "" {
			sum = sum.Add(decimal.RequireFromString(r[12]))
		}
	}
	out, _, _ = run(job, "-in", "-", "-prices", book, "-out", "json")
	var answer struct {
		Total    decimal.Decimal
		Complete bool
		Range    struct{ P10, P90 decimal.Decimal }
		Lines    []struct {
			Code     string
			Quantity float64
			Working  string
		}
	}
	if err := json.Unmarshal([]byte(out), &answer); err != nil {
		t.Fatal(err)
	}
	if !sum.Equal(answer.Total) || !answer.Complete || !answer.Total.Equal(decimal.NewFromInt(2000)) || answer.Range.P10.GreaterThan(answer.Range.P90) {
		t.Errorf("sum %s, %+v", sum, answer)
	}
	if l := answer.Lines[1]; l.Code != "concrete-bag-60lb" || l.Quantity != 8 || !strings.Contains(l.Working, "left over") {
		t.Errorf("%+v", l)
	}
}

// A line without a price stays, and the answer says that it is incomplete.
func TestMissingPrice(t *testing.T) {
	one := `{"id":"x","scope":[{"code":"gold-ring","class":"material","quantity":1,"unit":"EA"},{"code":"dig-hand","quantity":1}]}`
	out, errs, code := run(one, "-in", "-", "-prices", book)
	if code != 0 || !strings.Contains(out, "INCOMPLETE") || !strings.Contains(out, "gold-ring: not in the price book") || !strings.Contains(out, "total = sum of what is printed = 46.00 USD") {
		t.Errorf("exit %d %s\n%s", code, errs, out)
	}
	out, _, code = run(one, "-in", "-")
	if code != 0 || strings.Contains(out, "Price") {
		t.Errorf("without a book, exit %d:\n%s", code, out)
	}
}

// All faults of a record are told at once by their JSON paths, the other records
// are written.
func TestRefused(t *testing.T) {
	bad := `{"id":"bad","scope":[{"code":"concrete","quantity":-1},{"code":"x","quantity":1,"unit":"CY"}],"terms":{"profit_as":"luck"}}`
	out, _, code := run(bad+"\n"+job+"\n", "-in", "-", "-prices", book, "-out", "json")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if code != 1 || len(lines) != 2 || !strings.Contains(lines[1], `"id":"j1"`) {
		t.Fatalf("exit %d:\n%s", code, out)
	}
	if !strings.Contains(lines[0], "terms.profit_as") {
		t.Errorf("%s", lines[0])
	}
	out, _, _ = run(`{"id":"bad","scope":[{"code":"concrete","quantity":-1},{"code":"x","class":"material","quantity":1,"unit":"CY"}]}`, "-in", "-", "-out", "json")
	for _, want := range []string{"scope[0].quantity", "scope[1].unit", "YDQ for a cubic yard"} {
		if !strings.Contains(out, want) {
			t.Errorf("%s does not name %s", out, want)
		}
	}
	for name, args := range map[string][]string{
		"no record":  {},
		"bad scope":  {"-scope", "concrete three FTQ"},
		"no book":    {"-scope", "concrete 3 FTQ", "-prices", "none.csv"},
		"bad volume": {"-gallons", "1250"},
		"bad book":   {"-scope", "concrete 3 FTQ", "-prices", "takeoff_test.go"},
	} {
		if out, errs, code := run("", args...); code != 2 || out != "" || errs == "" {
			t.Errorf("%s: exit %d, %q, %q", name, code, out, errs)
		}
	}
}

// A second book is laid over the first, and the day chooses the price.
func TestLayersAndDays(t *testing.T) {
	for day, want := range map[string]string{"2026-11-25": "49.50", "2027-03-01": "52.00"} {
		out, errs, code := run("", "-scope", "dig-hand 1 LH", "-on", day, "-prices", book, "-local", "../../testdata/prices/local.csv")
		if code != 0 || !strings.Contains(out, "= "+want+" USD") {
			t.Errorf("on %s, exit %d %s: want %s in\n%s", day, code, errs, want, out)
		}
	}
}

// The example of the manual runs, every line of it priced.
func TestExample(t *testing.T) {
	out, errs, code := run("", "-in", "../../testdata/prices/jobs.jsonl", "-prices", book, "-local", "../../testdata/prices/local.csv", "-out", "json")
	if code != 0 || strings.Count(out, `"complete":true`) != 3 {
		t.Errorf("exit %d %s\n%s", code, errs, out)
	}
}
