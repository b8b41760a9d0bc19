package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// tankLine is the record of the manual.
const tankLine = `{"id":"t1","tank":{"shape":{"kind":"box","length":"96 in","width":"60 in","height":"60 in"},"wall":"3 in","roof":"4 in","floor":"4 in",` +
	`"partitions":[{"at":"62 in","thickness":"3 in"}],"access":[{"compartment":0,"along":"24 in","length":"24 in","width":"24 in"}],` +
	`"concrete":{"strength":"4000 psi"},"groundwater":"3 ft","outlet_invert":"48 in",` +
	`"judge":{"roof":{"steel":{"inside":{"state":"known","diameter":"0.375 in","spacing":"6 in","cover":"0.75 in"}},"loss":"0.25 in","contact":[false],` +
	`"now":{"cover":"12 in","wetness":"soaked"},"planned":{"cover":"20 in","risers":[{"access":0,"mass":"500 lb","wall":"3 in"}]}},` +
	`"walls":{"top_held":true},"partitions":{},"floor":{}},` +
	`"lids":[{"name":"inlet lid","shape":"slab","length":"26 in","width":"26 in","thickness":"3 in","opening":"24 in","steel":{"state":"none"}}]}}`

// tankResult is what the tests read of it.
type tankResult struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Parts []struct {
		Part    string   `json:"part"`
		Governs string   `json:"governs"`
		Use     *float64 `json:"use"`
		Remarks []string `json:"remarks"`
		Weakest *struct {
			Along float64 `json:"along_in"`
		} `json:"weakest"`
		Checks []struct {
			Name, Status, Reason, Combination string
			Phi, Demand, Unfactored           float64
		} `json:"checks"`
		Working []struct{ Symbol string } `json:"working"`
	} `json:"parts"`
	Errors []struct{ Field, Value, Want string } `json:"errors"`
}

func runTank(t *testing.T, wantCode int, line string, args ...string) string {
	t.Helper()
	var out, errs bytes.Buffer
	if code := command.Run(append([]string{"-in", "-"}, args...), strings.NewReader(line), &out, &errs); code != wantCode {
		t.Fatalf("exit %d, want %d: %s%s", code, wantCode, errs.String(), out.String())
	}
	return out.String()
}

func TestTankParts(t *testing.T) {
	var r tankResult
	if err := json.Unmarshal([]byte(runTank(t, 0, tankLine, "-out", "json")), &r); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(r.Title, "Unreviewed screening") {
		t.Errorf("title %q", r.Title)
	}
	want := map[string]string{"roof": "", "walls": "not shown", "partition": "not shown", "floor": "not shown", "inlet lid": "not permitted"}
	for _, p := range r.Parts {
		status, ok := want[p.Part]
		if !ok {
			t.Errorf("part %q", p.Part)
		}
		delete(want, p.Part)
		if len(p.Checks) == 0 || len(p.Working) == 0 {
			t.Errorf("%s: %d checks, %d steps of working", p.Part, len(p.Checks), len(p.Working))
		}
		for _, c := range p.Checks {
			if status != "" && c.Status != status && c.Status != "not judged" && !strings.HasPrefix(c.Name, "cannot fall") {
				t.Errorf("%s, %s: %s, want %s", p.Part, c.Name, c.Status, status)
			}
			if (c.Status == "pass" || c.Status == "fail") && !strings.HasPrefix(c.Name, "cannot fall") && (c.Combination == "" || c.Phi == 0 || c.Unfactored == 0) {
				t.Errorf("%s, %s: %+v", p.Part, c.Name, c)
			}
		}
		if p.Part == "roof" {
			if p.Use == nil || p.Weakest == nil || !strings.Contains(strings.Join(p.Remarks, "\n"), "what is planned adds") {
				t.Errorf("roof %+v", p)
			}
		}
	}
	if len(want) > 0 {
		t.Errorf("missing %v", want)
	}
}

func TestTankTextAndPicture(t *testing.T) {
	text := strings.Join(strings.Fields(runTank(t, 0, tankLine)), " ")
	for _, want := range []string{"UNREVIEWED SCREENING", "ROOF", "Use ", "cannot be shown by arithmetic", "not permitted", "draw down in turns", "a licensed engineer decides"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	picture := runTank(t, 0, tankLine, "-out", "svg")
	for _, want := range []string{"<svg", "weakest place", "not a design"} {
		if !strings.Contains(picture, want) {
			t.Errorf("no %q in the picture", want)
		}
	}
	rows, err := csv.NewReader(strings.NewReader(runTank(t, 0, tankLine, "-out", "csv"))).ReadAll()
	if err != nil || len(rows) < 40 {
		t.Fatalf("%d rows of CSV, %v", len(rows), err)
	}
	statuses := map[string]bool{"pass": true, "fail": true, "not shown": true, "not permitted": true, "not judged": true}
	status, notice := slices.Index(rows[0], "status"), slices.Index(rows[0], "notice")
	for _, row := range rows[1:] {
		if !statuses[row[status]] || !strings.Contains(row[notice], "unreviewed screening") {
			t.Errorf("a check without its status or as if it were reviewed: %v", row)
		}
	}
}

// Every fault is told by its place in the record.
func TestTankFaults(t *testing.T) {
	line := strings.NewReplacer(`"loss":"0.25 in"`, `"loss":"9 in"`, `"access":0,"mass":"500 lb"`, `"access":5,"mass":"500 lb"`, `"thickness":"3 in","opening"`, `"thickness":"0 in","opening"`).Replace(tankLine)
	var r tankResult
	if err := json.Unmarshal([]byte(runTank(t, 1, line, "-out", "json")), &r); err != nil {
		t.Fatal(err)
	}
	got := map[string]bool{}
	for _, e := range r.Errors {
		got[strings.ToLower(e.Field)] = true
	}
	for _, want := range []string{"tank.judge.roof.loss", "tank.judge.roof.planned.risers[0].access", "tank.lids[0].thickness"} {
		if !got[want] {
			t.Errorf("no fault of %s in %v", want, r.Errors)
		}
	}
	if out := runTank(t, 1, strings.Replace(tankLine, `"tank":`, `"loads":[{"kind":"uniform","pressure":"1 psf"}],"tank":`, 1), "-out", "json"); !strings.Contains(out, "lids of its own") {
		t.Errorf("loads beside a tank: %s", out)
	}
}
