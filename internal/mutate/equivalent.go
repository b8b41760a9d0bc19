package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
)

// equivalentFile lists the changes that cannot alter a result.
const equivalentFile = "internal/mutate/equivalent.csv"

// readEquivalent reads why each listed change cannot be killed.
func readEquivalent(root string) (map[key]string, error) {
	f, err := os.Open(filepath.Join(root, filepath.FromSlash(equivalentFile)))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", equivalentFile, err)
	}
	reasons := map[key]string{}
	for i, r := range records[min(1, len(records)):] { // below the heading
		nth, err := strconv.Atoi(r[4])
		if err != nil || nth < 1 {
			return nil, fmt.Errorf("%s: record %d: nth %q: want a whole number from 1", equivalentFile, i+2, r[4])
		}
		k := key{r[0], r[1], r[2], r[3], nth}
		if reasons[k] != "" || r[5] == "" {
			return nil, fmt.Errorf("%s: record %d: %v is listed twice, or without a reason", equivalentFile, i+2, k)
		}
		reasons[k] = r[5]
	}
	return reasons, nil
}

// stale lists the reasons for files of these changes whose place is gone: the
// source was edited and the reason has to be thought over.
func stale(reasons map[key]string, changes []change) (gone []key) {
	files, there := map[string]bool{}, map[key]bool{}
	for _, c := range changes {
		files[c.file], there[c.key()] = true, true
	}
	for k := range reasons {
		if files[k.file] && !there[k] {
			gone = append(gone, k)
		}
	}
	return gone
}
