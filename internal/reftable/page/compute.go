package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os/exec"
	"slices"
	"strconv"
	"strings"

	"manway.example/manway/internal/reftable"
)

// values are the distinct results that tests computed for each row, by id.
type values map[string][]string

// compute runs the tests that read the tables and collects what they computed.
// Tests that failed are no error here, because they may fail on the old page;
// failed says which, for a figure that is missing.
func compute(root string) (got values, failed, err error) {
	packages, err := readers(root)
	if err != nil {
		return nil, nil, err
	}
	cmd := exec.Command("go", append([]string{"test", "-json"}, packages...)...)
	cmd.Dir = root
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, nil, err
	}
	got, failed, err = collect(out)
	if err != nil {
		return nil, nil, errors.Join(err, cmd.Wait())
	}
	if err := cmd.Wait(); err != nil {
		failed = errors.Join(failed, fmt.Errorf("go test: %w %s", err, complaints.Bytes()))
	}
	return got, failed, nil
}

// readers lists the packages whose tests import reftable, but for this one.
func readers(root string) ([]string, error) {
	cmd := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .TestImports \" \"}} {{join .XTestImports \" \"}}", "./...")
	cmd.Dir = root
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var list []string
	for line := range strings.Lines(string(out)) {
		fields := strings.Fields(line)
		if slices.ContainsFunc(fields[1:], func(f string) bool { return strings.HasSuffix(f, "/internal/reftable") }) &&
			!strings.HasSuffix(fields[0], "/internal/reftable/page") {
			list = append(list, fields[0])
		}
	}
	if len(list) == 0 {
		return nil, errors.New("no test reads the tables")
	}
	return list, nil
}

// collect reads the events of go test -json.
func collect(events io.Reader) (got values, failed, err error) {
	got = values{}
	decoder := json.NewDecoder(events)
	for {
		var e struct{ Action, Package, Test, Key, Value string }
		if err := decoder.Decode(&e); err == io.EOF {
			return got, failed, nil
		} else if err != nil {
			return nil, nil, fmt.Errorf("go test -json: %w", err)
		}
		id, ok := strings.CutPrefix(e.Key, reftable.AttrPrefix)
		switch {
		case e.Action == "attr" && ok:
			text, _ := strings.CutPrefix(e.Value, "got ")
			text, _, _ = strings.Cut(text, " deviation ")
			if !slices.Contains(got[id], text) {
				got[id] = append(got[id], text)
			}
		case (e.Action == "fail" || e.Action == "build-fail") && e.Test == "":
			failed = errors.Join(failed, fmt.Errorf("%s fails", e.Package))
		}
	}
}

// shown picks the value of each row as the page shows it. All faults are
// returned, joined.
func shown(rows reftable.Rows, got values) (map[string]string, error) {
	ours := map[string]string{}
	var faults []error
	for _, row := range rows {
		list, err := agreeing(row, got[row.ID])
		switch {
		case err != nil:
		case len(list) == 0:
			err = errors.New("no test compares it")
		case len(list) > 1:
			err = errors.New("tests compute different values: " + strings.Join(list, ", "))
		default:
			ours[row.ID] = list[0]
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("%s:%d: %s: %w", row.File, row.Line, row.ID, err))
		}
	}
	return ours, errors.Join(faults...)
}

// agreeing gives the distinct values as the page shows them, each of which must
// agree with the printed figure.
func agreeing(row reftable.Row, got []string) (list []string, err error) {
	for _, text := range got {
		if row.Numeric() {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return nil, err
			}
			if c, err := row.Compare(v); err != nil || !c.Agrees || c.Misprint {
				return nil, fmt.Errorf("ours %v, printed %s: does not agree", v, row.Printed)
			}
			text = row.Shown(v)
		} else if !strings.EqualFold(text, row.Printed) {
			return nil, fmt.Errorf("ours %q, printed %q", text, row.Printed)
		}
		if !slices.Contains(list, text) {
			list = append(list, text)
		}
	}
	return list, nil
}
